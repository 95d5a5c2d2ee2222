/* Oxturn: plan/reach-line - where the reach of hose and cord ends.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/reach-line.h"
#include "plan/floor.h"
#include "plan/station.h"
#include "trade/hose.h"

#define SAMPLES 60000.0
#define LEAST_STEP 0.05 /* m */
#define FAR_STEPS 3.0   /* beyond the reach the way is measured no farther than this */
#define NONE G_MAXUINT

/* samples of what the way is longer than the reach, negative in reach, NAN off the floor */
typedef struct
{
  OxReach *reach;
  OxPoint corner;
  double step;
  guint nx, ny;
  float *over;
} Grid;

/* two sides of the grid that a piece of the line crosses; sides are numbered twice their lower or left sample, plus one
 * when they are upright */
typedef struct
{
  guint side[2];
  gboolean used;
} Piece;

static OxPoint
sample_at (const Grid *grid, guint i)
{
  return (OxPoint){ grid->corner.x + i % grid->nx * grid->step, grid->corner.y + i / grid->nx * grid->step };
}

static double
sample_step (OxBox box)
{
  return MAX (sqrt ((box.x1 - box.x0) * (box.y1 - box.y0) / SAMPLES), LEAST_STEP);
}

static void
lay_grid (Grid *grid, OxBox box)
{
  grid->corner = (OxPoint){ box.x0 - grid->step / 2, box.y0 - grid->step / 2 };
  grid->nx = (guint) ceil ((box.x1 - box.x0) / grid->step) + 2;
  grid->ny = (guint) ceil ((box.y1 - box.y0) / grid->step) + 2;
  grid->over = g_new (float, grid->nx * grid->ny);
  for (guint i = 0; i < grid->nx * grid->ny; i++)
    grid->over[i] = ox_reach_holds (grid->reach, sample_at (grid, i)) ? 0.0F : NAN;
}

/* measure: what the station reaches is taken into the grid */
static void
measure (Grid *grid, const OxPlanStation *station)
{
  OxPoint from = station->at;
  double reach = ox_hose_reach (station->length), limit = reach + FAR_STEPS * grid->step;
  if (!ox_station_step_on (grid->reach, &from))
    return;
  g_autoptr (OxReachTree) tree = ox_reach_tree_new (grid->reach, from, limit);
  for (guint i = 0; i < grid->nx * grid->ny; i++)
    {
      OxPoint p = sample_at (grid, i);
      if (isnan (grid->over[i]) || ox_point_distance (p, from) >= limit)
        continue;
      double over = ox_reach_tree_distance (tree, p) - reach;
      grid->over[i] = MIN (grid->over[i], (float) over);
    }
}

/* --- Pieces of the line, cell by cell --- */

static gboolean
is_crossed (const Grid *grid, guint a, guint b)
{
  return (grid->over[a] <= 0) != (grid->over[b] <= 0);
}

static void
add_piece (GArray *pieces, guint a, guint b)
{
  Piece piece = { { a, b }, FALSE };
  g_array_append_val (pieces, piece);
}

static void
add_cell (const Grid *grid, guint i, GArray *pieces)
{
  /* Below, right, above, left: the sides in turn, so that those of a corner follow each other. */
  const guint corners[4] = { i, i + 1, i + grid->nx + 1, i + grid->nx };
  const guint sides[4] = { 2 * i, 2 * (i + 1) + 1, 2 * (i + grid->nx), 2 * i + 1 };
  guint crossed[4], n = 0;
  for (guint k = 0; k < 4; k++)
    if (isnan (grid->over[corners[k]]))
      return;
  for (guint k = 0; k < 4; k++)
    if (is_crossed (grid, corners[k], corners[(k + 1) % 4]))
      crossed[n++] = sides[k];
  if (n == 2)
    add_piece (pieces, crossed[0], crossed[1]);
  if (n < 4)
    return;
  /* Two opposite corners in reach: the mean says whether they hang together. */
  float mean = 0;
  for (guint k = 0; k < 4; k++)
    mean += grid->over[corners[k]];
  guint first = (mean <= 0) == (grid->over[corners[0]] <= 0) ? 0 : 1;
  add_piece (pieces, crossed[first], crossed[first + 1]);
  add_piece (pieces, crossed[first + 2], crossed[(first + 3) % 4]);
}

/* --- Lines from pieces --- */

typedef struct
{
  const Grid *grid;
  GArray *pieces;
  guint *at; /* two pieces a side, NONE where there is none */
} Chains;

static OxPoint
crossing (const Grid *grid, guint side)
{
  guint a = side / 2, b = side % 2 == 0 ? a + 1 : a + grid->nx;
  double share = grid->over[a] / (grid->over[a] - grid->over[b]);
  OxPoint p = sample_at (grid, a), q = sample_at (grid, b);
  return ox_point_add (p, ox_point_scale (ox_point_sub (q, p), share));
}

/* meet_wall: the line ends up to a sample off the wall that it runs to, and is drawn on to it */
static void
meet_wall (const Grid *grid, GArray *line)
{
  OxPoint last = g_array_index (line, OxPoint, line->len - 1), before = g_array_index (line, OxPoint, line->len - 2);
  double length = ox_point_distance (before, last);
  if (length <= 0)
    return;
  OxPoint way = ox_point_scale (ox_point_sub (last, before), grid->step / 8 / length), end = last;
  for (int i = 0; i < 16 && ox_reach_holds (grid->reach, ox_point_add (end, way)); i++)
    end = ox_point_add (end, way);
  /* Floor all the way: the line does not end at a wall. */
  if (!ox_reach_holds (grid->reach, ox_point_add (end, way)))
    g_array_append_val (line, end);
}

/* follow: the line from @piece on, which begins at its side @from; (transfer full) */
static GArray *
follow (const Chains *chains, guint piece, guint from)
{
  GArray *line = g_array_new (FALSE, FALSE, sizeof (OxPoint));
  OxPoint start = crossing (chains->grid, from);
  g_array_append_val (line, start);
  while (piece != NONE)
    {
      Piece *here = &g_array_index (chains->pieces, Piece, piece);
      if (here->used)
        break;
      here->used = TRUE;
      from = here->side[0] == from ? here->side[1] : here->side[0];
      OxPoint p = crossing (chains->grid, from);
      g_array_append_val (line, p);
      piece = chains->at[2 * from] == piece ? chains->at[2 * from + 1] : chains->at[2 * from];
    }
  return line;
}

static void
turn_round (GArray *line)
{
  for (guint i = 0; i < line->len / 2; i++)
    {
      OxPoint p = g_array_index (line, OxPoint, i);
      g_array_index (line, OxPoint, i) = g_array_index (line, OxPoint, line->len - 1 - i);
      g_array_index (line, OxPoint, line->len - 1 - i) = p;
    }
}

static void
add_lines (const Chains *chains, GPtrArray *lines)
{
  /* Those with ends first, from an end on; what is left then are closed ones. */
  for (int closed = 0; closed < 2; closed++)
    for (guint i = 0; i < chains->pieces->len; i++)
      for (int k = 0; k < 2; k++)
        {
          const Piece *piece = &g_array_index (chains->pieces, Piece, i);
          guint side = piece->side[k];
          if (piece->used || (!closed && chains->at[2 * side + 1] != NONE))
            continue;
          GArray *line = follow (chains, i, side);
          for (int end = 0; !closed && end < 2; end++)
            {
              meet_wall (chains->grid, line);
              turn_round (line);
            }
          g_ptr_array_add (lines, line);
        }
}

static GPtrArray *
lines_of (const Grid *grid)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (Piece));
  for (guint y = 0; y + 1 < grid->ny; y++)
    for (guint x = 0; x + 1 < grid->nx; x++)
      add_cell (grid, y * grid->nx + x, pieces);
  gsize n = 4 * (gsize) grid->nx * grid->ny;
  g_autofree guint *at = g_new (guint, n);
  for (gsize i = 0; i < n; i++)
    at[i] = NONE;
  for (guint i = 0; i < pieces->len; i++)
    for (int k = 0; k < 2; k++)
      {
        guint side = g_array_index (pieces, Piece, i).side[k];
        at[2 * side + (at[2 * side] == NONE ? 0 : 1)] = i;
      }
  add_lines (&(Chains){ grid, pieces, at }, lines);
  return lines;
}

/* The reach of all stations is looked for on one floor, whose corners then need to be linked once only. */
static void
add_station (Grid *grid, const OxPlan *plan, guint i, GArray *lines)
{
  for (guint k = 0; k < grid->nx * grid->ny; k++)
    grid->over[k] = isnan (grid->over[k]) ? NAN : (float) (FAR_STEPS * grid->step);
  measure (grid, &plan->stations[i]);
  g_autoptr (GPtrArray) found = lines_of (grid);
  for (guint k = 0; k < found->len; k++)
    {
      OxReachLine line = { i, g_array_ref (g_ptr_array_index (found, k)) };
      g_array_append_val (lines, line);
    }
}

OxReachLines *
ox_reach_lines_new (const OxPlan *plan)
{
  OxReachLines *out = g_new0 (OxReachLines, 1);
  double longest = 0;
  for (guint i = 0; i < plan->n_stations; i++)
    longest = plan->stations[i].proposed ? longest : MAX (longest, plan->stations[i].length);
  if (longest <= 0)
    return out;
  g_autoptr (OxFloor) floor = ox_floor_new (plan->job);
  Grid grid = { .step = sample_step (ox_region_box (floor->hose)) };
  g_autoptr (OxReach) reach = ox_reach_new (floor->hose, ox_hose_reach (longest) + FAR_STEPS * grid.step);
  grid.reach = reach;
  lay_grid (&grid, ox_region_box (floor->hose));
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (OxReachLine));
  for (guint i = 0; i < plan->n_stations; i++)
    if (!plan->stations[i].proposed)
      add_station (&grid, plan, i, lines);
  g_free (grid.over);
  out->n = lines->len;
  out->lines = (OxReachLine *) (gpointer) g_array_free (lines, FALSE);
  return out;
}

void
ox_reach_lines_free (OxReachLines *lines)
{
  for (guint i = 0; i < lines->n; i++)
    g_array_unref (lines->lines[i].points);
  g_free (lines->lines);
  g_free (lines);
}
