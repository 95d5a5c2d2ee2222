/* Oxturn: app/window-clipboard - cut, copy and paste of what is on the floor, and the floor as a picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Items travel as a job file that holds nothing else, so that any window of any later version can take them; for other programs
 * the same items go along as SVG and PNG.
 */
#include "app/window-private.h"

#include "file/job-xml.h"
#include "job/edit.h"
#include "job/place.h"
#include "paint/cairo.h"
#include "paint/svg.h"
#include "session/selection.h"
#include "tools/pick.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define PICTURE_MM 240.0 /* the longer side of a picture */
#define MARGIN_MM 4.0
#define PNG_PX_PER_MM 8.0 /* about 200 dots an inch */
#define STEP 0.5          /* m that pasted items lie off what they are copies of */
#define ROOM_GAP 1.0      /* m between a room and its copy: rooms must not overlap */

/* --- Pictures --- */

static OxDrawing *
lay_out (const OxJob *job, const OxPlan *plan, OxFloorLayers layers, double size_mm[2])
{
  OxBox box = ox_job_box (job);
  double width = MAX (box.x1 - box.x0, 0.1), height = MAX (box.y1 - box.y0, 0.1);
  double mm = (PICTURE_MM - 2 * MARGIN_MM) / MAX (width, height);
  g_autoptr (OxDrawing) floor = ox_floor_picture_new_at (job, plan, layers, mm, NULL);
  OxDrawingBuilder *builder = ox_drawing_builder_new ();

  size_mm[0] = width * mm + 2 * MARGIN_MM;
  size_mm[1] = height * mm + 2 * MARGIN_MM;
  ox_drawing_builder_place (builder, (OxPoint){ MARGIN_MM - box.x0 * mm, MARGIN_MM - box.y0 * mm }, mm);
  ox_drawing_builder_drawing (builder, floor);
  return ox_drawing_builder_end (builder);
}

static GBytes *
make_png (const OxPage *page)
{
  int width = (int) ceil (page->width_mm * PNG_PX_PER_MM), height = (int) ceil (page->height_mm * PNG_PX_PER_MM);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) pixels = NULL;
  g_autoptr (GdkTexture) texture = NULL;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  ox_paint_page (cr, page, PNG_PX_PER_MM);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixels = g_bytes_new_with_free_func (cairo_image_surface_get_data (surface), stride * (gsize) height,
                                       (GDestroyNotify) cairo_surface_destroy, surface);
  texture = gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, pixels, stride);
  return gdk_texture_save_to_png_bytes (texture);
}

static void
add_bytes (GPtrArray *parts, const char *type, GBytes *bytes)
{
  g_ptr_array_add (parts, gdk_content_provider_new_for_bytes (type, bytes));
  g_bytes_unref (bytes);
}

static void
add_pictures (GPtrArray *parts, const OxJob *job, const OxPlan *plan, OxFloorLayers layers)
{
  double size_mm[2];
  g_autoptr (OxDrawing) drawing = lay_out (job, plan, layers, size_mm);
  OxPage page = { .width_mm = size_mm[0],
                  .height_mm = size_mm[1],
                  .title = _ ("Floor"),
                  .description = _ ("A floor, copied from Oxturn."),
                  .label = (char *) "1",
                  .drawing = drawing };

  add_bytes (parts, "image/svg+xml", ox_svg_new (&page));
  add_bytes (parts, "image/png", make_png (&page));
}

/* The providers of @parts become one; the array is freed. */
static void
put (OxWindow *self, GPtrArray *parts)
{
  g_clear_object (&self->clip);
  self->clip = gdk_content_provider_new_union ((GdkContentProvider **) parts->pdata, parts->len);
  self->pastes = 1;
  g_ptr_array_free (parts, TRUE);
  gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), self->clip);
}

void
ox_window_copy_picture (OxWindow *self)
{
  GPtrArray *parts = g_ptr_array_new ();

  add_pictures (parts, ox_session_get_job (self->session), ox_session_find_plan (self->session),
                ox_canvas_get_layers (self->canvas));
  put (self, parts);
  ox_window_tell (self, _ ("The floor is on the clipboard, as SVG and as PNG."));
}

/* --- Cut and copy --- */

gboolean
ox_window_copy (OxWindow *self)
{
  g_auto (GStrv) ids = ox_selection_items (ox_session_get_selection (self->session));
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) only
      = ox_edit_only (ox_session_get_job (self->session), (const char *const *) ids, &error);
  GPtrArray *parts;
  char *text;

  if (only == NULL || ids[0] == NULL)
    {
      ox_window_tell (self, only == NULL ? error->message : _ ("Select whole items to copy them, not a side."));
      return FALSE;
    }
  parts = g_ptr_array_new ();
  text = ox_job_file_to_text (only);
  add_bytes (parts, OX_CLIP_TYPE, g_bytes_new_take (text, strlen (text)));
  add_pictures (parts, only, NULL, OX_FLOOR_OUTLINE | OX_FLOOR_OBSTACLES | OX_FLOOR_STATIONS | OX_FLOOR_NAMES);
  put (self, parts);
  return TRUE;
}

void
ox_window_cut (OxWindow *self)
{
  g_auto (GStrv) ids = ox_selection_items (ox_session_get_selection (self->session));
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) rest = NULL;

  if (!ox_window_copy (self))
    return;
  rest = ox_job_without (ox_session_get_job (self->session), (const char *const *) ids, &error);
  if (rest == NULL)
    ox_window_tell (self, error->message);
  else
    ox_session_apply (self->session, rest, _ ("Cut"), (const char *const[]){ NULL }, NULL);
  self->pastes = 0; /* the first paste puts it back where it was */
}

/* --- Paste --- */

static char **
all_ids (const OxJob *job)
{
  static const OxBox everywhere = { -INFINITY, -INFINITY, INFINITY, INFINITY };

  return ox_pick_in_box (job, everywhere);
}

static gboolean
paste_at (OxWindow *self, const OxJob *from, OxPoint by, GError **error)
{
  g_auto (GStrv) ids = all_ids (from);
  g_auto (GStrv) pasted = NULL;
  OxPlacement place = { .about = { 0, 0 }, .by = by };
  g_autoptr (OxJob) job
      = ox_edit_copied (ox_session_get_job (self->session),
                        &(OxCopies){ .from = from, .ids = (const char *const *) ids, .places = &place, .n = 1 },
                        &pasted, error);

  if (job == NULL)
    return FALSE;
  self->pastes++;
  ox_session_apply (self->session, job, _ ("Paste"), (const char *const *) pasted, NULL);
  return TRUE;
}

/* What stood on another floor may lie beside this one: then it goes to the middle of what is seen. */
static void
paste (OxWindow *self, const OxJob *from)
{
  g_autoptr (GError) error = NULL;
  OxBox box = ox_job_box (from);
  OxPoint middle = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  double k = self->pastes;
  OxPoint by = from->n_rooms > 0 ? (OxPoint){ k * (box.x1 - box.x0 + ROOM_GAP), 0 } : (OxPoint){ k * STEP, -k * STEP };

  if (paste_at (self, from, by, &error))
    return;
  by = ox_point_snap (ox_point_sub (ox_canvas_get_view (self->canvas)->centre, middle));
  if (from->n_rooms > 0 || ox_box_is_empty (box) || !paste_at (self, from, by, NULL))
    ox_window_tell (self, error->message);
}

static void
spliced_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (OxWindow) self = OX_WINDOW (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (OxJob) from = NULL;

  if (self->session == NULL || gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  if (g_output_stream_splice_finish (G_OUTPUT_STREAM (source), result, &error) >= 0)
    {
      bytes = g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (source));
      if (ox_job_file_read_data (_ ("clipboard"), g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &from,
                                 &error))
        paste (self, from);
    }
  if (error != NULL)
    ox_window_tell (self, error->message);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (OxWindow) self = OX_WINDOW (data);
  g_autoptr (GInputStream) in = gdk_clipboard_read_finish (GDK_CLIPBOARD (source), result, NULL, NULL);
  g_autoptr (GOutputStream) out = g_memory_output_stream_new_resizable ();

  if (in == NULL)
    ox_window_tell (self, _ ("There is nothing of a floor on the clipboard."));
  else
    g_output_stream_splice_async (out, in,
                                  G_OUTPUT_STREAM_SPLICE_CLOSE_SOURCE | G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET,
                                  G_PRIORITY_DEFAULT, NULL, spliced_cb, g_object_ref (self));
}

void
ox_window_paste (OxWindow *self)
{
  static const char *types[] = { OX_CLIP_TYPE, NULL };
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (self));
  GdkContentProvider *content = gdk_clipboard_get_content (clipboard);

  /* What came from elsewhere lands where it was there. */
  if (content != self->clip)
    {
      g_set_object (&self->clip, content);
      self->pastes = 0;
    }
  gdk_clipboard_read_async (clipboard, types, G_PRIORITY_DEFAULT, NULL, read_cb, g_object_ref (self));
}
