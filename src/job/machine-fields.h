/* Oxturn: job/machine-fields - the figures of a machine as a table: one row a figure, for checks, files and forms.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "job/machine.h"
G_BEGIN_DECLS

typedef struct
{
  const char *group; /* element in job files and in data/machines.xml: "body", "pace", "abrasive", "hose", "supply" */
  const char *key;   /* attribute of it, e.g. "blast-width" */
  const char *label; /* untranslated, marked with N_() */
  const char *unit;  /* symbol, "" for a share */
  gsize offset;      /* of the double in OxMachine */
  double least;      /* smallest figure allowed ... */
  gboolean above;    /* ... or, when TRUE, to be exceeded */
  double most;       /* largest figure allowed */
} OxMachineField;

/* ox_machine_fields: @n: (out): rows, sorted by group. All figures but phases and wear parts. Returns: (transfer none) */
const OxMachineField *ox_machine_fields (guint *n);

static inline double *
ox_machine_field_at (OxMachine *machine, const OxMachineField *field)
{
  return (double *) (gpointer) ((char *) machine + field->offset);
}

static inline double
ox_machine_field_value (const OxMachine *machine, const OxMachineField *field)
{
  return *(const double *) (gconstpointer) ((const char *) machine + field->offset);
}

G_END_DECLS
