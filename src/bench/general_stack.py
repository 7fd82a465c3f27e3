#!/usr/bin/python3
"""The geometry of the big job with a general library: Shapely on GEOS, from Debian's packages python3-shapely and python3-numpy.

    general_stack.py LOG.csv ROWS SPACING_M [SIMPLIFY_M]

Reads the log, lays a strip for every row and pass with two corners a record, unites them and sums the overlap of every pair of
strips that touch. No smoothing, towing, rates, diagnosis, uncertainty or reports: what a careful user of the library would write
for covered and doubly covered ground alone. Prints seconds by stage, covered and overlapping square meters.
"""
import csv
import math
import sys
import time

import numpy as np
from shapely.geometry import Polygon
from shapely.ops import unary_union
from shapely.strtree import STRtree

EARTH_M = 6371008.8  # mean radius, IUGG


def passes_of(path):
    """East, north, m, and course, rad, of each unbroken stretch of working records."""
    lat, lon, course, down = [], [], [], []
    with open(path, newline="") as lines:
        rows = csv.reader(lines)
        names = next(rows)
        at = {name.split("[")[0]: i for i, name in reversed(list(enumerate(names)))}
        for row in rows:
            lat.append(float(row[at["lat"]]))
            lon.append(float(row[at["lon"]]))
            course.append(float(row[at["course"]]))
            down.append(row[at["down"]] in ("1", "true", "on", "active"))
            for text in row[at["flow_01"]:]:  # every flow is a number someone wants
                float(text or "nan")
    lat, lon, course = np.radians(lat), np.radians(lon), np.radians(course)
    north = (lat - lat.mean()) * EARTH_M
    east = (lon - lon.mean()) * EARTH_M * math.cos(lat.mean())
    start = None
    for i, working in enumerate(down + [False]):
        if working and start is None:
            start = i
        if not working and start is not None:
            if i - start > 1:
                yield east[start:i], north[start:i], course[start:i]
            start = None


def strips_of(passes, rows, spacing, simplify):
    strips = []
    for east, north, course in passes:
        right_e, right_n = np.cos(course), -np.sin(course)
        for row in range(rows):
            left, right = ((row + side - rows / 2) * spacing for side in (0, 1))
            a = np.column_stack((east + left * right_e, north + left * right_n))
            b = np.column_stack((east + right * right_e, north + right * right_n))
            strip = Polygon(np.vstack((a, b[::-1])))
            if simplify:
                strip = strip.simplify(simplify)
            strips.append(strip if strip.is_valid else strip.buffer(0))
    return strips


def overlap_of(strips):
    tree = STRtree(strips)
    known = {id(strip): i for i, strip in enumerate(strips)}
    area = 0.0
    for i, strip in enumerate(strips):
        for found in tree.query(strip):
            j = known[id(found)] if hasattr(found, "area") else int(found)  # Shapely 1.8 returns strips, 2 their numbers
            if j > i and strip.intersects(strips[j]):
                area += strip.intersection(strips[j]).area
    return area


def main():
    path, rows, spacing = sys.argv[1], int(sys.argv[2]), float(sys.argv[3])
    simplify = float(sys.argv[4]) if len(sys.argv) > 4 else 0
    clock = [time.time()]
    passes = list(passes_of(path))
    clock.append(time.time())
    strips = strips_of(passes, rows, spacing, simplify)
    clock.append(time.time())
    covered = unary_union(strips).area
    clock.append(time.time())
    overlap = overlap_of(strips)
    clock.append(time.time())
    for name, a, b in zip(("read", "strips", "union", "overlap"), clock, clock[1:]):
        print(f"{name} {b - a:.2f} s")
    print(f"{len(strips)} strips, covered {covered:.1f} m2, overlap {overlap:.1f} m2")


main()
