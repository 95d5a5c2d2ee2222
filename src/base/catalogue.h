/* Oxturn: base/catalogue - translated texts in the form that msgfmt writes (.mo).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once
#include <glib.h>
G_BEGIN_DECLS

/* a finished .mo file; lives as long as the program or its maker says */
typedef struct
{
  const char *name; /* "es" */
  const guint8 *data;
  gsize length;
} OxCatalogue;

/* ox_catalogue_lookup:
 * @key: a text, or "context\004text"
 * @form: 0, or the number of the plural form wanted
 *
 * What is no sound .mo file has no texts. Any thread may call it.
 * Returns: (nullable): belongs to the catalogue; NULL where the text is not translated */
const char *ox_catalogue_lookup (const OxCatalogue *catalogue, const char *key, guint form);

/* The translations of po/, built in. */
extern const OxCatalogue ox_catalogues[];
extern const guint ox_n_catalogues;

/* ox_catalogue_find: (nullable): the built-in one of that name */
const OxCatalogue *ox_catalogue_find (const char *name);

G_END_DECLS
