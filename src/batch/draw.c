/* Oxturn: batch/draw - oxturn-batch draw: the sheets of a job as SVG or PDF.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "batch/command.h"
#include "base/words.h"
#include "file/job-words.h"
#include "file/job-xml.h"
#include "paint/export.h"
#include "sheets/options.h"

const char ox_usage_draw[]
    = "oxturn-batch draw JOB --sheet scope|quote|crew|setup|schedule|days|all --paper A3 --schedule-paper A4 "
      "--orientation auto|portrait|landscape --scale auto|1:100|'1/8in' "
      "--language en|es|de --tiles A4 -o OUT.svg|OUT.pdf";

typedef struct
{
  char *sheet;
  char *paper;
  char *schedule_paper;
  char *orientation;
  char *scale;
  char *language;
  char *tiles;
  char *out;
  OxLanguage found; /* what @language names */
} Wishes;

static void
wishes_clear (Wishes *wishes)
{
  g_free (wishes->sheet);
  g_free (wishes->paper);
  g_free (wishes->schedule_paper);
  g_free (wishes->orientation);
  g_free (wishes->scale);
  g_free (wishes->language);
  g_free (wishes->tiles);
  g_free (wishes->out);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Wishes, wishes_clear)

static char *
paper_names (void)
{
  g_autoptr (GString) names = g_string_new (NULL);
  for (guint i = 0; i < ox_paper_get_count (); i++)
    g_string_append_printf (names, "%s%s", i ? ", " : "", ox_paper_get (i)->name);
  return g_string_free (g_steal_pointer (&names), FALSE);
}

static char *
language_tags (void)
{
  g_autoptr (GString) tags = g_string_new (NULL);
  for (guint i = 0; i < ox_language_get_count (); i++)
    g_string_append_printf (tags, "%s%s", i ? ", " : "", ox_language_get (i).tag);
  return g_string_free (g_steal_pointer (&tags), FALSE);
}

/* (transfer full) (nullable): what is wrong with the language */
static char *
read_language (Wishes *wishes, OxSheetOptions *options)
{
  g_autofree char *tags = language_tags ();
  if (!wishes->language)
    return NULL;
  options->language = &wishes->found;
  return ox_language_find (wishes->language, &wishes->found)
             ? NULL
             : g_strdup_printf (_ ("“%s” is none of the languages %s"), wishes->language, tags);
}

/* (transfer full) (nullable): what is wrong with the orientation */
static char *
read_orientation (const char *name, OxOrientation *out)
{
  g_autofree char *names = g_strjoinv (", ", (char **) ox_words_orientation);
  for (guint i = 0; name && ox_words_orientation[i]; i++)
    if (g_str_equal (name, ox_words_orientation[i]))
      {
        *out = (OxOrientation) i;
        return NULL;
      }
  return name ? g_strdup_printf (_ ("“%s” is none of the orientations %s"), name, names) : NULL;
}

/* (transfer full) (nullable): what is wrong with the paper @name, which may be NULL */
static char *
read_paper (const char *name, const OxPaper **out)
{
  *out = name ? ox_paper_find (name) : NULL;
  if (!name || *out)
    return NULL;
  g_autofree char *names = paper_names ();
  return g_strdup_printf (_ ("“%s” is none of the papers %s"), name, names);
}

/* (transfer full) (nullable): what is wrong with the wishes, NULL when @options has them */
static char *
read_wishes (Wishes *wishes, OxSheetOptions *options)
{
  if (!wishes->out)
    return g_strdup (_ ("-o is missing"));
  if (!ox_export_knows (wishes->out))
    return g_strdup_printf (_ ("“%s” ends neither in .svg nor in .pdf"), wishes->out);
  if (wishes->sheet && !ox_sheet_kinds_parse (wishes->sheet, &options->which))
    return g_strdup_printf (_ ("“%s” is no sheet"), wishes->sheet);
  if (wishes->scale && !ox_scale_parse (wishes->scale, &options->scale))
    return g_strdup_printf (_ ("“%s” is no scale"), wishes->scale);
  char *wrong = read_paper (wishes->paper, &options->paper);
  if (!wrong)
    wrong = read_paper (wishes->schedule_paper, &options->schedule_paper);
  if (!wrong)
    wrong = read_paper (wishes->tiles, &options->tiles);
  if (!wrong)
    wrong = read_orientation (wishes->orientation, &options->orientation);
  return wrong ? wrong : read_language (wishes, options);
}

/* What was not wished for is as the job has it. */
static void
add_setup (const Wishes *wishes, const OxJob *job, OxLanguage *language, OxSheetOptions *options)
{
  const OxSheetOptions wished = *options;
  ox_sheet_options_take (options, job, language);
  if (wishes->paper)
    options->paper = wished.paper;
  if (wishes->schedule_paper)
    options->schedule_paper = wished.schedule_paper;
  if (wishes->orientation)
    options->orientation = wished.orientation;
  if (wishes->scale)
    options->scale = wished.scale;
  if (wishes->tiles)
    options->tiles = wished.tiles;
  if (wishes->language)
    options->language = wished.language;
}

static OxExit
draw_job (const char *path, const Wishes *wishes, OxSheetOptions *options)
{
  OxLanguage language;
  g_autoptr (OxJob) job = NULL;
  g_autoptr (OxPlan) plan = NULL;
  g_autoptr (OxPageSet) set = NULL;
  g_autoptr (GError) error = NULL;
  if (!ox_job_file_read (path, &job, &error))
    return ox_exit_failed (error);
  add_setup (wishes, job, &language, options);
  plan = ox_plan_new (job, NULL, &error);
  set = plan ? ox_sheets_new (job, plan, options, &error) : NULL;
  if (!set || !ox_export_write (set, wishes->out, NULL, &error))
    return ox_exit_failed (error);
  return OX_EXIT_DONE;
}

OxExit
ox_command_draw (int argc, char **argv)
{
  g_auto (Wishes) wishes = { .out = NULL };
  const char *path;
  const GOptionEntry entries[] = {
    { "sheet", 0, 0, G_OPTION_ARG_STRING, &wishes.sheet, NULL, NULL },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &wishes.paper, NULL, NULL },
    { "schedule-paper", 0, 0, G_OPTION_ARG_STRING, &wishes.schedule_paper, NULL, NULL },
    { "orientation", 0, 0, G_OPTION_ARG_STRING, &wishes.orientation, NULL, NULL },
    { "scale", 0, 0, G_OPTION_ARG_STRING, &wishes.scale, NULL, NULL },
    { "language", 0, 0, G_OPTION_ARG_STRING, &wishes.language, NULL, NULL },
    { "tiles", 0, 0, G_OPTION_ARG_STRING, &wishes.tiles, NULL, NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wishes.out, NULL, NULL },
    G_OPTION_ENTRY_NULL,
  };
  OxSheetOptions options = OX_SHEET_OPTIONS_INIT;
  if (!ox_command_parse (&argc, &argv, entries, ox_usage_draw, &path))
    return OX_EXIT_USAGE;
  g_autofree char *wrong = path ? read_wishes (&wishes, &options) : g_strdup (_ ("JOB is missing"));
  return wrong ? ox_exit_usage (wrong, ox_usage_draw) : draw_job (path, &wishes, &options);
}
