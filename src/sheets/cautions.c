/* Oxturn: sheets/cautions
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "sheets/cautions.h"
#include "base/words.h"

static const struct
{
  const char *rule, *name;
} rules[] = {
  { "law", N_ ("law") },
  { "standard", N_ ("standard") },
  { "maker", N_ ("maker's manual") },
  { "practice", N_ ("common practice") },
};

/* (nullable): NULL for what is no rule */
static const char *
rule_name (const OxCaution *caution)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (g_str_equal (rules[i].rule, caution->rule))
      return _ (rules[i].name);
  return NULL;
}

const char *const *
ox_cautions_office (void)
{
  static const char *const ids[] = { "certificate", "silica", "coating", NULL };
  return ids;
}

static gboolean
is_chosen (const OxCaution *caution, OxCautionsChoice choice)
{
  return choice != OX_CAUTIONS_OFFICE || g_strv_contains (ox_cautions_office (), caution->id);
}

static gboolean
is_known (const char *id)
{
  guint n;
  const OxCaution *cautions = ox_cautions_list (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (cautions[i].id, id))
      return TRUE;
  return FALSE;
}

void
ox_cautions_add (OxBlock *block, const OxEstimate *estimate, OxCautionsChoice choice)
{
  guint n;
  const OxCaution *cautions = ox_cautions_list (&n);
  for (guint i = 0; i < n; i++)
    {
      guint number = ox_caution_number (cautions[i].id, estimate);
      if (number == 0 || !is_chosen (&cautions[i], choice))
        continue;
      const char *rule = rule_name (&cautions[i]);
      const char *words = choice == OX_CAUTIONS_ALL ? _ (cautions[i].text) : _ (cautions[i].brief);
      g_autofree char *text
          = rule != NULL && choice == OX_CAUTIONS_ALL ? g_strdup_printf ("%s (%s)", words, rule) : g_strdup (words);
      g_autofree char *mark = g_strdup_printf ("%u", number);
      ox_block_add_text (block, choice == OX_CAUTIONS_OFFICE ? "\xe2\x80\xa2" : mark, text);
    }
}

OxBlock *
ox_cautions_block_new (const OxForm *form, const OxEstimate *estimate, OxCautionsChoice choice)
{
  OxBlock *block = ox_block_new (_ ("Cautions"), form->block_mm, form->body_mm);
  ox_cautions_add (block, estimate, choice);
  return block;
}

char *
ox_cautions_tag (const char *id, const OxEstimate *estimate)
{
  g_return_val_if_fail (is_known (id), g_strdup (""));
  guint number = estimate != NULL ? ox_caution_number (id, estimate) : 0;
  return number > 0 ? g_strdup_printf (" !%u", number) : g_strdup ("");
}
