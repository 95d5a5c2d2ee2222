/* Oxturn: file/job-schema-data - the bytes that embed.py writes from data/job.rng when the program is built.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

extern const char ox_job_schema_data[];
extern const gsize ox_job_schema_length;

G_END_DECLS
