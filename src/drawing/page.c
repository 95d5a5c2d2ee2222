/* Oxturn: drawing/page - pages of paper and the set that they make.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "drawing/page.h"

static char *
copy_text (const char *text)
{
  return g_strdup (text ? text : "");
}

OxPageSet *
ox_page_set_new (const OxPageSet *set)
{
  OxPageSet *out = g_atomic_rc_box_new0 (OxPageSet);
  out->title = copy_text (set->title);
  out->author = copy_text (set->author);
  out->subject = copy_text (set->subject);
  out->keywords = copy_text (set->keywords);
  out->date = copy_text (set->date);
  out->n_pages = set->n_pages;
  out->pages = g_new0 (OxPage, set->n_pages);
  for (guint i = 0; i < set->n_pages; i++)
    {
      OxPage *page = &out->pages[i];
      *page = set->pages[i];
      page->title = copy_text (page->title);
      page->description = copy_text (page->description);
      page->label = copy_text (page->label);
      page->drawing = ox_drawing_ref (page->drawing);
      page->part = page->part ? ox_drawing_ref (page->part) : NULL;
    }
  return out;
}

OxPageSet *
ox_page_set_ref (const OxPageSet *set)
{
  return g_atomic_rc_box_acquire ((OxPageSet *) set);
}

static void
clear_set (gpointer data)
{
  OxPageSet *set = data;
  for (guint i = 0; i < set->n_pages; i++)
    {
      g_free (set->pages[i].title);
      g_free (set->pages[i].description);
      g_free (set->pages[i].label);
      ox_drawing_unref (set->pages[i].drawing);
      g_clear_pointer (&set->pages[i].part, ox_drawing_unref);
    }
  g_free (set->pages);
  g_free (set->title);
  g_free (set->author);
  g_free (set->subject);
  g_free (set->keywords);
  g_free (set->date);
}

void
ox_page_set_unref (const OxPageSet *set)
{
  g_atomic_rc_box_release_full ((OxPageSet *) set, clear_set);
}
