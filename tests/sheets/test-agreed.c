/* Oxturn: tests of sheets/agreed
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/agreed.h"
#include "job/edit.h"
#include "sheets/hall.h"
#include "sheets/sheets.h"
#include "support/ox-test.h"

/* The scope drawing of @job on A1, where no text has to be wrapped much; (transfer full) */
static OxPageSet *
draw (const OxJob *job, const char *tag)
{
  g_autoptr (OxPlan) plan = ox_test_plan (job);
  g_autoptr (GError) error = NULL;
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  OxLanguage language;
  options.which = OX_SHEET_SCOPE;
  options.paper = ox_paper_find ("A1");
  g_assert_true (ox_language_find (tag, &language));
  options.language = &language;
  OxPageSet *set = ox_sheets_new (job, plan, &options, &error);
  g_assert_no_error (error);
  return set;
}

static gboolean
says (const OxPageSet *set, const char *part)
{
  for (guint i = 0; i < set->n_pages; i++)
    if (ox_test_find_text (set->pages[i].drawing, part))
      return TRUE;
  return FALSE;
}

static void
test_lines (void)
{
  g_autoptr (OxJob) bare = ox_test_hall (OX_UNITS_METRES);
  OxScopeLine lines[] = { { (char *) "coating", NULL }, { NULL, (char *) "The ramp outside." } };
  OxScope draft = { .n_lines = { 0, 2, 0 }, .lines = { NULL, lines, NULL } };
  g_autoptr (OxScope) scope = ox_scope_new (&draft);
  g_autoptr (OxJob) job = ox_job_with_scope (bare, scope, NULL);
  g_autoptr (OxPageSet) english = draw (job, "en"), german = draw (job, "de");
  g_assert_true (says (english, "Not included") && says (english, "Coatings, toppings")
                 && says (english, "The ramp outside."));
  g_assert_false (says (english, "Included"));
  g_assert_true (says (english, "Work at night"));
  g_assert_false (says (english, "Repair of cracks"));
  g_assert_true (says (german, "Beschichtungen") && says (german, "The ramp outside."));
  g_assert_false (says (german, "Coatings"));
}

/* Signed as B, changed: C is not signed, B says who had. */
static void
test_sign_off (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (OxJob) bare = ox_test_hall (OX_UNITS_METRES);
  g_autoptr (OxJob) job = ox_job_signed (bare, "P. Hollow", "2026-09-20", &error);
  g_assert_no_error (error);
  g_autoptr (OxPageSet) signed_set = draw (job, "en");
  g_assert_true (says (signed_set, "drawing BFP-0412, revision B.")
                 && says (signed_set, "Signed: P. Hollow, 2026-09-20"));
  g_assert_false (says (signed_set, "Name in print"));
  g_autoptr (OxJob) changed = ox_job_moved (job, (const char *const[]){ "O1", NULL }, (OxPoint){ 0.5, 0 }, &error);
  g_autoptr (OxPageSet) set = draw (changed, "en");
  g_assert_true (says (set, "drawing BFP-0412, revision C.") && says (set, "changed after"));
  g_assert_true (says (set, "P. Hollow,") && says (set, "2026-09-20") && says (set, "Name in print"));
  g_assert_false (says (set, "Signed: "));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/agreed/lines", test_lines);
  g_test_add_func ("/agreed/sign-off", test_sign_off);
  return g_test_run ();
}
