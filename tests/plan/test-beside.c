/* Oxturn: plan/beside: slots between strips, found and closed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strips of the compact machine are 0.21 m wide and overlap by 0.02 m: neighbours lie 0.19 m apart at most.
 */
#include "laid.h"
#include "support/floors.h"
#include "support/ox-test.h"

static Laid *
one_strip (void)
{
  Laid *laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 8, .grid = TRUE });
  return laid;
}

static double
shift_at (const Laid *laid, double y)
{
  return ox_layout_slot_shift (laid->layout, 0, y, (OxSpan){ 2, 8 });
}

/* Too far off by so much: moved by so much. */
static void
slot_shift (void)
{
  g_autoptr (Laid) laid = one_strip ();
  ox_test_near (shift_at (laid, 3.1), 0, 1e-12);
  ox_test_near (shift_at (laid, 3.19), 0, 1e-12);
  ox_test_near (shift_at (laid, 3.20), -0.01, 1e-9);
  ox_test_near (shift_at (laid, 2.80), 0.01, 1e-9);
  ox_test_near (shift_at (laid, 3.25), -0.06, 1e-9);
  ox_test_near (shift_at (laid, 3.45), 0, 1e-12); /* room for a strip */
  ox_test_near (ox_layout_slot_shift (laid->layout, 0, 3.2, (OxSpan){ 8.1, 9 }), 0, 1e-12);
  ox_test_near (ox_layout_slot_shift (laid->layout, laid_across (laid), -3, (OxSpan){ 1, 5 }), 0, 1e-12);
}

/* With another strip in between there is no slot. */
static void
parted (void)
{
  g_autoptr (Laid) laid = one_strip ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.1, .x0 = 2, .x1 = 8 });
  ox_test_near (shift_at (laid, 3.25), 0, 1e-12);
  ox_test_near (shift_at (laid, 3.30), -0.01, 1e-9);
}

/* Strips at an angle of 1 degree draw apart by 0.1 m over 6 m: a wedge and no slot. */
static void
wedge (void)
{
  g_autoptr (Laid) laid = one_strip ();
  guint frame = ox_layout_frame (laid->layout, G_PI / 180, 0);
  const OxFrame *own = g_ptr_array_index (laid->layout->frames, frame);
  OxPoint p = ox_frame_from_floor (own, (OxPoint){ 2, 3.15 });
  ox_test_near (ox_layout_slot_shift (laid->layout, frame, p.y, (OxSpan){ p.x, p.x + 6 }), 0, 1e-12);
}

/* Two strips along +y leave off 20 mm short of what a stretch at y = 3 covers. */
static Laid *
with_noses (gboolean above)
{
  Laid *laid = laid_new (ox_test_floor_rectangle (10, 6, "compact"), OX_WORK_SERPENTINE);
  guint across = laid_across (laid);
  for (guint i = 0; i < 2; i++)
    {
      OxDraft nose = { .frame = across, .sign = above ? 1 : -1, .y = -(7.4 + i * 0.19), .kind = OX_STRIP_CROSSWISE };
      nose.x0 = above ? 3 + 0.105 + 0.02 + 0.04 : 1;
      nose.x1 = above ? 5 : 3 - 0.105 - 0.02 - 0.04;
      laid_add (laid, nose);
    }
  return laid;
}

static void
nose_shift (void)
{
  for (guint above = 0; above < 2; above++)
    {
      g_autoptr (Laid) laid = with_noses (above);
      OxSpan where = { 99, 99 };
      double shift = ox_layout_nose_shift (laid->layout, 0, 3, (OxSpan){ 2, 9 }, &where);
      ox_test_near (above ? shift : -shift, 0.02, 0.001);
      g_assert_cmpfloat (fabs (shift), >=, 0.02);
      ox_test_near (where.lo, 7.4 - 0.105, 1e-6);
      ox_test_near (where.hi, 7.59 + 0.105, 1e-6);
      OxSpan untouched = { 99, 99 };
      ox_test_near (ox_layout_nose_shift (laid->layout, 0, above ? 3.03 : 2.97, (OxSpan){ 2, 9 }, &untouched), 0,
                    1e-12);
      ox_test_near (ox_layout_nose_shift (laid->layout, 0, 3, (OxSpan){ 2, 6 }, &untouched), 0, 1e-12);
      ox_test_near (untouched.lo, 99, 1e-12);
    }
}

/* The end of a strip beyond which others leave off just short is cut, once. */
static void
cut_noses (void)
{
  g_autoptr (Laid) laid = with_noses (TRUE);
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3, .x0 = 2, .x1 = 7.8 });
  g_assert_true (ox_layout_cut_noses (laid->layout));
  g_assert_cmpuint (laid->layout->drafts->len, ==, 3);
  g_assert_cmpfloat (laid_draft (laid, 2)->x1, <, 7.4);
  g_assert_cmpfloat (laid_draft (laid, 2)->x1, >=, 7.4 - 0.105);
  ox_test_near (laid_draft (laid, 2)->x0, 2, 1e-12);
  g_assert_false (ox_layout_cut_noses (laid->layout));
}

/* A slot of 20 mm beside a strip of the grid is closed by moving the other one. */
static void
close_slots (void)
{
  g_autoptr (Laid) laid = one_strip ();
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3.23, .x0 = 2.5, .x1 = 7.5 });
  g_assert_cmpfloat (laid_open (laid, (OxBox){ 2.6, 2.95, 7.4, 3.2 }), >, 0.09);
  ox_layout_close_slots (laid->layout);
  g_assert_cmpuint (laid->layout->drafts->len, ==, 2);
  ox_test_near (laid_draft (laid, 0)->y, 3, 1e-12);
  ox_test_near (laid_draft (laid, 1)->y, 3.19, 1e-9);
  ox_test_near (laid_open (laid, (OxBox){ 2.6, 2.95, 7.4, 3.2 }), 0, 1e-9);
  const OxLane *lane = &g_array_index (laid->layout->lanes, OxLane, laid_draft (laid, 1)->lane);
  ox_test_near (lane->y, 3.19, 1e-9);
}

/* Strips of the grid never move, nor those that overlap as they must. */
static void
kept_places (void)
{
  g_autoptr (Laid) laid = one_strip ();
  laid_add (laid, (OxDraft){ .sign = -1, .y = 3.23, .x0 = 2, .x1 = 8, .grid = TRUE });
  laid_add (laid, (OxDraft){ .sign = -1, .y = 2.81, .x0 = 2, .x1 = 8 });
  ox_layout_close_slots (laid->layout);
  ox_test_near (laid_draft (laid, 0)->y, 3, 1e-12);
  ox_test_near (laid_draft (laid, 1)->y, 3.23, 1e-12);
  ox_test_near (laid_draft (laid, 2)->y, 2.81, 1e-12);
}

/* Three lanes @apart m from the first to the last: whether the middle one joins the others. */
static gboolean
joins (double apart)
{
  g_autoptr (Laid) laid = one_strip ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3 + apart / 2, .x0 = 3, .x1 = 7 });
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3 + apart, .x0 = 2, .x1 = 8, .grid = TRUE });
  g_assert_false (ox_layout_joins (laid->layout, 0));
  g_assert_false (ox_layout_joins (laid->layout, 2));
  return ox_layout_joins (laid->layout, 1);
}

/* Up to 0.19 m the outer two overlap by themselves. */
static void
joined (void)
{
  g_assert_false (joins (0.18));
  g_assert_true (joins (0.2));
  g_assert_true (joins (0.25));
}

/* Where two strips meet without overlapping as they must, the one that is not of the grid moves up; then all is well.
 */
static void
settle (void)
{
  g_autoptr (Laid) laid = one_strip ();
  laid_add (laid, (OxDraft){ .sign = 1, .y = 3.2, .x0 = 3, .x1 = 7 });
  g_assert_false (ox_layout_settle (laid->layout));
  ox_test_near (laid_draft (laid, 0)->y, 3, 1e-12);
  for (guint i = 0; i < laid->layout->drafts->len; i++)
    {
      const OxDraft *d = laid_draft (laid, i);
      ox_test_near (ox_layout_slot_shift (laid->layout, 0, d->y, (OxSpan){ d->x0, d->x1 }), 0, 4 * OX_GRID);
    }
  guint n = laid->layout->drafts->len;
  g_assert_false (ox_layout_settle (laid->layout));
  g_assert_cmpuint (laid->layout->drafts->len, ==, n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/beside/slot-shift", slot_shift);
  g_test_add_func ("/plan/beside/parted", parted);
  g_test_add_func ("/plan/beside/wedge", wedge);
  g_test_add_func ("/plan/beside/nose-shift", nose_shift);
  g_test_add_func ("/plan/beside/cut-noses", cut_noses);
  g_test_add_func ("/plan/beside/close-slots", close_slots);
  g_test_add_func ("/plan/beside/kept-places", kept_places);
  g_test_add_func ("/plan/beside/joined", joined);
  g_test_add_func ("/plan/beside/settle", settle);
  return g_test_run ();
}
