/* Oxturn: tests/file/job-texts - job files as text, to be broken at one place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <string.h>
#include "file/job-xml.h"
G_BEGIN_DECLS

#define JOB_START                                                                                                      \
  "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"                                                                       \
  "<job xmlns=\"urn:oxturn:job\" version=\"1.2\" units=\"metres\" north=\"90\">\n"                                     \
  "  <texts>\n"                                                                                                        \
  "    <title>Hall</title>\n"                                                                                          \
  "    <number>OX-7</number>\n"                                                                                        \
  "    <revision>B</revision>\n"                                                                                       \
  "  </texts>\n"
#define JOB_MACHINE                                                                                                    \
  "  <machine class=\"compact\" name=\"Compact\">\n"                                                                   \
  "    <body blast-width=\"0.21\" blast-length=\"0.08\" front=\"0.35\" rear=\"1.25\" left=\"0.19\" right=\"0.19\""     \
  " wall-gap=\"0.02\" min-overlap=\"0.02\" turn-radius=\"0.75\" min-strip=\"0.5\"/>\n"                                 \
  "    <pace travel-speed=\"6\" walk-speed=\"30\" swing-s=\"15\" start-s=\"2\"/>\n"                                    \
  "    <abrasive hopper-kg=\"15\" flow-kg-min=\"20\" loss-share=\"0.0012\"/>\n"                                        \
  "    <hose hose-bore=\"0.076\" hose-length=\"15\" hose-flow=\"327\"/>\n"                                             \
  "    <supply volts=\"120\" phases=\"1\" amperes=\"16\" cord-length=\"30\" cord-mm2=\"3.31\"/>\n"                     \
  "    <wear name=\"Liners\" interval-h=\"120\" run-h=\"3.5\"/>\n"                                                     \
  "    <wear name=\"Liners\" interval-h=\"120\" run-h=\"7\" machine=\"2\"/>\n"                                          \
  "  </machine>\n"                                                                                                     \
  "  <rates edge-m2-per-hour=\"4\"/>\n"
#define JOB_TERMS                                                                                                      \
  "  <calendar first-day=\"2026-09-14\" start=\"06:30\" shift-h=\"9\" break-min=\"30\" setup-min=\"45\" "              \
  "cleanup-min=\"20\" refill-min=\"2.5\" drum-change-min=\"8\" wear-check-min=\"15\" machines=\"2\" "                  \
  "days=\"mon tue sat\" noise-db=\"92.5\" silica-machine=\"18\" silica-hand=\"240\"/>\n"                                                                                           \
  "  <costs currency=\"EUR\" validity=\"30 days\" decimals=\"2\" contingency=\"0.075\">\n"                                                  \
  "    <rate per=\"labour-hour\" name=\"Crew of two\" amount=\"96.50\"/>\n"                                            \
  "    <rate per=\"fixed\" amount=\"-20.0375\"/>\n"                                                                    \
  "  </costs>\n"                                                                                                       \
  "  <outfit shot=\"S330\" circuit=\"20\">\n"                                                                           \
  "    <cord length=\"15\" mm2=\"3.31\"/>\n"                                                                            \
  "    <cord length=\"15.24\" mm2=\"5.26\"/>\n"                                                                         \
  "  </outfit>\n"                                                                                                      \
  "  <patch id=\"P1\" date=\"2026-09-01\" speed=\"6\" flow-kg-min=\"18\" depth-mm=\"0.42\" csp=\"3\" "                 \
  "volume-ml=\"50\" note=\"by the gate\">\n"                                                                           \
  "    <diameter mm=\"198\"/>\n"                                                                                       \
  "    <diameter mm=\"202.5\"/>\n"                                                                                     \
  "    <trial left-mm=\"0.4\" middle-mm=\"0.5\" right-mm=\"0.6\" cage=\"9:00\" cage-to=\"9:10\"/>\n"                    \
  "  </patch>\n"                                                                                                       \
  "  <patch id=\"P2\" speed=\"3.25\"/>\n"
#define JOB_SCOPE                                                                                                      \
  "  <scope>\n"                                                                                                        \
  "    <inclusion key=\"edges\"/>\n"                                                                                   \
  "    <inclusion key=\"patch\" text=\"Two test patches.\"/>\n"                                                        \
  "    <exclusion text=\"The loading bay.\"/>\n"                                                                       \
  "    <assumption key=\"sound\"/>\n"                                                                                  \
  "    <revision mark=\"A\" date=\"2026-08-01\" author=\"O. Marsh\" text=\"First issue\" accepted-by=\"P. Hollow\" "   \
  "accepted-on=\"2026-08-05\"/>\n"                                                                                     \
  "    <revision mark=\"B\" after-sign-off=\"true\"/>\n"                                                               \
  "    <sign-off number=\"OX-7\" revision=\"B\" name=\"P. Hollow\" date=\"2026-08-20\"/>\n"                            \
  "  </scope>\n"                                                                                                       \
  "  <sheets language=\"es\" paper=\"A3\" schedule-paper=\"A4\" tiles=\"Letter\" scale=\"96\" orientation=\"landscape\"/>\n"
#define JOB_ROOM                                                                                                       \
  "  <room id=\"R1\" name=\"Hall\" profile=\"CSP 3\" along-side=\"2\">\n"                                              \
  "    <corner x=\"0\" y=\"0\"/>\n"                                                                                    \
  "    <corner x=\"12\" y=\"0\" side=\"drop\" keep-back=\"0.6\"/>\n"                                                   \
  "    <corner x=\"12\" y=\"8\" side=\"open\"/>\n"                                                                     \
  "    <corner x=\"0\" y=\"8\"/>\n"                                                                                    \
  "  </room>\n"
#define JOB_ITEMS                                                                                                      \
  "  <solid id=\"O1\" name=\"Column\" shape=\"rectangle\" x=\"5\" y=\"3\" width=\"0.5\" depth=\"0.4\" "                \
  "angle=\"30\"/>\n"                                                                                                   \
  "  <pit id=\"O2\" shape=\"circle\" x=\"8\" y=\"3\" radius=\"0.15\" keep-back=\"0.1\"/>\n"                            \
  "  <masked id=\"O3\" shape=\"polygon\">\n"                                                                           \
  "    <corner x=\"2\" y=\"5\"/>\n"                                                                                    \
  "    <corner x=\"3\" y=\"5\"/>\n"                                                                                    \
  "    <corner x=\"3\" y=\"6.125\"/>\n"                                                                                \
  "  </masked>\n"                                                                                                      \
  "  <excluded id=\"X1\" name=\"By others\">\n"                                                                        \
  "    <corner x=\"9\" y=\"5\"/>\n"                                                                                    \
  "    <corner x=\"11\" y=\"5\"/>\n"                                                                                   \
  "    <corner x=\"11\" y=\"7\"/>\n"                                                                                   \
  "  </excluded>\n"                                                                                                    \
  "  <doorway id=\"D1\" name=\"Gate\" x1=\"-0.1\" y1=\"2\" x2=\"-0.1\" y2=\"4\" depth=\"0.2\"/>\n"                     \
  "  <joint id=\"J1\">\n"                                                                                              \
  "    <point x=\"0\" y=\"4\"/>\n"                                                                                     \
  "    <point x=\"12\" y=\"4\"/>\n"                                                                                    \
  "  </joint>\n"                                                                                                       \
  "  <station id=\"S1\" name=\"West\" kind=\"collector\" x=\"1\" y=\"1\" length=\"20\"/>\n"                            \
  "  <station id=\"S2\" kind=\"supply\" x=\"1.0001\" y=\"1\"/>\n"                                                      \
  "  <condition id=\"K1\" name=\"Thick coating\" speed=\"3.5\" coats=\"2\" profile=\"CSP 5\">\n"                       \
  "    <corner x=\"1\" y=\"1\"/>\n"                                                                                    \
  "    <corner x=\"3\" y=\"1\"/>\n"                                                                                    \
  "    <corner x=\"3\" y=\"2\"/>\n"                                                                                    \
  "  </condition>\n"
#define JOB_RECORD                                                                                                     \
  "  <record>\n"                                                                                                       \
  "    <day date=\"2026-09-14\" meter-start=\"1204.5\" meter-end=\"1211.25\" notes=\"cold start\"/>\n"                 \
  "    <day date=\"2026-09-14\" machine=\"2\" meter-start=\"300\" meter-end=\"304.5\" notes=\"new wheel&#10;at noon\"/>\n" \
  "    <day date=\"2026-09-15\"/>\n"                                                                                   \
  "    <strip date=\"2026-09-14\" room=\"R1\" x1=\"1.5\" y1=\"0.21\" x2=\"9.75\" y2=\"0.21\" width=\"0.21\" csp=\"3\" "  \
  "depth-mm=\"0.42\" note=\"by the gate\"/>\n"                                                                         \
  "    <strip date=\"2026-09-15\" room=\"R1\" kind=\"crosswise\" coat=\"2\" x1=\"11\" y1=\"6\" x2=\"11\" y2=\"1\" "      \
  "width=\"0.21\" kept=\"1\"/>\n"                                                                                                 \
  "    <edge date=\"2026-09-15\" room=\"R1\" wkt=\"MULTIPOLYGON (((0 0, 4 0, 4 2, 0 2, 0 0), (1 0.5, 1 1, 2 1, 1 "       \
  "0.5)), ((5 0, 6 0, 6 0.25, 5 0)))\" note=\"ground\"/>\n"                                                            \
  "  </record>\n"
#define JOB_END "</job>\n"
#define JOB_WHOLE JOB_START JOB_MACHINE JOB_TERMS JOB_SCOPE JOB_ROOM JOB_ITEMS JOB_RECORD JOB_END

/* @text with the first @old in it, which must be there, replaced; (transfer full) */
static inline char *
job_text_with (const char *text, const char *old, const char *new)
{
  const char *at = strstr (text, old);
  g_assert_nonnull (at);
  g_autoptr (GString) changed = g_string_new_len (text, at - text);
  g_string_append (changed, new);
  g_string_append (changed, at + strlen (old));
  return g_string_free (g_steal_pointer (&changed), FALSE);
}

/* line of the first @part in @text, from 1 */
static inline guint
job_text_line (const char *text, const char *part)
{
  guint line = 1;
  for (const char *p = text; p < strstr (text, part); p++)
    line += *p == '\n';
  return line;
}

/* The text is read, or the test fails with what was said; (transfer full) */
static inline OxJob *
job_text_read (const char *text)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  gboolean read = ox_job_file_read_data ("floor.oxturn", text, strlen (text), &job, &error);
  g_assert_no_error (error);
  g_assert_true (read);
  return job;
}

/* The text is refused, by a message that says @part and begins with name and @line; 0: any line */
static inline void
job_text_assert_refused (const void *text, gsize length, guint line, const char *part)
{
  g_autoptr (GError) error = NULL;
  OxJob *job = NULL;
  g_assert_false (ox_job_file_read_data ("floor.oxturn", text, length, &job, &error));
  g_assert_null (job);
  g_assert_error (error, OX_FILE_ERROR, OX_FILE_ERROR_INVALID);
  g_autofree char *place = line ? g_strdup_printf ("floor.oxturn:%u: ", line) : g_strdup ("floor.oxturn:");
  if (!g_str_has_prefix (error->message, place) || !strstr (error->message, part))
    g_error ("“%s” does not say “%s … %s”", error->message, place, part);
}

/* One place of a sound job changed, and what is to be said about it: the line that begins with @line, the words of @part. */
typedef struct
{
  const char *old, *new;
  const char *line;
  const char *part;
} JobWrong;

/* job_text_assert_wrong: each of the @n rows, put into JOB_WHOLE, is refused as it says */
static inline void
job_text_assert_wrong (const JobWrong *rows, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *text = job_text_with (JOB_WHOLE, rows[i].old, rows[i].new);
      job_text_assert_refused (text, strlen (text), job_text_line (text, rows[i].line), rows[i].part);
    }
}

G_END_DECLS
