/* Oxturn: paint/export - a set of pages into files.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "paint/export.h"
#include "base/atomic.h"
#include "base/words.h"
#include "paint/pdf.h"
#include "paint/svg.h"
#include <string.h>

static gboolean
ends_in (const char *path, const char *ending)
{
  gsize n = strlen (path), m = strlen (ending);
  return n > m && g_ascii_strcasecmp (path + n - m, ending) == 0;
}

gboolean
ox_export_knows (const char *path)
{
  return ends_in (path, ".svg") || ends_in (path, ".pdf");
}

static gboolean
write_bytes (const char *path, GBytes *bytes, GPtrArray *written, GError **error)
{
  gsize length;
  const void *data = g_bytes_get_data (bytes, &length);
  if (!ox_atomic_write (path, data, length, error))
    return FALSE;
  g_ptr_array_add (written, g_strdup (path));
  return TRUE;
}

static gboolean
write_pdf (const OxPageSet *set, const char *path, GPtrArray *written, GError **error)
{
  g_autoptr (GBytes) bytes = ox_pdf_new (set, error);
  return bytes != NULL && write_bytes (path, bytes, written, error);
}

static gboolean
write_svgs (const OxPageSet *set, const char *path, GPtrArray *written, GError **error)
{
  const char *ending = strrchr (path, '.');
  for (guint i = 0; i < set->n_pages; i++)
    {
      g_autoptr (GBytes) bytes = ox_svg_new (&set->pages[i]);
      g_autofree char *name
          = i == 0 ? g_strdup (path) : g_strdup_printf ("%.*s-%u%s", (int) (ending - path), path, i + 1, ending);
      if (!write_bytes (name, bytes, written, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
ox_export_write (const OxPageSet *set, const char *path, char ***written, GError **error)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  gboolean done = FALSE;
  if (ends_in (path, ".pdf"))
    done = write_pdf (set, path, names, error);
  else if (ends_in (path, ".svg"))
    done = write_svgs (set, path, names, error);
  else
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_SUPPORTED,
                 _ ("%s: sheets are written as .svg or .pdf; give the file one of these endings."), path);
  g_ptr_array_add (names, NULL);
  if (written != NULL)
    *written = (char **) g_ptr_array_free (g_steal_pointer (&names), FALSE);
  return done;
}
