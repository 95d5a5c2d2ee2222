/* Oxturn: plan/boundary: sides that strips are laid along, on floors that can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "judge.h"
#include "laid.h"
#include "job/classes.h"
#include "plan/boundary.h"
#include "support/floors.h"
#include "support/ox-test.h"

static gboolean
has_stretch (const GArray *stretches, OxStretch want)
{
  for (guint i = 0; i < stretches->len; i++)
    {
      const OxStretch *s = &g_array_index (stretches, OxStretch, i);
      if (s->frame == want.frame && s->inside == want.inside
          && fabs (s->y - want.y) + fabs (s->x0 - want.x0) + fabs (s->x1 - want.x1) < 1e-6)
        return TRUE;
    }
  return FALSE;
}

static void
rectangle (void)
{
  g_autoptr (Laid) laid = laid_new (ox_test_floor_rectangle (12, 8, "compact"), OX_WORK_SERPENTINE);
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  g_autoptr (GArray) longest = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  g_autoptr (GArray) one = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  ox_boundary_sides (laid->layout, 1, 1, one);
  g_assert_cmpuint (one->len, ==, 2); /* no direction may be added */
  ox_boundary_sides (laid->layout, 1, 8, all);
  g_assert_cmpuint (all->len, ==, 4);
  g_assert_true (has_stretch (all, (OxStretch){ 0, 0, 0, 12, 1 }));
  g_assert_true (has_stretch (all, (OxStretch){ 0, 8, 0, 12, -1 }));
  guint across = laid_across (laid);
  g_assert_true (has_stretch (all, (OxStretch){ across, 0, 0, 8, -1 }));
  g_assert_true (has_stretch (all, (OxStretch){ across, -12, 0, 8, 1 }));
  g_assert_cmpuint (g_array_index (all, OxStretch, 0).frame, ==, 0);
  g_assert_cmpuint (g_array_index (all, OxStretch, 1).frame, ==, 0);
  ox_boundary_sides (laid->layout, 9, 8, longest);
  g_assert_cmpuint (longest->len, ==, 2);
}

/* The floor lies outside a column. */
static void
column (void)
{
  g_autoptr (Laid) laid = laid_new (
      judge_with_obstacle (ox_test_floor_rectangle (12, 8, "compact"), OX_OBSTACLE_SOLID, (OxPoint){ 5, 4 }, 2),
      OX_WORK_SERPENTINE);
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  guint across = laid_across (laid);
  const OxStretch want[4]
      = { { 0, 5, 4, 6, 1 }, { 0, 3, 4, 6, -1 }, { across, -4, 3, 5, 1 }, { across, -6, 3, 5, -1 } };
  ox_boundary_sides (laid->layout, 1, 8, sides);
  ox_boundary_boxes (laid->layout, boxes);
  g_assert_cmpuint (sides->len, ==, 8);
  g_assert_cmpuint (boxes->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      g_assert_true (has_stretch (sides, want[i]));
      g_assert_true (has_stretch (boxes, want[i]));
    }
}

/* The sides of another room are not this room's. */
static void
next_room (void)
{
  g_autoptr (Laid) laid = laid_new (judge_two_rooms (0.5, 1.5), OX_WORK_SERPENTINE);
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (OxStretch));
  ox_boundary_sides (laid->layout, 1.9, 8, sides);
  for (guint i = 0; i < sides->len; i++)
    {
      const OxStretch *s = &g_array_index (sides, OxStretch, i);
      OxPoint middle = ox_frame_to_floor (g_ptr_array_index (laid->layout->frames, s->frame),
                                          (OxPoint){ (s->x0 + s->x1) / 2, s->y });
      g_assert_cmpfloat (middle.x, <=, 5.01);
    }
}

/* Offset head: 0.16 m to the left, 0.28 m to the right, gap 0.02. */
static void
side_clearance (void)
{
  const OxMachine *m = ox_classes_find ("offset");
  ox_test_near (ox_boundary_side_clearance (m, 1, 1), 0.30, 1e-12);
  ox_test_near (ox_boundary_side_clearance (m, 1, -1), 0.18, 1e-12);
  ox_test_near (ox_boundary_side_clearance (m, -1, 1), 0.18, 1e-12);
  ox_test_near (ox_boundary_side_clearance (m, -1, -1), 0.30, 1e-12);
}

/* How far the points (x, +side) and (x, -side), in a lane's own axes, lie towards a wall at @angle to the lane, at
 * most. */
static double
towards (double x, double side, double angle)
{
  return x * sin (angle) + side * fabs (cos (angle));
}

/* With the body's corner at the wall, the pattern's hindmost covered corner at that end is what the wall is left by. */
static void
reach (void)
{
  for (guint c = 0; c < ox_classes_get_count (); c++)
    for (double angle = 0.3; angle < G_PI; angle += 0.2)
      {
        const OxMachine *m = ox_classes_get (c);
        double side = MAX (m->left, m->right) + m->wall_gap, w = m->blast_width / 2, l = m->blast_length / 2;
        ox_test_near (ox_boundary_reach (m, angle, TRUE),
                      towards (m->front + m->wall_gap, side, angle) - towards (l, -w, angle), 1e-9);
        ox_test_near (ox_boundary_reach (m, angle, FALSE), towards (m->rear, side, angle) - towards (l, -w, angle),
                      1e-9);
      }
  /* Square on: front + gap - l / 2 and rear - l / 2. */
  ox_test_near (ox_boundary_reach (ox_classes_find ("compact"), G_PI / 2, TRUE), 0.33, 1e-9);
  ox_test_near (ox_boundary_reach (ox_classes_find ("compact"), G_PI / 2, FALSE), 1.21, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/boundary/rectangle", rectangle);
  g_test_add_func ("/plan/boundary/column", column);
  g_test_add_func ("/plan/boundary/next-room", next_room);
  g_test_add_func ("/plan/boundary/side-clearance", side_clearance);
  g_test_add_func ("/plan/boundary/reach", reach);
  return g_test_run ();
}
