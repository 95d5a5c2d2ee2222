#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Oxturn and plans the warehouse sample with it: sh samples/try.sh
# Tables and drawings land in build/out; where there is a screen, the window opens with the sample.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)

# To build, and to show text and icons in the window.
sh "$root/.ci/need-packages" \
  gcc libc6-dev meson pkgconf gettext python3 \
  libglib2.0-dev libxml2-dev libgeos-dev libcairo2-dev libpango1.0-dev libgtk-4-dev libpoppler-glib-dev \
  libxml2-utils librsvg2-common fonts-dejavu-core

build=$root/build
if [ ! -f "$build/build.ninja" ]; then
  rm -rf "$build"
  meson setup "$build" "$root" >"$build.log" 2>&1 || { cat "$build.log"; exit 1; }
  rm -f "$build.log"
fi
ninja -C "$build" >"$build/try.log" 2>&1 || { cat "$build/try.log"; exit 1; }

batch=$build/src/batch/oxturn-batch
job=$root/samples/warehouse.oxturn
out=$build/out
rm -rf "$out"
mkdir -p "$out"
"$batch" check "$job"
"$batch" plan "$job" --tables "$out/tables"
for sheet in scope crew; do
  "$batch" draw "$job" --sheet $sheet --paper A3 --scale auto -o "$out/$sheet.svg"
done
"$batch" draw "$job" --sheet all --paper A3 --scale auto -o "$out/warehouse.pdf"

echo
echo "Planned $job"
python3 - "$out/tables/summary.json" <<'END'
import json, sys
with open(sys.argv[1], encoding='utf-8') as file:
    t = json.load(file)['totals']
print(f"  {t['target_m2']:.1f} m2 to be prepared: {t['blasted_m2']:.1f} m2 by {t['strips']} strips,"
      f" {t['edge_m2']:.1f} m2 of edge work by hand")
print(f"  {t['labour_hours']:.1f} labour hours, {t['ideal_hours']:.1f} at the very least")
END
echo "  tables:   $out/tables"
echo "  drawings: $out/scope.svg $out/crew.svg $out/warehouse.pdf"

window=$build/src/app/oxturn
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] && [ -x "$window" ]; then
  echo "Opening the window. Close it to end."
  exec "$window" "$job"
fi
echo "No screen here; where there is one, open the sample with: $window $job"
