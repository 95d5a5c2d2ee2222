/* Oxturn: sheets/options - how a job wants its sheets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/options.h"

static const OxPaper *
paper_named (const char *name)
{
  return name[0] != '\0' ? ox_paper_find (name) : NULL;
}

void
ox_sheet_options_take (OxSheetOptions *options, const OxJob *job, OxLanguage *language)
{
  const OxSheetSetup *setup = job->setup;
  options->paper = paper_named (setup->paper);
  options->schedule_paper = paper_named (setup->schedule_paper);
  options->tiles = paper_named (setup->tiles);
  options->orientation = setup->orientation;
  options->scale = ox_scale_named (job->units, setup->scale);
  options->language = setup->language[0] != '\0' && ox_language_find (setup->language, language) ? language : NULL;
}

void
ox_sheet_options_keep (const OxSheetOptions *options, OxSheetSetup *out)
{
  *out = (OxSheetSetup){ .language = options->language ? (char *) options->language->tag : NULL,
                         .paper = options->paper ? (char *) options->paper->name : NULL,
                         .schedule_paper = options->schedule_paper ? (char *) options->schedule_paper->name : NULL,
                         .tiles = options->tiles ? (char *) options->tiles->name : NULL,
                         .scale = options->scale.denominator,
                         .orientation = options->orientation };
}
