/* Oxturn: lines to start the scope of work with: what is included, what is not, what is taken for granted.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Common practice, no source; wordings of our own. Each can be reworded or taken out in the job. An id stands in job files and never changes its
 * meaning. Columns: id, list, whether a new job has it, text.
 */
{ "blasting", OX_SCOPE_INCLUDED, TRUE, N_ ("Blasting of the floor shown as prepared, to the target profile of each room.") },
{ "edges", OX_SCOPE_INCLUDED, TRUE, N_ ("Edge work with hand tools where the machine does not reach, as hatched on this drawing.") },
{ "collecting", OX_SCOPE_INCLUDED, TRUE, N_ ("Dust collection while blasting, and taking loose abrasive off the floor.") },
{ "patch", OX_SCOPE_INCLUDED, TRUE, N_ ("A test patch on this floor before work starts.") },
{ "masking", OX_SCOPE_INCLUDED, FALSE, N_ ("Protection of the masked areas shown.") },
{ "removal", OX_SCOPE_INCLUDED, FALSE, N_ ("Removal of dust and spent abrasive from the site.") },
{ "measuring", OX_SCOPE_INCLUDED, FALSE, N_ ("Measuring the profile reached, with a record of where and how.") },
{ "repairs", OX_SCOPE_EXCLUDED, TRUE, N_ ("Repair of cracks, spalls, joints and hollow or soft concrete.") },
{ "coating", OX_SCOPE_EXCLUDED, TRUE, N_ ("Coatings, toppings and sealers.") },
{ "clearing", OX_SCOPE_EXCLUDED, TRUE, N_ ("Clearing the floor of goods, plant, fixings and water.") },
{ "substances", OX_SCOPE_EXCLUDED, TRUE, N_ ("Tests for hazardous substances, and their removal and disposal.") },
{ "upright", OX_SCOPE_EXCLUDED, FALSE, N_ ("Walls, plinths, kerbs and other upright faces.") },
{ "supply", OX_SCOPE_EXCLUDED, FALSE, N_ ("Power to the stations, and its cost.") },
{ "waste", OX_SCOPE_EXCLUDED, FALSE, N_ ("Disposal of dust and spent abrasive.") },
{ "measured", OX_SCOPE_ASSUMED, TRUE, N_ ("Areas are measured on this drawing; dimensions govern, do not scale from a print.") },
{ "texture", OX_SCOPE_ASSUMED, TRUE, N_ ("Floor that the machine does not reach is edge work, done with hand tools; its texture may differ from machine-prepared floor.") },
{ "judged", OX_SCOPE_ASSUMED, TRUE, N_ ("The profile reached is judged on a test patch on this floor before work starts.") },
{ "sound", OX_SCOPE_ASSUMED, TRUE, N_ ("The concrete is sound, dry and free of oil, and as thick and hard as stated to us.") },
{ "access", OX_SCOPE_ASSUMED, TRUE, N_ ("The floor is free, lit and open to the crew for whole shifts.") },
{ "guarded", OX_SCOPE_ASSUMED, FALSE, N_ ("Drops and openings are guarded by the site until the crew arrives.") },
{ "noise", OX_SCOPE_ASSUMED, FALSE, N_ ("Noise and dust are allowed during the hours of work.") },
