/* Oxturn: tests/support/wait - waiting for something with a limit.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

static inline gboolean
ox_wait_tick (gpointer data)
{
  (void) data;
  return G_SOURCE_CONTINUE;
}

/* OX_WAIT_FOR: runs the main loop until @condition holds; fails after 30 s. The loop is woken now and then, since what a worker thread
 * does wakes nobody. */
#define OX_WAIT_FOR(condition)                                                                                                             \
  G_STMT_START                                                                                                                             \
  {                                                                                                                                        \
    gint64 late_ = g_get_monotonic_time () + 30 * G_TIME_SPAN_SECOND;                                                                      \
    guint id_ = g_timeout_add (5, ox_wait_tick, NULL);                                                                                     \
    while (!(condition) && g_get_monotonic_time () < late_)                                                                                \
      g_main_context_iteration (NULL, TRUE);                                                                                               \
    g_source_remove (id_);                                                                                                                 \
    g_assert_true (condition);                                                                                                             \
  }                                                                                                                                        \
  G_STMT_END

G_END_DECLS
