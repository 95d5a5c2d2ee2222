/* Oxturn: job/traced-plan - a scan, a picture or a page of somebody's plan that lies under the floor to be traced.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An item like those of job/items.h. It has no say in the plan and is on no sheet. Its file is kept as it was brought in and shared by all
 * states of the job that hold it; nothing here looks into it.
 */
#pragma once
#include "geometry/ring.h"
G_BEGIN_DECLS

#define OX_TRACED_MAX_BYTES (40 * 1024 * 1024) /* of the files of all traced plans of a job: base64 of them fits into a job file */
#define OX_TRACED_MAX_PAGE 10000
#define OX_TRACED_MIN_STRENGTH 0.05

typedef enum { OX_TRACED_PNG, OX_TRACED_JPEG, OX_TRACED_SVG, OX_TRACED_PDF } OxTracedKind;

typedef struct
{
  char *id;
  char *name;          /* at first that of the file */
  OxTracedKind kind;
  GBytes *data;        /* the file, not empty */
  guint page;          /* of a PDF, from 1; 1 of all others */
  OxPoint middle;      /* m */
  double width, depth; /* m on the floor, along and across angle_deg; > 0 */
  double angle_deg;
  double strength;     /* OX_TRACED_MIN_STRENGTH, hardly seen, to 1, as it is */
  gboolean locked;     /* the pointer passes through it */
  gboolean hidden;
  char *extra;         /* (nullable) */
} OxTracedPlan;

OxTracedPlan *ox_traced_plan_new (const OxTracedPlan *traced) G_GNUC_WARN_UNUSED_RESULT;
OxTracedPlan *ox_traced_plan_ref (const OxTracedPlan *traced);
void ox_traced_plan_unref (const OxTracedPlan *traced);

/* ox_traced_plan_ring: its outline on the floor, lower left corner first, counter-clockwise; (transfer full) */
OxRing *ox_traced_plan_ring (const OxTracedPlan *traced) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxTracedPlan, ox_traced_plan_unref)
G_END_DECLS
