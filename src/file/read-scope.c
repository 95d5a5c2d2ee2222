/* Oxturn: file/read-scope - scope of work and setup of the sheets from their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-scope.h"
#include "base/shown.h"
#include "base/words.h"
#include "file/job-known.h"
#include "file/job-words.h"

/* What is read so far; the strings are the chunk's. */
typedef struct
{
  GStringChunk *chunk;
  GArray *lines[OX_SCOPE_LISTS]; /* of OxScopeLine */
  GArray *revisions;             /* of OxRevision */
  OxSignOff sign_off;
} Draft;

static gboolean
take (Draft *draft, char *text, char **out)
{
  g_autofree char *owned = text;
  if (!owned)
    return FALSE;
  *out = g_string_chunk_insert (draft->chunk, owned);
  return TRUE;
}

static gboolean
read_text (const OxReader *reader, const xmlNode *node, const char *key, Draft *draft, char **out)
{
  return take (draft, ox_read_text (reader, node, key, ""), out);
}

static gboolean
read_date (const OxReader *reader, const xmlNode *node, const char *key, Draft *draft, char **out)
{
  return take (draft, ox_read_date (reader, node, key, ""), out);
}

static gboolean
read_line (const OxReader *reader, const xmlNode *node, OxScopeList list, Draft *draft)
{
  OxScopeLine line;
  if (draft->lines[list]->len == OX_SCOPE_LINES_MOST)
    return ox_read_fail (reader, node, _ ("there are more than %d <%s>"), OX_SCOPE_LINES_MOST, node->name);
  if (!read_text (reader, node, "key", draft, &line.key) || !read_text (reader, node, "text", draft, &line.text))
    return FALSE;
  if (strlen (line.text) > OX_SCOPE_LINE_BYTES_MOST)
    return ox_read_fail (reader, node, _ ("text of %s has more than %d bytes"), node->name, OX_SCOPE_LINE_BYTES_MOST);
  if (ox_scope_line_text (list, &line)[0] == '\0')
    return ox_read_fail (reader, node, _ ("key “%s” of %s is none that is known; a text is needed"),
                         ox_shown (line.key).text, node->name);
  g_array_append_val (draft->lines[list], line);
  return TRUE;
}

static gboolean
read_revision (const OxReader *reader, const xmlNode *node, Draft *draft)
{
  static const char *const truths[] = { "false", "true", NULL };
  OxRevision row;
  if (draft->revisions->len == OX_REVISIONS_MOST)
    return ox_read_fail (reader, node, _ ("there are more than %d <%s>"), OX_REVISIONS_MOST, node->name);
  if (!take (draft, ox_read_text (reader, node, "mark", NULL), &row.mark)
      || !read_date (reader, node, "date", draft, &row.date) || !read_text (reader, node, "author", draft, &row.author)
      || !read_text (reader, node, "text", draft, &row.text)
      || !ox_read_choice (reader, node, &(OxChoice){ "after-sign-off", truths, 0 }, &row.after_sign_off)
      || !read_text (reader, node, "accepted-by", draft, &row.accepted_by)
      || !read_date (reader, node, "accepted-on", draft, &row.accepted_on))
    return FALSE;
  for (guint i = 0; i < draft->revisions->len; i++)
    if (g_str_equal (g_array_index (draft->revisions, OxRevision, i).mark, row.mark))
      return ox_read_fail (reader, node, _ ("mark “%s” is that of another revision already"), ox_shown (row.mark).text);
  g_array_append_val (draft->revisions, row);
  return TRUE;
}

static gboolean
read_sign_off (const OxReader *reader, const xmlNode *node, Draft *draft)
{
  OxSignOff *sign_off = &draft->sign_off;
  return read_text (reader, node, "number", draft, &sign_off->number)
         && read_text (reader, node, "revision", draft, &sign_off->revision)
         && take (draft, ox_read_text (reader, node, "name", NULL), &sign_off->name)
         && read_date (reader, node, "date", draft, &sign_off->date)
         && (sign_off->name[0]
             || ox_read_fail (reader, node, _ ("name of %s is empty; who signed is needed"), node->name));
}

static gboolean
read_children (const OxReader *reader, const xmlNode *node, Draft *draft)
{
  for (const xmlNode *child = node->children; child; child = child->next)
    {
      for (OxScopeList list = 0; list < OX_SCOPE_LISTS; list++)
        if (ox_known_is_ours (child, ox_words_scope_list[list]) && !read_line (reader, child, list, draft))
          return FALSE;
      if (ox_known_is_ours (child, "revision") && !read_revision (reader, child, draft))
        return FALSE;
      if (ox_known_is_ours (child, "sign-off") && !read_sign_off (reader, child, draft))
        return FALSE;
    }
  return TRUE;
}

static gboolean
read_scope (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  g_autoptr (GStringChunk) chunk = g_string_chunk_new (1024);
  g_autoptr (GArray) revisions = g_array_new (FALSE, FALSE, sizeof (OxRevision));
  Draft draft = { .chunk = chunk, .revisions = revisions };
  OxScope made = { .n_revisions = 0 };
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    draft.lines[list] = g_array_new (FALSE, FALSE, sizeof (OxScopeLine));
  gboolean read = read_children (reader, node, &draft);
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    {
      made.n_lines[list] = draft.lines[list]->len;
      made.lines[list] = (OxScopeLine *) (gpointer) draft.lines[list]->data;
    }
  made.n_revisions = revisions->len;
  made.revisions = (OxRevision *) (gpointer) revisions->data;
  made.sign_off = draft.sign_off;
  if (read)
    {
      g_autoptr (OxScope) scope = ox_scope_new (&made);
      ox_job_builder_set_scope (builder, scope);
    }
  for (guint list = 0; list < OX_SCOPE_LISTS; list++)
    g_array_unref (draft.lines[list]);
  return read;
}

/* @out: (out) (transfer full) */
static gboolean
read_paper (const OxReader *reader, const xmlNode *node, const char *key, char **out)
{
  int paper;
  if (!xmlHasNsProp (node, BAD_CAST key, NULL))
    {
      *out = NULL;
      return TRUE;
    }
  if (!ox_read_choice (reader, node, &(OxChoice){ key, ox_setup_papers, -1 }, &paper))
    return FALSE;
  *out = g_strdup (ox_setup_papers[paper]);
  return TRUE;
}

static gboolean
read_language (const OxReader *reader, const xmlNode *node, char **out)
{
  OxLanguage language;
  *out = ox_read_text (reader, node, "language", "");
  if (!*out)
    return FALSE;
  return !**out || ox_language_find (*out, &language)
         || ox_read_fail (reader, node, _ ("language “%s” of %s is none that sheets can have here"),
                          ox_shown (*out).text, node->name);
}

static gboolean
read_setup (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  static const OxRange scale_range = { "scale", 1, FALSE, OX_SETUP_SCALE_MOST, FALSE, 0 };
  g_autofree char *language = NULL, *paper = NULL, *schedule_paper = NULL, *tiles = NULL;
  OxSheetSetup draft = { .language = NULL };
  int orientation;
  if (!read_language (reader, node, &language) || !read_paper (reader, node, "paper", &paper)
      || !read_paper (reader, node, "schedule-paper", &schedule_paper) || !read_paper (reader, node, "tiles", &tiles)
      || !ox_read_number (reader, node, &scale_range, &draft.scale)
      || !ox_read_choice (reader, node, &(OxChoice){ "orientation", ox_words_orientation, OX_ORIENTATION_AUTO },
                          &orientation))
    return FALSE;
  draft.language = language;
  draft.paper = paper;
  draft.schedule_paper = schedule_paper;
  draft.tiles = tiles;
  draft.orientation = (OxOrientation) orientation;
  g_autoptr (OxSheetSetup) setup = ox_sheet_setup_new (&draft);
  ox_job_builder_set_setup (builder, setup);
  return TRUE;
}

gboolean
ox_read_scope (const OxReader *reader, const xmlNode *root, OxJobBuilder *builder)
{
  for (const xmlNode *child = root->children; child; child = child->next)
    {
      if (ox_known_is_ours (child, "scope") && !read_scope (reader, child, builder))
        return FALSE;
      if (ox_known_is_ours (child, "sheets") && !read_setup (reader, child, builder))
        return FALSE;
    }
  return TRUE;
}
