#!/usr/bin/env python3
"""Meadowmark and the script peer on the same scars, side by side in one run.

Makes scars on given beds with `meadowmark make-sample`, runs `meadowmark assess` and
peer/assess_peer.py one after the other, checks that their common figures agree, and prints a table
in Markdown. Needs nothing but Python 3.9 and GNU time; the peer runs under its own Python.

Exit code 1 if a common figure differs by more than is allowed.
"""
import argparse
import csv
import json
import os
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent
DATA = ROOT.parent / "shared" / "data"
SAME_GEOMETRY = 1e-6
"""Lengths, counts, and areas of straight scars: two engines, the same definitions."""
BENT = 3e-4
"""Areas of bent scars: each buffer engine simplifies a line by up to 1 % of the distance first."""
PROJECTED = 1e-5
"""Figures that hang on where a bed lies: two projection engines move beds by millimetres."""


def timed(command, log):
    """Runs under GNU time; (standard output, wall seconds, CPU seconds, peak MiB)."""
    with open(log, "w") as errors:
        started = time.perf_counter()
        done = subprocess.run(
            ["/usr/bin/time", "-v", *map(str, command)], stdout=subprocess.PIPE, stderr=errors, text=True
        )
        wall = time.perf_counter() - started
    report = Path(log).read_text()
    if done.returncode != 0:
        sys.exit(f"{command[0]} ended with {done.returncode}; see {log}")

    def number(label):
        return float(re.search(re.escape(label) + r": ([\d.]+)", report).group(1))

    cpu = number("User time (seconds)") + number("System time (seconds)")
    return done.stdout, wall, cpu, number("Maximum resident set size (kbytes)") / 1024


def rows(folder, table):
    with open(folder / "tables" / (table + ".csv"), newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def heap_and_stages(output):
    """Peak heap in MiB and seconds by stage, as the run record has them."""
    record = json.loads((output / "run-record.json").read_text())
    stages = record["run"]["stages"]
    return record, max(s["peak_heap_bytes"] for s in stages) / 2**20, {s["stage"]: s["wall_seconds"] for s in stages}


def make_sample(meadowmark, scars, beds, survey, *more):
    subprocess.run(
        [meadowmark, "make-sample", "--scars", str(scars), "--on-beds", beds, "--quiet", "--output", survey, *more],
        check=True,
        stdout=subprocess.DEVNULL,
    )


def in_parts(args, scars):
    """The whole job in parts, with every default and channels, in a heap of 4 GB."""
    work = Path(args.work) / f"{scars}-in-parts"
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    make_sample(args.meadowmark, scars, args.beds, work / "survey", "--seed", "7")
    load = wait_for_quiet(args.quiet_load, args.quiet_minutes)
    command = [args.meadowmark, "assess-in-parts", work / "survey", "--output", work / "ours", "--quiet"]
    command += ["--areas", args.areas] if args.areas else []
    os.environ["MEADOWMARK_JAVA_OPTS"] = "-Xmx4g"
    try:
        _, wall, cpu, peak = timed(command, work / "ours.log")
    finally:
        del os.environ["MEADOWMARK_JAVA_OPTS"]
    _, heap, stages = heap_and_stages(work / "ours")
    shutil.rmtree(work / "ours")
    return {
        "scars": scars,
        "load_before": [load],
        "wall_seconds": wall,
        "processor_seconds": cpu,
        "peak_resident_mib": peak,
        "peak_heap_mib": heap,
        "stages": stages,
    }


def print_in_parts(runs):
    print("\n| scars in parts, -Xmx4g | s | CPU s | peak MiB (heap) | load before |\n|" + "---:|" * 5)
    for run in runs:
        print(
            f"| {run['scars']:,} | {run['wall_seconds']:.1f} | {run['processor_seconds']:.1f} "
            f"| {run['peak_resident_mib']:,.0f} ({run['peak_heap_mib']:,.0f}) | {run['load_before'][0]:.1f} |"
        )


def wait_for_quiet(limit, minutes):
    end = time.time() + minutes * 60
    while os.getloadavg()[0] > limit and time.time() < end:
        time.sleep(5)
    return os.getloadavg()[0]


class Check:
    """Figures that both give."""

    def __init__(self):
        self.lines = []
        self.failed = False

    def same(self, what, ours, peers, tolerance):
        ours, peers = float(ours), float(peers)
        difference = abs(ours - peers) / max(abs(ours), abs(peers), 1e-300)
        ok = difference <= tolerance
        self.failed |= not ok
        self.lines.append((what, ours, peers, difference, "yes" if ok else "NO"))

    def print(self):
        print("\n| figure | Meadowmark | peer | relative difference | agrees |\n|---|---:|---:|---:|---|")
        for what, ours, peers, difference, ok in self.lines:
            print(f"| {what} | {ours:.12g} | {peers:.12g} | {difference:.1e} | {ok} |")


def check(folder, peer, areas_agree, connectivity):
    result = Check()
    beds = sorted(rows(folder, "beds"), key=lambda bed: int(bed["source_feature"]))
    whole = next(area for area in rows(folder, "areas") if area["scope"] == "whole survey")
    figures = peer["figures"]
    total = sum(float(bed["scarred_area_m2"]) for bed in beds)
    result.same("bed area, m²", whole["grass_area_m2"], figures["grass_m2"], SAME_GEOMETRY)
    result.same("scarred area, m²", total, figures["scarred_m2"], areas_agree)
    result.same("scar length in beds, m", whole["scar_length_m"], figures["scar_length_m"], SAME_GEOMETRY)
    pairs = list(zip((float(bed["scarred_area_m2"]) for bed in beds), figures["bed_scarred_m2"]))
    worst = max(pairs, key=lambda pair: abs(pair[0] - pair[1]))
    print(f"\nLargest difference of scarred area in a bed: {worst[0]:.6f} and {worst[1]:.6f} m².")
    unlike = sum(int(bed["patches_after"]) != n for bed, n in zip(beds, figures["bed_patches"]))
    result.same("beds with another number of patches", unlike, 0, 0)
    result.same("patches of the survey without scars", whole["patches_before"], figures["patches_before"], 0)
    result.same("patches of the survey with scars", whole["patches_after"], figures["patches_after"], 0)
    nearest = sum(float(p["nearest_distance_m"] or 0) for p in rows(folder, "patches"))
    result.same("sum of distances to the nearest patch, m", nearest, figures["nearest_sum_m"], PROJECTED)
    crossings = [c for c in rows(folder, "crossing_distances") if c["scope"] == "whole survey"]
    for ours, before, after in zip(crossings, figures["crossings_before"], figures["crossings_after"]):
        metres = f"{float(ours['crossing_distance_m']):g} m"
        result.same("groups without scars, " + metres, ours["groups_before"], before["groups"], 0)
        result.same("groups with scars, " + metres, ours["groups_after"], after["groups"], 0)
        result.same(
            "share of the largest group, %, " + metres,
            ours["largest_group_share_after_pct"],
            100 * after["largest_share"],
            SAME_GEOMETRY,
        )
    if connectivity:
        theirs = figures["connectivity_after"]["equivalent_area_ha"]
        result.same("equivalent connected area, ha", connectivity["equivalent_area_ha"], theirs, 1e-9)
    areas = [area for area in rows(folder, "areas") if area["scope"] != "whole survey"]
    if areas:
        mine = sorted(float(area["scarred_area_m2"]) for area in areas)
        theirs = sorted(area["scarred_m2"] for area in figures["areas"].values())
        result.same("scarred area by management area, least", mine[0], theirs[0], 1e-3)
        result.same("scarred area by management area, sum", sum(mine), sum(theirs), max(areas_agree, PROJECTED))
        mine = sorted(float(area["grass_area_m2"]) for area in areas)
        theirs = sorted(area["grass_m2"] for area in figures["areas"].values())
        result.same("bed area by management area, sum", sum(mine), sum(theirs), PROJECTED)
        inside = [a for a in areas if a["scope"] == "management area"]
        theirs = [a for name, a in figures["areas"].items() if name != "outside"]
        result.same(
            "patches in management areas, sum",
            sum(int(a["patches_after"]) for a in inside),
            sum(a["patches_after"] for a in theirs),
            0,
        )
    result.print()
    return result


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--sizes", default="10000,20000", help="scars, as in 10000,20000")
    parser.add_argument("--ours-only", default="", help="sizes to run without the peer, as in 100000,1000000")
    parser.add_argument("--in-parts", default="", help="sizes of the whole job in parts, as in 100000,1000000")
    parser.add_argument("--beds", default=f"{DATA}/tampa-bay-seagrass-1999.gpkg#sg1999")
    parser.add_argument("--areas", default=f"{DATA}/tampa-bay-segments.gpkg#segclp")
    parser.add_argument("--meadowmark", default=ROOT / "cli" / "target" / "meadowmark" / "bin" / "meadowmark")
    parser.add_argument("--peer-python", default="/usr/bin/python3")
    parser.add_argument("--work", default=HERE / "target" / "compare", type=Path)
    parser.add_argument("--most-patches", type=int, default=0, help="patches for the peer's connectivity, 0 for all")
    parser.add_argument("--straight", action="store_true", help="straighten scars, to compare areas closely")
    parser.add_argument("--quiet-load", type=float, default=1.5, help="wait until the load is below this")
    parser.add_argument("--quiet-minutes", type=float, default=0, help="wait at most so long before each run")
    parser.add_argument("--json", type=Path, help="write the last table and the checks to this file too")
    args = parser.parse_args()
    if not Path(args.beds.partition("#")[0]).exists():
        sys.exit(f"{args.beds}: no such beds; name some with --beds and --areas")

    failed = False
    table = []
    machine_readable = []
    both = [int(n) for n in args.sizes.split(",") if n]
    alone = [int(n) for n in args.ours_only.split(",") if n]
    for scars in both + alone:
        work = Path(args.work) / str(scars)
        shutil.rmtree(work, ignore_errors=True)
        work.mkdir(parents=True)
        make_sample(args.meadowmark, scars, args.beds, work / "survey")
        scar_file = work / "survey" / "scars.gpkg"
        if args.straight:
            straight = work / "straight.gpkg"
            subprocess.run([args.peer_python, HERE / "peer" / "straighten_scars.py", scar_file, straight], check=True)
            scar_file = straight
        layers = ["--scars", scar_file, "--beds", args.beds]
        layers += ["--areas", args.areas] if args.areas else []
        load = [wait_for_quiet(args.quiet_load, args.quiet_minutes)]
        ours = [args.meadowmark, "assess", *layers, "--output", work / "ours", "--quiet"]
        ours += ["--attribute", "scars.width=width_m", "--attribute", "scars.cause=cause"]
        ours += ["--attribute", "scars.id=scar_id"]
        ours += ["--set", "ground_scale=false", "--set", "sliver_tolerance_m=0"]
        # The peer has no intervals, no importance of patches and no gains of filled scars.
        ours += ["--set", "uncertainty_draws=0", "--set", "connectivity_detail_patches=0"]
        _, wall, cpu, peak = timed(ours, work / "ours.log")
        record, heap, stages = heap_and_stages(work / "ours")
        print(f"\n## {scars:,} scars\n\n| stage of Meadowmark | s |\n|---|---:|")
        for stage, seconds in stages.items():
            print(f"| {stage} | {seconds:.2f} |")
        line = [scars, wall, cpu, peak, heap, load]
        run = {
            "scars": scars,
            "load_before": load,
            "meadowmark": {
                "wall_seconds": wall,
                "processor_seconds": cpu,
                "peak_resident_mib": peak,
                "peak_heap_mib": heap,
                "stages": stages,
            },
        }
        machine_readable.append(run)
        if scars in both:
            load.append(wait_for_quiet(args.quiet_load, args.quiet_minutes))
            peer = [args.peer_python, HERE / "peer" / "assess_peer.py", *layers]
            peer += ["--crs", record["analysis_grid"]["crs"], "--graph", work / "graph", "--most-patches", args.most_patches]
            out, peer_wall, peer_cpu, peer_peak = timed(peer + ["--output", work / "peer.gpkg"], work / "peer.log")
            result = json.loads(out)
            (work / "peer.json").write_text(out)
            print("\n| stage of the peer | s |\n|---|---:|")
            for stage, seconds in result["seconds"].items():
                print(f"| {stage} | {seconds:.2f} |")
            print("\nPeer: " + ", ".join(f"{k} {v}" for k, v in result["versions"].items()))
            library = next((HERE / "target" / "lib").glob("benchmarks-*.jar"), HERE / "no such jar")
            ours_after = None
            if library.exists() and not args.most_patches:
                files = [work / "graph" / "areas.csv", work / "graph" / "links.csv"]
                program = "org.meadowmark.benchmarks.ConnectivityOfGraph"
                java = ["java", "-cp", library, program, *files, result["figures"]["connectivity_after"]["median_m"]]
                ours_after = json.loads(timed(java, work / "connectivity.log")[0])
                print(
                    f"\nEquivalent connected area of the peer's graph with scars ({ours_after['patches']:,} patches, "
                    f"{ours_after['links']:,} links): Meadowmark {ours_after['seconds']} s, "
                    f"peer {result['figures']['connectivity_after']['seconds']} s."
                )
            checked = check(work / "ours", result, SAME_GEOMETRY if args.straight else BENT, ours_after)
            failed |= checked.failed
            line += [peer_wall, peer_cpu, peer_peak]
            run["script"] = {
                "wall_seconds": peer_wall,
                "processor_seconds": peer_cpu,
                "peak_resident_mib": peer_peak,
                "stages": result["seconds"],
                "versions": result["versions"],
            }
            run["figures"] = [
                {"figure": what, "meadowmark": ours, "script": peers, "relative_difference": apart, "agrees": ok == "yes"}
                for what, ours, peers, apart, ok in checked.lines
            ]
        table.append(line)
        sys.stdout.flush()

    print(
        "\n| scars | Meadowmark s | CPU s | peak MiB (heap) | peer s | CPU s | peak MiB "
        "| ratio of time | ratio of CPU | load before |\n|" + "---:|" * 10
    )
    for scars, wall, cpu, peak, heap, load, *peer in table:
        cells = [f"{scars:,}", f"{wall:.1f}", f"{cpu:.1f}", f"{peak:,.0f} ({heap:,.0f})"]
        if peer:
            cells += [f"{peer[0]:.1f}", f"{peer[1]:.1f}", f"{peer[2]:,.0f}"]
            cells += [f"{peer[0] / wall:.1f}", f"{peer[1] / cpu:.1f}"]
        else:
            cells += [""] * 5
        print("| " + " | ".join(cells + [" ".join(f"{x:.1f}" for x in load)]) + " |")
    parts = [in_parts(args, int(n)) for n in args.in_parts.split(",") if n]
    if parts:
        print_in_parts(parts)
    if args.json:
        written = {"beds": str(args.beds), "runs": machine_readable, "in_parts": parts}
        args.json.write_text(json.dumps(written, indent=2) + "\n")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
