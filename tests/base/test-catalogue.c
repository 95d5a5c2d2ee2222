/* Oxturn: tests of base/catalogue
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "base/catalogue.h"
#include <string.h>

static void
test_lookup (void)
{
  const OxCatalogue *german = ox_catalogue_find ("de");
  g_assert_nonnull (german);
  g_assert_cmpstr (ox_catalogue_lookup (german, "Strip", 0), ==, "Bahn");
  g_assert_cmpstr (
      ox_catalogue_lookup (german, "%u edge area has no tag on the drawing, only a line in the table.", 0), ==,
      "%u Randfläche hat kein Schild in der Zeichnung, nur eine Zeile in der Tabelle.");
  g_assert_cmpstr (
      ox_catalogue_lookup (german, "%u edge area has no tag on the drawing, only a line in the table.", 1), ==,
      "%u Randflächen haben kein Schild in der Zeichnung, nur eine Zeile in der Tabelle.");
  g_assert_null (
      ox_catalogue_lookup (german, "%u edge area has no tag on the drawing, only a line in the table.", 2));
  g_assert_null (ox_catalogue_lookup (german, "Strip and no more", 0));
  g_assert_null (ox_catalogue_find ("tlh"));
}

/* However a catalogue is cut off or bent, an answer is one of its texts or none, and nothing outside of it is read. */
static void
test_broken (void)
{
  const OxCatalogue *german = ox_catalogue_find ("de");
  for (gsize length = 0; length < german->length; length += length < 64 ? 1 : 997)
    {
      g_autofree guint8 *data = g_memdup2 (german->data, length);
      const OxCatalogue cut = { "cut", data, length };
      const char *text = ox_catalogue_lookup (&cut, "Strip", 0);
      g_assert_true (text == NULL || strcmp (text, "Bahn") == 0);
    }
  for (gsize at = 0; at < 28; at++)
    {
      g_autofree guint8 *data = g_memdup2 (german->data, german->length);
      data[at] ^= 0xff;
      const OxCatalogue bent = { "bent", data, german->length };
      const char *text = ox_catalogue_lookup (&bent, "Strip", 0);
      g_assert_true (text == NULL || (text >= (const char *) data && text < (const char *) data + german->length));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/base/catalogue/texts-and-plural-forms-are-found", test_lookup);
  g_test_add_func ("/base/catalogue/broken-ones-answer-nothing-wrong", test_broken);
  return g_test_run ();
}
