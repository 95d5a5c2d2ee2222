/* Oxturn: session/crash-copy - work that is not saved yet, kept for the case that the program or the computer stops.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "session/crash-copy.h"

#include "file/job-xml.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/file.h>
#include <unistd.h>

#define GROUP "copy"
#define SUFFIX ".work"
#define LOCK_SUFFIX ".lock"

/* Stands between the main thread, which removes a copy, and the worker, which may be about to write it. */
typedef struct
{
  GMutex mutex;
  gboolean closed;
} Gate;

typedef struct
{
  Gate *gate;
  char *file;
  char *path;  /* (nullable) */
  char *stamp; /* (nullable) */
  OxJob *job;
} Write;

struct _OxCrashCopy
{
  GObject parent_instance;

  /* Owned */
  char *folder;
  char *file;     /* (nullable) until the first write */
  Gate *gate;     /* (nullable) of that file */
  int lock;       /* held as long as the copy may be written, -1 before */
  Write *pending; /* (nullable) */

  gboolean writing;
  gboolean told; /* that it cannot be written */
};

G_DEFINE_FINAL_TYPE (OxCrashCopy, ox_crash_copy, G_TYPE_OBJECT)

static void start_write (OxCrashCopy *self, Write *write);

static void
gate_clear (gpointer data)
{
  g_mutex_clear (&((Gate *) data)->mutex);
}

static void
gate_unref (Gate *gate)
{
  g_atomic_rc_box_release_full (gate, gate_clear);
}

static void
write_free (gpointer data)
{
  Write *write = data;

  gate_unref (write->gate);
  g_free (write->file);
  g_free (write->path);
  g_free (write->stamp);
  ox_job_unref (write->job);
  g_free (write);
}

char *
ox_crash_copy_default_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "oxturn", NULL);
}

static char *
lock_name (const char *file)
{
  g_autofree char *stem = g_strndup (file, strlen (file) - strlen (SUFFIX));

  return g_strconcat (stem, LOCK_SUFFIX, NULL);
}

static gboolean
take_lock (OxCrashCopy *self, const char *file, int flags)
{
  g_autofree char *lock = lock_name (file);

  self->lock = g_open (lock, O_RDWR | O_CREAT | O_CLOEXEC | flags, 0600);
  if (self->lock >= 0 && flock (self->lock, LOCK_EX | LOCK_NB) != 0)
    {
      close (self->lock);
      self->lock = -1;
    }
  if (self->lock < 0)
    return FALSE;
  self->file = g_strdup (file);
  self->gate = g_atomic_rc_box_new0 (Gate);
  g_mutex_init (&self->gate->mutex);
  return TRUE;
}

/* Names carry the time only to be told apart; two sessions in one microsecond meet at the lock. */
static gboolean
begin (OxCrashCopy *self)
{
  g_autofree char *name = g_strdup_printf ("%" G_GINT64_FORMAT SUFFIX, g_get_real_time ());
  g_autofree char *file = g_build_filename (self->folder, name, NULL);

  if (self->file != NULL)
    return TRUE;
  return g_mkdir_with_parents (self->folder, 0700) == 0 && take_lock (self, file, O_EXCL);
}

gboolean
ox_crash_copy_adopt (OxCrashCopy *self, const char *file)
{
  g_return_val_if_fail (OX_IS_CRASH_COPY (self), FALSE);

  ox_crash_copy_clear (self);
  return take_lock (self, file, 0);
}

static gboolean
write_file (const Write *write, GError **error)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *text = ox_job_file_to_text (write->job);
  g_autofree char *data = NULL;
  gsize length = 0;

  if (write->path != NULL)
    g_key_file_set_string (keys, GROUP, "path", write->path);
  if (write->stamp != NULL)
    g_key_file_set_string (keys, GROUP, "stamp", write->stamp);
  g_key_file_set_string (keys, GROUP, "job", text);
  data = g_key_file_to_data (keys, &length, NULL);
  return g_file_set_contents_full (write->file, data, (gssize) length,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600, error);
}

static void
write_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancel)
{
  const Write *write = task_data;
  GError *error = NULL;
  gboolean written;

  (void) source;
  (void) cancel;
  g_mutex_lock (&write->gate->mutex);
  written = write->gate->closed || write_file (write, &error);
  g_mutex_unlock (&write->gate->mutex);
  if (written)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
tell_once (OxCrashCopy *self, const char *why)
{
  if (!self->told)
    g_message ("No copy of unsaved work can be kept in %s: %s", self->folder, why);
  self->told = TRUE;
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  OxCrashCopy *self = OX_CRASH_COPY (source);
  g_autoptr (GError) error = NULL;
  Write *next = g_steal_pointer (&self->pending);

  (void) data;
  self->writing = FALSE;
  if (!g_task_propagate_boolean (G_TASK (result), &error))
    tell_once (self, error->message);
  if (next != NULL)
    start_write (self, next);
}

static void
start_write (OxCrashCopy *self, Write *write)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, written_cb, NULL);

  self->writing = TRUE;
  g_task_set_task_data (task, write, write_free);
  g_task_run_in_thread (task, write_thread);
}

void
ox_crash_copy_write (OxCrashCopy *self, const OxJob *job, const char *path, const char *stamp)
{
  Write *write;

  g_return_if_fail (OX_IS_CRASH_COPY (self));
  if (!begin (self))
    {
      tell_once (self, g_strerror (errno));
      return;
    }
  write = g_new0 (Write, 1);
  write->gate = g_atomic_rc_box_acquire (self->gate);
  write->file = g_strdup (self->file);
  write->path = g_strdup (path);
  write->stamp = g_strdup (stamp);
  write->job = ox_job_ref (job);
  g_clear_pointer (&self->pending, write_free);
  if (self->writing)
    self->pending = write;
  else
    start_write (self, write);
}

void
ox_crash_copy_clear (OxCrashCopy *self)
{
  g_return_if_fail (OX_IS_CRASH_COPY (self));

  g_clear_pointer (&self->pending, write_free);
  if (self->file == NULL)
    return;
  g_mutex_lock (&self->gate->mutex);
  self->gate->closed = TRUE;
  g_mutex_unlock (&self->gate->mutex);
  ox_crash_copy_discard (self->file);
  g_clear_pointer (&self->gate, gate_unref);
  g_clear_pointer (&self->file, g_free);
  close (self->lock);
  self->lock = -1;
}

gboolean
ox_crash_copy_is_busy (OxCrashCopy *self)
{
  return self->writing;
}

/* Without a lock file nobody can be working on it: the lock goes last. */
static gboolean
is_abandoned (const char *file)
{
  g_autofree char *lock = lock_name (file);
  int fd = g_open (lock, O_RDWR | O_CLOEXEC, 0);
  gboolean free_lock;

  if (fd < 0)
    return errno == ENOENT;
  free_lock = flock (fd, LOCK_EX | LOCK_NB) == 0;
  close (fd);
  return free_lock;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

char **
ox_crash_copy_list (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) files = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *file = g_build_filename (folder, name, NULL);

      if (g_str_has_suffix (name, SUFFIX) && is_abandoned (file))
        g_ptr_array_add (files, g_steal_pointer (&file));
    }
  g_ptr_array_sort (files, compare_names);
  g_ptr_array_add (files, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&files), FALSE);
}

gboolean
ox_crash_copy_read (const char *file, OxJob **job, char **path, char **stamp, GError **error)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *text = NULL;

  if (!g_key_file_load_from_file (keys, file, G_KEY_FILE_NONE, error))
    return FALSE;
  text = g_key_file_get_string (keys, GROUP, "job", error);
  if (text == NULL || !ox_job_file_read_data (file, text, strlen (text), job, error))
    return FALSE;
  *path = g_key_file_get_string (keys, GROUP, "path", NULL);
  *stamp = g_key_file_get_string (keys, GROUP, "stamp", NULL);
  return TRUE;
}

void
ox_crash_copy_discard (const char *file)
{
  g_autofree char *lock = lock_name (file);

  g_unlink (file);
  g_unlink (lock);
}

static void
ox_crash_copy_finalize (GObject *object)
{
  OxCrashCopy *self = OX_CRASH_COPY (object);

  g_clear_pointer (&self->pending, write_free);
  g_clear_pointer (&self->gate, gate_unref);
  if (self->lock >= 0)
    close (self->lock);
  g_free (self->file);
  g_free (self->folder);
  G_OBJECT_CLASS (ox_crash_copy_parent_class)->finalize (object);
}

static void
ox_crash_copy_class_init (OxCrashCopyClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ox_crash_copy_finalize;
}

static void
ox_crash_copy_init (OxCrashCopy *self)
{
  self->lock = -1;
}

OxCrashCopy *
ox_crash_copy_new (const char *folder)
{
  OxCrashCopy *self = g_object_new (OX_TYPE_CRASH_COPY, NULL);

  self->folder = g_strdup (folder);
  return self;
}
