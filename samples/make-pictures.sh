#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Makes the pictures of README.md with the real programs from the warehouse sample: sh samples/make-pictures.sh
# samples/pictures/window.png is the window in a virtual screen, crew.png the crew drawing. Run samples/try.sh first.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
sh "$root/.ci/need-packages" xvfb xauth imagemagick librsvg2-bin

build=$root/build
pictures=$root/samples/pictures
job=$root/samples/warehouse.oxturn
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$pictures"

"$build/src/batch/oxturn-batch" draw "$job" --sheet crew --paper A3 --scale auto -o "$work/crew.svg"
rsvg-convert --width 1600 --background-color white "$work/crew.svg" -o "$work/crew.png"
convert "$work/crew.png" -colors 128 -define png:compression-level=9 -strip "$pictures/crew.png"

# Runs inside the virtual screen: waits until two pictures in a row are the same and show more than an empty screen.
cat >"$work/shoot" <<'END'
"$1" "$2" &
window=$!
last=
for _ in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20; do
  sleep 1
  import -silent -window root "$3"
  now=$(convert "$3" rgb:- | cksum)
  colours=$(identify -format %k "$3")
  [ "$now" = "$last" ] && [ "$colours" -gt 20 ] && break
  last=$now
done
kill "$window"
wait "$window" 2>/dev/null || true
END
cp "$job" "$work/warehouse.oxturn"
env -u WAYLAND_DISPLAY HOME="$work" XDG_STATE_HOME="$work" XDG_CONFIG_HOME="$work" XDG_DATA_HOME="$work" LC_ALL=C.UTF-8 \
  GSK_RENDERER=cairo GDK_DEBUG=gl-disable GDK_BACKEND=x11 GTK_A11Y=none GTK_THEME=Adwaita GSETTINGS_BACKEND=memory \
  GIO_USE_VFS=local DBUS_SESSION_BUS_ADDRESS=disabled: \
  xvfb-run -a -s '-screen 0 1600x1000x24 -nolisten tcp' \
  sh "$work/shoot" "$build/src/app/oxturn" "$work/warehouse.oxturn" "$work/window.png"
convert "$work/window.png" -trim +repage -colors 200 -define png:compression-level=9 -strip "$pictures/window.png"
echo "$pictures/window.png $pictures/crew.png"
