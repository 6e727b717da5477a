#!/usr/bin/python3
"""Records what a second geometry engine (GEOS through Shapely 1.8) finds in scarred real beds.

Usage: second-engine.py BEDS.gpkg OUTPUT_FOLDER

Takes 50 beds of the open seagrass polygons of Tampa Bay, 1999 (doi:10.5281/zenodo.5507336), chosen
by seed, draws straight scars across each, and writes

  second-engine-scars.csv   the scars, exactly as both engines take them: bed, scar, width, WKT
  second-engine-values.csv  what GEOS finds: areas, patches, distances, mesh size

Coordinates are those of the file (US survey feet, EPSG:2882) times 1200/3937: metres on its grid.
A footprint is the line buffered by half its width with flat ends. Bed areas are in the values too,
so that a reading error would show apart from an overlay error. Patches are pieces of at least
MINIMUM_PATCH square metres; smaller pieces are counted as crumbs.
"""
import csv
import math
import random
import sqlite3
import struct
import sys

import shapely
import shapely.geos
from shapely import wkb, wkt
from shapely.geometry import CAP_STYLE, LineString
from shapely.ops import transform, unary_union

SEED = 20260614
BEDS = 50
FOOT = 1200.0 / 3937.0
MINIMUM_PATCH = 0.01
ENVELOPE_BYTES = {0: 0, 1: 32, 2: 48, 3: 48, 4: 64}


def geometry(blob):
    """A GeoPackage geometry blob: header, envelope, then well-known binary."""
    if blob[:2] != b"GP":
        raise ValueError("not a GeoPackage geometry")
    envelope = ENVELOPE_BYTES[(blob[3] >> 1) & 7]
    return wkb.loads(bytes(blob[8 + envelope:]))


def beds(path):
    with sqlite3.connect(f"file:{path}?mode=ro&immutable=1", uri=True) as db:
        table, column = db.execute(
            "select table_name, column_name from gpkg_geometry_columns").fetchone()
        key = next(row[1] for row in db.execute(f'pragma table_info("{table}")') if row[5])
        rows = db.execute(f'select "{key}", "{column}" from "{table}" order by "{key}"')
        for fid, blob in rows:
            bed = transform(lambda x, y: (x * FOOT, y * FOOT), geometry(blob))
            if bed.is_valid and 2_000 < bed.area < 2_000_000:
                yield fid, bed


def scars(bed, draw):
    """Straight lines through points of the bed; some cross it, some stop inside."""
    west, south, east, north = bed.bounds
    across = math.hypot(east - west, north - south)
    for _ in range(draw.randint(3, 12)):
        x = draw.uniform(west, east)
        y = draw.uniform(south, north)
        angle = draw.uniform(0, math.pi)
        half = across * draw.uniform(0.05, 0.8)
        dx, dy = half * math.cos(angle), half * math.sin(angle)
        width = round(draw.uniform(0.2, 4.0), 2)
        line = LineString([(round(x - dx, 3), round(y - dy, 3)),
                           (round(x + dx, 3), round(y + dy, 3))])
        yield width, line


def polygons(shape):
    if shape.is_empty:
        return []
    parts = getattr(shape, "geoms", [shape])
    return [part for part in parts if part.geom_type == "Polygon"]


def main(path, folder):
    draw = random.Random(SEED)
    chosen = sorted(draw.sample(list(beds(path)), BEDS), key=lambda row: row[0])
    with open(f"{folder}/second-engine-scars.csv", "w", newline="") as lines_file, \
            open(f"{folder}/second-engine-values.csv", "w", newline="") as values_file:
        lines = csv.writer(lines_file, lineterminator="\n")
        values = csv.writer(values_file, lineterminator="\n")
        engine = ".".join(str(n) for n in shapely.geos.geos_version)
        values_file.write(f"# second-engine.py, seed {SEED}: GEOS {engine}, "
                          f"Shapely {shapely.__version__}, Python {sys.version.split()[0]}\n")
        lines.writerow(["bed", "scar", "width_m", "wkt"])
        values.writerow(["bed", "bed_area_m2", "scarred_area_m2", "remaining_area_m2", "patches",
                         "crumbs", "edge_length_m", "mesh_size_m2", "nearest_distances_m"])
        for fid, bed in chosen:
            footprints = []
            for number, (width, line) in enumerate(scars(bed, draw), start=1):
                text = "LINESTRING (%r %r, %r %r)" % (line.coords[0] + line.coords[1])
                lines.writerow([fid, f"{fid}-{number}", width, text])
                footprints.append(wkt.loads(text).buffer(width / 2, cap_style=CAP_STYLE.flat))
            union = unary_union(footprints)
            left = polygons(bed.difference(union))
            patches = [p for p in left if p.area >= MINIMUM_PATCH]
            nearest = sorted(
                min(a.distance(b) for b in patches if b is not a) for a in patches
            ) if len(patches) > 1 else []
            values.writerow([
                fid, repr(bed.area), repr(bed.intersection(union).area),
                repr(sum(p.area for p in left)), len(patches), len(left) - len(patches),
                repr(sum(p.length for p in patches)),
                repr(sum(p.area ** 2 for p in patches) / bed.area),
                " ".join(repr(d) for d in nearest)])


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2])
