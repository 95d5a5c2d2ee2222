/* Oxturn: job/terms - what hours and cost of a job rest on: test patches, the calendar of shifts, the rates of cost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Immutable counted values. Make one with its _new function from a filled struct, which is copied deeply; change one by copying it into a
 * struct on the stack, changing a member and making a new one. A job always has one of each.
 */
#pragma once
#include "job/machine.h"
G_BEGIN_DECLS

/* Most that a figure may be; far beyond any site, near enough to catch a slipped decimal point. */
#define OX_CSP_MOST 10
#define OX_TEXTURE_MOST_MM 100.0 /* mean texture depth */
#define OX_PATCH_MOST_SPEED 1000.0     /* m/min */
#define OX_PATCH_MOST_FLOW 10000.0     /* kg/min */
#define OX_PATCH_MOST_VOLUME 10000.0   /* ml */
#define OX_PATCH_MOST_DIAMETER 10000.0 /* mm */
#define OX_CAGE_LEAST_MIN 60 /* 1:00 on the face of the feed cage's clock */
#define OX_CAGE_MOST_MIN 779 /* 12:59 */

#define OX_SHIFT_LEAST_MIN 10.0 /* to work, of a shift without breaks, set-up and clean-up */
#define OX_PATCH_MOST_DIAMETERS 12
#define OX_PATCHES_MOST 200
#define OX_COST_LINES_MOST 200
#define OX_SHIFT_MOST_H 24.0
#define OX_CALENDAR_MOST_MIN 1440.0 /* of each of its minutes */
#define OX_NOISE_MOST_DB 200.0
#define OX_SILICA_MOST 100000.0 /* ug/m3 */

/* A trial at a known walking speed whose profile was measured. */
typedef struct
{
  char *id;               /* "P1"; unique among the patches */
  char *date;             /* YYYY-MM-DD, "" unknown */
  double speed_m_per_min; /* > 0 */
  double flow_kg_min;     /* 0: the machine's */
  double depth_mm;        /* mean texture depth, 0 unknown */
  guint csp;              /* 1 to 10, 0 unknown */
  double volume_ml;       /* sand patch: what was spread out, 0 when none was */
  guint n_diameters;
  double diameters_mm[OX_PATCH_MOST_DIAMETERS]; /* of it, > 0 */
  char *note;
  /* Pattern trial: texture depth in the three thirds of one strip, looking along the travel; 0 unknown, left and right both or neither. */
  double left_mm, middle_mm, right_mm;
  guint cage_min;         /* where the feed cage stood, read as a clock: minutes after twelve, OX_CAGE_LEAST_MIN to OX_CAGE_MOST_MIN; 0 unknown */
  guint cage_to_min;      /* where it was turned to, the same; 0: it was not, or nobody wrote it down */
} OxPatch;

typedef struct
{
  guint n;
  OxPatch *items;
} OxPatches;

/* The figures of ox_calendar_default() are common practice, no source. */
typedef struct
{
  char *first_day;       /* YYYY-MM-DD, "" not set */
  guint start_min;       /* start of the shift, minutes after midnight, 0 to 1439 */
  double shift_h;        /* from arriving to leaving, over 0 to OX_SHIFT_MOST_H; OX_SHIFT_LEAST_MIN at least are left to work */
  double break_min;      /* in a shift */
  double setup_min;      /* before the first strip of a shift */
  double cleanup_min;    /* at the end of a shift */
  double refill_min;     /* a refill of the hopper */
  double drum_change_min;
  double wear_check_min;
  guint machines;        /* that work in parallel, 1 to OX_MACHINES_MOST */
  guint days;            /* working weekdays: bit 0 Monday ... bit 6 Sunday; one at least */
  double noise_db;       /* measured at the ear beside machine and collector, dB(A), 0 to 200; 0: not measured */
  double silica_machine; /* measured where the machine's operator breathes, µg/m3, 0 to 100000; 0: not measured */
  double silica_hand;    /* the same at edge work by hand */
} OxCalendar;

typedef enum
{
  OX_COST_LABOUR_HOUR,  /* crew with the machine */
  OX_COST_EDGE_HOUR,    /* hand work */
  OX_COST_MACHINE_HOUR,
  OX_COST_ABRASIVE_KG,
  OX_COST_DUST_DRUM,
  OX_COST_WEAR_HOUR,    /* of the blast wheel */
  OX_COST_AREA,         /* m2 of the target */
  OX_COST_FIXED,        /* once a job */
  OX_COST_EDGE_METRE    /* m of edge work */
} OxCostDriver;

typedef struct
{
  OxCostDriver per;
  char *name;   /* as shown; "" for the usual one of its kind */
  char *amount; /* for one unit, exact decimal text as ox_money_parse() reads it, at most 4 decimals */
} OxCostRate;

typedef struct
{
  char *currency;     /* as shown, e.g. "EUR"; "" none */
  guint decimals;     /* of amounts shown, 0 to 4 */
  double contingency; /* share of the subtotal, 0 to 1, to 0.0001 */
  guint n;
  OxCostRate *rates;
  char *validity;     /* how long the quote holds, as it stands there: "Valid for 30 days."; "" not said */
} OxCosts;

OxPatches *ox_patches_new (const OxPatches *patches) G_GNUC_WARN_UNUSED_RESULT;
OxPatches *ox_patches_ref (const OxPatches *patches);
void ox_patches_unref (const OxPatches *patches);
gboolean ox_patches_equal (const OxPatches *a, const OxPatches *b); /* patch by patch, in order */

/* ox_patch_has_trial: whether left and right of its strip were read */
gboolean ox_patch_has_trial (const OxPatch *patch);

/* ox_patches_trial: the last patch with a pattern trial, which is how the machine is set now; (nullable) */
const OxPatch *ox_patches_trial (const OxPatches *patches);

OxCalendar *ox_calendar_new (const OxCalendar *calendar) G_GNUC_WARN_UNUSED_RESULT;
OxCalendar *ox_calendar_ref (const OxCalendar *calendar);
void ox_calendar_unref (const OxCalendar *calendar);
OxCosts *ox_costs_new (const OxCosts *costs) G_GNUC_WARN_UNUSED_RESULT;
OxCosts *ox_costs_ref (const OxCosts *costs);
void ox_costs_unref (const OxCosts *costs);

/* ox_calendar_default: 7:00, 8 h with 45 min of breaks, 60 min to set up, 30 to clean up, Monday to Friday, one machine; (transfer full) */
OxCalendar *ox_calendar_default (void) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_calendar_equal (const OxCalendar *a, const OxCalendar *b);

/* ox_costs_default: no currency, 2 decimals, no contingency, no rate; (transfer full) */
OxCosts *ox_costs_default (void) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_costs_equal (const OxCosts *a, const OxCosts *b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxPatches, ox_patches_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxCalendar, ox_calendar_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxCosts, ox_costs_unref)
G_END_DECLS
