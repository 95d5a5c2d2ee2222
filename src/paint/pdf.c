/* Oxturn: paint/pdf - a set of pages as PDF.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/pdf.h"
#include "base/words.h"
#include "paint/cairo.h"
#include <cairo-pdf.h>
#include <gio/gio.h>
#include <stdio.h>

#define POINTS_PER_MM (72.0 / 25.4)

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* creation_date: noon of the set's day; a set without one gets the first day of the epoch, since cairo would take the
 * clock */
static char *
creation_date (const char *date)
{
  int year, month, day;
  if (sscanf (date, "%4d-%2d-%2d", &year, &month, &day) != 3 || year < 1 || day < 1 || month < 1
      || !g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return g_strdup ("1970-01-01T12:00:00Z");
  return g_strdup_printf ("%04d-%02d-%02dT12:00:00Z", year, month, day);
}

static void
set_metadata (cairo_surface_t *surface, const OxPageSet *set)
{
  g_autofree char *date = creation_date (set->date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, set->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, set->author);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, set->subject);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_KEYWORDS, set->keywords);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Oxturn " OX_VERSION);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_MOD_DATE, date);
}

static void
paint_pages (cairo_surface_t *surface, const OxPageSet *set)
{
  cairo_t *cr = cairo_create (surface);
  for (guint i = 0; i < set->n_pages; i++)
    {
      const OxPage *page = &set->pages[i];
      g_autofree char *link = g_strdup_printf ("page=%u", i + 1);
      g_autofree char *name = g_strdup_printf ("%s \xe2\x80\x93 %s", page->label, page->title);
      cairo_pdf_surface_set_size (surface, page->width_mm * POINTS_PER_MM, page->height_mm * POINTS_PER_MM);
      cairo_pdf_surface_set_page_label (surface, page->label);
      cairo_pdf_surface_add_outline (surface, CAIRO_PDF_OUTLINE_ROOT, name, link, CAIRO_PDF_OUTLINE_FLAG_OPEN);
      ox_paint_page (cr, page, POINTS_PER_MM);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
}

GBytes *
ox_pdf_new (const OxPageSet *set, GError **error)
{
  g_return_val_if_fail (set->n_pages > 0, NULL);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (
      append_bytes, bytes, set->pages[0].width_mm * POINTS_PER_MM, set->pages[0].height_mm * POINTS_PER_MM);
  set_metadata (surface, set);
  paint_pages (surface, set);
  cairo_surface_finish (surface);
  cairo_status_t status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The PDF could not be made: %s."),
                   cairo_status_to_string (status));
      return NULL;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}
