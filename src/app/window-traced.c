/* Oxturn: app/window-traced - somebody's plan brought in to be traced.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/window-private.h"

#include "app/dialogs/ask.h"
#include "app/traced/store.h"
#include "file/load.h"
#include "job/edit.h"

#include <glib/gi18n-lib.h>

#define PAPER_SCALE 100.0 /* a first guess for what has a size on paper: 1:100 */
#define PAPER_LEAST 0.5   /* share of the view's width; what comes out smaller or ... */
#define PAPER_MOST 20.0   /* ... larger was not drawn at 1:100 */
#define FIRST_STRENGTH 0.6

gboolean
ox_window_can_trace (const char *path)
{
  return ox_file_has_ending (path, OX_FILE_OPEN_TRACED);
}

/* While the file is decoded. */
typedef struct
{
  GWeakRef window; /* may be closed meanwhile */
  GBytes *data;
  char *name;
} Bringing;

static void
bringing_free (Bringing *bringing)
{
  g_weak_ref_clear (&bringing->window);
  g_bytes_unref (bringing->data);
  g_free (bringing->name);
  g_free (bringing);
}

/* Where it comes to lie: in the middle of what is seen, at 1:100 where it has a size on paper, else as wide as the
 * view. */
static void
place (OxWindow *self, OxTracedPlan *draft, double aspect, const OxTracedInfo *info)
{
  const OxView *view = ox_canvas_get_view (self->canvas);
  OxBox box = ox_view_get_box (view);
  double seen = MAX (box.x1 - box.x0, 1);
  double paper = info->paper_width_mm / 1000 * PAPER_SCALE;

  draft->middle = ox_point_snap (view->centre);
  draft->width = paper > PAPER_LEAST && paper < PAPER_MOST * seen ? paper : 0.8 * seen;
  if (info->paper_width_mm > 0 && info->paper_depth_mm > 0)
    aspect = info->paper_width_mm / info->paper_depth_mm;
  draft->depth = draft->width / aspect;
}

/* Takes @picture, or tells @error, which may be NULL when there is a picture. */
static void
bring (OxWindow *self, const Bringing *bringing, const OxTracedPicture *picture, GError *failed)
{
  g_autoptr (GError) error = failed;
  g_autofree char *id = ox_job_new_id (ox_session_get_job (self->session), "T");
  OxTracedPlan draft
      = { .id = id, .name = bringing->name, .data = bringing->data, .page = 1, .strength = FIRST_STRENGTH };
  g_autoptr (OxTracedPlan) traced = NULL;
  g_autoptr (OxJob) job = NULL;

  if (picture != NULL)
    {
      const OxTracedInfo *info = ox_traced_picture_get_info (picture);

      draft.kind = info->kind;
      place (self, &draft, ox_traced_picture_aspect (picture), info);
      traced = ox_traced_plan_new (&draft);
      job = ox_job_with_traced (ox_session_get_job (self->session), traced, &error);
    }
  if (job == NULL)
    ox_tell_error (GTK_WINDOW (self), _ ("This plan could not be brought in"), error);
  else
    {
      ox_window_set_stage (self, OX_STAGE_FLOOR);
      ox_canvas_add_picture (self->canvas, bringing->data, 1, picture);
      ox_session_apply (self->session, job, _ ("Bring In Traced Plan"), (const char *const[]){ id, NULL }, NULL);
      ox_canvas_show_selected (self->canvas);
      ox_canvas_set_tool (self->canvas, OX_TOOL_SCALE);
      gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
    }
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  Bringing *bringing = data;
  g_autoptr (OxWindow) window = g_weak_ref_get (&bringing->window);
  GError *error = NULL;
  g_autoptr (OxTracedPicture) picture = ox_traced_read_finish (result, &error);

  (void) source;
  if (window == NULL)
    g_clear_error (&error);
  else
    bring (window, bringing, picture, error);
  bringing_free (bringing);
}

void
ox_window_bring_traced (OxWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  GByteArray *bytes = ox_load_file (path, OX_TRACED_MAX_BYTES, &error);
  Bringing *bringing;

  if (bytes == NULL)
    {
      ox_tell_error (GTK_WINDOW (self), _ ("This plan could not be brought in"), error);
      return;
    }
  bringing = g_new0 (Bringing, 1);
  g_weak_ref_init (&bringing->window, self);
  bringing->data = g_byte_array_free_to_bytes (bytes);
  bringing->name = g_path_get_basename (path);
  ox_window_tell (self, _ ("Reading the plan\342\200\246"));
  ox_traced_read (bringing->data, 1, self->gone, read_cb, bringing);
}

static void
chosen_cb (const char *path, gpointer data)
{
  if (path != NULL)
    ox_window_bring_traced (data, path);
}

void
ox_window_ask_traced (OxWindow *self)
{
  self->choose_file (GTK_WINDOW (self), OX_FILE_OPEN_TRACED, NULL, chosen_cb, self);
}
