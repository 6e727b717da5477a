#!/usr/bin/env python3
"""Joins the results of run-all.sh with what machine, Java and commit they came from."""
import argparse
import datetime
import json
import os
import platform
import re
import subprocess
from pathlib import Path


def said(*command):
    """First line of what a command says, or "unknown"."""
    try:
        done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=True)
        return done.stdout.strip().splitlines()[0] if done.stdout.strip() else ""
    except (OSError, subprocess.CalledProcessError):
        return "unknown"


def from_file(file, pattern):
    try:
        found = re.search(pattern, Path(file).read_text())
    except OSError:
        found = None
    return found.group(1) if found else "unknown"


def circumstances(root, quick):
    git = ["git", "-C", str(root)]
    try:
        changed = bool(subprocess.run([*git, "status", "--porcelain"], stdout=subprocess.PIPE, check=True).stdout)
    except (OSError, subprocess.CalledProcessError):
        changed = None
    memory = from_file("/proc/meminfo", r"MemTotal:\s+(\d+)")
    return {
        "date": datetime.datetime.now(datetime.timezone.utc).strftime("%Y-%m-%dT%H:%MZ"),
        "quick": quick,
        "commit": said(*git, "rev-parse", "HEAD"),
        "uncommitted_changes": changed,
        "processor": from_file("/proc/cpuinfo", r"model name\s*: (.*)"),
        "processors": os.cpu_count(),
        "memory_mib": int(memory) // 1024 if memory != "unknown" else "unknown",
        "system": f"{platform.system()} {platform.release()} {platform.machine()}",
        "java": said("java", "-version"),
        "python": platform.python_version(),
        "load_at_end": [round(x, 1) for x in os.getloadavg()],
    }


def load(file):
    return json.loads(file.read_text()) if file.exists() else None


def jmh_rows(benchmarks):
    for one in benchmarks:
        metric = one["primaryMetric"]
        error = metric["scoreError"]
        shown = f"{metric['score']:.3f}" + ("" if error in ("NaN", None) else f" ± {float(error):.3f}")
        name = ".".join(one["benchmark"].split(".")[-2:])
        parameters = ", ".join(f"{k} {v}" for k, v in one.get("params", {}).items())
        runs = f"{one['forks']} × {one['measurementIterations']}"
        yield f"| `{name}` | {parameters} | {runs} | {shown} {metric['scoreUnit']} |"


def process_rows(runs):
    for run in runs:
        ours, peer = run["meadowmark"], run.get("script")
        cells = [f"{run['scars']:,}", f"{ours['wall_seconds']:.1f}", f"{ours['processor_seconds']:.1f}"]
        cells += [f"{ours['peak_resident_mib']:,.0f}"]
        if peer:
            cells += [f"{peer['wall_seconds']:.1f}", f"{peer['processor_seconds']:.1f}"]
            cells += [f"{peer['peak_resident_mib']:,.0f}"]
            cells += [f"{peer['wall_seconds'] / ours['wall_seconds']:.1f}"]
            cells += [f"{peer['processor_seconds'] / ours['processor_seconds']:.1f}"]
            cells += ["yes" if all(f["agrees"] for f in run["figures"]) else "NO"]
        else:
            cells += [""] * 6
        cells += [" ".join(f"{x:.1f}" for x in run["load_before"])]
        yield "| " + " | ".join(cells) + " |"


def in_parts_rows(runs):
    for run in runs:
        cells = [f"{run['scars']:,}", f"{run['wall_seconds']:.1f}", f"{run['processor_seconds']:.1f}"]
        cells += [f"{run['peak_resident_mib']:,.0f}", f"{run['peak_heap_mib']:,.0f}", f"{run['load_before'][0]:.1f}"]
        yield "| " + " | ".join(cells) + " |"


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--root", type=Path, required=True)
    parser.add_argument("--output", type=Path, required=True)
    parser.add_argument("--quick", choices=["yes", "no"], required=True)
    parser.add_argument("--status", type=int, required=True)
    args = parser.parse_args()
    about = circumstances(args.root, args.quick == "yes")
    files = sorted(args.output.glob("jmh-*.json"))
    benchmarks = [one for file in files for one in load(file)] if files else None
    processes = load(args.output / "processes.json")

    lines = ["# Benchmark results", ""]
    if about["quick"]:
        lines += ["**A smoke run: it shows that everything runs, and its times mean nothing.**", ""]
    if args.status:
        lines += ["**Something failed, or figures differ: see jmh.txt and processes.md beside this file.**", ""]
    lines += ["| | |", "|---|---|"] + [f"| {k.replace('_', ' ')} | {v} |" for k, v in about.items()]
    lines += ["", "## JMH", ""]
    if benchmarks is None:
        lines += ["Not run, or failed."]
    else:
        lines += ["| benchmark | with | forks × shots | time |", "|---|---|---|---:|", *jmh_rows(benchmarks)]
    lines += ["", "## Whole processes", ""]
    if processes is None:
        lines += ["Not run, or failed."]
    else:
        lines += [
            f"Beds: `{Path(processes['beds']).name}`. Times in seconds, peak resident memory in MiB.",
            "",
            "| scars | Meadowmark | processor | peak | script | processor | peak | ratio of time "
            "| ratio of processor time | figures agree | load before |",
            "|" + "---:|" * 11,
            *process_rows(processes["runs"]),
        ]
        if processes["in_parts"]:
            lines += ["", "The whole job with `assess-in-parts` and `-Xmx4g`:", ""]
            lines += ["| scars | time | processor | peak resident | peak heap | load before |", "|" + "---:|" * 6]
            lines += in_parts_rows(processes["in_parts"])
    (args.output / "results.md").write_text("\n".join(lines) + "\n")
    whole = {"circumstances": about, "failed": bool(args.status), "jmh": benchmarks, "processes": processes}
    (args.output / "results.json").write_text(json.dumps(whole, indent=2) + "\n")


if __name__ == "__main__":
    main()
