/* Oxturn: file/read-traced - traced plans from and to their elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/read-traced.h"
#include "base/shown.h"
#include <glib/gi18n-lib.h>
#include <string.h>
#include "file/job-known.h"
#include "file/job-words.h"
#include "file/picture.h"
#include "job/text.h"

#define PART_BYTES                                                                                                     \
  (3 * 1024 * 1024) /* of the file in one part; 4 MB of base64, and a multiple of 3, so that only the last is padded   \
                     */

/* FALSE for anything that is no base64: g_base64_decode_step() would pass over it. */
static gboolean
is_base64 (const char *text)
{
  return text[strspn (text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/= \t\r\n")] == '\0';
}

static gboolean
read_part (const OxReader *reader, const xmlNode *part, GByteArray *bytes)
{
  xmlChar *text = xmlNodeGetContent (part);
  gboolean sound = is_base64 ((const char *) text);
  gsize length = strlen ((const char *) text);
  if (sound)
    {
      g_autofree guchar *decoded = g_malloc (length / 4 * 3 + 3);
      int state = 0;
      guint save = 0;
      length = g_base64_decode_step ((const char *) text, length, decoded, &state, &save);
      g_byte_array_append (bytes, decoded, (guint) length);
    }
  xmlFree (text);
  return sound || ox_read_fail (reader, part, _ ("a part of a traced plan holds something else than base64"));
}

static GBytes *
read_parts (const OxReader *reader, const xmlNode *node)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  for (const xmlNode *child = node->children; child; child = child->next)
    if (ox_known_is_ours (child, "part") && !read_part (reader, child, bytes))
      return NULL;
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

static gboolean
check_picture (const OxReader *reader, const xmlNode *node, GBytes *data, OxTracedKind kind)
{
  g_autoptr (GError) error = NULL;
  OxPictureHead head;
  if (!ox_picture_sniff (data, &head, &error))
    return ox_read_fail (reader, node, "%s", error->message);
  return head.kind == kind
         || ox_read_fail (reader, node, _ ("the parts of this traced plan hold %s; %s is needed"),
                          ox_words_traced[head.kind], ox_words_traced[kind]);
}

static gboolean
read_switches (const OxReader *reader, const xmlNode *node, OxTracedPlan *draft)
{
  static const char *const answers[] = { "no", "yes", NULL };
  int kind, locked, hidden;
  if (!ox_read_choice (reader, node, &(OxChoice){ "kind", ox_words_traced, -1 }, &kind)
      || !ox_read_choice (reader, node, &(OxChoice){ "locked", answers, 0 }, &locked)
      || !ox_read_choice (reader, node, &(OxChoice){ "hidden", answers, 0 }, &hidden))
    return FALSE;
  draft->kind = (OxTracedKind) kind;
  draft->locked = locked;
  draft->hidden = hidden;
  return TRUE;
}

static gboolean
read_place (const OxReader *reader, const xmlNode *node, OxTracedPlan *draft)
{
  static const OxRange ranges[] = {
    { "x", -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN },
    { "y", -OX_COORD_MAX, FALSE, OX_COORD_MAX, TRUE, NAN },
    { "width", 0, TRUE, OX_COORD_MAX, TRUE, NAN },
    { "depth", 0, TRUE, OX_COORD_MAX, TRUE, NAN },
    { "angle", -360, FALSE, 360, FALSE, 0 },
    { "strength", OX_TRACED_MIN_STRENGTH, FALSE, 1, FALSE, 1 },
    { "page", 1, FALSE, OX_TRACED_MAX_PAGE, FALSE, 1 },
  };
  double v[G_N_ELEMENTS (ranges)];
  if (!ox_read_numbers (reader, node, ranges, G_N_ELEMENTS (ranges), v))
    return FALSE;
  draft->middle = (OxPoint){ v[0], v[1] };
  draft->width = v[2];
  draft->depth = v[3];
  draft->angle_deg = v[4];
  draft->strength = v[5];
  draft->page = (guint) v[6];
  return v[6] == floor (v[6]) || ox_read_fail (reader, node, _ ("page of a traced plan: 1, 2, 3 … is needed"));
}

gboolean
ox_read_traced (const OxReader *reader, const xmlNode *node, OxJobBuilder *builder)
{
  OxTracedPlan draft = { .kind = OX_TRACED_PNG };
  g_autofree char *id = ox_read_text (reader, node, "id", NULL);
  g_autofree char *name = id ? ox_read_text (reader, node, "name", "") : NULL;
  g_autofree char *rest = ox_known_rest (node);
  if (!name)
    return FALSE;
  if (!ox_text_is_id (id))
    return ox_read_fail (reader, node,
                         _ ("id “%s” of %s: letters, digits, “-” and “_” are allowed, a letter first, 64 at most"),
                         ox_shown (id).text, node->name);
  if (!read_switches (reader, node, &draft) || !read_place (reader, node, &draft))
    return FALSE;
  g_autoptr (GBytes) data = read_parts (reader, node);
  if (!data || !check_picture (reader, node, data, draft.kind))
    return FALSE;
  draft.id = id;
  draft.name = name;
  draft.data = data;
  draft.extra = rest;
  g_autoptr (OxTracedPlan) traced = ox_traced_plan_new (&draft);
  ox_job_builder_put_traced (builder, traced);
  return TRUE;
}

/* Lines of 72 signs, so that an editor can still show the file. */
void
ox_write_traced_parts (xmlNode *node, GBytes *data)
{
  gsize n;
  const guchar *bytes = g_bytes_get_data (data, &n);
  for (gsize at = 0; at < n; at += PART_BYTES)
    {
      gsize part = MIN (n - at, PART_BYTES);
      g_autofree char *text = g_malloc (part / 3 * 4 + part / 3 * 4 / 72 + 16);
      int state = 0, save = 0;
      gsize length = g_base64_encode_step (bytes + at, part, TRUE, text, &state, &save);
      length += g_base64_encode_close (TRUE, text + length, &state, &save);
      xmlNode *element = xmlNewChild (node, node->ns, BAD_CAST "part", NULL);
      xmlAddChild (element, xmlNewTextLen (BAD_CAST text, (int) length));
    }
}
