/* Oxturn: tests of geometry/ring-simple
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "geometry/ring.h"
#include "support/ox-test.h"

static void
test_bad_outlines (void)
{
  static const struct
  {
    const char *what;
    OxPoint points[8];
    guint n;
    OxPoint where;
  } cases[] = {
    { "bow-tie", { { 0, 0 }, { 4, 4 }, { 4, 0 }, { 0, 4 } }, 4, { 2, 2 } },
    { "nothing", { { 0, 0 } }, 0, { 0, 0 } },
    { "one corner", { { 3, 1 } }, 1, { 3, 1 } },
    { "two corners", { { 3, 1 }, { 4, 1 } }, 2, { 3, 1 } },
    { "no area", { { 0, 0 }, { 2, 0 }, { 4, 0 } }, 3, { 0, 0 } },
    { "repeated corner", { { 0, 0 }, { 4, 0 }, { 4, 0 }, { 0, 4 } }, 4, { 4, 0 } },
    { "spike outward", { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 6, 4 }, { 4, 4 }, { 0, 4 } }, 6, { 6, 4 } },
    { "spike along a side", { { 0, 0 }, { 6, 0 }, { 4, 0 }, { 4, 4 }, { 0, 4 } }, 5, { 6, 0 } },
    { "spike inward", { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 2, 4 }, { 2, 2 }, { 2, 4 }, { 0, 4 } }, 7, { 2, 2 } },
    { "corner on a side", { { 0, 0 }, { 4, 0 }, { 4, 4 }, { 2, 0 }, { 0, 4 } }, 5, { 2, 0 } },
    { "corner on a corner", { { 0, 0 }, { 4, 0 }, { 2, 2 }, { 4, 4 }, { 0, 4 }, { 2, 2 } }, 6, { 2, 2 } },
    { "side on a side", { { 0, 0 }, { 6, 0 }, { 6, 2 }, { 4, 0 }, { 2, 0 }, { 0, 2 } }, 6, { 4, 0 } },
    { "off the floor", { { 0, 0 }, { 10000.0001, 0 }, { 0, 4 } }, 3, { 10000.0001, 0 } },
    { "not a number", { { 0, 0 }, { NAN, 0 }, { 0, 4 } }, 3, { NAN, 0 } },
    { "endless", { { 0, 0 }, { 4, 0 }, { 0, INFINITY } }, 3, { 0, INFINITY } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      OxPoint where = { -1, -1 };
      g_autoptr (OxRing) ring = ox_ring_new (cases[i].points, cases[i].n);
      g_test_message ("%s", cases[i].what);
      g_assert_false (ox_ring_is_simple (ring, &where));
      g_assert_false (ox_ring_is_simple (ring, NULL));
      g_assert_true (where.x == cases[i].where.x || isnan (cases[i].where.x));
      g_assert_cmpfloat (where.y, ==, cases[i].where.y);
    }
}

/* A sliver 20 km long. Its first side passes x = 0 half a grid step under the origin, so that a last corner there is
 * free of it, and one a grid step lower is not. */
static void
test_exact (void)
{
  OxPoint p[4] = { { -10000, -10000 }, { 10000, 9999.9999 }, { 10000, 10000 }, { 0, 0 } };
  for (int step = -1; step <= 1; step++)
    {
      p[3].y = step * OX_GRID;
      g_autoptr (OxRing) ring = ox_ring_new (p, 4);
      g_assert_true (ox_ring_is_simple (ring, NULL) == (step >= 0));
    }
}

static void
test_good_outlines (void)
{
  static const char *const wkts[] = {
    "POLYGON ((0 0, 3 0, 0 4, 0 0))",
    "POLYGON ((0 0, 0 4, 3 0, 0 0))",
    /* corners in the middle of a side */
    "POLYGON ((0 0, 1 0, 2 0, 4 0, 4 4, 0 4, 0 1, 0 0))",
    /* a millimetre of wall between two bays */
    "POLYGON ((0 0, 4 0, 4 4, 2.001 4, 2.001 0.001, 2 0.001, 2 4, 0 4, 0 0))",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (wkts); i++)
    {
      g_autoptr (OxRing) ring = ox_test_ring (wkts[i]);
      g_assert_true (ox_ring_is_simple (ring, NULL));
    }
}

/* The definition, side against side, in whole numbers. */
static gboolean
sides_share (const gint64 a[2], const gint64 b[2], const gint64 c[2], const gint64 d[2])
{
  const gint64 *ends[4] = { a, b, c, d };
  gint64 side[4];
  for (int k = 0; k < 4; k++)
    {
      const gint64 *p = k < 2 ? c : a, *q = k < 2 ? d : b, *r = ends[k];
      side[k] = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
      gboolean in_box = r[0] >= MIN (p[0], q[0]) && r[0] <= MAX (p[0], q[0]) && r[1] >= MIN (p[1], q[1])
                        && r[1] <= MAX (p[1], q[1]);
      if (side[k] == 0 && in_box)
        return TRUE;
    }
  return (side[0] > 0) != (side[1] > 0) && (side[2] > 0) != (side[3] > 0) && side[0] && side[1] && side[2] && side[3];
}

static gboolean
is_simple_by_definition (gint64 (*p)[2], guint n)
{
  for (guint i = 0; i < n; i++)
    {
      const gint64 *a = p[i], *b = p[(i + 1) % n], *c = p[(i + 2) % n];
      gint64 turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
      gint64 on = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
      if ((a[0] == b[0] && a[1] == b[1]) || (turn == 0 && on < 0))
        return FALSE;
      for (guint j = i + 2; j < n; j++)
        if ((j + 1) % n != i && sides_share (a, b, p[j], p[(j + 1) % n]))
          return FALSE;
    }
  return TRUE;
}

/* Small numbers, so that touching and overlapping sides are common and simple outlines are too. */
static void
test_same_as_definition (void)
{
  guint simple = 0, crossed = 0;
  for (int i = 0; i < 20000; i++)
    {
      gint64 p[8][2] = { 0 };
      OxPoint points[8];
      guint n = (guint) g_test_rand_int_range (3, 9);
      for (guint k = 0; k < n; k++)
        {
          p[k][0] = g_test_rand_int_range (0, 6);
          p[k][1] = g_test_rand_int_range (0, 6);
          points[k] = (OxPoint){ (double) p[k][0] / 10, (double) p[k][1] / 10 };
        }
      if (p[0][0] == p[n - 1][0] && p[0][1] == p[n - 1][1])
        continue;
      g_autoptr (OxRing) ring = ox_ring_new (points, n);
      gboolean wanted = is_simple_by_definition (p, n);
      g_assert_true (ox_ring_is_simple (ring, NULL) == wanted);
      *(wanted ? &simple : &crossed) += 1;
    }
  g_assert_cmpuint (simple, >, 1000);
  g_assert_cmpuint (crossed, >, 1000);
}

/* A comb of 5,000 corners, whose teeth all overlap in x, then with the end of one tooth through its neighbour. */
static void
test_long_outline (void)
{
  enum
  {
    TEETH = 1250
  };
  g_autofree OxPoint *p = g_new (OxPoint, 4 * TEETH);
  for (guint i = 0; i < TEETH; i++)
    {
      p[4 * i] = (OxPoint){ 0, i };
      p[4 * i + 1] = (OxPoint){ 90, i };
      p[4 * i + 2] = (OxPoint){ 90, i + 0.5 };
      p[4 * i + 3] = (OxPoint){ i + 1 < TEETH ? 1 : 0, i + 0.5 };
      if (i > 0)
        p[4 * i].x = 1;
    }
  p[4 * TEETH - 1].x = -1;
  p[0].x = -1;
  g_autoptr (OxRing) comb = ox_ring_new (p, 4 * TEETH);
  g_assert_true (ox_ring_is_simple (comb, NULL));
  OxPoint where;
  p[4 * 700 + 1].y = 698.75;
  g_autoptr (OxRing) bent = ox_ring_new (p, 4 * TEETH);
  g_assert_false (ox_ring_is_simple (bent, &where));
  ox_test_near (where.y, 699, 1.1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/geometry/ring-simple/bad-outlines", test_bad_outlines);
  g_test_add_func ("/geometry/ring-simple/good-outlines", test_good_outlines);
  g_test_add_func ("/geometry/ring-simple/exact", test_exact);
  g_test_add_func ("/geometry/ring-simple/same-as-definition", test_same_as_definition);
  g_test_add_func ("/geometry/ring-simple/long-outline", test_long_outline);
  return g_test_run ();
}
