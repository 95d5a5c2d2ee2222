#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Walks through the window as a screen reader does, in a process of its own: walk-window.py PROGRAM JOB JOB

Wants a display and a session bus. Every stage is gone to by its button; whatever can take the focus there must have a name.
The floor must say what it is and what lies on it. Then the program is started twice more: each start hands its job to the one
that runs, and ends.
"""
import os
import shutil
import subprocess
import sys
import tempfile
import time

import pyatspi

PATIENCE_S = 60
# Parts of a composite, which are reached through it and have no name of their own.
PARTS = {"scroll bar", "scroll pane", "list item", "filler", "panel", "viewport"}


def wait_for(what, find):
    """What find() gives, as soon as it is something; ends the test when that takes too long."""
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        try:
            found = find()
        except Exception:  # a node that went away while it was asked
            found = None
        if found:
            return found
        time.sleep(0.05)
    sys.exit(f"FAIL: waited in vain for {what}")


def walk(node, depth=0):
    """Every node that is shown, from the top."""
    yield node
    for i in range(node.childCount):
        child = node.getChildAtIndex(i)
        if child is not None and depth < 60:
            yield from walk(child, depth + 1)


def has(node, state):
    return node.getState().contains(state)


def name_of(node):
    if node.name:
        return node.name
    for relation in node.getRelationSet():
        if relation.getRelationType() == pyatspi.RELATION_LABELLED_BY:
            return relation.getTarget(0).name
    return ""


def is_part(node):
    return node.getRoleName() in PARTS or (node.parent is not None and node.parent.getRoleName() in ("spin button", "combo box"))


def check_names(frame, stage):
    """How many nodes that can take the focus are shown, all of them named."""
    n = 0
    for node in walk(frame):
        if not (has(node, pyatspi.STATE_FOCUSABLE) and has(node, pyatspi.STATE_VISIBLE)) or is_part(node):
            continue
        n += 1
        if not name_of(node):
            sys.exit(f"FAIL: {stage}: a {node.getRoleName()} in {node.parent.getRoleName()} {node.parent.name!r} has no name")
    return n


def find_named(frame, name):
    return next((node for node in walk(frame) if node.name == name or node.name.endswith(" " + name)), None)


def frames():
    desktop = pyatspi.Registry.getDesktop(0)
    found = []
    for i in range(desktop.childCount):
        app = desktop.getChildAtIndex(i)
        if app is not None and app.name and "oxturn" in app.name.lower():
            found += [app.getChildAtIndex(k) for k in range(app.childCount)]
    return [frame for frame in found if frame is not None and frame.getRoleName() == "frame"]


def stage_button(frame, title):
    """A stage's button is called by its title and what came of it."""
    for node in walk(frame):
        if node.getRoleName() in ("toggle button", "radio button", "push button") and title in node.name:
            return node
    return None


def main():
    program, first, second = sys.argv[1:4]
    home = tempfile.mkdtemp()
    jobs = [shutil.copy(job, home) for job in (first, second)]
    for variable in ("HOME", "XDG_STATE_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"):
        os.environ[variable] = home
    running = subprocess.Popen([program, jobs[0]])
    try:
        frame = wait_for("the window", frames)[0]
        floor = wait_for("the floor", lambda: find_named(frame, "Floor") and next(
            (n for n in walk(frame) if n.name == "Floor" and n.description), None))
        if "obstacles" not in floor.description:
            sys.exit(f"FAIL: the floor says {floor.description!r} of itself")
        total = 0
        for stage in ("Machine", "Plan", "Sheets", "Record", "Floor"):
            button = wait_for(stage, lambda: stage_button(frame, stage))
            button.queryAction().doAction(0)
            wait_for(f"{stage} to be chosen", lambda: has(button, pyatspi.STATE_PRESSED))
            total += check_names(frame, stage)  # some toolkits show what the other stages have, too
        print(f"{total} named")
        if total < 100:
            sys.exit(f"FAIL: only {total} nodes were found that can take the focus")
        for job in jobs[::-1]:
            if subprocess.run([program, job], timeout=PATIENCE_S, check=False).returncode != 0 or running.poll() is not None:
                sys.exit("FAIL: a second start did not hand its job over")
    finally:
        running.terminate()
        running.wait()
        shutil.rmtree(home, ignore_errors=True)
    print("ok")


main()
