/* Oxturn: app/traced/store - the pictures of a job's traced plans, decoded off the main thread and kept while the job holds them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/traced/picture.h"
#include "job/job.h"
G_BEGIN_DECLS

/* What is to be seen of them now, the lowest first: an immutable counted value that any thread may paint. */
typedef struct _OxTracedSet OxTracedSet;

OxTracedSet *ox_traced_set_ref (const OxTracedSet *set);
void ox_traced_set_unref (const OxTracedSet *set);

/* ox_traced_set_paint: see ox_traced_picture_paint() */
void ox_traced_set_paint (const OxTracedSet *set, cairo_t *cr, const OxView *view, gboolean night);

/* ox_traced_read: decodes in a thread; main thread
 * ox_traced_read_finish: Returns: (transfer full): as ox_traced_picture_new() */
void ox_traced_read (GBytes *data, guint page, GCancellable *cancel, GAsyncReadyCallback done, gpointer user_data);
OxTracedPicture *ox_traced_read_finish (GAsyncResult *result, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct _OxTracedStore OxTracedStore;

/* Main thread only. @failed: with a sentence of which traced plan cannot be shown and why; each file is tried once. */
typedef struct
{
  void (*changed) (gpointer user_data); /* ox_traced_store_get_set() gives another one */
  void (*failed) (const char *why, gpointer user_data);
  gpointer user_data;
} OxTracedListener;

OxTracedStore *ox_traced_store_new (const OxTracedListener *listener) G_GNUC_WARN_UNUSED_RESULT;
void ox_traced_store_free (OxTracedStore *store); /* stops what is under way; the listener hears no more */

/* ox_traced_store_set_job: reads what is new in @job and lets go of what is not in it any more */
void ox_traced_store_set_job (OxTracedStore *store, const OxJob *job);

/* ox_traced_store_add: a picture that is there already, for the next job that has it */
void ox_traced_store_add (OxTracedStore *store, GBytes *data, guint page, const OxTracedPicture *picture);

const OxTracedSet *ox_traced_store_get_set (OxTracedStore *store);  /* of the job set last, as far as it is read */
gboolean ox_traced_store_is_settled (OxTracedStore *store);         /* nothing is being read */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (OxTracedStore, ox_traced_store_free)
G_END_DECLS
