/* Oxturn: file/job-read - a job from its tree of elements.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/job-read.h"
#include "base/shown.h"
#include <glib/gi18n-lib.h>
#include "file/job-known.h"
#include "file/job-schema.h"
#include "file/job-words.h"
#include "file/job-xml.h"
#include "file/read-items.h"
#include "file/read-record.h"
#include "file/read-scope.h"
#include "file/read-terms.h"
#include "job/check.h"
#include "job/machine-fields.h"
#include "job/text.h"

/* Broken rules that one message lists. */
#define MOST_FINDINGS 10

typedef struct
{
  OxReader reader;
  OxJobBuilder *builder;
  GHashTable *lines; /* id -> line + 1; "" for the machine */
} Load;

static const xmlNode *
find_child (const xmlNode *node, const char *name)
{
  for (const xmlNode *child = node->children; child; child = child->next)
    if (ox_known_is_ours (child, name))
      return child;
  return NULL;
}

/* @newer: (out): whether the minor version is newer than ours; @version: (out) (transfer full) */
static gboolean
read_version (const OxReader *reader, const xmlNode *root, gboolean *newer, char **version)
{
  g_autofree char *text = ox_read_text (reader, root, "version", NULL);
  if (!text)
    return FALSE;
  g_auto (GStrv) parts = g_strsplit (text, ".", 3);
  guint64 major, minor;
  if (g_strv_length (parts) != 2 || !g_ascii_string_to_unsigned (parts[0], 10, 1, 9999, &major, NULL)
      || !g_ascii_string_to_unsigned (parts[1], 10, 0, 9999, &minor, NULL) || (parts[1][0] == '0' && parts[1][1]))
    return ox_read_fail (reader, root, _ ("version “%s” of the job: two numbers such as 1.0 are needed"),
                         ox_shown (text).text);
  if (major > OX_JOB_VERSION_MAJOR)
    {
      g_set_error (
          reader->error, OX_FILE_ERROR, OX_FILE_ERROR_NEWER,
          _ ("%s:%ld: this job needs an Oxturn that reads version %s; this one reads versions %d.0 to before %d.0"),
          reader->file_name, xmlGetLineNo (root), text, OX_JOB_VERSION_MAJOR, OX_JOB_VERSION_MAJOR + 1);
      return FALSE;
    }
  *newer = minor > OX_JOB_VERSION_MINOR;
  *version = g_steal_pointer (&text);
  return TRUE;
}

static gboolean
read_texts (const Load *load, const xmlNode *root)
{
  const xmlNode *node = find_child (root, "texts");
  g_autoptr (OxTexts) texts = ox_texts_copy (&(OxTexts){ .title = NULL });
  for (guint i = 0; node && i < OX_TEXT_FIELDS; i++)
    {
      const xmlNode *field = find_child (node, ox_text_fields[i].element);
      if (!field)
        continue;
      xmlChar *content = xmlNodeGetContent (field);
      g_free (*ox_text_field_at (texts, i));
      *ox_text_field_at (texts, i) = g_strdup ((const char *) content);
      xmlFree (content);
      if (strlen (*ox_text_field_at (texts, i)) > OX_TEXT_MOST)
        return ox_read_fail (&load->reader, field, _ ("<%s> has more than %d bytes"), field->name, OX_TEXT_MOST);
    }
  ox_job_builder_set_texts (load->builder, texts);
  return TRUE;
}

static gboolean
read_wear (const Load *load, const xmlNode *node, OxMachine *machine)
{
  static const OxRange ranges[] = {
    { "interval-h", 0, TRUE, OX_WEAR_MOST_H, FALSE, NAN },
    { "run-h", 0, FALSE, OX_WEAR_MOST_H, FALSE, NAN },
  };
  static const OxRange machine_range = { "machine", 1, FALSE, OX_MACHINES_MOST, FALSE, 0 };
  double hours[2];
  guint number;
  if (machine->n_wear == OX_MACHINE_MAX_WEAR)
    return ox_read_fail (&load->reader, node, _ ("the machine has more than %d wear parts"), OX_MACHINE_MAX_WEAR);
  if (!ox_read_numbers (&load->reader, node, ranges, 2, hours)
      || !ox_read_whole (&load->reader, node, &machine_range, &number))
    return FALSE;
  g_autofree char *name = ox_read_text (&load->reader, node, "name", NULL);
  if (!name)
    return FALSE;
  machine->wear[machine->n_wear++] = (OxWearPart){ g_steal_pointer (&name), hours[0], hours[1], number };
  return TRUE;
}

static gboolean
read_figures (const Load *load, const xmlNode *node, OxMachine *machine)
{
  guint n;
  const OxMachineField *fields = ox_machine_fields (&n);
  for (guint i = 0; i < n; i++)
    {
      const OxMachineField *field = &fields[i];
      const xmlNode *group = find_child (node, field->group);
      if (!group)
        return ox_read_fail (&load->reader, node, _ ("the machine has no <%s>; one is needed"), field->group);
      const OxRange range = { field->key, field->least, field->above, field->most, FALSE, NAN };
      if (!ox_read_number (&load->reader, group, &range, ox_machine_field_at (machine, field)))
        return FALSE;
    }
  static const char *const phases[] = { "1", "3", NULL };
  int choice;
  if (!ox_read_choice (&load->reader, find_child (node, "supply"), &(OxChoice){ "phases", phases, -1 }, &choice))
    return FALSE;
  machine->phases = choice == 0 ? 1 : 3;
  return TRUE;
}

static gboolean
read_machine (const Load *load, const xmlNode *root)
{
  const xmlNode *node = find_child (root, "machine");
  if (!node)
    return ox_read_fail (&load->reader, root, _ ("the job has no <machine>; one is needed"));
  g_autoptr (OxMachine) machine = g_new0 (OxMachine, 1);
  machine->class_id = ox_read_text (&load->reader, node, "class", "");
  machine->name = ox_read_text (&load->reader, node, "name", "");
  if (!machine->class_id || !machine->name || !read_figures (load, node, machine))
    return FALSE;
  for (const xmlNode *child = node->children; child; child = child->next)
    if (ox_known_is_ours (child, "wear") && !read_wear (load, child, machine))
      return FALSE;
  g_hash_table_insert (load->lines, g_strdup (""), GSIZE_TO_POINTER (xmlGetLineNo (node) + 1));
  ox_job_builder_set_machine (load->builder, machine);
  return TRUE;
}

static gboolean
read_settings (const Load *load, const xmlNode *root)
{
  static const OxRange north_range = { "north", -360, FALSE, 360, FALSE, 90 };
  static const OxRange rate_range = { "edge-m2-per-hour", 0, TRUE, 10000, FALSE, NAN };
  static const OxRange length_range = { "edge-m-per-hour", 0, TRUE, 10000, FALSE, 0 };
  int units;
  double north;
  if (!ox_read_choice (&load->reader, root, &(OxChoice){ "units", ox_words_units, OX_UNITS_METRES }, &units)
      || !ox_read_number (&load->reader, root, &north_range, &north))
    return FALSE;
  ox_job_builder_set_units (load->builder, (OxUnits) units);
  ox_job_builder_set_north (load->builder, north);
  const xmlNode *node = find_child (root, "rates");
  OxRates rates = { .edge_m_per_hour = 0 };
  if (!node)
    return TRUE;
  if (!ox_read_number (&load->reader, node, &rate_range, &rates.edge_m2_per_hour)
      || !ox_read_number (&load->reader, node, &length_range, &rates.edge_m_per_hour))
    return FALSE;
  ox_job_builder_set_rates (load->builder, rates);
  return TRUE;
}

static gboolean
note_line (const Load *load, const xmlNode *node)
{
  g_autofree char *id = ox_read_text (&load->reader, node, "id", "");
  gsize line = GPOINTER_TO_SIZE (g_hash_table_lookup (load->lines, id));
  if (line > 0)
    return ox_read_fail (&load->reader, node, _ ("id “%s” is that of the item in line %u already"), id,
                         (guint) (line - 1));
  g_hash_table_insert (load->lines, g_steal_pointer (&id), GSIZE_TO_POINTER (xmlGetLineNo (node) + 1));
  return TRUE;
}

static gboolean
read_items (const Load *load, const xmlNode *root)
{
  for (const xmlNode *child = root->children; child; child = child->next)
    if (ox_known_is_item (child) && (!ox_read_item (&load->reader, child, load->builder) || !note_line (load, child)))
      return FALSE;
  return TRUE;
}

static gboolean
read_root (const Load *load, xmlNode *root)
{
  g_autofree char *version = NULL;
  gboolean newer = FALSE;
  if (!ox_known_is_ours (root, "job"))
    return ox_read_fail (&load->reader, root, _ ("<%s> of namespace “%s” stands here; <job> of “%s” is needed"),
                         ox_shown ((const char *) root->name).text,
                         ox_shown (root->ns ? (const char *) root->ns->href : "").text, OX_JOB_NAMESPACE);
  if (!read_version (&load->reader, root, &newer, &version)
      || !ox_known_check (load->reader.file_name, root, newer, load->reader.error))
    return FALSE;
  ox_read_record_sort (root);
  g_autofree char *rest = ox_known_rest (root);
  ox_job_builder_set_extra (load->builder, rest, newer ? version : NULL);
  if (!read_texts (load, root) || !read_machine (load, root) || !read_settings (load, root)
      || !ox_read_terms (&load->reader, root, load->builder) || !ox_read_scope (&load->reader, root, load->builder)
      || !ox_read_record (&load->reader, root, load->builder) || !read_items (load, root))
    return FALSE;
  /* What is left must be a job of our own version. */
  ox_known_strip (root);
  xmlSetProp (root, BAD_CAST "version", BAD_CAST OX_JOB_VERSION);
  return ox_job_schema_check (load->reader.file_name, root->doc, load->reader.error);
}

static gboolean
check_rules (const Load *load, const OxJob *job)
{
  g_autoptr (GPtrArray) findings = ox_job_check (job);
  g_autoptr (GString) message = g_string_new (NULL);
  for (guint i = 0; i < findings->len && i < MOST_FINDINGS; i++)
    {
      const OxFinding *finding = findings->pdata[i];
      gsize line = GPOINTER_TO_SIZE (g_hash_table_lookup (load->lines, finding->id));
      if (finding->kind == OX_FINDING_ERROR)
        g_string_append_printf (message, "%s%s:%" G_GSIZE_FORMAT ": %s", i ? "\n" : "", load->reader.file_name,
                                MAX (line, 2) - 1, finding->text);
    }
  if (message->len == 0)
    return TRUE;
  g_set_error_literal (load->reader.error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID, message->str);
  return FALSE;
}

OxJob *
ox_job_read_tree (const char *file_name, xmlDoc *doc, GError **error)
{
  g_autoptr (GHashTable) lines = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  const Load load = { { file_name, error }, ox_job_builder_new (NULL), lines };
  gboolean read = read_root (&load, xmlDocGetRootElement (doc));
  g_autoptr (OxJob) job = ox_job_builder_end (load.builder);
  if (!read || !check_rules (&load, job))
    return NULL;
  return g_steal_pointer (&job);
}
