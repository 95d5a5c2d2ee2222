/* Oxturn: app/traced/picture - a traced plan's file decoded, in several sizes, so that any view of it is painted in no time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/traced/picture.h"

#include "app/traced/dots.h"
#include "file/job-xml.h"
#include "file/picture.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gi18n-lib.h>
#ifdef OX_HAVE_POPPLER
#include <poppler.h>
#endif

#define VECTOR_DPI 300.0
#define VECTOR_MAX_PIXELS (80.0 * 1000 * 1000)
#define VECTOR_MAX_SIDE 30000.0 /* cairo and GdkPixbuf end at 32767 */
#define SVG_LONG_SIDE 6000.0    /* dots: the loader keeps them all, with alpha, and a copy */
#define SMALLEST_PX 400         /* no level is needed below that */
#define CHUNK (64 * 1024)
#define MM 25.4
#define POINT_MM (25.4 / 72)

struct _OxTracedPicture
{
  OxTracedInfo info;
  guint n_levels;
  OxDots levels[OX_DOTS_MAX_LEVELS];
};

static gboolean
fail (GError **error, const char *sentence)
{
  g_set_error_literal (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, sentence);
  return FALSE;
}

static gboolean
fail_because (GError **error, const GError *cause)
{
  g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("The picture cannot be read: %s"), cause->message);
  return FALSE;
}

static gboolean
fail_memory (GError **error)
{
  return fail (error, _ ("There is not enough memory for a picture of this size. Scan it at fewer dots an inch"));
}

/* Dots for a page of paper: at VECTOR_DPI, or at as much as is allowed. */
static double
px_per_mm_for (double width_mm, double height_mm)
{
  double wanted = VECTOR_DPI / MM;

  return MIN (MIN (wanted, sqrt (VECTOR_MAX_PIXELS / (width_mm * height_mm))),
              VECTOR_MAX_SIDE / MAX (width_mm, height_mm));
}

/* --- PDF --- */

#ifdef OX_HAVE_POPPLER

static PopplerPage *
open_page (GBytes *data, guint page, OxTracedInfo *info, GError **error)
{
  g_autoptr (GError) cause = NULL;
  PopplerDocument *document = poppler_document_new_from_bytes (data, NULL, &cause);
  g_autoptr (GObject) owner = (GObject *) document; /* older versions have no g_autoptr of their own */
  PopplerPage *opened;
  double width, height;

  if (document == NULL)
    {
      fail_because (error, cause);
      return NULL;
    }
  info->pages = (guint) MAX (poppler_document_get_n_pages (document), 0);
  opened = page >= 1 && page <= info->pages ? poppler_document_get_page (document, (int) page - 1) : NULL;
  if (opened == NULL)
    {
      g_set_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, _ ("The PDF has no page %u; it has pages 1 to %u"), page,
                   info->pages);
      return NULL;
    }
  poppler_page_get_size (opened, &width, &height);
  info->paper_width_mm = width * POINT_MM;
  info->paper_depth_mm = height * POINT_MM;
  if (width > 1 && height > 1 && width < 1e6 && height < 1e6)
    return opened;
  fail (error, _ ("The page of the PDF has no size that a sheet of paper could have"));
  g_object_unref (opened);
  return NULL;
}

static gboolean
pdf_info (GBytes *data, guint page, OxTracedInfo *info, GError **error)
{
  PopplerPage *opened = open_page (data, page, info, error);
  g_autoptr (GObject) owner = (GObject *) opened;

  return owner != NULL;
}

/* In bands, each drawn by itself: all of an A0 sheet at four bytes a dot would not fit into every computer. */
static gboolean
decode_pdf (GBytes *data, guint page, OxDots *dots, GCancellable *cancel, GError **error)
{
  OxTracedInfo info;
  PopplerPage *opened = open_page (data, page, &info, error);
  g_autoptr (GObject) owner = (GObject *) opened;
  double px_per_mm;
  guint band;

  if (opened == NULL)
    return FALSE;
  px_per_mm = px_per_mm_for (info.paper_width_mm, info.paper_depth_mm);
  if (!ox_dots_init (dots, (guint) ceil (info.paper_width_mm * px_per_mm),
                     (guint) ceil (info.paper_depth_mm * px_per_mm)))
    return fail_memory (error);
  band = MAX (1, 16 * 1000 * 1000 / dots->width);
  for (guint y = 0; y < dots->height; y += band)
    {
      cairo_surface_t *surface
          = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) dots->width, (int) MIN (band, dots->height - y));
      cairo_t *cr = cairo_create (surface);

      if (g_cancellable_set_error_if_cancelled (cancel, error))
        {
          cairo_destroy (cr);
          cairo_surface_destroy (surface);
          return FALSE;
        }
      cairo_set_source_rgb (cr, 1, 1, 1);
      cairo_paint (cr);
      cairo_translate (cr, 0, -(double) y);
      cairo_scale (cr, dots->width / info.paper_width_mm * POINT_MM, dots->height / info.paper_depth_mm * POINT_MM);
      poppler_page_render (opened, cr);
      cairo_destroy (cr);
      ox_dots_take_cairo (dots, y, surface);
      cairo_surface_destroy (surface);
    }
  return TRUE;
}

#else

static gboolean
pdf_info (GBytes *data, guint page, OxTracedInfo *info, GError **error)
{
  (void) data;
  (void) page;
  (void) info;
  return fail (error, _ ("This Oxturn was built without PDF. Save the page as PNG or SVG and bring that in"));
}

static gboolean
decode_pdf (GBytes *data, guint page, OxDots *dots, GCancellable *cancel, GError **error)
{
  OxTracedInfo info;

  (void) dots;
  (void) cancel;
  return pdf_info (data, page, &info, error);
}

#endif

/* --- PNG, JPEG, SVG --- */

static void
size_prepared_cb (GdkPixbufLoader *loader, int width, int height)
{
  double scale = SVG_LONG_SIDE / MAX (MAX (width, height), 1);

  gdk_pixbuf_loader_set_size (loader, MAX (1, (int) (width * scale)), MAX (1, (int) (height * scale)));
}

static GdkPixbufLoader *
new_loader (gboolean vector, GError **error)
{
  GdkPixbufLoader *loader
      = vector ? gdk_pixbuf_loader_new_with_mime_type ("image/svg+xml", NULL) : gdk_pixbuf_loader_new ();

  if (loader == NULL)
    fail (error, _ ("SVG cannot be read on this computer: GdkPixbuf has no loader for it (librsvg)"));
  else if (vector)
    g_signal_connect (loader, "size-prepared", G_CALLBACK (size_prepared_cb), NULL);
  return loader;
}

/* All of @data, a chunk at a time so that it can be stopped. */
static gboolean
feed (GdkPixbufLoader *loader, GBytes *data, GCancellable *cancel, GError **error)
{
  gsize n;
  const guint8 *bytes = g_bytes_get_data (data, &n);
  g_autoptr (GError) cause = NULL;

  for (gsize at = 0; at < n && cause == NULL; at += CHUNK)
    if (g_cancellable_is_cancelled (cancel) || !gdk_pixbuf_loader_write (loader, bytes + at, MIN (n - at, CHUNK), &cause))
      break;
  if (!gdk_pixbuf_loader_close (loader, cause == NULL ? &cause : NULL) && cause == NULL)
    return fail (error, _ ("The picture cannot be read"));
  if (g_cancellable_set_error_if_cancelled (cancel, error))
    return FALSE;
  return cause == NULL || fail_because (error, cause);
}

static gboolean
decode_pixbuf (GBytes *data, gboolean vector, OxDots *dots, GCancellable *cancel, GError **error)
{
  g_autoptr (GdkPixbufLoader) loader = new_loader (vector, error);
  g_autoptr (GdkPixbuf) upright = NULL;
  GdkPixbuf *pixbuf;

  if (loader == NULL || !feed (loader, data, cancel, error))
    return FALSE;
  pixbuf = gdk_pixbuf_loader_get_pixbuf (loader);
  if (pixbuf == NULL)
    return fail (error, _ ("The picture cannot be read"));
  /* Cameras store how they were held. */
  upright = gdk_pixbuf_apply_embedded_orientation (pixbuf);
  if (!ox_dots_init (dots, (guint) gdk_pixbuf_get_width (upright), (guint) gdk_pixbuf_get_height (upright)))
    return fail_memory (error);
  for (guint y = 0; y < dots->height; y++)
    ox_dots_take_row (dots, y, gdk_pixbuf_read_pixels (upright) + (gsize) y * (gsize) gdk_pixbuf_get_rowstride (upright),
                      gdk_pixbuf_get_has_alpha (upright));
  return TRUE;
}

/* --- All of them --- */

gboolean
ox_traced_info_read (GBytes *data, guint page, OxTracedInfo *info, GError **error)
{
  OxPictureHead head;

  if (!ox_picture_sniff (data, &head, error))
    return FALSE;
  *info = (OxTracedInfo){ .kind = head.kind,
                          .pages = 1,
                          .paper_width_mm = head.paper_width_mm,
                          .paper_depth_mm = head.paper_depth_mm };
  return head.kind != OX_TRACED_PDF || pdf_info (data, page, info, error);
}

static gboolean
decode (GBytes *data, guint page, OxDots *dots, GCancellable *cancel, GError **error)
{
  OxPictureHead head;

  if (!ox_picture_sniff (data, &head, error))
    return FALSE;
  if (head.kind == OX_TRACED_PDF)
    return decode_pdf (data, page, dots, cancel, error);
  return decode_pixbuf (data, head.kind == OX_TRACED_SVG, dots, cancel, error);
}

static void
picture_clear (gpointer data)
{
  OxTracedPicture *picture = data;

  for (guint i = 0; i < picture->n_levels; i++)
    ox_dots_clear (&picture->levels[i]);
}

OxTracedPicture *
ox_traced_picture_new (GBytes *data, guint page, GCancellable *cancel, GError **error)
{
  g_autoptr (OxTracedPicture) picture = g_atomic_rc_box_new0 (OxTracedPicture);
  OxDots *top = &picture->levels[0];
  gboolean decoded
      = ox_traced_info_read (data, page, &picture->info, error) && decode (data, page, top, cancel, error);

  picture->n_levels = top->bytes != NULL ? 1 : 0;
  if (!decoded)
    return NULL;
  ox_dots_pack (top);
  while (picture->n_levels < OX_DOTS_MAX_LEVELS && MAX (top->width, top->height) > SMALLEST_PX)
    {
      if (!ox_dots_halve (top, top + 1))
        break;
      top++;
      picture->n_levels++;
    }
  return g_steal_pointer (&picture);
}

OxTracedPicture *
ox_traced_picture_ref (const OxTracedPicture *picture)
{
  return g_atomic_rc_box_acquire ((gpointer) picture);
}

void
ox_traced_picture_unref (const OxTracedPicture *picture)
{
  g_atomic_rc_box_release_full ((gpointer) picture, picture_clear);
}

const OxTracedInfo *
ox_traced_picture_get_info (const OxTracedPicture *picture)
{
  return &picture->info;
}

double
ox_traced_picture_aspect (const OxTracedPicture *picture)
{
  return (double) picture->levels[0].width / picture->levels[0].height;
}

/* --- Painting --- */

/* The smallest level that still has a dot for every pixel of the screen. */
static const OxDots *
choose_level (const OxTracedPicture *picture, cairo_t *cr, const OxView *view, const OxTracedLook *look)
{
  double device = 1, none = 0;
  guint level = 0;
  double shown;

  cairo_user_to_device_distance (cr, &device, &none);
  shown = look->width * view->px_per_m * hypot (device, none);
  while (level + 1 < picture->n_levels && picture->levels[level + 1].width >= shown)
    level++;
  return &picture->levels[level];
}

/* What of @dots can be seen, with a dot more on each side to smooth with. FALSE when nothing of it. */
static gboolean
visible_part (cairo_t *cr, const OxDots *dots, OxDotsPart *part)
{
  double x0, y0, x1, y1;

  cairo_clip_extents (cr, &x0, &y0, &x1, &y1);
  x0 = CLAMP (floor (x0) - 1, 0, dots->width);
  y0 = CLAMP (floor (y0) - 1, 0, dots->height);
  x1 = CLAMP (ceil (x1) + 1, 0, dots->width);
  y1 = CLAMP (ceil (y1) + 1, 0, dots->height);
  *part = (OxDotsPart){ (guint) x0, (guint) y0, (guint) (x1 - x0), (guint) (y1 - y0) };
  return x1 > x0 && y1 > y0;
}

void
ox_traced_picture_paint (const OxTracedPicture *picture, cairo_t *cr, const OxView *view, const OxTracedLook *look,
                         gboolean night)
{
  const OxDots *dots = choose_level (picture, cr, view, look);
  OxPixel middle = ox_view_to_pixel (view, look->middle);
  OxDotsPart part;

  cairo_save (cr);
  cairo_translate (cr, middle.x, middle.y);
  cairo_rotate (cr, -look->angle_deg * G_PI / 180);
  cairo_scale (cr, look->width * view->px_per_m / dots->width, look->depth * view->px_per_m / dots->height);
  cairo_translate (cr, -0.5 * dots->width, -0.5 * dots->height);
  cairo_rectangle (cr, 0, 0, dots->width, dots->height);
  cairo_clip (cr);
  if (visible_part (cr, dots, &part))
    {
      cairo_surface_t *surface = ox_dots_surface (dots, &part, night);

      cairo_set_source_surface (cr, surface, part.x, part.y);
      cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BILINEAR);
      cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
      cairo_set_operator (cr, night ? CAIRO_OPERATOR_SCREEN : CAIRO_OPERATOR_MULTIPLY);
      cairo_paint_with_alpha (cr, look->strength);
      cairo_surface_destroy (surface);
    }
  cairo_restore (cr);
}
