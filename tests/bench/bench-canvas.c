/* Oxturn: tests/bench/bench-canvas - milliseconds a frame of pan, zoom and a dragged corner over a floor of 10,000
 * strips, without and with a traced plan of 9933 x 14043 dots under it. SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/application.h"
#include "app/canvas/floor-layer.h"
#include "app/canvas/overlay-layer.h"
#include "app/traced/store.h"
#include "job/edit.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <malloc.h>
#include <time.h>

#define STRIPS 10000
#define COLUMNS 20
#define FRAMES 150
#define WIDTH 1200
#define HEIGHT 800
#define SCAN_WIDTH 9933 /* an A0 sheet at 300 dots an inch */
#define SCAN_HEIGHT 14043

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
  g_print ("%-12s %u frames: median %.1f ms, 95th percentile %.1f ms (wanted: 16.7 and 33)\n", name, self->ms->len,
           ms[self->ms->len / 2], ms[self->ms->len * 95 / 100]);
}

/* A grid of dark lines on grey paper, as a scanner leaves it. */
static GBytes *
make_scan (void)
{
  g_autoptr (GdkPixbuf) scan = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, SCAN_WIDTH, SCAN_HEIGHT);
  char *data = NULL;
  gsize n = 0;

  gdk_pixbuf_fill (scan, 0xf2f2f2ff);
  for (int x = 300; x < SCAN_WIDTH - 20; x += 600)
    {
      g_autoptr (GdkPixbuf) line = gdk_pixbuf_new_subpixbuf (scan, x, 0, 12, SCAN_HEIGHT);

      gdk_pixbuf_fill (line, 0x202020ff);
    }
  if (!gdk_pixbuf_save_to_buffer (scan, &data, &n, "png", NULL, "compression", "1", NULL))
    g_error ("no scan could be made");
  return g_bytes_new_take (data, n);
}

static void
ignore_cb (gpointer data)
{
  (void) data;
}

static void
failed_cb (const char *why, gpointer data)
{
  (void) data;
  g_error ("%s", why);
}

/* How long the main thread waits for nothing while it is read, and how long one picture of it takes to paint. */
static OxTracedStore *
read_scan (const OxView *view)
{
  g_autoptr (GBytes) data = make_scan ();
  g_autoptr (OxJob) empty = ox_job_builder_end (ox_job_builder_new (NULL));
  OxTracedPlan draft = { .id = (char *) "T1", .kind = OX_TRACED_PNG, .data = data, .page = 1, .middle = { 60, 47 },
                         .width = 70, .depth = 99, .strength = 0.6 };
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);
  g_autoptr (OxJob) job = ox_job_with_traced (empty, traced, NULL);
  OxTracedStore *store = ox_traced_store_new (&(OxTracedListener){ .changed = ignore_cb, .failed = failed_cb });
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  gint64 began = g_get_monotonic_time ();
  double ms;

  ox_traced_store_set_job (store, job);
  while (!ox_traced_store_is_settled (store))
    g_main_context_iteration (NULL, TRUE);
  g_print ("scan    of %d x %d dots read in %.1f s in the background", SCAN_WIDTH, SCAN_HEIGHT,
           (double) (g_get_monotonic_time () - began) / G_USEC_PER_SEC);
  ms = now_ms ();
  ox_traced_set_paint (ox_traced_store_get_set (store), cr, view, FALSE);
  g_print (", one view of it painted in %.0f ms\n", now_ms () - ms);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return store;
}

int
main (void)
{
  static const char *const names[2][N_MOTIONS]
      = { { "pan", "zoom", "corner" }, { "pan, scan", "zoom, scan", "corner, scan" } };
  g_autoptr (OxDrawing) drawing = make_floor ();
  Bench self = { .ms = g_array_new (FALSE, FALSE, sizeof (double)) };
  GtkWidget *window, *both = NULL;
  GdkFrameClock *clock;
  OxTracedStore *store;

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
    run (&self, names[0][self.motion]);
  store = read_scan (&self.view);
  ox_floor_layer_set_traced (OX_FLOOR_LAYER (self.floor), ox_traced_store_get_set (store));
  for (self.motion = PAN; self.motion < N_MOTIONS; self.motion++)
    run (&self, names[1][self.motion]);
  ox_traced_store_free (store);
  g_array_unref (self.ms);
  return 0;
}
