/* Oxturn: file/tables - a plan as tables for other programs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CSV after RFC 4180: UTF-8, CRLF, header line, decimal point, WKT in quotes; metres, square metres, minutes, degrees. Stored
 * coordinates have 4 decimals at most, computed ones 6. The same plan gives the same bytes in every locale.
 *
 *      floor.csv     id,kind,name,wkt,coats,speed_m_per_min
 *      strips.csv    order,strip,room,lane,kind,coat,x1,y1,x2,y2,heading_deg,length_m,width_m,speed_m_per_min,minutes,station,wkt,supply,hose_m,cord_m,caution,paces,done
 *      moves.csv     order,from_strip,to_strip,kind,minutes,length_m,cx,cy,wkt
 *      zones.csv     id,room,area_m2,wkt,coat
 *      edge.csv      id,room,cause,area_m2,length_m,wkt,done
 *      stations.csv  id,kind,x,y,length_m,strips,farthest_m
 *      summary.json  machine, rates, totals, out_of_reach, record
 *      quantities.csv  item,room,quantity,unit,verdict,basis
 *      shifts.csv    shift,date,machine,strips,edge,strip_minutes,move_minutes,start_minutes,refill_minutes,drum_minutes,wear_minutes,
 *                    edge_minutes,setup_minutes,cleanup_minutes,break_minutes,total_minutes
 *      cost.csv      what,room,quantity,unit,rate,amount
 *      checks.csv    check,room,x,y,strip
 *      days.csv      shift,date,machine,kind,id,room,length_m,area_m2,minutes,done,csp,depth_mm,note
 *      record.csv    what,date,strips,strip_numbers,edge_areas,edge_numbers,strip_m,blasted_m2,edge_m2,strip_hours,move_hours,edge_hours,meter_hours,
 *                    csp_least,csp_most,depth_mm,notes,machine_meters
 */
#pragma once
#include <gio/gio.h>
#include "estimate/estimate.h"
G_BEGIN_DECLS

/* Each Returns: (transfer full): the text of one table */
char *ox_table_floor (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_strips (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_moves (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_zones (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_edges (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_stations (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_summary (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_quantities (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_shifts (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_cost (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_days (const OxEstimate *estimate) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_checks (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;
char *ox_table_record (const OxPlan *plan) G_GNUC_WARN_UNUSED_RESULT;

/* ox_tables_write:
 * @directory: made with its parents where it is missing; files of the same names in it are replaced, each whole or not at all
 * @error: G_FILE_ERROR or G_IO_ERROR with the path in the message
 */
gboolean ox_tables_write (const OxPlan *plan, const char *directory, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
