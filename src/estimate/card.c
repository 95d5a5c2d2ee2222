/* Oxturn: estimate/card
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "estimate/card.h"
#include <string.h>
#include "base/words.h"
#include "estimate/basis.h"

#define METRES 10       /* that are walked by the clock */
#define SPARE_HOURS 8.0 /* beyond the job: parts due within a shift more are brought as well */

static const struct
{
  const char *id, *section, *text;
} rows[] = {
#include "estimate/card.inc"
};

static void
card_line_free (OxCardLine *line)
{
  g_free (line->text);
  g_free (line);
}

static char *
length_text (const OxEstimate *estimate, double metres)
{
  return ox_units_length_text (estimate->plan->job->units, metres, TRUE);
}

/* Chalk lines of the first room that has any; as the machine's least overlap has it where none has. */
static double
spacing (const OxPlan *plan)
{
  for (guint i = 0; i < plan->n_chalks; i++)
    if (plan->chalks[i].spacing > 0)
      return plan->chalks[i].spacing;
  return plan->job->machine->blast_width - plan->job->machine->min_overlap;
}

static char *
value_of (const OxEstimate *estimate, const char *name)
{
  const OxMachine *machine = estimate->plan->job->machine;
  const OxFigure *bags = ox_estimate_find (estimate, "abrasive-bags");
  if (g_str_equal (name, "machine"))
    return g_strdup (_ (machine->name));
  if (g_str_equal (name, "hopper"))
    return g_strdup_printf ("%.0f kg", machine->hopper_kg);
  if (g_str_equal (name, "seconds"))
    return g_strdup_printf ("%.0f s", METRES / machine->travel_speed * 60);
  if (g_str_equal (name, "speed"))
    return g_strdup_printf ("%.1f m/min", machine->travel_speed);
  if (g_str_equal (name, "overlap"))
    return length_text (estimate, machine->blast_width - spacing (estimate->plan));
  if (g_str_equal (name, "spacing"))
    return length_text (estimate, spacing (estimate->plan));
  if (g_str_equal (name, "amperes"))
    return g_strdup_printf ("%.0f A", machine->amperes);
  if (g_str_equal (name, "circuit"))
    return g_strdup_printf ("%.0f A", machine->amperes / ox_basis ("continuous-share"));
  if (g_str_equal (name, "volts"))
    return g_strdup_printf ("%.0f V", machine->volts);
  if (g_str_equal (name, "cord"))
    return length_text (estimate, machine->cord_length);
  if (g_str_equal (name, "hose"))
    return length_text (estimate, machine->hose_length);
  if (g_str_equal (name, "bags"))
    return g_strdup_printf ("%.0f", bags->value);
  return g_strdup ("____");
}

static char *
fill (const OxEstimate *estimate, const char *text)
{
  g_autoptr (GString) filled = g_string_new (NULL);
  for (const char *at = text; *at != '\0';)
    {
      const char *end = *at == '{' ? strchr (at, '}') : NULL;
      if (end == NULL)
        {
          g_string_append_c (filled, *at++);
          continue;
        }
      g_autofree char *name = g_strndup (at + 1, (gsize) (end - at - 1));
      g_autofree char *value = value_of (estimate, name);
      g_string_append (filled, value);
      at = end + 1;
    }
  return g_string_free (g_steal_pointer (&filled), FALSE);
}

static void
add (GPtrArray *lines, const char *id, const char *section, char *text)
{
  const OxCardLine line = { id, section, text };
  g_ptr_array_add (lines, g_memdup2 (&line, sizeof line));
}

GPtrArray *
ox_card_lines (const OxEstimate *estimate)
{
  const OxMachine *machine = estimate->plan->job->machine;
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify) card_line_free);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    add (lines, rows[i].id, rows[i].section, fill (estimate, _ (rows[i].text)));
  for (guint i = 0; i < machine->n_wear; i++)
    {
      double left = machine->wear[i].interval_h - machine->wear[i].run_h;
      if (left <= estimate->plan->totals.strip_hours + SPARE_HOURS)
        add (lines, "part", "parts",
             g_strdup_printf (_ ("Bring: %s, due after %.1f h more of the wheel."), _ (machine->wear[i].name),
                              MAX (left, 0)));
    }
  return lines;
}
