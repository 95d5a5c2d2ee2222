/* Oxturn: tests/geometry/print-regions - what the region functions make of random floors, for a recount elsewhere.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each line: the operation, its five numbers, the first region, the second, the result; parted by tabs, regions as WKT.
 * What begins with # is for the reader: the seed of the random floors, which --seed repeats.
 */
#include "geometry/wkt.h"
#include "support/ox-test.h"
#include <stdlib.h>

#define DECIMALS 12

typedef struct
{
  const char *name;
  double numbers[5]; /* distance; or rear, front, right, left, angle */
} Operation;

static void
print_region (const OxRegion *region)
{
  g_autoptr (GString) text = g_string_new ("\t");
  ox_wkt_append_region (text, region, TRUE, DECIMALS);
  g_print ("%s", text->str);
}

static void
print_case (const Operation *operation, const OxRegion *a, const OxRegion *b, OxRegion *result)
{
  g_print ("%s", operation->name);
  for (gsize i = 0; i < G_N_ELEMENTS (operation->numbers); i++)
    {
      g_autofree char *number = g_strdup_printf ("%.17g", operation->numbers[i]);
      g_print ("\t%s", number);
    }
  print_region (a);
  print_region (b);
  print_region (result);
  g_print ("\n");
  ox_region_unref (result);
}

/* Two random floors that cross: with holes and in parts where they happen to. */
static OxRegion *
random_region (void)
{
  g_autoptr (OxRing) ring = ox_test_random_ring ();
  g_autoptr (OxRing) other = ox_test_random_ring ();
  g_autoptr (OxRegion) whole = ox_region_new_ring (ring);
  g_autoptr (OxRegion) taken = ox_region_new_ring (other);
  return ox_region_difference (whole, taken);
}

static void
print_all (void)
{
  g_autoptr (OxRegion) a = random_region ();
  g_autoptr (OxRegion) b = random_region ();
  Operation op = { "union", { 0 } };
  print_case (&op, a, b, ox_region_union (a, b));
  op.name = "intersection";
  print_case (&op, a, b, ox_region_intersection (a, b));
  op.name = "difference";
  print_case (&op, a, b, ox_region_difference (a, b));
  op = (Operation){ "offset", { g_test_rand_double_range (-1, 1) } };
  print_case (&op, a, b, ox_region_offset (a, op.numbers[0], TRUE));
  op.name = "erode";
  for (int i = 0; i < 4; i++)
    op.numbers[i] = g_test_rand_double_range (0, 1.3);
  op.numbers[4] = g_test_rand_double_range (-4, 4);
  const double *n = op.numbers;
  print_case (&op, a, b, ox_region_erode_rectangle (a, n[0], n[1], n[2], n[3], n[4]));
  op.name = "dilate";
  print_case (&op, a, b, ox_region_dilate_rectangle (a, n[0], n[1], n[2], n[3], n[4]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  int cases = argc > 1 ? atoi (argv[1]) : 1;
  for (int i = 0; i < cases; i++)
    print_all ();
  return 0;
}
