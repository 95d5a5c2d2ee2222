/* Oxturn: app/window-private - the parts of the window that its files share.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "app/canvas/page-view.h"
#include "app/panels/panels.h"
#include "app/panels/stage-bar.h"
#include "app/window.h"
G_BEGIN_DECLS

struct _OxWindow
{
  GtkApplicationWindow parent_instance;

  /* Children */
  OxCanvas *canvas;
  OxPageView *pages;
  OxStageBar *stages;
  OxSheetsPanel *sheets;
  GtkPaned *parts;  /* panel and middle */
  GtkStack *panels; /* one child a stage */
  GtkStack *middle; /* "floor" or "sheets" */
  GtkLabel *title;
  GtkLabel *told;
  GtkWidget *welcome;
  GtkMenuButton *menu;
  GMenu *recent; /* Owned: jobs opened last, in the main menu */
  GtkWidget *undo, *redo;

  /* Owned */
  OxSession *session;
  const OxJob *job;    /* of the last change, to see what it did to the sign-off */
  OxPageSet *page_set; /* (nullable) sheets as they are shown */
  guint told_id;       /* source that takes the sentence away, 0 for none */

  GdkContentProvider *clip; /* (nullable) what was copied or pasted here last ... */
  guint pastes;             /* ... and how far off the next copy of it is put */

  OxChooseFile choose_file;
  OxStage stage;
  OxStage last_stage;   /* where the last window was left: a job that is opened is shown there */
  gboolean pages_stale;
  gboolean closing;     /* asked and answered: the next close goes through */
  gboolean close_after; /* close when the save that is being asked for is done */
  guint inhibit_cookie;
  GCancellable *gone; /* Owned: cancelled with the window, for what is under way in other threads */
};

void ox_window_show_hint (OxWindow *self); /* instead of a sentence told before */

/* window-actions.c */
void ox_window_add_actions (OxWindow *self);
void ox_window_update_actions (OxWindow *self);
void ox_window_set_stage (OxWindow *self, OxStage stage);
gboolean ox_window_find_stage (const char *name, OxStage *stage); /* FALSE when none is called so */

/* window-place.c */
void ox_window_add_place_actions (OxWindow *self);

/* window-forms.c */
void ox_window_add_form_actions (OxWindow *self);

/* window-files.c */
void ox_window_ask_open (OxWindow *self);
gboolean ox_window_drop (OxWindow *self, GSList *files); /* opens the job files among @files (GFile), brings in plans to trace; FALSE, and told so, without any */
void ox_window_save (OxWindow *self);
void ox_window_save_as (OxWindow *self);
void ox_window_export (OxWindow *self, OxFilePurpose purpose);
void ox_window_print (OxWindow *self);
gboolean ox_window_close_request (OxWindow *self); /* TRUE: stays open for now */

/* window-traced.c */
void ox_window_ask_traced (OxWindow *self);
gboolean ox_window_can_trace (const char *path); /* by the ending of its name */
void ox_window_bring_traced (OxWindow *self, const char *path);

void ox_window_update_recent (OxWindow *self); /* offers the jobs of now in the main menu */
void ox_window_open_recent (OxWindow *self, const char *path);

/* window-clipboard.c */
#define OX_CLIP_TYPE "application/x-oxturn+xml" /* a job file with the copied items and no others */
gboolean ox_window_copy (OxWindow *self);       /* FALSE, and told why, when there is nothing to copy */
void ox_window_cut (OxWindow *self);
void ox_window_paste (OxWindow *self);
void ox_window_copy_picture (OxWindow *self); /* all of the floor with the layers shown */

/* ox_window_update_pages: makes the sheets anew when they are in sight and stale */
void ox_window_update_pages (OxWindow *self);

/* ox_window_make_pages: the sheets as chosen; (transfer full) */
OxPageSet *ox_window_make_pages (OxWindow *self, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
