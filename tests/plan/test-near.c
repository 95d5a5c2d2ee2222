/* Oxturn: plan/near: what is found is what lies there, whatever was added and taken away before.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

#define LINES 400
#define WIDTH 0.21

static const double angles[] = { 0, G_PI / 2, 0.02, 0.7, G_PI / 2 + 0.01 };

typedef struct
{
  OxNearLine line;
  gboolean there;
} Line;

/* Whether some point of the line lies in @box of frame @index; a look every 2 cm, not too near the box's sides. */
static gboolean
meets (const OxLayout *layout, guint index, OxBox box, const OxNearLine *line)
{
  const OxFrame *from = g_ptr_array_index (layout->frames, line->frame), *to = g_ptr_array_index (layout->frames, index);
  for (double x = line->x0; x <= line->x1; x += 0.02)
    {
      OxPoint p = ox_frame_from_floor (to, ox_frame_to_floor (from, (OxPoint){ x, line->y }));
      if (p.x > box.x0 + 1e-9 && p.x < box.x1 - 1e-9 && p.y > box.y0 + 1e-9 && p.y < box.y1 - 1e-9)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_of_sort (guint a, guint b, OxNearSort sort)
{
  double off = fabs (remainder (angles[a] - angles[b], G_PI)), degree = G_PI / 180;
  return sort == OX_NEAR_ALL || (sort == OX_NEAR_ALONG ? off < 2 * degree : off > 88 * degree);
}

static void
expect_found (const Laid *laid, OxNear *near, const Line *lines, GArray *ids)
{
  guint frame = (guint) g_test_rand_int_range (0, G_N_ELEMENTS (angles)), at = 0;
  OxNearSort sort = (OxNearSort) g_test_rand_int_range (0, 3);
  double x = g_test_rand_double_range (-70, 110), y = g_test_rand_double_range (-110, 110);
  OxBox box = { x, y, x + g_test_rand_double_range (0.1, 30), y + g_test_rand_double_range (0.1, 2) };
  ox_near_find (near, frame, box, sort, ids);
  for (guint i = 0; i < LINES; i++)
    {
      gboolean found = at < ids->len && g_array_index (ids, guint, at) == i; /* in rising order, each once */
      gboolean sought = lines[i].there && is_of_sort (lines[i].line.frame, frame, sort);
      if (sought && meets (laid->layout, frame, box, &lines[i].line))
        g_assert_true (found);
      g_assert_true (!found || sought);
      at += found;
    }
  g_assert_cmpuint (at, ==, ids->len);
}

static Line
random_line (void)
{
  double x = g_test_rand_double_range (-90, 110), length = g_test_rand_int_range (0, 3) ? g_test_rand_double_range (0.5, 4) : g_test_rand_double_range (4, 90);
  guint frame = (guint) g_test_rand_int_range (0, G_N_ELEMENTS (angles));
  return (Line){ { frame, g_test_rand_double_range (-110, 80), x, x + length }, TRUE };
}

static Laid *
hall (void)
{
  Laid *laid = laid_new (ox_test_floor_rectangle (100, 60, "compact"), OX_WORK_SERPENTINE);
  for (guint i = 0; i < G_N_ELEMENTS (angles); i++)
    g_assert_cmpuint (ox_layout_frame (laid->layout, angles[i], 0), ==, i);
  return laid;
}

/* Some of the lines lie off the floor: those are found as well. */
static void
all_that_meet (void)
{
  g_autoptr (Laid) laid = hall ();
  g_autoptr (OxNear) near = ox_near_new (laid->layout->frames, WIDTH);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (guint));
  Line lines[LINES];
  for (guint i = 0; i < LINES; i++)
    {
      lines[i] = random_line ();
      ox_near_add (near, &lines[i].line, i);
    }
  for (guint k = 0; k < 300; k++)
    expect_found (laid, near, lines, ids);
  for (guint k = 0; k < LINES; k += 3)
    {
      guint i = k * 7 % LINES;
      if (lines[i].there)
        ox_near_remove (near, &lines[i].line, i);
      lines[i].there = FALSE;
      expect_found (laid, near, lines, ids);
    }
}

/* A question about a place is answered by what is there, not by the whole floor. */
static void
few (void)
{
  g_autoptr (Laid) laid = hall ();
  g_autoptr (OxNear) near = ox_near_new (laid->layout->frames, WIDTH);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < 300 * 10; i++)
    ox_near_add (near, &(OxNearLine){ 0, 0.1 + i / 10 * 0.2, i % 10 * 10, i % 10 * 10 + 9 }, i);
  ox_near_find (near, 0, (OxBox){ 33, 30, 34, 30.6 }, OX_NEAR_ALONG, ids);
  g_assert_cmpuint (ids->len, >=, 3);
  g_assert_cmpuint (ids->len, <=, 10);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/near/all-that-meet", all_that_meet);
  g_test_add_func ("/plan/near/few", few);
  return g_test_run ();
}
