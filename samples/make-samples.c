/* Oxturn: samples/make-samples - makes the sample jobs: make-samples FOLDER
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Town, streets, firms and people are made up. The jobs are made through the program's own functions, so that they are
 * what it would have saved.
 */
#include <locale.h>
#include "file/job-xml.h"
#include "job/classes.h"

static const OxTexts common_texts = {
  .author = (char *) "H. Ostrevik",
  .company = (char *) "Brennhald Floor Preparation",
  .revision = (char *) "A",
  .date = (char *) "2026-09-14",
  .status = (char *) "for approval",
};

/* @sides: (nullable) */
static void
put_room (OxJobBuilder *builder, const char *id, const char *name, OxRing *ring, OxSide *sides)
{
  g_autoptr (OxRoom) room = ox_room_new (
      &(OxRoom){ .id = (char *) id, .name = (char *) name, .ring = ring, .sides = sides, .profile = (char *) "CSP 3" });
  ox_job_builder_put_room (builder, room);
}

static void
put_rectangle (OxJobBuilder *builder, OxObstacleKind kind, const char *id, const char *name, OxShape shape)
{
  shape.kind = OX_SHAPE_RECTANGLE;
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){
      .id = (char *) id,
      .name = (char *) name,
      .kind = kind,
      .shape = shape,
      .keep_back = kind == OX_OBSTACLE_PIT ? 0.1 : 0,
  });
  ox_job_builder_put_obstacle (builder, obstacle);
}

static void
put_circle (OxJobBuilder *builder, const char *id, const char *name, OxPoint centre, double radius)
{
  g_autoptr (OxObstacle) obstacle = ox_obstacle_new (&(OxObstacle){
      .id = (char *) id,
      .name = (char *) name,
      .kind = OX_OBSTACLE_SOLID,
      .shape = { .kind = OX_SHAPE_CIRCLE, .centre = centre, .radius = radius },
  });
  ox_job_builder_put_obstacle (builder, obstacle);
}

static void
put_excluded (OxJobBuilder *builder, const char *id, const char *name, OxBox box)
{
  OxPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  g_autoptr (OxRing) ring = ox_ring_new (corners, G_N_ELEMENTS (corners));
  g_autoptr (OxExcluded) excluded = ox_excluded_new (&(OxExcluded){ (char *) id, (char *) name, ring, NULL });
  ox_job_builder_put_excluded (builder, excluded);
}

static void
put_doorway (OxJobBuilder *builder, const char *id, const char *name, OxPoint a, OxPoint b)
{
  g_autoptr (OxDoorway) doorway = ox_doorway_new (&(OxDoorway){ (char *) id, (char *) name, a, b, 0.2, NULL });
  ox_job_builder_put_doorway (builder, doorway);
}

static void
put_station (OxJobBuilder *builder, OxStationKind kind, const char *id, const char *name, OxPoint at)
{
  g_autoptr (OxStation) station = ox_station_new (&(OxStation){ (char *) id, (char *) name, kind, at, 0, NULL });
  ox_job_builder_put_station (builder, station);
}

static void
put_joint (OxJobBuilder *builder, const char *id, const char *name, OxPoint a, OxPoint b)
{
  OxPoint points[] = { a, b };
  g_autoptr (OxJoint) joint = ox_joint_new (&(OxJoint){ (char *) id, (char *) name, 2, points, NULL });
  ox_job_builder_put_joint (builder, joint);
}

static void
put_machine (OxJobBuilder *builder, const char *class_id, double hose_length, double cord_length)
{
  g_autoptr (OxMachine) machine = ox_machine_copy (ox_classes_find (class_id));
  machine->hose_length = hose_length;
  machine->cord_length = cord_length;
  machine->wear[0].run_h = 32.5; /* made up */
  ox_job_builder_set_machine (builder, machine);
}

/* Rates, patches and hours run are made up as well. */
static void
put_terms (OxJobBuilder *builder, const char *first_day)
{
  static const OxCostRate rates[] = {
    { OX_COST_LABOUR_HOUR, (char *) "Crew with the machine", (char *) "92.00" },
    { OX_COST_MACHINE_HOUR, (char *) "Machine and collector", (char *) "34.50" },
    { OX_COST_EDGE_HOUR, (char *) "Hand grinder", (char *) "46.00" },
    { OX_COST_ABRASIVE_KG, (char *) "Steel shot", (char *) "1.35" },
    { OX_COST_DUST_DRUM, (char *) "Drums of dust, disposed of", (char *) "85.00" },
    { OX_COST_FIXED, (char *) "Travel and set-up", (char *) "240.00" },
  };
  OxPatch patches[] = {
    { .id = (char *) "P1",
      .date = (char *) "2026-09-10",
      .speed_m_per_min = 5,
      .depth_mm = 0.42,
      .csp = 4,
      .note = (char *) "by the gate" },
    { .id = (char *) "P2",
      .date = (char *) "2026-09-10",
      .speed_m_per_min = 7,
      .depth_mm = 0.29,
      .csp = 3,
      .note = (char *) "" },
    { .id = (char *) "P3",
      .date = (char *) "2026-09-10",
      .speed_m_per_min = 9,
      .depth_mm = 0.24,
      .csp = 3,
      .note = (char *) "" },
  };
  g_autoptr (OxCosts) costs = ox_costs_new (&(OxCosts){ .currency = (char *) "EUR",
                                                        .decimals = 2,
                                                        .contingency = 0.1,
                                                        .validity = (char *) "Valid for 60 days from the date of issue.",
                                                        .n = G_N_ELEMENTS (rates),
                                                        .rates = (OxCostRate *) rates });
  g_autoptr (OxPatches) tried = ox_patches_new (&(OxPatches){ G_N_ELEMENTS (patches), patches });
  g_autoptr (OxCalendar) usual = ox_calendar_default ();
  OxCalendar own = *usual;
  own.first_day = (char *) first_day;
  g_autoptr (OxCalendar) calendar = ox_calendar_new (&own);
  g_autoptr (OxOutfit) outfit = ox_outfit_new (
      &(OxOutfit){ .shot = (char *) "S330", .circuit_a = 20, .n_cords = 2, .cords = { { 20, 3.31 }, { 20, 5.26 } } });
  ox_job_builder_set_outfit (builder, outfit);
  ox_job_builder_set_costs (builder, costs);
  ox_job_builder_set_patches (builder, tried);
  ox_job_builder_set_calendar (builder, calendar);
}

/* Columns 0.5 m square, 8 m apart one way and 8.5 m the other, the middle row on the hall's axis. */
static void
put_columns (OxJobBuilder *builder)
{
  for (guint row = 0; row < 2; row++)
    for (guint bay = 0; bay < 4; bay++)
      {
        g_autofree char *id = g_strdup_printf ("O%u", row * 4 + bay + 1);
        g_autofree char *name = g_strdup_printf ("Column %c%u", 'A' + (int) row, bay + 1);
        put_rectangle (builder, OX_OBSTACLE_SOLID, id, name,
                       (OxShape){ .centre = { 8 + 8.0 * bay, 8.25 + 8.5 * row }, .width = 0.5, .depth = 0.5 });
      }
}

static OxJob *
make_warehouse (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  OxTexts texts = common_texts;
  texts.title = (char *) "Warehouse 2, floor preparation";
  texts.client = (char *) "Tarvenholt Cold Storage Cooperative";
  texts.site = (char *) "Quay Road 14, Ostermouth";
  texts.number = (char *) "BFP-0412";
  texts.notes = (char *) "Slab dry, swept and clear of racks before the start.\n"
                         "Joint filler is left in place; joint edges are hand work by others.\n"
                         "Dust and spent abrasive are left in closed drums at the dock.";
  ox_job_builder_set_texts (builder, &texts);
  put_machine (builder, "compact", 30, 40);
  put_terms (builder, "2026-10-05");
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 4 });

  /* The dock is a recess in the south wall; its three sides are drops. */
  OxPoint corners[] = { { 0, 0 }, { 26, 0 }, { 26, 3 }, { 34, 3 }, { 34, 0 }, { 40, 0 }, { 40, 25 }, { 0, 25 } };
  OxSide sides[G_N_ELEMENTS (corners)] = { { OX_SIDE_WALL, 0 } };
  for (guint i = 1; i <= 3; i++)
    sides[i] = (OxSide){ OX_SIDE_DROP, 0.6 };
  g_autoptr (OxRing) ring = ox_ring_new (corners, G_N_ELEMENTS (corners));
  put_room (builder, "R1", "Warehouse 2", ring, sides);
  put_columns (builder);
  put_rectangle (builder, OX_OBSTACLE_PIT, "O9", "Floor drain",
                 (OxShape){ .centre = { 12, 20.5 }, .width = 9, .depth = 0.2 });
  put_rectangle (builder, OX_OBSTACLE_MASKED, "O10", "Weighing plate",
                 (OxShape){ .centre = { 36.5, 20 }, .width = 2, .depth = 1.5 });
  put_excluded (builder, "X1", "Battery bay, by others", (OxBox){ 0, 0, 4, 3.5 });
  put_doorway (builder, "D1", "Gate to yard", (OxPoint){ -0.1, 11 }, (OxPoint){ -0.1, 14 });
  put_joint (builder, "J1", "Saw cut", (OxPoint){ 20, 0 }, (OxPoint){ 20, 25 });
  put_joint (builder, "J2", "Saw cut", (OxPoint){ 0, 12.5 }, (OxPoint){ 40, 12.5 });
  put_station (builder, OX_STATION_COLLECTOR, "S1", "Collector north", (OxPoint){ 20, 19 });
  put_station (builder, OX_STATION_COLLECTOR, "S2", "Collector south", (OxPoint){ 20, 6 });
  put_station (builder, OX_STATION_SUPPLY, "S3", "Socket at column B2", (OxPoint){ 16, 16 });
  return ox_job_builder_end (builder);
}

static void
put_workshop_rooms (OxJobBuilder *builder)
{
  OxPoint hall[] = { { 0, 0 }, { 22, 0 }, { 22, 8 }, { 12, 8 }, { 12, 18 }, { 3, 18 }, { 0, 13 } };
  OxPoint store[] = { { 12.2, 8.2 }, { 17, 8.2 }, { 17, 13 }, { 12.2, 13 } };
  OxPoint paint[] = { { 17.2, 8.2 }, { 22, 8.2 }, { 22, 13 }, { 17.2, 13 } };
  OxPoint test[] = { { 12.2, 13.2 }, { 22, 13.2 }, { 22, 18 }, { 12.2, 18 } };
  g_autoptr (OxRing) hall_ring = ox_ring_new (hall, G_N_ELEMENTS (hall));
  g_autoptr (OxRing) store_ring = ox_ring_new (store, G_N_ELEMENTS (store));
  g_autoptr (OxRing) paint_ring = ox_ring_new (paint, G_N_ELEMENTS (paint));
  g_autoptr (OxRing) test_ring = ox_ring_new (test, G_N_ELEMENTS (test));
  put_room (builder, "R1", "Hall", hall_ring, NULL);
  put_room (builder, "R2", "Store", store_ring, NULL);
  put_room (builder, "R3", "Paint room", paint_ring, NULL);
  put_room (builder, "R4", "Test room", test_ring, NULL);
}

static OxJob *
make_workshop (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  OxTexts texts = common_texts;
  texts.title = (char *) "Machine workshop, floor preparation";
  texts.client = (char *) "Kverlund Gear Works";
  texts.site = (char *) "Mill Lane 3, Ostermouth";
  texts.number = (char *) "BFP-0415";
  texts.notes = (char *) "Oil stains are degreased by others before the start.\n"
                         "Machine plinths are covered; the floor up to them is hand work.\n"
                         "Doors are taken off their hinges by the client.";
  ox_job_builder_set_texts (builder, &texts);
  put_machine (builder, "medium", 30, 50);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 4 });
  put_workshop_rooms (builder);
  put_rectangle (builder, OX_OBSTACLE_SOLID, "O1", "Press plinth",
                 (OxShape){ .centre = { 6, 13.5 }, .width = 2.4, .depth = 1.6, .angle_deg = 30 });
  put_circle (builder, "O2", "Crane column", (OxPoint){ 12, 4 }, 0.3);
  put_doorway (builder, "D1", "Hall to store", (OxPoint){ 12.1, 10 }, (OxPoint){ 12.1, 11.4 });
  put_doorway (builder, "D2", "Hall to paint room", (OxPoint){ 19, 8.1 }, (OxPoint){ 20.6, 8.1 });
  put_doorway (builder, "D3", "Hall to test room", (OxPoint){ 12.1, 15 }, (OxPoint){ 12.1, 16.6 });
  put_station (builder, OX_STATION_COLLECTOR, "S1", "Collector", (OxPoint){ 9, 7 });
  put_station (builder, OX_STATION_SUPPLY, "S2", "Distribution board", (OxPoint){ 11.5, 7.5 });
  return ox_job_builder_end (builder);
}

static OxJob *
make_shop (void)
{
  OxJobBuilder *builder = ox_job_builder_new (NULL);
  OxTexts texts = common_texts;
  texts.title = (char *) "Bakery shop, floor preparation";
  texts.client = (char *) "Bakery Ellorin & Daughters";
  texts.site = (char *) "Market Square 7, Ostermouth";
  texts.number = (char *) "BFP-0418";
  texts.notes = (char *) "Work at night, between 20:00 and 06:00.\n"
                         "The shop window side is masked with film by the client.";
  ox_job_builder_set_texts (builder, &texts);
  put_machine (builder, "compact", 15, 30);
  ox_job_builder_set_rates (builder, (OxRates){ .edge_m2_per_hour = 4 });
  g_autoptr (OxRing) ring = ox_ring_new_rectangle ((OxPoint){ 5, 3 }, 10, 6, 0);
  put_room (builder, "R1", "Shop", ring, NULL);
  put_rectangle (builder, OX_OBSTACLE_SOLID, "O1", "Oven foot",
                 (OxShape){ .centre = { 8.9, 4.6 }, .width = 0.6, .depth = 0.6 });
  put_doorway (builder, "D1", "Street door", (OxPoint){ 2, -0.1 }, (OxPoint){ 3, -0.1 });
  put_station (builder, OX_STATION_COLLECTOR, "S1", "Collector", (OxPoint){ 2.5, 0.8 });
  put_station (builder, OX_STATION_SUPPLY, "S2", "Socket by the door", (OxPoint){ 3.4, 0.2 });
  return ox_job_builder_end (builder);
}

int
main (int argc, char **argv)
{
  static const struct
  {
    const char *name;
    OxJob *(*make) (void);
  } rows[] = {
    { "warehouse.oxturn", make_warehouse },
    { "workshop.oxturn", make_workshop },
    { "shop.oxturn", make_shop },
  };
  setlocale (LC_ALL, "");
  if (argc != 2)
    {
      g_printerr ("make-samples FOLDER\n");
      return 2;
    }
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (OxJob) job = rows[i].make ();
      g_autoptr (GError) error = NULL;
      g_autofree char *path = g_build_filename (argv[1], rows[i].name, NULL);
      if (!ox_job_file_write (job, path, &error))
        {
          g_printerr ("%s\n", error->message);
          return 3;
        }
    }
  return 0;
}
