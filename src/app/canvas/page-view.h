/* Oxturn: app/canvas/page-view - a page as it will be printed, with a way to the next one.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include "drawing/page.h"
#include <gtk/gtk.h>
G_BEGIN_DECLS

#define OX_TYPE_PAGE_VIEW (ox_page_view_get_type ())
G_DECLARE_FINAL_TYPE (OxPageView, ox_page_view, OX, PAGE_VIEW, GtkWidget)

GtkWidget *ox_page_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* ox_page_view_set: @set: (nullable): NULL shows @why instead (a translated sentence) */
void ox_page_view_set (OxPageView *view, const OxPageSet *set, const char *why);

/* ox_page_view_zoom: @factor times as large, but never smaller than what fits */
void ox_page_view_zoom (OxPageView *view, double factor);

/* ox_page_view_fit: the whole page in sight */
void ox_page_view_fit (OxPageView *view);

G_END_DECLS
