/* Oxturn: job/scope - what client and contractor agree on besides the floor: lists, revisions, sign-off.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An immutable counted value, made and changed as those of job/terms.h. A job always has one.
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

#define OX_SCOPE_LINES_MOST 200     /* of one list */
#define OX_SCOPE_LINE_BYTES_MOST 2000
#define OX_REVISIONS_MOST 500

typedef enum { OX_SCOPE_INCLUDED, OX_SCOPE_EXCLUDED, OX_SCOPE_ASSUMED } OxScopeList;
#define OX_SCOPE_LISTS 3

typedef struct
{
  char *key;  /* of a line of ours, see ox_scope_ours_list(); "" none */
  char *text; /* the user's words; "" those of ours, in the language of the sheet */
} OxScopeLine;

typedef struct
{
  char *mark;              /* "A"; unique */
  char *date;              /* YYYY-MM-DD, "" none */
  char *author;
  char *text;              /* what changed; "" with @after_sign_off: that it did */
  gboolean after_sign_off; /* raised by a change of a drawing that was signed */
  char *accepted_by;       /* who had signed it, "" nobody; never the present revision, whose sign-off stands below */
  char *accepted_on;       /* YYYY-MM-DD */
} OxRevision;

typedef struct
{
  char *number;   /* of the drawing that was signed */
  char *revision;
  char *name;     /* who signed, "" nobody yet */
  char *date;     /* YYYY-MM-DD */
} OxSignOff;

typedef struct
{
  guint n_lines[OX_SCOPE_LISTS];
  OxScopeLine *lines[OX_SCOPE_LISTS];
  guint n_revisions;
  OxRevision *revisions; /* oldest first */
  OxSignOff sign_off;
} OxScope;

OxScope *ox_scope_new (const OxScope *scope) G_GNUC_WARN_UNUSED_RESULT;
OxScope *ox_scope_ref (const OxScope *scope);
void ox_scope_unref (const OxScope *scope);

/* ox_scope_default: the lines of ours that a new job has, no revision, not signed; (transfer full) */
OxScope *ox_scope_default (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_scope_equal: lists, revisions and sign-off */
gboolean ox_scope_equal (const OxScope *a, const OxScope *b);

/* ox_scope_same_content: lists and revisions */
gboolean ox_scope_same_content (const OxScope *a, const OxScope *b);

/* ox_scope_is_signed: whether somebody signed the present revision */
gboolean ox_scope_is_signed (const OxScope *scope);

/* One line of data/scope-lines.h. */
typedef struct
{
  const char *key;
  OxScopeList list;
  gboolean usual;   /* a new job has it */
  const char *text; /* English */
} OxScopeOurs;

const OxScopeOurs *ox_scope_ours_list (guint *n);              /* @n: (out) */
const OxScopeOurs *ox_scope_ours_find (OxScopeList list, const char *key); /* (nullable) */

/* ox_scope_line_text, ox_revision_text: as it is shown; (transfer none) */
const char *ox_scope_line_text (OxScopeList list, const OxScopeLine *line);
const char *ox_revision_text (const OxRevision *revision);

/* ox_revision_next: the mark after @mark: letters leave out I and O, which look like figures, figures count on, "" is followed by "A";
 * (transfer full) */
char *ox_revision_next (const char *mark) G_GNUC_WARN_UNUSED_RESULT;

/* ox_status_list: words for the status of a drawing, English, NULL-ended; they stand in files as they are and are translated where shown */
const char *const *ox_status_list (void);

/* ox_status_text: @status translated where it is one of those, else as it is; (transfer none) */
const char *ox_status_text (const char *status);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxScope, ox_scope_unref)
G_END_DECLS
