/* Oxturn: plan/field-lies - what a hose across fields costs, on lies made by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "plan/field-lies.h"
#include "support/ox-test.h"

#define N 400

/* A column of lanes, and a station at one of them: the hose of each lies on all lanes between. */
static OxLies *
lies_from (guint station, guint base)
{
  OxLies *lies = g_new0 (OxLies, 1);
  g_autoptr (GArray) list = g_array_new (FALSE, FALSE, sizeof (OxLie));
  lies->n = base + N;
  lies->seconds = 0.5;
  lies->first = g_new0 (guint, lies->n + 1);
  for (guint i = 0; i < N; i++)
    {
      lies->first[base + i] = list->len;
      for (guint k = MIN (i, station); k < MAX (i, station); k++)
        {
          OxLie lie = { base + (i < station ? k + 1 : k), G_MAXUINT };
          g_array_append_val (list, lie);
        }
    }
  lies->first[lies->n] = list->len;
  lies->lies = (OxLie *) (void *) g_array_free (g_steal_pointer (&list), FALSE);
  return lies;
}

static GArray *
lanes_made (guint base)
{
  GArray *legs = g_array_new (FALSE, FALSE, sizeof (OxLeg));
  for (guint i = 0; i < N; i++)
    {
      OxLeg leg = { .strip = base + i, .y = 0.19 * i, .station = 0 };
      g_array_append_val (legs, leg);
    }
  return legs;
}

/* Lanes to both sides of a station are parted there, those to one side are not. */
static void
split (void)
{
  g_autoptr (GArray) legs = lanes_made (7);
  g_autoptr (OxLies) between = lies_from (100, 7);
  g_autoptr (OxLies) begin = lies_from (0, 7);
  g_autoptr (OxFieldLies) from_between = ox_field_lies_new (between, legs);
  g_autoptr (OxFieldLies) from_begin = ox_field_lies_new (begin, legs);
  guint at = ox_field_lies_split (from_between, legs, 0, N);
  g_assert_cmpuint (at, >=, 100);
  g_assert_cmpuint (at, <=, 101);
  g_assert_cmpuint (ox_field_lies_split (from_begin, legs, 0, N), ==, 0);
  /* Strips of one lane stay together. */
  for (guint i = 90; i < 120; i++)
    g_array_index (legs, OxLeg, i).y = 1000;
  at = ox_field_lies_split (from_between, legs, 0, N);
  g_assert_true (at == 90 || at == 120);
}

/* Worked outward a field costs nothing; inward each lane i has i - 1 others under its hose. */
static void
own (void)
{
  g_autoptr (GArray) legs = lanes_made (0);
  g_autoptr (OxLies) lies = lies_from (0, 0);
  g_autoptr (OxFieldLies) fields = ox_field_lies_new (lies, legs);
  guint outward[N], inward[N];
  for (guint i = 0; i < N; i++)
    {
      outward[i] = i;
      inward[i] = N - 1 - i;
    }
  ox_test_near (ox_field_lies_own (fields, 0, N, outward), 0, 1e-9);
  ox_test_near (ox_field_lies_own (fields, 0, N, inward), 0.5 * N * (N - 1) / 2, 1e-9);
}

/* Three fields in a row from the station on: each costs the nearer ones its number of lanes times theirs, and no farther one anything. */
static void
before (void)
{
  g_autoptr (GArray) legs = lanes_made (3);
  g_autoptr (OxLies) lies = lies_from (0, 3);
  g_autoptr (OxFieldLies) fields = ox_field_lies_new (lies, legs);
  guint field_of[N];
  for (guint i = 0; i < N; i++)
    field_of[i] = i < 100 ? 0 : i < 150 ? 1 : 2;
  ox_field_lies_set_fields (fields, field_of, 3);
  ox_test_near (ox_field_lies_before (fields, 1, 0), 0.5 * 50 * 100, 1e-9);
  ox_test_near (ox_field_lies_before (fields, 2, 0), 0.5 * 250 * 100, 1e-9);
  ox_test_near (ox_field_lies_before (fields, 2, 1), 0.5 * 250 * 50, 1e-9);
  ox_test_near (ox_field_lies_before (fields, 0, 1) + ox_field_lies_before (fields, 0, 2) + ox_field_lies_before (fields, 1, 2), 0, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/field-lies/split", split);
  g_test_add_func ("/plan/field-lies/own", own);
  g_test_add_func ("/plan/field-lies/before", before);
  return g_test_run ();
}
