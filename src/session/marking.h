/* Oxturn: session/marking - marking what is done, as edits of a session.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * For a canvas: ox_marking_strip_at() or ox_marking_edge_at() under the pointer gives a number; a click marks "17", a click with "up to here" "-17",
 * from one click to another "17-40". For a panel: the same texts as somebody types them. Whether something is done already says OxStrip.done and
 * OxEdge.done of the session's plan; ox_progress_new() of that plan (record/progress.h) has what a panel shows, ox_wear_now() the wear parts.
 *
 * Numbers are those of ox_session_find_plan(). Each edit is one step of undo and asks for a plan, in which the numbers stay where only marks
 * changed. Each returns FALSE with @error, and changes nothing, where @which cannot be read or names what is not there (OX_WHICH_ERROR), where a mark breaks
 * a rule such as a date that is none (OX_JOB_ERROR), and where there is no plan yet (OX_JOB_ERROR_NO_ITEM).
 */
#pragma once
#include "record/mark.h"
#include "record/which.h"
#include "session/session.h"
G_BEGIN_DECLS

/* @which: as ox_which_strips() and ox_which_edges() read it */
gboolean ox_marking_mark_strips (OxSession *session, const char *which, const OxMark *mark, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_marking_unmark_strips (OxSession *session, const char *which, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_marking_mark_edges (OxSession *session, const char *which, const OxMark *mark, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_marking_unmark_edges (OxSession *session, const char *which, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_marking_set_day: meter and notes of a day, needs no plan; ox_marking_remove_day: takes them away, marks stay */
gboolean ox_marking_set_day (OxSession *session, const OxRecordDay *day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean ox_marking_remove_day (OxSession *session, const char *date, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* ox_marking_strip_at: number of the strip that covers @p, of several one to be done before one done, then the nearest; 0: none */
guint ox_marking_strip_at (const OxPlan *plan, OxPoint p);

/* ox_marking_edge_at: number of the edge area at @p; 0: none */
guint ox_marking_edge_at (const OxPlan *plan, OxPoint p);

G_END_DECLS
