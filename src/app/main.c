/* Oxturn: app/main - the window program.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "app/application.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <malloc.h>

/* Each frame takes buffers of several megabytes; without this glibc gives them back to the system and takes them anew
 * sixty times a second. 32 MB is the largest threshold that it accepts. */
static void
keep_buffers (void)
{
#ifdef __GLIBC__
  mallopt (M_MMAP_THRESHOLD, 32 << 20);
  mallopt (M_TRIM_THRESHOLD, 256 << 20);
#endif
}

int
main (int argc, char **argv)
{
  g_autoptr (OxApplication) application = NULL;

  keep_buffers ();
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, OX_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  application = ox_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
