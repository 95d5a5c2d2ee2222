/* Oxturn: plan/shadow: floor round a lone obstacle that no heading reaches, against sweeping it heading by heading.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/classes.h"
#include "plan/shadow.h"
#include "support/floors.h"
#include "support/ox-test.h"

static const double turns[] = { 0, 0.3, 1.1, G_PI / 2, G_PI, 4, 3 * G_PI / 2 };

static GArray *
headings (void)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_vals (list, turns, G_N_ELEMENTS (turns));
  return list;
}

static OxRegion *
floor_with_hole (const OxRing *hole)
{
  g_autoptr (OxRing) outer = ox_ring_new_rectangle ((OxPoint) { 0, 0 }, 20, 20, 0);
  return ox_region_new_rings (outer, &hole, 1);
}

/* The same by regions: the floor less what is reached at each heading, near the hole. */
static double
swept_area (const OxRegion *travel, const OxMachine *m)
{
  double half = m->blast_length / 2, across = m->blast_width / 2;
  g_autoptr (OxRing) near = ox_ring_new_rectangle ((OxPoint) { 0, 0 }, 10, 10, 0);
  g_autoptr (OxRegion) dark = ox_region_new_ring (near);
  for (guint h = 0; h < G_N_ELEMENTS (turns); h++)
    {
      g_autoptr (OxRegion) places = ox_region_erode_rectangle (travel, m->rear, m->front + m->wall_gap, m->right + m->wall_gap,
                                                               m->left + m->wall_gap, turns[h]);
      g_autoptr (OxRegion) reached = ox_region_dilate_rectangle (places, half, half, across, across, turns[h]);
      OxRegion *rest = ox_region_difference (dark, reached);
      ox_region_unref (dark);
      dark = rest;
    }
  return ox_region_area (dark);
}

static void
as_swept (void)
{
  static const char *const classes[] = { "compact", "medium", "offset" };
  g_autoptr (GArray) list = headings ();
  for (guint c = 0; c < G_N_ELEMENTS (classes); c++)
    for (guint shape = 0; shape < 4; shape++)
      {
        g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 20, classes[c]);
        g_autoptr (OxRing) hole = shape == 3 ? ox_ring_new_circle ((OxPoint) { 0.2, -0.1 }, 0.4, TRUE)
                                             : ox_ring_new_rectangle ((OxPoint) { 0.2, -0.1 }, 0.02 + shape, 0.5, 0.2 * shape);
        g_autoptr (OxRegion) travel = floor_with_hole (hole);
        const OxRegionRing *ring = &travel->rings[1];
        g_autoptr (OxRegion) dark = ox_shadow_new (travel->points + ring->start, ring->n, job->machine, list, 0);
        ox_test_near (ox_region_area (dark), swept_area (travel, job->machine), 1e-6);
      }
}

/* One heading, along a square column: beside it the side, the gap and half the pattern less; before and behind it what front and rear keep. */
static void
one_heading (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 20, "compact");
  const OxMachine *m = job->machine;
  g_autoptr (GArray) list = g_array_new (FALSE, FALSE, sizeof (double));
  g_array_append_val (list, turns[0]);
  g_autoptr (OxRing) hole = ox_ring_new_rectangle ((OxPoint) { 0, 0 }, 1, 1, 0);
  g_autoptr (OxRegion) travel = floor_with_hole (hole);
  g_autoptr (OxRegion) dark = ox_shadow_new (travel->points + 4, 4, m, list, 0);
  double long_m = 1 + m->rear + m->front + m->wall_gap - m->blast_length;
  double wide_m = 1 + m->left + m->right + 2 * m->wall_gap - m->blast_width;
  ox_test_near (ox_region_area (dark), long_m * wide_m, 1e-9);
}

/* Columns near each other or a wall, and pits of a shape that juts in, are left to the sweep. */
static void
lone (void)
{
  g_autoptr (OxJob) job = ox_test_floor_rectangle (20, 20, "compact");
  static const OxPoint corners[] = { { -8, 6 }, { -6, 6 }, { -6, 8 }, { -6.9, 6.5 } };
  g_autoptr (OxRing) outer = ox_ring_new_rectangle ((OxPoint) { 0, 0 }, 30, 30, 0);
  g_autoptr (OxRing) alone = ox_ring_new_rectangle ((OxPoint) { 0, 0 }, 0.5, 0.5, 0);
  g_autoptr (OxRing) one = ox_ring_new_rectangle ((OxPoint) { 6, 0 }, 0.5, 0.5, 0);
  g_autoptr (OxRing) other = ox_ring_new_rectangle ((OxPoint) { 8, 0 }, 0.5, 0.5, 0);
  g_autoptr (OxRing) at_wall = ox_ring_new_rectangle ((OxPoint) { 0, -13 }, 0.5, 0.5, 0);
  g_autoptr (OxRing) hooked = ox_ring_new (corners, 4);
  const OxRing *holes[] = { alone, one, other, at_wall, hooked };
  g_autoptr (OxRegion) travel = ox_region_new_rings (outer, holes, G_N_ELEMENTS (holes));
  g_autofree gboolean *result = ox_shadow_lone (travel, job->machine);
  guint n = 0;
  for (guint r = 0; r < travel->n_rings; r++)
    if (result[r])
      {
        n++;
        ox_test_near (travel->points[travel->rings[r].start].x, -0.25, 1e-12);
      }
  g_assert_cmpuint (n, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/shadow/as-swept", as_swept);
  g_test_add_func ("/plan/shadow/one-heading", one_heading);
  g_test_add_func ("/plan/shadow/lone", lone);
  return g_test_run ();
}
