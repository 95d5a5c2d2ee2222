/* Oxturn: session/plan-service - plans off the main thread, the latest job wins.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At most one plan is under way. A new request cancels it and waits for it to give up; of requests that come meanwhile only the
 * last one is planned. Results of jobs that are no longer the latest are dropped.
 * Everything here is called on the thread of the default main context.
 */
#pragma once
#include "plan/plan.h"

#include <gio/gio.h>
G_BEGIN_DECLS

#define OX_TYPE_PLAN_SERVICE (ox_plan_service_get_type ())
G_DECLARE_FINAL_TYPE (OxPlanService, ox_plan_service, OX, PLAN_SERVICE, GObject)

/* OxPlanFunc: what plans; ox_plan_new() or a test's own. Runs on a worker thread. */
typedef OxPlan *(*OxPlanFunc) (const OxJob *job, OxRun *run, GError **error);

/* ox_plan_service_new:
 * Signal "planned" (OxPlan *plan, GError *error): a plan of the latest job, or the reason why there is none; one of them is NULL.
 * Signal "running-changed" (): planning began or came to rest.
 * Returns: (transfer full) */
OxPlanService *ox_plan_service_new (OxPlanFunc plan) G_GNUC_WARN_UNUSED_RESULT;

/* ox_plan_service_request: plans @job, at once or as soon as the plan under way has given up */
void ox_plan_service_request (OxPlanService *service, const OxJob *job);

/* ox_plan_service_stop: cancels, and nothing is reported until the next request */
void ox_plan_service_stop (OxPlanService *service);

/* ox_plan_service_is_running: whether a worker is at it, be it wanted any more or not */
gboolean ox_plan_service_is_running (OxPlanService *service);

/* ox_plan_service_get_progress:
 * @doing: (out) (optional) (nullable): untranslated static name of the step
 *
 * Returns: share done, 0 to 1; -1 while unknown or nothing runs */
double ox_plan_service_get_progress (OxPlanService *service, const char **doing);

G_END_DECLS
