/* Oxturn: tests/tools/test-two-point - the course of what is drawn between two points, with a tool that only counts.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "tools/two-point.h"

#include "support/floors.h"

typedef struct
{
  OxTwoPoint base;
  gboolean refuses; /* whatever is begun or finished */
  guint begins, finishes, cancels, motions;
  double finished_at, at; /* m, x of the pointer */
} Counter;

static void
counter_motion (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Counter *self = (Counter *) tool;

  (void) scene;
  (void) answer;
  self->motions++;
  self->at = pointer->at.x;
}

static gboolean
counter_begin (OxTool *tool, const OxScene *scene, const OxPointer *pointer, OxToolAnswer *answer)
{
  Counter *self = (Counter *) tool;

  (void) scene;
  (void) pointer;
  (void) answer;
  self->begins++;
  return !self->refuses;
}

static void
counter_finish (OxTool *tool, const OxScene *scene, OxToolAnswer *answer)
{
  Counter *self = (Counter *) tool;

  self->finishes++;
  self->finished_at = self->at;
  if (!self->refuses)
    answer->job = ox_job_ref (scene->job);
}

static void
counter_cancel (OxTool *tool)
{
  ((Counter *) tool)->cancels++;
  ox_two_point_cancel (tool);
}

static const OxToolTable one_field = {
  .motion = counter_motion, .cancel = counter_cancel, .n_fields = 1, .begin = counter_begin, .finish = counter_finish
};
static const OxToolTable two_fields = {
  .motion = counter_motion, .cancel = counter_cancel, .n_fields = 2, .begin = counter_begin, .finish = counter_finish
};

typedef struct
{
  Counter counter;
  OxJob *job;
  OxScene scene;
} Fixture;

/* 100 px per metre: 5 px are 0.05 m. */
static void
set_up (Fixture *fixture, const void *table)
{
  fixture->job = ox_test_floor_rectangle (10, 8, "compact");
  fixture->scene = (OxScene){ .job = fixture->job, .px_per_m = 100 };
  fixture->counter.base.base.table = table;
}

static void
tear_down (Fixture *fixture, const void *table)
{
  (void) table;
  ox_job_unref (fixture->job);
}

static OxTool *
tool_of (Fixture *fixture)
{
  return &fixture->counter.base.base;
}

static void
press (Fixture *fixture, double x)
{
  g_auto (OxToolAnswer) answer = { 0 };
  OxPointer pointer = { .at = { x, 0 }, .clicks = 1 };

  ox_two_point_press (tool_of (fixture), &fixture->scene, &pointer, &answer);
}

static void
release (Fixture *fixture, double x)
{
  g_auto (OxToolAnswer) answer = { 0 };
  OxPointer pointer = { .at = { x, 0 } };

  ox_two_point_release (tool_of (fixture), &fixture->scene, &pointer, &answer);
}

static gboolean
key (Fixture *fixture, OxKeyName name, gunichar sign)
{
  g_auto (OxToolAnswer) answer = { 0 };
  OxKey pressed = { .name = name, .sign = sign };

  return ox_two_point_key (tool_of (fixture), &fixture->scene, &pressed, &answer);
}

static void
test_two_clicks (Fixture *fixture, const void *table)
{
  (void) table;
  press (fixture, 1);
  release (fixture, 1.04);
  g_assert_true (ox_two_point_is_busy (tool_of (fixture)));
  g_assert_cmpuint (fixture->counter.finishes, ==, 0);
  press (fixture, 3);
  g_assert_cmpuint (fixture->counter.begins, ==, 1);
  g_assert_cmpuint (fixture->counter.finishes, ==, 1);
  g_assert_cmpfloat (fixture->counter.finished_at, ==, 3);
  g_assert_false (ox_two_point_is_busy (tool_of (fixture)));
  release (fixture, 3.5); /* of the second click, however far it slipped */
  g_assert_cmpuint (fixture->counter.finishes, ==, 1);
}

static void
test_drag (Fixture *fixture, const void *table)
{
  (void) table;
  press (fixture, 1);
  release (fixture, 1.06);
  g_assert_cmpuint (fixture->counter.finishes, ==, 1);
  g_assert_cmpfloat (fixture->counter.finished_at, ==, 1.06);
  g_assert_false (ox_two_point_is_busy (tool_of (fixture)));
}

static void
test_refused_begin (Fixture *fixture, const void *table)
{
  (void) table;
  fixture->counter.refuses = TRUE;
  press (fixture, 1);
  release (fixture, 4);
  g_assert_cmpuint (fixture->counter.begins, ==, 1);
  g_assert_cmpuint (fixture->counter.finishes, ==, 0);
  g_assert_false (ox_two_point_is_busy (tool_of (fixture)));
}

/* What was refused can be put right: nothing of it is lost. */
static void
test_refused_finish (Fixture *fixture, const void *table)
{
  (void) table;
  press (fixture, 1);
  key (fixture, OX_KEY_SIGN, '7');
  fixture->counter.refuses = TRUE;
  g_assert_true (key (fixture, OX_KEY_ENTER, 0));
  g_assert_cmpuint (fixture->counter.finishes, ==, 1);
  g_assert_true (ox_two_point_is_busy (tool_of (fixture)));
  g_assert_cmpstr (fixture->counter.base.typed.text[0], ==, "7");
  fixture->counter.refuses = FALSE;
  g_assert_true (key (fixture, OX_KEY_ENTER, 0));
  g_assert_false (ox_two_point_is_busy (tool_of (fixture)));
  g_assert_cmpstr (fixture->counter.base.typed.text[0], ==, "");
  g_assert_cmpuint (fixture->counter.motions, ==, 0);
}

static void
test_escape_in_two_steps (Fixture *fixture, const void *table)
{
  (void) table;
  press (fixture, 1);
  key (fixture, OX_KEY_SIGN, '7');
  g_assert_true (key (fixture, OX_KEY_ESCAPE, 0));
  g_assert_true (ox_typed_is_empty (&fixture->counter.base.typed));
  g_assert_true (ox_two_point_is_busy (tool_of (fixture)));
  g_assert_true (key (fixture, OX_KEY_ESCAPE, 0));
  g_assert_false (ox_two_point_is_busy (tool_of (fixture)));
  g_assert_cmpuint (fixture->counter.cancels, ==, 1);
  g_assert_cmpuint (fixture->counter.finishes, ==, 0);
}

/* Before the first point every key is free for the window: digits, Escape, Enter. */
static void
test_keys_at_rest (Fixture *fixture, const void *table)
{
  (void) table;
  for (int name = OX_KEY_SIGN; name <= OX_KEY_DOWN; name++)
    g_assert_false (key (fixture, (OxKeyName) name, '5'));
  g_assert_true (ox_typed_is_empty (&fixture->counter.base.typed));
  g_assert_cmpuint (fixture->counter.finishes + fixture->counter.cancels, ==, 0);
}

/* Tab goes to the second size where there is one; with one size it stays a key of the window. */
static void
test_tab (Fixture *fixture, const void *table)
{
  gboolean two = table == &two_fields;

  press (fixture, 1);
  g_assert_true (key (fixture, OX_KEY_SIGN, '4'));
  g_assert_true (key (fixture, OX_KEY_TAB, 0) == two);
  g_assert_true (key (fixture, OX_KEY_SIGN, '5'));
  g_assert_cmpstr (fixture->counter.base.typed.text[0], ==, two ? "4" : "45");
  g_assert_cmpstr (fixture->counter.base.typed.text[1], ==, two ? "5" : "");
  g_assert_true (key (fixture, OX_KEY_BACKSPACE, 0));
  g_assert_cmpstr (fixture->counter.base.typed.text[two ? 1 : 0], ==, two ? "" : "4");
  g_assert_false (key (fixture, OX_KEY_DELETE, 0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, table, function) g_test_add ("/tools/two-point/" name, Fixture, table, set_up, function, tear_down)
  ADD ("two-clicks", &one_field, test_two_clicks);
  ADD ("drag", &one_field, test_drag);
  ADD ("refused-begin", &one_field, test_refused_begin);
  ADD ("refused-finish", &one_field, test_refused_finish);
  ADD ("escape-in-two-steps", &one_field, test_escape_in_two_steps);
  ADD ("keys-at-rest", &one_field, test_keys_at_rest);
  ADD ("tab-with-one-size", &one_field, test_tab);
  ADD ("tab-with-two-sizes", &two_fields, test_tab);
#undef ADD
  return g_test_run ();
}
