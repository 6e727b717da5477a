#!/usr/bin/python3
"""The work of `meadowmark assess` the straightforward way, for comparison of times and figures.

What an analyst would write with GeoPandas, Shapely and networkx: whole columns at once where
GeoPandas offers it, spatial indexes for every join, loops only where there is no other way. Runs
with Debian 12's python3-geopandas (0.12, Shapely 1.8) and with GeoPandas 1.x (Shapely 2).

Same definitions as docs/method.md, in grid metres: footprints with flat ends, crossing scars count
once, pieces of at least 0.01 m2 are patches, touching beds are one meadow. Left out, because there
is no straightforward way: gap widths, findings, repair of bad input, charts.

Prints one JSON object: seconds by stage, and the figures.
"""
import argparse
import json
import math
import os
import resource
import sys
import time
import warnings

os.environ.setdefault("USE_PYGEOS", "0")
import geopandas as gpd
import networkx as nx
import numpy as np
import pandas as pd
import shapely
from shapely.geometry import box
from shapely.ops import unary_union

MINIMUM_PATCH_M2 = 0.01
CROSSING_DISTANCES_M = [1, 2, 5, 10, 20, 50]
ARC_CHORDS = 8
SHAPELY_2 = int(shapely.__version__.split(".")[0]) >= 2


class Stages:
    """Seconds by stage."""

    def __init__(self):
        self.seconds = {}
        self.last = time.perf_counter()

    def done(self, name):
        now = time.perf_counter()
        self.seconds[name] = round(now - self.last, 3)
        self.last = now
        print(f"{name}: {self.seconds[name]} s", file=sys.stderr, flush=True)


def source(text):
    file, _, layer = text.partition("#")
    return {"filename": file, "layer": layer} if layer else {"filename": file}


def read_all(args):
    scars = gpd.read_file(**source(args.scars))
    beds = gpd.read_file(**source(args.beds))
    areas = gpd.read_file(**source(args.areas)) if args.areas else None
    return scars, beds, areas


def valid(frame):
    """Repairs what is invalid, as everyone has to before an overlay."""
    bad = ~frame.is_valid
    if bad.any():
        frame = frame.copy()
        if SHAPELY_2:
            frame.loc[bad, "geometry"] = shapely.make_valid(frame.geometry[bad].values)
        else:
            from shapely.validation import make_valid

            frame.loc[bad, "geometry"] = frame.geometry[bad].map(make_valid)
    return frame


def candidate_pairs(tree_of, shapes):
    """Positions (in shapes, in tree_of) whose envelopes meet."""
    index = tree_of.sindex
    query = index.query_bulk if hasattr(index, "query_bulk") else index.query
    return query(shapes)


def footprints_of(scars):
    """Lines buffered by half their width with flat ends; polygons as they are."""
    lines = scars.geom_type.isin(["LineString", "MultiLineString"])
    result = scars.geometry.copy()
    widths = scars.loc[lines, "width_m"].to_numpy(float) / 2
    if SHAPELY_2:
        result[lines] = shapely.buffer(
            scars.geometry[lines].values, widths, quad_segs=ARC_CHORDS, cap_style="flat", join_style="round"
        )
    else:
        result[lines] = scars.geometry[lines].buffer(widths, resolution=ARC_CHORDS, cap_style=2, join_style=1)
    return result, lines


def polygons_in(geometry):
    if geometry.is_empty:
        return []
    if geometry.geom_type == "Polygon":
        return [geometry]
    if hasattr(geometry, "geoms"):
        return [p for g in geometry.geoms for p in polygons_in(g)]
    return []


def patches_in(geometry):
    return [p for p in polygons_in(geometry) if p.area >= MINIMUM_PATCH_M2]


def cut(beds, footprints):
    """Scarred part and remaining pieces of each shape; footprints are joined bed by bed."""
    bed_of, scar_of = candidate_pairs(footprints, beds.geometry)
    members = pd.Series(scar_of).groupby(bed_of).apply(list)
    scarred = {}
    pieces = {}
    scar_values = footprints.values
    for i, bed in enumerate(beds.geometry.values):
        if i not in members.index:
            pieces[i] = patches_in(bed)
            continue
        union = unary_union([scar_values[j] for j in members[i]])
        scarred[i] = bed.intersection(union)
        pieces[i] = patches_in(bed.difference(union))
    return scarred, pieces


def meadows_of(beds):
    """Touching beds joined."""
    first, second = candidate_pairs(beds.geometry, beds.geometry)
    keep = first < second
    first, second = first[keep], second[keep]
    values = beds.geometry.reset_index(drop=True)
    touching = values[first].reset_index(drop=True).intersects(values[second].reset_index(drop=True))
    graph = nx.Graph()
    graph.add_nodes_from(range(len(beds)))
    graph.add_edges_from(zip(first[touching.values], second[touching.values]))
    groups = sorted(nx.connected_components(graph), key=min)
    union = [unary_union([values[i] for i in sorted(group)]) for group in groups]
    return gpd.GeoDataFrame(geometry=gpd.GeoSeries(union, crs=beds.crs))


def links_of(patches, reach):
    """Pairs of patches within reach, with their distance."""
    bounds = patches.bounds
    around = gpd.GeoSeries(
        [box(b.minx - reach, b.miny - reach, b.maxx + reach, b.maxy + reach) for b in bounds.itertuples()],
        crs=patches.crs,
    )
    first, second = candidate_pairs(patches, around)
    keep = first < second
    first, second = first[keep], second[keep]
    order = np.lexsort((second, first))
    first, second = first[order], second[order]
    values = patches.reset_index(drop=True)
    if SHAPELY_2:
        array = np.asarray(values.values)
        shapely.prepare(array)
        distance = shapely.distance(array[first], array[second])
    else:
        distance = values[first].reset_index(drop=True).distance(values[second].reset_index(drop=True)).values
    near = distance <= reach
    return first[near], second[near], distance[near]


def nearest_of(patches, first, second, distance, reach):
    """Distance to the nearest other patch; the search grows for those without one in reach."""
    count = len(patches)
    nearest = np.full(count, np.inf)
    np.minimum.at(nearest, first, distance)
    np.minimum.at(nearest, second, distance)
    values = patches.values
    bounds = patches.bounds.values
    for i in np.flatnonzero(np.isinf(nearest)):
        if count < 2:
            break
        search = reach * 2
        while True:
            b = bounds[i]
            around = box(b[0] - search, b[1] - search, b[2] + search, b[3] + search)
            others = [j for j in patches.sindex.query(around) if j != i]
            found = min((values[i].distance(values[j]) for j in others), default=math.inf)
            if found <= search:
                nearest[i] = found
                break
            search *= 2
    return nearest


def groups_by_distance(areas, first, second, distance):
    rows = []
    total = areas.sum()
    for crossing in CROSSING_DISTANCES_M:
        graph = nx.Graph()
        graph.add_nodes_from(range(len(areas)))
        linked = distance <= crossing + 1e-6
        graph.add_edges_from(zip(first[linked], second[linked]))
        groups = list(nx.connected_components(graph))
        largest = max(sum(areas[i] for i in group) for group in groups)
        rows.append({"distance_m": crossing, "groups": len(groups), "largest_share": largest / total})
    return rows


def equivalent_area(hectares, first, second, distance, median, cutoff, most):
    """Equivalent connected area: one Dijkstra a patch, paths less probable than the cut-off dropped."""
    started = time.perf_counter()
    count = min(most, len(hectares)) if most else len(hectares)
    rate = math.log(2) / median
    graph = nx.Graph()
    graph.add_nodes_from(range(count))
    inside = (first < count) & (second < count)
    graph.add_weighted_edges_from(zip(first[inside], second[inside], rate * distance[inside]))
    total = 0.0
    limit = -math.log(cutoff)
    for i in range(count):
        lengths = nx.single_source_dijkstra_path_length(graph, i, cutoff=limit)
        total += hectares[i] * sum(hectares[j] * math.exp(-length) for j, length in lengths.items())
    return {
        "patches": count,
        "links": int(inside.sum()),
        "median_m": median,
        "equivalent_area_ha": math.sqrt(total),
        "seconds": round(time.perf_counter() - started, 3),
    }


def totals_by_area(beds, scarred, before, after, areas):
    """Grass, scarred area and patches of every management area, and outside all of them."""
    name = next(c for c in areas.columns if c != "geometry")
    areas = areas[["geometry"]].assign(area=areas[name].astype(str))
    outside = gpd.GeoDataFrame(geometry=[unary_union(list(areas.geometry))], crs=areas.crs)

    def by_area(frame):
        inside = gpd.overlay(frame, areas, how="intersection", keep_geom_type=True)
        rest = gpd.overlay(frame, outside, how="difference", keep_geom_type=True).assign(area="outside")
        return gpd.GeoDataFrame(pd.concat([inside, rest], ignore_index=True), crs=frame.crs)

    def square_metres(frame):
        parts = by_area(frame)
        return parts.area.groupby(parts["area"]).sum()

    def count(frame):
        parts = by_area(frame).explode(index_parts=False)
        parts = parts[parts.area >= MINIMUM_PATCH_M2]
        return parts.groupby("area").size()

    table = pd.DataFrame(
        {
            "grass_m2": square_metres(beds[["geometry"]]),
            "scarred_m2": square_metres(scarred),
            "patches_before": count(before),
            "patches_after": count(after),
        }
    ).fillna(0)
    return table.to_dict("index")


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--scars", required=True)
    parser.add_argument("--beds", required=True)
    parser.add_argument("--areas")
    parser.add_argument("--crs", default="EPSG:32617")
    parser.add_argument("--output", required=True, help="GeoPackage to write")
    parser.add_argument("--median-crossing", type=float, default=10.0)
    parser.add_argument("--cutoff", type=float, default=1e-6)
    parser.add_argument("--most-patches", type=int, default=0, help="patches for connectivity, 0 for all")
    parser.add_argument("--no-connectivity", action="store_true")
    parser.add_argument("--graph", help="folder to write areas.csv and links.csv of the patches with scars to")
    args = parser.parse_args()
    warnings.filterwarnings("ignore")
    stages = Stages()

    scars, beds, areas = read_all(args)
    stages.done("read")

    scars = scars.to_crs(args.crs)
    beds = valid(beds).to_crs(args.crs)
    areas = None if areas is None else valid(areas).to_crs(args.crs)
    stages.done("project")

    footprints, lines = footprints_of(scars)
    footprints = footprints.reset_index(drop=True)
    stages.done("outline scars")

    scarred, pieces = cut(beds, footprints)
    bed_count = len(beds)
    scarred_m2 = np.array([scarred[i].area if i in scarred else 0.0 for i in range(bed_count)])
    table = beds[["geometry"]].reset_index(drop=True)
    table["grass_m2"] = beds.area.values
    table["scarred_m2"] = scarred_m2
    table["share"] = scarred_m2 / beds.area.values
    table["patches_after"] = [len(pieces[i]) for i in range(bed_count)]
    stages.done("cut beds")

    scar_lines = gpd.GeoDataFrame({"geometry": scars.geometry[lines].values}, crs=beds.crs)
    joined = gpd.sjoin(scar_lines, table[["geometry"]], how="inner", predicate="intersects")
    in_bed = gpd.GeoSeries(joined.geometry.values).intersection(
        gpd.GeoSeries(table.geometry.values[joined["index_right"].values])
    )
    lengths = pd.Series(in_bed.length.values).groupby(joined["index_right"].values).sum()
    table["scar_length_m"] = lengths.reindex(range(bed_count)).fillna(0).values
    stages.done("scar lengths in beds")

    meadows = meadows_of(beds)
    _, meadow_pieces = cut(meadows, footprints)
    before = gpd.GeoDataFrame(
        geometry=gpd.GeoSeries([p for m in meadows.geometry for p in patches_in(m)], crs=beds.crs)
    )
    after = gpd.GeoDataFrame(
        geometry=gpd.GeoSeries([p for i in range(len(meadows)) for p in meadow_pieces[i]], crs=beds.crs)
    )
    stages.done("patches")

    figures = {}
    reach = max(CROSSING_DISTANCES_M)
    graphs = {}
    for name, frame in (("before", before), ("after", after)):
        patch_areas = frame.area.values
        graphs[name] = links_of(frame.geometry, reach)
        figures["crossings_" + name] = groups_by_distance(patch_areas, *graphs[name])
    stages.done("links and groups")

    nearest = nearest_of(after.geometry, *graphs["after"], reach)
    after["nearest_m"] = nearest
    stages.done("nearest patches")

    if args.graph:
        os.makedirs(args.graph, exist_ok=True)
        with open(os.path.join(args.graph, "areas.csv"), "w") as file:
            file.writelines(f"{area / 10_000!r}\n" for area in after.area.tolist())
        with open(os.path.join(args.graph, "links.csv"), "w") as file:
            file.writelines(f"{i},{j},{metres!r}\n" for i, j, metres in zip(*(x.tolist() for x in graphs["after"])))
        stages.last = time.perf_counter()

    if not args.no_connectivity:
        for name, frame in (("before", before), ("after", after)):
            figures["connectivity_" + name] = equivalent_area(
                frame.area.values / 10_000, *graphs[name], args.median_crossing, args.cutoff, args.most_patches
            )
        stages.done("connectivity")

    if areas is not None:
        scarred_frame = gpd.GeoDataFrame(geometry=gpd.GeoSeries(list(scarred.values()), crs=beds.crs))
        scarred_frame = scarred_frame[~scarred_frame.is_empty]
        figures["areas"] = totals_by_area(beds, scarred_frame, before, after, areas)
        stages.done("management areas")

    table.to_file(args.output, layer="beds", driver="GPKG")
    after.to_file(args.output, layer="patches", driver="GPKG")
    stages.done("write")

    figures.update(
        {
            "scars": len(scars),
            "beds": bed_count,
            "grass_m2": float(beds.area.sum()),
            "scarred_m2": float(scarred_m2.sum()),
            "scar_length_m": float(table["scar_length_m"].sum()),
            "bed_patches_after": int(table["patches_after"].sum()),
            "patches_before": len(before),
            "patches_after": len(after),
            "nearest_sum_m": float(nearest[np.isfinite(nearest)].sum()),
            "bed_scarred_m2": [round(v, 6) for v in scarred_m2.tolist()],
            "bed_patches": table["patches_after"].tolist(),
        }
    )
    usage = resource.getrusage(resource.RUSAGE_SELF)
    print(
        json.dumps(
            {
                "versions": {
                    "geopandas": gpd.__version__,
                    "shapely": shapely.__version__,
                    "geos": ".".join(map(str, shapely.geos.geos_version if not SHAPELY_2 else shapely.geos_version)),
                    "networkx": nx.__version__,
                    "python": sys.version.split()[0],
                },
                "seconds": stages.seconds,
                "total_seconds": round(sum(stages.seconds.values()), 3),
                "cpu_seconds": round(usage.ru_utime + usage.ru_stime, 3),
                "peak_resident_mib": round(usage.ru_maxrss / 1024),
                "figures": figures,
            }
        )
    )


if __name__ == "__main__":
    main()
