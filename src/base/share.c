/* Oxturn: base/share - work shared out over the processors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/share.h"
#include "base/stop.h"
#include "base/words.h"

#define MOST_HELPERS 15

static gint most_threads; /* 0: one a processor */
static gint helpers;      /* at work beside those who called */

typedef struct
{
  OxShareFunc func;
  gpointer data;
  const OxLanguage *language; /* of the texts that pieces make */
  const OxRun *run;           /* (nullable): that pieces belong to */
  gint next;
  gint n;
} Work;

static gpointer
do_pieces (gpointer data)
{
  Work *work = data;
  g_auto (OxWordsScope) words = ox_words_scope (work->language);
  g_auto (OxStopScope) stop = ox_stop_scope (work->run);
  for (gint i = g_atomic_int_add (&work->next, 1); i < work->n; i = g_atomic_int_add (&work->next, 1))
    work->func ((guint) i, work->data);
  return NULL;
}

/* Takes one of the places for helpers; FALSE when all are taken. */
static gboolean
take_place (void)
{
  gint most = g_atomic_int_get (&most_threads);
  if (most == 0)
    most = (gint) g_get_num_processors ();
  for (gint taken = g_atomic_int_get (&helpers); taken < most - 1; taken = g_atomic_int_get (&helpers))
    if (g_atomic_int_compare_and_exchange (&helpers, taken, taken + 1))
      return TRUE;
  return FALSE;
}

void
ox_share (guint n, OxShareFunc func, gpointer data)
{
  Work work = { func, data, ox_words_language (), ox_stop_run (), 0, (gint) n };
  GThread *threads[MOST_HELPERS];
  guint started = 0;
  while (started + 1 < n && started < MOST_HELPERS && take_place ())
    threads[started++] = g_thread_new ("share", do_pieces, &work);
  do_pieces (&work);
  for (guint i = 0; i < started; i++)
    {
      g_thread_join (threads[i]);
      g_atomic_int_add (&helpers, -1);
    }
}

void
ox_share_set_threads (guint threads)
{
  g_atomic_int_set (&most_threads, (gint) threads);
}
