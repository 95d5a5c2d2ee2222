/* Oxturn: tests/support/floors - made-up floors of many kinds, the same for the same seed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "floors.h"
#include "geometry/wkt.h"
#include "job/classes.h"

typedef struct
{
  GRand *rand;
  OxJobBuilder *builder;
  guint rooms, obstacles, excluded, doorways, conditions;
} Floor;

static double
between (Floor *floor, double low, double high)
{
  return ox_snap (g_rand_double_range (floor->rand, low, high));
}

static gboolean
chance (Floor *floor, double share)
{
  return g_rand_double (floor->rand) < share;
}

static void
put_room (Floor *floor, const OxPoint *points, guint n, const OxSide *sides)
{
  g_autofree char *id = g_strdup_printf ("R%u", ++floor->rooms);
  g_autoptr (OxRing) ring = ox_ring_new (points, n);
  OxRoom fields = { .id = id, .name = (char *) "", .ring = ring, .sides = (OxSide *) sides, .profile = (char *) "" };
  g_autoptr (OxRoom) room = ox_room_new (&fields);
  ox_job_builder_put_room (floor->builder, room);
}

static void
put_rectangle_room (Floor *floor, double x, double y, double width, double depth)
{
  OxPoint points[4] = { { x, y }, { x + width, y }, { x + width, y + depth }, { x, y + depth } };
  put_room (floor, points, 4, NULL);
}

static void
put_obstacle (Floor *floor, OxObstacleKind kind, OxShape shape, double keep_back)
{
  g_autofree char *id = g_strdup_printf ("O%u", ++floor->obstacles);
  OxObstacle fields = { .id = id, .name = (char *) "", .kind = kind, .shape = shape, .keep_back = keep_back };
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&fields);
  ox_job_builder_put_obstacle (floor->builder, obstacle);
}

static OxShape
rectangle (double x, double y, double width, double depth, double angle_deg)
{
  return (OxShape){ OX_SHAPE_RECTANGLE, { ox_snap (x), ox_snap (y) }, width, depth, angle_deg, 0, NULL };
}

static OxShape
circle (double x, double y, double radius)
{
  return (OxShape){ .kind = OX_SHAPE_CIRCLE, .centre = { ox_snap (x), ox_snap (y) }, .radius = radius };
}

static void
put_excluded (Floor *floor, double x, double y, double width, double depth)
{
  g_autofree char *id = g_strdup_printf ("X%u", ++floor->excluded);
  OxPoint points[4] = { { x, y }, { x + width, y }, { x + width, y + depth }, { x, y + depth } };
  g_autoptr (OxRing) ring = ox_ring_new (points, 4);
  OxExcluded fields = { .id = id, .name = (char *) "", .ring = ring };
  g_autoptr (OxExcluded) excluded = ox_excluded_new (&fields);
  ox_job_builder_put_excluded (floor->builder, excluded);
}

static void
put_doorway (Floor *floor, OxPoint a, OxPoint b, double depth)
{
  g_autofree char *id = g_strdup_printf ("D%u", ++floor->doorways);
  OxDoorway fields = { .id = id, .name = (char *) "", .a = ox_point_snap (a), .b = ox_point_snap (b), .depth = depth };
  g_autoptr (OxDoorway) doorway = ox_doorway_new (&fields);
  ox_job_builder_put_doorway (floor->builder, doorway);
}

static void
put_columns (Floor *floor, double width, double depth)
{
  double bay = between (floor, 3.5, 8), size = between (floor, 0.3, 0.8);
  gboolean round = chance (floor, 0.4);
  double turned = chance (floor, 0.3) ? between (floor, 0, 90) : 0;
  for (double y = bay * 0.8; y < depth; y += bay)
    for (double x = bay * 0.9; x < width; x += bay)
      put_obstacle (floor, OX_OBSTACLE_SOLID, round ? circle (x, y, size / 2) : rectangle (x, y, size, size, turned),
                    0);
}

static void
make_hall (Floor *floor)
{
  double width = between (floor, 8, 26), depth = between (floor, 6, 20);
  double x = between (floor, -50, 50), y = between (floor, -50, 50);
  put_rectangle_room (floor, x, y, width, depth);
}

static void
make_columns (Floor *floor)
{
  double width = between (floor, 9, 26), depth = between (floor, 8, 18);
  put_rectangle_room (floor, 0, 0, width, depth);
  put_columns (floor, width, depth);
}

static void
make_ell (Floor *floor)
{
  double w = between (floor, 8, 24), d = between (floor, 7, 18), x = between (floor, 2, w - 2),
         y = between (floor, 2, d - 2);
  OxPoint points[6] = { { 0, 0 }, { w, 0 }, { w, y }, { x, y }, { x, d }, { 0, d } };
  put_room (floor, points, 6, NULL);
}

static void
make_tee (Floor *floor)
{
  double w = between (floor, 9, 24), d = between (floor, 4, 10), stem = between (floor, 2, 8);
  double x0 = between (floor, 0.5, w / 2 - 0.6), x1 = between (floor, w / 2 + 0.6, w - 0.5);
  OxPoint points[8] = { { 0, 0 }, { x0, 0 }, { x0, -stem }, { x1, -stem }, { x1, 0 }, { w, 0 }, { w, d }, { 0, d } };
  put_room (floor, points, 8, NULL);
}

static void
make_yu (Floor *floor)
{
  double w = between (floor, 10, 24), d = between (floor, 8, 18), y = between (floor, 2, d - 3);
  double x0 = between (floor, 1.5, w / 2 - 0.5), x1 = between (floor, w / 2 + 0.5, w - 1.5);
  OxPoint points[8] = { { 0, 0 }, { w, 0 }, { w, d }, { x1, d }, { x1, y }, { x0, y }, { x0, d }, { 0, d } };
  put_room (floor, points, 8, NULL);
}

/* Corners on an ellipse, unevenly spread: slanted walls, acute corners when there are few of them. */
static void
make_slanted (Floor *floor)
{
  guint n = (guint) g_rand_int_range (floor->rand, 3, 8);
  double a = between (floor, 5, 14), b = between (floor, 4, 10), angle = between (floor, 0, 6);
  OxPoint points[8];
  for (guint i = 0; i < n; i++)
    {
      double at = angle + 2 * G_PI * (i + between (floor, 0, 0.7)) / n;
      points[i] = ox_point_snap ((OxPoint){ a * cos (at), b * sin (at) });
    }
  put_room (floor, points, n, NULL);
  double x = between (floor, -2, 2), y = between (floor, -2, 2);
  put_obstacle (floor, OX_OBSTACLE_SOLID, circle (x, y, between (floor, 0.1, 0.6)), 0);
}

static void
make_rooms (Floor *floor)
{
  guint n = (guint) g_rand_int_range (floor->rand, 2, 5);
  double wall = chance (floor, 0.5) ? 0 : between (floor, 0.1, 0.3);
  double x = 0, depth = between (floor, 3, 8);
  for (guint i = 0; i < n; i++)
    {
      double width = between (floor, 2.5, 7);
      put_rectangle_room (floor, ox_snap (x), 0, width, depth);
      x += width;
      double y = between (floor, 0.3, depth - 1.6), gap = between (floor, 0.7, 1.3);
      if (i + 1 < n && chance (floor, 0.85))
        put_doorway (floor, (OxPoint){ x + wall / 2, y }, (OxPoint){ x + wall / 2, y + gap }, wall);
      x += wall;
    }
}

static void
make_racks (Floor *floor)
{
  double width = between (floor, 9, 22), depth = between (floor, 7, 16);
  double aisle = between (floor, 0.5, 3), rack = between (floor, 0.6, 1.4);
  put_rectangle_room (floor, 0, 0, width, depth);
  for (double y = aisle + rack / 2; y + rack / 2 < depth - 0.3; y += aisle + rack)
    put_obstacle (floor, OX_OBSTACLE_SOLID, rectangle (width / 2, y, ox_snap (width - 5), rack, 0), 0);
}

static void
make_sides (Floor *floor)
{
  double w = between (floor, 6, 20), d = between (floor, 5, 15), notch = between (floor, 1, 3);
  OxPoint points[6] = { { 0, 0 }, { w, 0 }, { w, d }, { notch, d }, { notch, d - notch }, { 0, d - notch } };
  OxSide sides[6];
  for (guint i = 0; i < 6; i++)
    {
      OxSideKind kind = (OxSideKind) g_rand_int_range (floor->rand, OX_SIDE_WALL, OX_SIDE_DROP + 1);
      sides[i] = (OxSide){ kind, kind == OX_SIDE_DROP ? between (floor, 0, 0.8) : 0 };
    }
  put_room (floor, points, 6, sides);
  if (chance (floor, 0.5))
    put_columns (floor, w, d);
}

static void
make_left_out (Floor *floor)
{
  double w = between (floor, 7, 20), d = between (floor, 6, 15);
  put_rectangle_room (floor, 0, 0, w, d);
  double x = between (floor, 0.5, w / 2), y = between (floor, 0, d / 2), a = between (floor, 0.5, 3);
  put_excluded (floor, x, y, a, between (floor, 0.5, 3));
  x = between (floor, 1, w);
  y = between (floor, 1, d);
  a = between (floor, 0.3, 2);
  put_obstacle (floor, OX_OBSTACLE_MASKED, rectangle (x, y, a, a / 2, between (floor, 0, 90)), 0);
  y = between (floor, 1, d - 1);
  a = between (floor, 1, w - 3);
  OxShape channel = rectangle (w / 2, y, a, between (floor, 0.15, 0.4), 0);
  put_obstacle (floor, OX_OBSTACLE_PIT, channel, between (floor, 0, 0.3));
  x = between (floor, 0, w);
  y = between (floor, 0, d);
  put_obstacle (floor, OX_OBSTACLE_PIT, circle (x, y, between (floor, 0.1, 0.5)), 0.1);
}

static void
make_notched (Floor *floor)
{
  double w = between (floor, 3, 8), d = between (floor, 3, 6), a = between (floor, 0.2, 0.9),
         b = between (floor, 0.2, 0.9);
  OxPoint points[8]
      = { { 0, 0 }, { w, 0 }, { w, d - b }, { w - a, d - b }, { w - a, d }, { b, d }, { b, d - a }, { 0, d - a } };
  put_room (floor, points, 8, NULL);
  put_obstacle (floor, OX_OBSTACLE_SOLID, rectangle (w / 2, 0, a, b, 0), 0);
}

static void
make_courtyard (Floor *floor)
{
  double w = between (floor, 9, 22), d = between (floor, 8, 18), band = between (floor, 0.8, 3.5);
  put_rectangle_room (floor, 0, 0, w, d);
  put_obstacle (floor, OX_OBSTACLE_SOLID, rectangle (w / 2, d / 2, ox_snap (w - 2 * band), ox_snap (d - 2 * band), 0),
                0);
}

static void
make_corridor (Floor *floor)
{
  double wide = between (floor, 0.4, 2.4), long_side = between (floor, 4, 20), leg = between (floor, 3, 8);
  OxPoint points[6]
      = { { 0, 0 },   { long_side, 0 }, { long_side, leg }, { long_side - wide, leg }, { long_side - wide, wide },
          { 0, wide } };
  put_room (floor, points, 6, NULL);
}

static void
make_turned (Floor *floor)
{
  double w = between (floor, 6, 18), d = between (floor, 5, 12), angle = between (floor, 0, 3);
  OxPoint points[4] = { { 0, 0 }, { w, 0 }, { w, d }, { 0, d } };
  for (guint i = 0; i < 4; i++)
    points[i] = ox_point_snap (ox_point_turn (points[i], cos (angle), sin (angle)));
  put_room (floor, points, 4, NULL);
  for (guint i = 0; i < 4; i++)
    {
      double x = between (floor, -6, 6), y = between (floor, 0, 12), a = between (floor, 0.2, 1),
             b = between (floor, 0.2, 1);
      put_obstacle (floor, OX_OBSTACLE_SOLID, rectangle (x, y, a, b, between (floor, 0, 90)), 0);
    }
}

static const struct
{
  const char *name;
  void (*make) (Floor *floor);
} kinds[] = {
  { "hall", make_hall },         { "columns", make_columns }, { "ell", make_ell },
  { "tee", make_tee },           { "yu", make_yu },           { "slanted", make_slanted },
  { "rooms", make_rooms },       { "racks", make_racks },     { "sides", make_sides },
  { "left-out", make_left_out }, { "notched", make_notched }, { "courtyard", make_courtyard },
  { "corridor", make_corridor }, { "turned", make_turned },
};

const char *
ox_test_floor_kind (guint32 seed)
{
  return kinds[seed % G_N_ELEMENTS (kinds)].name;
}

static OxJobBuilder *
new_builder (const char *machine_class)
{
  const OxMachine *machine = ox_classes_find (machine_class);
  g_assert_nonnull (machine);
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  ox_job_builder_set_machine (builder, machine);
  return builder;
}

OxJob *
ox_test_floor_random (guint32 seed)
{
  static const char *const classes[] = { "compact", "medium", "large", "offset" };
  Floor floor = { .rand = g_rand_new_with_seed (seed) };
  floor.builder = new_builder (classes[g_rand_int_range (floor.rand, 0, G_N_ELEMENTS (classes))]);
  kinds[seed % G_N_ELEMENTS (kinds)].make (&floor);
  g_rand_free (floor.rand);
  return ox_job_builder_end (floor.builder);
}

/* An area somewhere on the floor, square to the axes or not. */
static void
put_condition (Floor *floor, OxBox box)
{
  static const guint coats[] = { 0, 1, 2, 3 };
  g_autofree char *id = g_strdup_printf ("C%u", ++floor->conditions);
  OxPoint centre = { between (floor, box.x0, box.x1), between (floor, box.y0, box.y1) };
  double width = between (floor, 1, 6), depth = between (floor, 0.8, 4);
  g_autoptr (OxRing) ring
      = ox_ring_new_rectangle (centre, width, depth, chance (floor, 0.6) ? 0 : between (floor, 0, 3));
  OxCondition fields = { .id = id, .name = (char *) "", .ring = ring, .profile = (char *) "" };
  fields.speed_m_per_min = chance (floor, 0.7) ? between (floor, 2, 9) : 0;
  fields.coats = coats[g_rand_int_range (floor->rand, 0, G_N_ELEMENTS (coats))];
  g_autoptr (OxCondition) condition = ox_condition_new (&fields);
  ox_job_builder_put_condition (floor->builder, condition);
}

OxJob *
ox_test_floor_coats (guint32 seed)
{
  g_autoptr (OxJob) job = ox_test_floor_random (seed);
  Floor floor = { .rand = g_rand_new_with_seed (seed + 1), .builder = ox_job_builder_new (job) };
  for (guint i = 0; i < job->n_rooms; i++)
    {
      OxRoom fields = *job->rooms[i];
      fields.coats = (guint) g_rand_int_range (floor.rand, 1, 4);
      fields.coat_turn_deg = chance (&floor, 0.8) ? 90 : between (&floor, 0, 180);
      g_autoptr (OxRoom) room = ox_room_new (&fields);
      ox_job_builder_put_room (floor.builder, room);
    }
  for (int n = g_rand_int_range (floor.rand, 0, 4); n > 0; n--)
    put_condition (&floor, ox_job_box (job));
  g_rand_free (floor.rand);
  return ox_job_builder_end (floor.builder);
}

OxJob *
ox_test_floor_polygon (const OxPoint *points, guint n, const char *machine_class)
{
  Floor floor = { .builder = new_builder (machine_class) };
  put_room (&floor, points, n, NULL);
  return ox_job_builder_end (floor.builder);
}

OxJob *
ox_test_floor_rectangle (double width, double depth, const char *machine_class)
{
  OxPoint points[4] = { { 0, 0 }, { width, 0 }, { width, depth }, { 0, depth } };
  return ox_test_floor_polygon (points, 4, machine_class);
}

OxJob *
ox_test_floor_columns (double width, double depth, double column, double bay, const char *machine_class)
{
  Floor floor = { .builder = new_builder (machine_class) };
  put_rectangle_room (&floor, 0, 0, width, depth);
  for (double y = bay; y < depth - bay / 2; y += bay)
    for (double x = bay; x < width - bay / 2; x += bay)
      put_obstacle (&floor, OX_OBSTACLE_SOLID, rectangle (x, y, column, column, 0), 0);
  return ox_job_builder_end (floor.builder);
}

OxJob *
ox_test_floor_with_coats (OxJob *base, guint coats, double turn_deg)
{
  g_autoptr (OxJob) job = base;
  OxJobBuilder *builder = ox_job_builder_new (job);
  for (guint i = 0; i < job->n_rooms; i++)
    {
      OxRoom fields = *job->rooms[i];
      fields.coats = coats;
      fields.coat_turn_deg = turn_deg;
      g_autoptr (OxRoom) room = ox_room_new (&fields);
      ox_job_builder_put_room (builder, room);
    }
  return ox_job_builder_end (builder);
}

OxJob *
ox_test_floor_with_condition (OxJob *base, OxBox box, double speed, guint coats)
{
  g_autoptr (OxJob) job = base;
  g_autofree char *id = ox_job_new_id (job, "C");
  OxPoint centre = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  g_autoptr (OxRing) ring = ox_ring_new_rectangle (centre, box.x1 - box.x0, box.y1 - box.y0, 0);
  OxCondition fields = { .id = id, .name = (char *) "", .ring = ring, .profile = (char *) "" };
  fields.speed_m_per_min = speed;
  fields.coats = coats;
  g_autoptr (OxCondition) condition = ox_condition_new (&fields);
  OxJobBuilder *builder = ox_job_builder_new (job);
  ox_job_builder_put_condition (builder, condition);
  return ox_job_builder_end (builder);
}

OxJob *
ox_test_floor_wkt (const char *path, const char *machine_class)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) polygons = NULL;
  Floor floor = { .builder = new_builder (machine_class) };
  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (ox_wkt_parse_polygons (text, &polygons, &error));
  for (guint i = 0; i < polygons->len; i++)
    {
      const OxWktPolygon *polygon = g_ptr_array_index (polygons, i);
      put_room (&floor, polygon->rings[0]->points, polygon->rings[0]->n, NULL);
      for (guint r = 1; r < polygon->n_rings; r++)
        put_obstacle (&floor, OX_OBSTACLE_SOLID, (OxShape){ .kind = OX_SHAPE_POLYGON, .ring = polygon->rings[r] }, 0);
    }
  return ox_job_builder_end (floor.builder);
}

static int
compare_paths (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

GPtrArray *
ox_test_floor_paths (const char *variable)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  const char *folder = g_getenv (variable), *name;
  if (folder == NULL)
    return paths;
  g_autoptr (GError) error = NULL;
  GDir *dir = g_dir_open (folder, 0, &error);
  g_assert_no_error (error);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".wkt"))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  g_dir_close (dir);
  g_ptr_array_sort (paths, compare_paths);
  return paths;
}
