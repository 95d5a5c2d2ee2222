/* Oxturn: tests/bench/bench-canvas - milliseconds a frame of pan, zoom and a dragged corner over a floor of 10,000
 * strips. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/application.h"
#include "app/canvas/floor-layer.h"
#include "app/canvas/overlay-layer.h"

#include <malloc.h>
#include <time.h>

#define STRIPS 10000
#define COLUMNS 20
#define FRAMES 150
#define WIDTH 1200
#define HEIGHT 800

typedef enum
{
  PAN,
  ZOOM,
  CORNER,
  N_MOTIONS
} Motion;

typedef struct
{
  GtkWidget *floor, *overlay;
  OxView view;
  Motion motion;
  guint frame;
  double began;
  GArray *ms;
} Bench;

static OxDrawing *
make_floor (void)
{
  OxDrawingBuilder *builder = ox_drawing_builder_new ();

  ox_drawing_builder_layer (builder, "strips", "Strips");
  for (guint i = 0; i < STRIPS; i++)
    {
      double x = (i % COLUMNS) * 6.0, y = i / COLUMNS * 0.19;

      ox_drawing_builder_box (builder, i / COLUMNS % 2 == 0 ? OX_STYLE_STRIP_OUT : OX_STYLE_STRIP_HOME,
                              (OxBox){ x, y, x + 6, y + 0.21 });
      ox_drawing_builder_line (builder, OX_STYLE_STRIP_AXIS, (OxPoint){ x, y + 0.1 }, (OxPoint){ x + 6, y + 0.1 });
    }
  return ox_drawing_builder_end (builder);
}

static void
show (Bench *self)
{
  OxPreview *preview = ox_preview_new ();
  double at = self->motion == CORNER ? 0.2 * self->frame : 0;

  ox_preview_add (preview, OX_PREVIEW_OUTLINE,
                  (const OxPoint[]){ { 40, 30 }, { 70 + at, 30 }, { 70 + at, 60 }, { 40, 60 } }, 4);
  if (self->motion != CORNER)
    ox_floor_layer_set_view (OX_FLOOR_LAYER (self->floor), &self->view);
  ox_overlay_layer_set (OX_OVERLAY_LAYER (self->overlay), &self->view, preview);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Bench *self = data;
  double turn = self->frame % 50 < 25 ? 1 : -1;

  (void) widget;
  (void) clock;
  if (self->motion == PAN)
    self->view = ox_view_with_pan (&self->view, (OxPixel){ 9 * turn, 5 * turn });
  else if (self->motion == ZOOM)
    self->view = ox_view_with_zoom (&self->view, turn > 0 ? 1.03 : 1 / 1.03, (OxPixel){ WIDTH / 3.0, HEIGHT / 3.0 });
  show (self);
  return G_SOURCE_CONTINUE;
}

/* Of this thread's own work: what else the computer does meanwhile does not count. */
static double
now_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1000 + (double) now.tv_nsec / 1e6;
}

static void
before_cb (GdkFrameClock *clock, Bench *self)
{
  (void) clock;
  self->began = now_ms ();
}

static void
after_cb (GdkFrameClock *clock, Bench *self)
{
  double ms = now_ms () - self->began;

  (void) clock;
  g_array_append_val (self->ms, ms);
  self->frame++;
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
run (Bench *self, const char *name)
{
  guint tick = gtk_widget_add_tick_callback (self->floor, tick_cb, self, NULL);
  const double *ms;

  self->frame = 0;
  g_array_set_size (self->ms, 0);
  while (self->frame < FRAMES)
    g_main_context_iteration (NULL, TRUE);
  gtk_widget_remove_tick_callback (self->floor, tick);
  g_array_sort (self->ms, compare);
  ms = (const double *) (gpointer) self->ms->data;
  g_print ("%-7s %u frames: median %.1f ms, 95th percentile %.1f ms (wanted: 16.7 and 33)\n", name, self->ms->len,
           ms[self->ms->len / 2], ms[self->ms->len * 95 / 100]);
}

int
main (void)
{
  static const char *const names[N_MOTIONS] = { "pan", "zoom", "corner" };
  g_autoptr (OxDrawing) drawing = make_floor ();
  Bench self = { .ms = g_array_new (FALSE, FALSE, sizeof (double)) };
  GtkWidget *window, *both = NULL;
  GdkFrameClock *clock;

  /* As src/app/main.c does it. */
  mallopt (M_MMAP_THRESHOLD, 32 << 20);
  mallopt (M_TRIM_THRESHOLD, 256 << 20);
  gtk_init ();
  ox_application_prepare_display (gdk_display_get_default ());
  window = gtk_window_new ();
  both = gtk_overlay_new ();
  self.floor = ox_floor_layer_new ();
  self.overlay = ox_overlay_layer_new ();
  self.view = (OxView){ .centre = { 60, 47 }, .px_per_m = 8, .width_px = WIDTH, .height_px = HEIGHT };
  gtk_overlay_set_child (GTK_OVERLAY (both), self.floor);
  gtk_overlay_add_overlay (GTK_OVERLAY (both), self.overlay);
  gtk_window_set_child (GTK_WINDOW (window), both);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_window_present (GTK_WINDOW (window));
  ox_floor_layer_set_drawing (OX_FLOOR_LAYER (self.floor), drawing);
  show (&self);
  while (!ox_floor_layer_is_settled (OX_FLOOR_LAYER (self.floor)))
    g_main_context_iteration (NULL, TRUE);
  clock = gtk_widget_get_frame_clock (self.floor);
  g_signal_connect (clock, "before-paint", G_CALLBACK (before_cb), &self);
  g_signal_connect (clock, "after-paint", G_CALLBACK (after_cb), &self);
  for (self.motion = PAN; self.motion < N_MOTIONS; self.motion++)
    run (&self, names[self.motion]);
  g_array_unref (self.ms);
  return 0;
}
