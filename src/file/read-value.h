/* Oxturn: file/read-value - values of attributes, or a sentence that says where, what was found and what is allowed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
#include <libxml/tree.h>
G_BEGIN_DECLS

typedef struct
{
  const char *file_name; /* stands for the file in messages */
  GError **error;
} OxReader;

typedef struct
{
  const char *key;      /* name of the attribute */
  double least;         /* smallest value allowed ... */
  gboolean above;       /* ... or, when TRUE, to be exceeded */
  double most;          /* largest value allowed */
  gboolean snap;        /* whether it is a length that is stored on OX_GRID */
  double otherwise;     /* value when the attribute is missing; NAN: it must be there */
} OxRange;

typedef struct
{
  const char *key;          /* name of the attribute */
  const char *const *words; /* NULL-ended */
  int otherwise;            /* index when the attribute is missing; -1: it must be there */
} OxChoice;

/* ox_read_fail: sets OX_FILE_ERROR_INVALID with file and line; Returns: FALSE */
gboolean ox_read_fail (const OxReader *reader, const xmlNode *node, const char *format, ...) G_GNUC_PRINTF (3, 4);

/* ox_read_text: (transfer full): the attribute's text, @otherwise when it is missing; NULL, with an error, when both are or when it has more
 * than OX_TEXT_MOST bytes */
char *ox_read_text (const OxReader *reader, const xmlNode *node, const char *key, const char *otherwise) G_GNUC_WARN_UNUSED_RESULT;

/* ox_read_number: @out: (out): a number that @range allows */
gboolean ox_read_number (const OxReader *reader, const xmlNode *node, const OxRange *range, double *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_read_numbers: @out: (out): @n values, one for each of @ranges */
gboolean ox_read_numbers (const OxReader *reader, const xmlNode *node, const OxRange *ranges, guint n,
                          double *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_read_choice: @out: (out): index in the words of @choice */
gboolean ox_read_choice (const OxReader *reader, const xmlNode *node, const OxChoice *choice, int *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_read_whole: @out: (out): a whole number that @range allows */
gboolean ox_read_whole (const OxReader *reader, const xmlNode *node, const OxRange *range, guint *out) G_GNUC_WARN_UNUSED_RESULT;

/* ox_read_date: (transfer full): a day that there is, or @otherwise; NULL, with an error, when it is none, or missing while @otherwise is NULL */
char *ox_read_date (const OxReader *reader, const xmlNode *node, const char *key, const char *otherwise) G_GNUC_WARN_UNUSED_RESULT;

/* ox_read_refuse_attribute: FALSE with an error when @node has it; @why completes "attribute ... : " */
gboolean ox_read_refuse_attribute (const OxReader *reader, const xmlNode *node, const char *key,
                                   const char *why) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
