/* Oxturn: job/setup - how the sheets of a job are set up: language, paper, scale. It changes how they look, not what they say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An immutable counted value, made and changed as those of job/terms.h. A job always has one.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

typedef enum { OX_ORIENTATION_AUTO, OX_ORIENTATION_PORTRAIT, OX_ORIENTATION_LANDSCAPE } OxOrientation;

#define OX_SETUP_SCALE_MOST 100000.0

typedef struct
{
  char *language;        /* tag of one of base/words.h; "" that of the window */
  char *paper;           /* one of ox_setup_papers; "" the usual one of units and language */
  char *schedule_paper;  /* of the schedules; "" as @paper */
  char *tiles;           /* paper that larger pages are parted onto; "" not */
  double scale;          /* 100 for 1:100; 0 the largest that fits */
  OxOrientation orientation; /* auto: A4 and Letter upright, larger paper landscape */
} OxSheetSetup;

/* Names of paper that a job may hold, NULL-ended; sheets/paper.h has their sizes. */
extern const char *const ox_setup_papers[];

OxSheetSetup *ox_sheet_setup_new (const OxSheetSetup *setup) G_GNUC_WARN_UNUSED_RESULT;
OxSheetSetup *ox_sheet_setup_ref (const OxSheetSetup *setup);
void ox_sheet_setup_unref (const OxSheetSetup *setup);

/* ox_sheet_setup_equal: whether sheets set up by either look the same */
gboolean ox_sheet_setup_equal (const OxSheetSetup *a, const OxSheetSetup *b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxSheetSetup, ox_sheet_setup_unref)
G_END_DECLS
