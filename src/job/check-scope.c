/* Oxturn: job/check-scope - the rules of the scope of work and of the setup of the sheets.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/check-private.h"
#include "base/shown.h"
#include "base/words.h"
#include "job/text.h"

static void
add (GPtrArray *findings, char *text)
{
  ox_finding_add (findings, OX_FINDING_ERROR, "", NULL, text);
}

static void
check_lines (const OxScope *scope, OxScopeList list, GPtrArray *findings)
{
  guint n = scope->n_lines[list];
  if (n > OX_SCOPE_LINES_MOST)
    add (findings, g_strdup_printf (_ ("A list of the scope has %u lines; %d are allowed"), n, OX_SCOPE_LINES_MOST));
  for (guint i = 0; i < n; i++)
    {
      const OxScopeLine *line = &scope->lines[list][i];
      if (strlen (line->text) > OX_SCOPE_LINE_BYTES_MOST)
        add (findings, g_strdup_printf (_ ("The line “%s” of the scope is too long; %d bytes are allowed"),
                                        ox_shown (line->text).text, OX_SCOPE_LINE_BYTES_MOST));
      if (ox_scope_line_text (list, line)[0] == '\0')
        add (findings, line->key[0] ? g_strdup_printf (_ ("“%s” is no line of the scope that is known here; its "
                                                          "text is needed"),
                                                       ox_shown (line->key).text)
                                    : g_strdup (_ ("A line of the scope is empty; a text is needed")));
    }
}

static void
check_revisions (const OxJob *job, GPtrArray *findings)
{
  const OxScope *scope = job->scope;
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  if (scope->n_revisions > OX_REVISIONS_MOST)
    add (findings,
         g_strdup_printf (_ ("The job has %u revisions; %d are allowed"), scope->n_revisions, OX_REVISIONS_MOST));
  for (guint i = 0; i < scope->n_revisions; i++)
    {
      const OxRevision *row = &scope->revisions[i];
      ox_finding_date ("", row->date, findings);
      ox_finding_date ("", row->accepted_on, findings);
      if (!g_hash_table_add (seen, row->mark))
        add (findings, g_strdup_printf (_ ("Two revisions have the mark “%s”; each needs one of its own"),
                                        ox_shown (row->mark).text));
      if (row->accepted_by[0] && g_str_equal (row->mark, job->texts->revision))
        add (findings, g_strdup_printf (_ ("Revision “%s” was signed and has changed since; it needs another mark"),
                                        ox_shown (row->mark).text));
    }
}

static void
check_sign_off (const OxJob *job, GPtrArray *findings)
{
  const OxSignOff *sign_off = &job->scope->sign_off;
  ox_finding_date ("", sign_off->date, findings);
  if (!ox_scope_is_signed (job->scope))
    return;
  if (!g_str_equal (sign_off->number, job->texts->number) || !g_str_equal (sign_off->revision, job->texts->revision))
    add (findings, g_strdup_printf (_ ("The sign-off is for drawing “%s” revision “%s”, and the drawing is "
                                       "“%s” revision “%s”; it must be for this one"),
                                    ox_shown (sign_off->number).text, ox_shown (sign_off->revision).text,
                                    ox_shown (job->texts->number).text, ox_shown (job->texts->revision).text));
}

static void
check_paper (const char *name, GPtrArray *findings)
{
  g_autofree char *names = g_strjoinv (", ", (char **) ox_setup_papers);
  if (*name && !g_strv_contains (ox_setup_papers, name))
    add (findings, g_strdup_printf (_ ("“%s” is none of the papers %s"), ox_shown (name).text, names));
}

static void
check_setup (const OxSheetSetup *setup, GPtrArray *findings)
{
  OxLanguage language;
  check_paper (setup->paper, findings);
  check_paper (setup->schedule_paper, findings);
  check_paper (setup->tiles, findings);
  if (setup->language[0] && !ox_language_find (setup->language, &language))
    add (findings,
         g_strdup_printf (_ ("“%s” is no language that sheets can have here"), ox_shown (setup->language).text));
  if (setup->scale != 0 && !(setup->scale >= 1 && setup->scale <= OX_SETUP_SCALE_MOST))
    add (findings, g_strdup (_ ("The scale of the sheets is out of range: 1:1 to 1:100000 is allowed")));
}

void
ox_check_scope (const OxJob *job, GPtrArray *findings)
{
  for (OxScopeList list = 0; list < OX_SCOPE_LISTS; list++)
    check_lines (job->scope, list, findings);
  check_revisions (job, findings);
  check_sign_off (job, findings);
  check_setup (job->setup, findings);
}
