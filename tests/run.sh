#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Builds Oxturn with warnings as errors and runs all tests: sh tests/run.sh
#   1. all tests that need no display, without one
#   2. the tests of the window, in a virtual screen
#   3. those of 1 again under the address and undefined-behaviour sanitizers
# The last line is "N passed, N failed". Build directories: build-werror and build-asan; a second run is quick.
# OXTURN_FLOORS, where set, names a folder of *.wkt floors that are planned and checked too.
set -u
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)

# To build, to draw text and icons, to run the window without a screen, and to judge what was made by other means.
sh "$root/.ci/need-packages" \
  gcc libc6-dev locales meson pkgconf gettext python3 \
  libglib2.0-dev libxml2-dev libgeos-dev libcairo2-dev libpango1.0-dev libgtk-4-dev libpoppler-glib-dev libxtst-dev \
  librsvg2-common fonts-dejavu-core xvfb xauth \
  dbus-daemon at-spi2-core python3-pyatspi \
  librsvg2-bin poppler-utils qpdf libxml2-utils mallard-rng desktop-file-utils appstream python3-pyclipper python3-shapely \
  || exit 1

LC_ALL=C.UTF-8
export LC_ALL

setup () { # DIRECTORY OPTION...
  dir=$1
  shift
  [ -f "$dir/build.ninja" ] && return 0
  rm -rf "$dir"
  meson setup "$dir" "$root" "$@" >"$dir.log" 2>&1 || { cat "$dir.log"; return 1; }
  rm -f "$dir.log"
}

stop () {
  echo "$1"
  echo "0 passed, 1 failed"
  exit 1
}

plain=$root/build-werror
asan=$root/build-asan
setup "$plain" -Dwerror=true || stop "The build could not be set up."
setup "$asan" -Dwerror=true -Db_sanitize=address,undefined -Db_lundef=false || stop "The sanitized build could not be set up."
rm -f "$plain/meson-logs/core.json" "$plain/meson-logs/display.json" "$asan/meson-logs/asan.json"
ninja -C "$plain" || stop "Oxturn does not build without warnings."

# A locale with a decimal comma, made here so that none has to be installed in the system.
LOCPATH=$plain/locales
export LOCPATH
if [ ! -d "$LOCPATH/de_DE.utf8" ]; then
  mkdir -p "$LOCPATH"
  localedef -i de_DE -f UTF-8 "$LOCPATH/de_DE.utf8" || stop "The locale for the tests could not be made."
fi

echo "== Tests that need no display"
env -u DISPLAY -u WAYLAND_DISPLAY \
  meson test -C "$plain" --no-suite display --num-processes 2 --print-errorlogs --logbase core

echo "== Tests of the window"
env -u WAYLAND_DISPLAY GSK_RENDERER=cairo GDK_DEBUG=gl-disable GDK_BACKEND=x11 GTK_A11Y=test GTK_THEME=Adwaita \
  DBUS_SESSION_BUS_ADDRESS=disabled: GSETTINGS_BACKEND=memory GIO_USE_VFS=local \
  xvfb-run -a -s '-screen 0 1600x1000x24 -nolisten tcp' \
  meson test -C "$plain" --suite display --num-processes 1 --print-errorlogs --logbase display

echo "== Tests that need no display, under the sanitizers"
# What is random or read from outside was covered above; a part of it is enough to find a stray pointer.
env -u DISPLAY -u WAYLAND_DISPLAY G_SLICE=always-malloc OXTURN_RANDOM_FLOORS="${OXTURN_RANDOM_FLOORS_ASAN:-40}" \
  ASAN_OPTIONS=detect_leaks=1 UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1 \
  LSAN_OPTIONS="suppressions=$root/tests/lsan.supp:print_suppressions=0" \
  meson test -C "$asan" --no-suite display --no-suite structure --num-processes 2 --timeout-multiplier 5 \
  --print-errorlogs --logbase asan

exec python3 "$root/tests/structure/count-results.py" \
  "$plain/meson-logs/core.json" "$plain/meson-logs/display.json" "$asan/meson-logs/asan.json"
