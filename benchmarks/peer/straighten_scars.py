#!/usr/bin/python3
"""Replaces every scar line by the straight line between its ends, and writes a new GeoPackage.

A straight scar has a footprint of exactly length times width in every engine, so areas of two
engines can be compared to the last digits; around bends each engine draws its own arcs.
"""
import sys

import geopandas as gpd
from shapely.geometry import LineString

source, target = sys.argv[1:]
scars = gpd.read_file(source)
lines = scars.geom_type == "LineString"
scars.geometry = [
    LineString([g.coords[0], g.coords[-1]]) if line else g for g, line in zip(scars.geometry, lines)
]
scars.to_file(target, layer="scars", driver="GPKG")
