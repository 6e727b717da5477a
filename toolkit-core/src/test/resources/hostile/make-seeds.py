#!/usr/bin/env python3
"""Writes the seeds: small whole files of each format, from which damaged ones are grown.

Needs Python 3 with its standard library only. Run in this folder; found-* files are not touched.
"""
import pathlib
import sqlite3
import struct
import zlib

HERE = pathlib.Path(__file__).parent
FORMATS = HERE.parent / "formats"
MARK = b"\n%part%\n"


def put(reader, name, data):
    folder = HERE / reader
    folder.mkdir(exist_ok=True)
    (folder / name).write_bytes(data if isinstance(data, bytes) else data.encode("utf-8"))


def shapefile(stem):
    parts = []
    for ending in ("shp", "shx", "dbf", "prj", "cpg"):
        file = FORMATS / f"{stem}.{ending}"
        parts.append(file.read_bytes() if file.exists() else b"")
    return MARK.join(parts)


def geopackage():
    file = HERE / "seed.gpkg"
    file.unlink(missing_ok=True)
    db = sqlite3.connect(file)
    db.executescript(
        """
        PRAGMA page_size = 512;
        PRAGMA application_id = 0x47504B47;
        CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,
          organization_coordsys_id INTEGER, definition TEXT, description TEXT);
        CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, srs_id INTEGER);
        CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT,
          srs_id INTEGER, z INTEGER, m INTEGER);
        CREATE TABLE beds (fid INTEGER PRIMARY KEY, geom BLOB, name TEXT, date DATE, width REAL, grazed BOOLEAN);
        INSERT INTO gpkg_spatial_ref_sys VALUES ('UTM 17', 32617, 'EPSG', 32617, 'undefined', '');
        INSERT INTO gpkg_contents VALUES ('beds', 'features', 32617);
        INSERT INTO gpkg_geometry_columns VALUES ('beds', 'geom', 'GEOMETRY', 32617, 0, 0);
        """
    )
    head = b"GP\x00\x01" + struct.pack("<i", 32617)
    ring = [(500000, 3000000), (500200, 3000000), (500200, 3000200), (500000, 3000000)]
    polygon = head + struct.pack("<BIII", 1, 3, 1, 4) + b"".join(struct.pack("<dd", *p) for p in ring)
    line = head + struct.pack("<BII", 1, 2, 2) + b"".join(struct.pack("<dd", *p) for p in ring[:2])
    db.execute("INSERT INTO beds VALUES (1, ?, 'North', '2024-06-30', 0.4, 1)", (polygon,))
    db.execute("INSERT INTO beds VALUES (2, ?, 'East', NULL, NULL, 0)", (line,))
    db.execute("INSERT INTO beds VALUES (3, NULL, NULL, '2024-06', 'wide', NULL)")
    db.commit()
    db.close()
    data = file.read_bytes()
    file.unlink()
    return data


def geotiff(compressed):
    """Eight by eight depths in EPSG:32617, deflated or not."""
    cells = b"".join(struct.pack("<f", i / 10) for i in range(64))
    strip = zlib.compress(cells) if compressed else cells
    scale = struct.pack("<ddd", 25, 25, 0)
    tie = struct.pack("<dddddd", 0, 0, 0, 499900, 3000100, 0)
    keys = struct.pack("<16H", 1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 32617)
    count = 13
    after = 8 + 2 + 12 * count + 4
    places = {}
    tail = b""
    for name, data in (("scale", scale), ("tie", tie), ("keys", keys), ("strip", strip)):
        places[name] = after + len(tail)
        tail += data + b"\0" * (len(data) % 2)
    entries = [
        (256, 3, 1, 8), (257, 3, 1, 8), (258, 3, 1, 32), (259, 3, 1, 8 if compressed else 1),
        (262, 3, 1, 1), (273, 4, 1, places["strip"]), (277, 3, 1, 1), (278, 3, 1, 8),
        (279, 4, 1, len(strip)), (339, 3, 1, 3), (33550, 12, 3, places["scale"]),
        (33922, 12, 6, places["tie"]), (34735, 3, 16, places["keys"]),
    ]
    head = struct.pack("<2sHIH", b"II", 42, 8, count)
    return head + b"".join(struct.pack("<HHII", *e) for e in entries) + struct.pack("<I", 0) + tail


put("geopackage", "seed.gpkg", geopackage())
for stem in ("areas-32617", "lines-xym", "lines-latin1", "points-XYZ"):
    put("shapefile", f"seed-{stem}.parts", shapefile(stem))
put("geojson", "seed.geojson", '{"type":"FeatureCollection","name":"beds","crs":{"type":"name","properties":{"name":'
    '"urn:ogc:def:crs:EPSG::32617"}},"features":[{"type":"Feature","id":"a","properties":{"name":"North","width":0.4,'
    '"date":"2024-06-30","grazed":true},"geometry":{"type":"Polygon","coordinates":[[[500000,3000000],[500200,3000000],'
    '[500200,3000200],[500000,3000000]]]}},{"type":"Feature","properties":{"id":7},"geometry":{"type":'
    '"MultiLineString","coordinates":[[[500000,3000000,1],[500100,3000100,2]]]}},{"type":"Feature","properties":null,'
    '"geometry":null}]}\n')
put("geojson", "seed-collection.geojson", '{"type":"GeometryCollection","geometries":[{"type":"Point","coordinates":'
    '[1,2]},{"type":"LineString","coordinates":[[1,2],[3,4]]}]}\n')
put("csv", "seed.csv", 'id,name,cause,width_m,date,wkt\r\n1,"North, ""old""",propeller,0.4,2024-06-30,"SRID=32617;'
    'LINESTRING (500000 3000000, 500100 3000100)"\r\n007,East,,1e-1,2024-06,"POLYGON ((500000 3000000, 500200 3000000, '
    '500200 3000200, 500000 3000000))"\r\n')
put("csv", "seed-xy.csv", "\ufeffid;x;y;depth_m\n1;500000;3000000;1.5\n2;-82.1;27.2;-3\n")
put("gpx", "seed.gpx", (FORMATS / "track.gpx").read_bytes())
put("ascii-grid", "seed.asc", "ncols 3\nnrows 2\nxllcorner 499900\nyllcorner 2999900\ncellsize 100\nNODATA_value -9999\n"
    "1.0 2.5 3\n4 5 -9999\n")
put("geotiff", "seed.tif", geotiff(False))
put("geotiff", "seed-deflate.tif", geotiff(True))
put("depth-points", "seed.csv", "x,y,depth_m\n500010,3000010,1.5\n500100,3000100,2\n500150,3000020,0.5\n")
put("survey", "seed.toml", 'survey = { name = "Heron Sound", date = "2026-06-14", effort_hours = 3.5, '
    'method = "aerial photographs" }\n[layers]\nscars = { file = "scars.gpkg", layer = "scars", crs = "EPSG:32617", '
    'attributes = { width = "w" }, width_unit = "cm", values = { cause = { "prop" = "propeller" } } }\n'
    '[[layers.beds]]\nfile = "a.csv"\nwkt_column = "wkt"\n[[layers.beds]]\nfile = "b.csv"\nx_column = "x"\n'
    'y_column = "y"\n[parameters]\nchannel_reach_m = 250\n')
put("markers", "seed.csv", 'segment,x,y,date,device\nc1-0001,,,2025-09-01,"sign"\n,100,20,2025-09-02,buoy\n,,,2025-09,\n')
put("crs", "seed-code.wkt", "EPSG:32617")
put("crs", "seed-urn.wkt", "urn:ogc:def:crs:EPSG::2882")
put("crs", "seed-esri.wkt", (FORMATS / "areas-2882.prj").read_bytes())
put("crs", "seed-geographic.wkt", (FORMATS / "areas-4326.prj").read_bytes())
put("tables", "seed.csv", (HERE.parents[4] / "shared" / "species.csv").read_bytes()[:1500].rsplit(b"\n", 1)[0] + b"\n")
