/* Oxturn: job/record - what is done: strips and edge areas as facts of the floor, and the days on which they were.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is done is told by where it lies and not by the numbers of a plan, which another plan may give to other strips. An immutable counted
 * value; every job has one. Make one with ox_record_new() from a filled struct, which is copied deeply, or from another with the functions below.
 */
#pragma once
#include "geometry/region.h"
#include "job/terms.h"
G_BEGIN_DECLS

#define OX_RECORD_DAYS_MOST 5000
#define OX_RECORD_STRIPS_MOST 100000
#define OX_RECORD_EDGES_MOST 20000
#define OX_RECORD_CORNERS_MOST 1000000 /* of all done edge areas together */
#define OX_METER_UNREAD (-1.0)
#define OX_METER_MOST 1e6       /* h */
#define OX_DONE_WIDTH_MOST 10.0 /* m */

/* A working day of one machine as its crew wrote it down. */
typedef struct
{
  char *date;           /* YYYY-MM-DD; one day a date and machine */
  double meter_start_h; /* of the machine's meter, 0 to 1,000,000; < 0 where nobody read it: OX_METER_UNREAD */
  double meter_end_h;   /* the same; not before the start */
  char *notes;          /* lines split by \n */
  guint machine;        /* which of the machines at work, 1 to OX_MACHINES_MOST; 0 in a struct stands for 1 */
} OxRecordDay;

/* A strip that was blasted, from a to b, as a strip of a plan (plan/plan.h). */
typedef struct
{
  char *room;         /* id of the room when it was marked */
  OxPoint a, b;       /* start, stop, on OX_GRID */
  double width;       /* m covered across */
  guint coat;         /* 1 to 4; 0 in a struct stands for 1 */
  gboolean crosswise; /* else a main strip */
  char *date;         /* YYYY-MM-DD */
  guint csp;          /* profile measured on it, 1 to 10; 0 unknown */
  double depth_mm;    /* mean texture depth measured on it, 0 to 100; 0 unknown */
  char *note;         /* lines split by \n */
  guint kept;         /* how many strips of the record, from the first on, the plan in which it was marked had kept as they were; at most
                         those before it. Planning with these kept finds that plan again, as long as the job is the same. */
} OxDoneStrip;

/* Edge work that was done. */
typedef struct
{
  char *room;
  guint n_rings;
  OxRing **rings; /* outlines counter-clockwise, each followed by its holes, clockwise */
  char *date;
  char *note; /* lines split by \n */
} OxDoneEdge;

typedef struct
{
  guint n_days, n_strips, n_edges;
  OxRecordDay *days;   /* by date, then machine */
  OxDoneStrip *strips; /* as they were marked, no two in the same place */
  OxDoneEdge *edges;
} OxRecord;

/* ox_record_new: puts days in order of date, then of machine; of two with one date and machine the later one stays; the same for strips in the same place; rings without an
 * area are left out, and edge areas without rings */
OxRecord *ox_record_new (const OxRecord *record) G_GNUC_WARN_UNUSED_RESULT;
OxRecord *ox_record_ref (const OxRecord *record);
void ox_record_unref (const OxRecord *record);
gboolean ox_record_is_empty (const OxRecord *record);

/* ox_record_with_day: sets the day of that date and machine; ox_record_without_day: takes meters and notes of all machines away, what was done on it stays;
 * (transfer full) */
OxRecord *ox_record_with_day (const OxRecord *record, const OxRecordDay *day) G_GNUC_WARN_UNUSED_RESULT;
OxRecord *ox_record_without_day (const OxRecord *record, const char *date) G_GNUC_WARN_UNUSED_RESULT;

/* ox_record_with_strips: marks @n strips; one in the same place as a marked one takes its place; (transfer full) */
OxRecord *ox_record_with_strips (const OxRecord *record, const OxDoneStrip *strips, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_record_without_strips: takes away the marks of those in the same places as @strips; (transfer full) */
OxRecord *ox_record_without_strips (const OxRecord *record, const OxDoneStrip *strips, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_record_with_edges: marks @n edge areas; floor of them that is marked already keeps its mark; (transfer full) */
OxRecord *ox_record_with_edges (const OxRecord *record, const OxDoneEdge *edges, guint n) G_GNUC_WARN_UNUSED_RESULT;

/* ox_record_without_edge_floor: edge work on @floor is not done after all: what is left of a marked area keeps its mark; (transfer full) */
OxRecord *ox_record_without_edge_floor (const OxRecord *record, const OxRegion *floor) G_GNUC_WARN_UNUSED_RESULT;

const OxRecordDay *ox_record_find_day (const OxRecord *record, const char *date, guint machine); /* (nullable); @machine: from 1 */

/* ox_record_day_hours: h that the meter ran on, 0 where a reading is missing */
double ox_record_day_hours (const OxRecordDay *day);

/* ox_record_meter_hours: h of all days of machine number @machine together; 0: of all machines */
double ox_record_meter_hours (const OxRecord *record, guint machine);

/* ox_done_strip_hash, ox_done_strip_same_place: for hash tables of OxDoneStrip by place: both ends, either way round, and the coat */
guint ox_done_strip_hash (gconstpointer strip);
gboolean ox_done_strip_same_place (gconstpointer a, gconstpointer b);

/* ox_done_edge_region: the floor of it, its rings simple; (transfer full) */
OxRegion *ox_done_edge_region (const OxDoneEdge *edge) G_GNUC_WARN_UNUSED_RESULT;

/* ox_done_edge_rings: the rings of @region on OX_GRID, as an OxDoneEdge has them, every one simple: a sliver that the grid folds up is left out;
 * Returns: (transfer full): array of OxRing* with free function */
GPtrArray *ox_done_edge_rings (const OxRegion *region) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxRecord, ox_record_unref)
G_END_DECLS
