/* Oxturn: job/machine - what a machine is made of, as far as a plan needs it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *              left                 The machine looks along +x of its own frame; the middle of the blast pattern is the
 *        +----------------+         origin. wall_gap is added to left, right and front, never to the rear.
 *  rear  |       [ ]      | front
 *        |       [o]      | ---> travel     [ ] blast pattern: blast_width across, blast_length along
 *        |       [ ]      |
 *        +----------------+
 *              right
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

#define OX_MACHINES_MOST 20 /* of one kind at work in a job */
#define OX_MACHINE_MAX_WEAR 40
#define OX_WEAR_MOST_H 1e6

typedef struct
{
  char *name;
  double interval_h; /* between checks, > 0 */
  double run_h;      /* hours run since the last check, >= 0 */
  guint machine;     /* of which of the machines at work, 1 to OX_MACHINES_MOST; 0: of each alike */
} OxWearPart;

typedef struct
{
  char *class_id;      /* id in data/machines.xml it was made from, "" when typed by hand */
  char *name;          /* as shown */
  double blast_width;  /* m */
  double blast_length; /* m */
  double front, rear;  /* m, from the blast line */
  double left, right;  /* m, from the middle of the pattern */
  double wall_gap;     /* m */
  double min_overlap;  /* m, < blast_width */
  double turn_radius;  /* m */
  double min_strip;    /* m */
  double travel_speed; /* m/min while blasting */
  double walk_speed;   /* m/min, blasting off */
  double swing_s;      /* seconds for a swing */
  double start_s;      /* seconds for a start; counted in the shifts (trade), not in the plan's labour */
  double hopper_kg;
  double flow_kg_min;  /* abrasive thrown */
  double loss_share;   /* of the abrasive thrown, 0 to 1 */
  double hose_bore, hose_length; /* m */
  double hose_flow;    /* m3/h of the collector */
  double volts, amperes;
  int phases;          /* 1 or 3 */
  double cord_length;  /* m */
  double cord_mm2;     /* conductor */
  guint n_wear;
  OxWearPart wear[OX_MACHINE_MAX_WEAR];
} OxMachine;

/* ox_wear_part_is_on: whether machine number @machine, from 1, has it */
gboolean ox_wear_part_is_on (const OxWearPart *part, guint machine);

/* ox_machine_copy: deep copy; (transfer full), free with ox_machine_free() */
OxMachine *ox_machine_copy (const OxMachine *machine) G_GNUC_WARN_UNUSED_RESULT;
void ox_machine_free (OxMachine *machine);
gboolean ox_machine_equal (const OxMachine *a, const OxMachine *b);

/* ox_machine_check:
 * Returns: (transfer full) (nullable): NULL when every figure is in range, else one translated sentence that names the
 * parameter, what was found and what is allowed
 */
char *ox_machine_check (const OxMachine *machine) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxMachine, ox_machine_free)
G_END_DECLS
