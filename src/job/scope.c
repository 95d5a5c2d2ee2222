/* Oxturn: job/scope - what client and contractor agree on besides the floor: lists, revisions, sign-off.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "job/scope.h"
#include "base/words.h"
#include "job/text.h"

static const OxScopeOurs ours[] = {
#include "job/scope-lines.inc"
};

static const char *const statuses[]
    = { N_ ("preliminary"), N_ ("for review"), N_ ("for approval"), N_ ("for construction"), N_ ("as done"), NULL };

static char *
clean (const char *text)
{
  return ox_text_clean (text, FALSE);
}

static void
copy_lines (OxScope *self, const OxScope *scope)
{
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      self->n_lines[list] = scope->n_lines[list];
      self->lines[list] = g_new (OxScopeLine, MAX (scope->n_lines[list], 1));
      for (guint i = 0; i < scope->n_lines[list]; i++)
        self->lines[list][i] = (OxScopeLine){ clean (scope->lines[list][i].key), clean (scope->lines[list][i].text) };
    }
}

OxScope *
ox_scope_new (const OxScope *scope)
{
  OxScope *self = g_atomic_rc_box_new0 (OxScope);
  copy_lines (self, scope);
  self->n_revisions = scope->n_revisions;
  self->revisions = g_new (OxRevision, MAX (scope->n_revisions, 1));
  for (guint i = 0; i < scope->n_revisions; i++)
    {
      const OxRevision *r = &scope->revisions[i];
      self->revisions[i]
          = (OxRevision){ clean (r->mark),   clean (r->date),        clean (r->author),     clean (r->text),
                          r->after_sign_off, clean (r->accepted_by), clean (r->accepted_on) };
    }
  const OxSignOff *s = &scope->sign_off;
  self->sign_off = (OxSignOff){ clean (s->number), clean (s->revision), clean (s->name), clean (s->date) };
  return self;
}

OxScope *
ox_scope_ref (const OxScope *scope)
{
  return g_atomic_rc_box_acquire ((gpointer) scope);
}

static void
clear (gpointer data)
{
  OxScope *scope = data;
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      for (guint i = 0; i < scope->n_lines[list]; i++)
        {
          g_free (scope->lines[list][i].key);
          g_free (scope->lines[list][i].text);
        }
      g_free (scope->lines[list]);
    }
  for (guint i = 0; i < scope->n_revisions; i++)
    {
      OxRevision *r = &scope->revisions[i];
      char *texts[] = { r->mark, r->date, r->author, r->text, r->accepted_by, r->accepted_on };
      for (guint k = 0; k < G_N_ELEMENTS (texts); k++)
        g_free (texts[k]);
    }
  g_free (scope->revisions);
  g_free (scope->sign_off.number);
  g_free (scope->sign_off.revision);
  g_free (scope->sign_off.name);
  g_free (scope->sign_off.date);
}

void
ox_scope_unref (const OxScope *scope)
{
  g_atomic_rc_box_release_full ((gpointer) scope, clear);
}

OxScope *
ox_scope_default (void)
{
  OxScopeLine lines[OX_SCOPE_LISTS][G_N_ELEMENTS (ours)];
  OxScope draft = { .lines = { lines[0], lines[1], lines[2] } };
  for (guint i = 0; i < G_N_ELEMENTS (ours); i++)
    if (ours[i].usual)
      lines[ours[i].list][draft.n_lines[ours[i].list]++] = (OxScopeLine){ (char *) ours[i].key, NULL };
  return ox_scope_new (&draft);
}

static gboolean
same_lines (const OxScope *a, const OxScope *b, guint list)
{
  if (a->n_lines[list] != b->n_lines[list])
    return FALSE;
  for (guint i = 0; i < a->n_lines[list]; i++)
    if (!g_str_equal (a->lines[list][i].key, b->lines[list][i].key)
        || !g_str_equal (a->lines[list][i].text, b->lines[list][i].text))
      return FALSE;
  return TRUE;
}

static gboolean
same_revision (const OxRevision *a, const OxRevision *b)
{
  return g_str_equal (a->mark, b->mark) && g_str_equal (a->date, b->date) && g_str_equal (a->author, b->author)
         && g_str_equal (a->text, b->text) && a->after_sign_off == b->after_sign_off
         && g_str_equal (a->accepted_by, b->accepted_by) && g_str_equal (a->accepted_on, b->accepted_on);
}

gboolean
ox_scope_same_content (const OxScope *a, const OxScope *b)
{
  if (a == b)
    return TRUE;
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    if (!same_lines (a, b, list))
      return FALSE;
  if (a->n_revisions != b->n_revisions)
    return FALSE;
  for (guint i = 0; i < a->n_revisions; i++)
    if (!same_revision (&a->revisions[i], &b->revisions[i]))
      return FALSE;
  return TRUE;
}

gboolean
ox_scope_equal (const OxScope *a, const OxScope *b)
{
  const OxSignOff *s = &a->sign_off, *t = &b->sign_off;
  return ox_scope_same_content (a, b) && g_str_equal (s->number, t->number) && g_str_equal (s->revision, t->revision)
         && g_str_equal (s->name, t->name) && g_str_equal (s->date, t->date);
}

gboolean
ox_scope_is_signed (const OxScope *scope)
{
  return scope->sign_off.name[0] != '\0';
}

const OxScopeOurs *
ox_scope_ours_list (guint *n)
{
  *n = G_N_ELEMENTS (ours);
  return ours;
}

const OxScopeOurs *
ox_scope_ours_find (OxScopeList list, const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (ours); i++)
    if (ours[i].list == list && g_str_equal (ours[i].key, key))
      return &ours[i];
  return NULL;
}

const char *
ox_scope_line_text (OxScopeList list, const OxScopeLine *line)
{
  const OxScopeOurs *known = line->text[0] != '\0' ? NULL : ox_scope_ours_find (list, line->key);
  return known ? _ (known->text) : line->text;
}

const char *
ox_revision_text (const OxRevision *revision)
{
  return revision->text[0] == '\0' && revision->after_sign_off ? _ ("changed after sign-off") : revision->text;
}

/* The last letter one on; after the last of the alphabet all begins anew, one letter longer. */
static char *
next_letters (const char *mark)
{
  static const char alphabet[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  g_autofree char *next = g_strdup (mark);
  for (gsize i = strlen (next); i > 0; i--)
    {
      const char *at = strchr (alphabet, g_ascii_toupper (next[i - 1]));
      if (!at || !g_ascii_isalpha (next[i - 1]))
        return g_strconcat (mark, "1", NULL);
      gboolean small = g_ascii_islower (next[i - 1]);
      char following = at[1] ? at[1] : 'A';
      next[i - 1] = small ? g_ascii_tolower (following) : following;
      if (at[1])
        return g_steal_pointer (&next);
    }
  return g_strconcat ("A", next, NULL);
}

char *
ox_revision_next (const char *mark)
{
  gsize length = strlen (mark), digits = 0;
  while (digits < length && digits < 9 && g_ascii_isdigit (mark[length - digits - 1]))
    digits++;
  if (digits == 0)
    return next_letters (mark);
  g_autofree char *front = g_strndup (mark, length - digits);
  guint64 number = g_ascii_strtoull (mark + length - digits, NULL, 10) + 1;
  return g_strdup_printf ("%s%0*u", front, (int) digits, (guint) number);
}

const char *const *
ox_status_list (void)
{
  return statuses;
}

const char *
ox_status_text (const char *status)
{
  return g_strv_contains (statuses, status) ? _ (status) : status;
}
