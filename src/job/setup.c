/* Oxturn: job/setup - how the sheets of a job are set up: language, paper, scale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/setup.h"
#include <math.h>
#include "job/text.h"
#include "job/value.h"

const char *const ox_setup_papers[]
    = { "A4",     "A3",     "A2",     "A1",     "A0",     "Letter",  "Tabloid", "ANSI C", "ANSI D",
        "ANSI E", "Arch A", "Arch B", "Arch C", "Arch D", "Arch E1", "Arch E",  NULL };

OxSheetSetup *
ox_sheet_setup_new (const OxSheetSetup *setup)
{
  OxSheetSetup *self = g_atomic_rc_box_new0 (OxSheetSetup);
  self->language = ox_text_clean (setup->language, FALSE);
  self->paper = ox_text_clean (setup->paper, FALSE);
  self->schedule_paper = ox_text_clean (setup->schedule_paper, FALSE);
  self->tiles = ox_text_clean (setup->tiles, FALSE);
  self->scale = ox_value_snap (setup->scale);
  self->orientation = setup->orientation;
  return self;
}

OxSheetSetup *
ox_sheet_setup_ref (const OxSheetSetup *setup)
{
  return g_atomic_rc_box_acquire ((gpointer) setup);
}

static void
clear (gpointer data)
{
  OxSheetSetup *setup = data;
  g_free (setup->language);
  g_free (setup->paper);
  g_free (setup->schedule_paper);
  g_free (setup->tiles);
}

void
ox_sheet_setup_unref (const OxSheetSetup *setup)
{
  g_atomic_rc_box_release_full ((gpointer) setup, clear);
}

gboolean
ox_sheet_setup_equal (const OxSheetSetup *a, const OxSheetSetup *b)
{
  return g_str_equal (a->language, b->language) && g_str_equal (a->paper, b->paper)
         && g_str_equal (a->schedule_paper, b->schedule_paper) && g_str_equal (a->tiles, b->tiles)
         && a->scale == b->scale && a->orientation == b->orientation;
}
