/* Oxturn: tests/file/test-csv
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "file/csv.h"

/* RFC 4180 section 2: CRLF, quotes where a field holds a comma, a quote or a break, inner quotes doubled. */
static void
test_rows (void)
{
  OxCsv csv = ox_csv_start ("a,b,c");
  ox_csv_text (&csv, "plain");
  ox_csv_text (&csv, "one, two");
  ox_csv_text (&csv, "say \"ox\"");
  ox_csv_row (&csv);
  ox_csv_text (&csv, "two\nlines");
  ox_csv_empty (&csv);
  ox_csv_count (&csv, 7);
  ox_csv_row (&csv);
  ox_csv_number (&csv, -1.25, 6);
  ox_csv_quoted (&csv, "plain");
  ox_csv_text (&csv, "");
  ox_csv_row (&csv);
  g_autofree char *text = ox_csv_end (&csv);
  g_assert_cmpstr (text, ==,
                   "a,b,c\r\n"
                   "plain,\"one, two\",\"say \"\"ox\"\"\"\r\n"
                   "\"two\nlines\",,7\r\n"
                   "-1.25,\"plain\",\r\n");
}

static void
test_point (void)
{
  OxCsv csv = ox_csv_start ("x,y");
  ox_csv_point (&csv, (OxPoint){ 1.23456, -0.00001 });
  ox_csv_row (&csv);
  g_autofree char *text = ox_csv_end (&csv);
  g_assert_cmpstr (text, ==, "x,y\r\n1.2346,0\r\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/file/csv/rows", test_rows);
  g_test_add_func ("/file/csv/point", test_point);
  return g_test_run ();
}
