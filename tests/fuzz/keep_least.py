#!/usr/bin/env python3
"""keep_least.py PROGRAM FOLDER KEPT MOST: the few inputs that together reach what all of a folder do.

PROGRAM is a fuzz target; what edges of it an input reaches is asked of libFuzzer's -merge=1, one input a process, since
it tells only what is new to it. Inputs are taken one after the other, that first which adds most edges for its size,
until all are reached or there are MOST; their files, named by their content, replace those of that sort in the folder
KEPT. What has another name was put there by somebody, a seed or what the target was broken by (broke_), and stays.
Prints how many edges are reached.
"""
import hashlib
import pathlib
import re
import subprocess
import sys
import tempfile


def edges_of(program, content):
    with tempfile.TemporaryDirectory() as folder:
        base = pathlib.Path(folder)
        for name in ("in", "out"):
            (base / name).mkdir()
        (base / "in" / "one").write_bytes(content)
        control = base / "control"
        subprocess.run(
            [program, "-merge=1", "-use_counters=0", f"-merge_control_file={control}", base / "out", base / "in"],
            check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        for line in control.read_text().splitlines():
            if line.startswith("COV "):
                return set(line.split()[2:])
    return set()


def chosen(edges, sizes, most):
    left = set().union(*edges.values())
    whole, taken = len(left), []
    name_and_header = 32  # bytes: what a file costs beside its content
    while left and len(taken) < most:
        best = max(edges, key=lambda k: (len(edges[k] & left) / (name_and_header + sizes[k]), -sizes[k], k))
        left -= edges[best]
        taken.append(best)
    return taken, whole - len(left), whole


def main():
    program, folder, kept, most = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3]), int(sys.argv[4])
    contents = {path.name: path.read_bytes() for path in sorted(folder.iterdir())}
    edges = {name: edges_of(program, content) for name, content in contents.items()}
    taken, reached, whole = chosen(edges, {name: len(content) for name, content in contents.items()}, most)
    for old in kept.iterdir():
        if re.fullmatch("[0-9a-f]{12}", old.name):
            old.unlink()
    for name in taken:
        (kept / hashlib.sha1(contents[name]).hexdigest()[:12]).write_bytes(contents[name])
    size = sum(len(contents[name]) for name in taken)
    print(f"{kept}: {len(taken)} of {len(contents)} inputs, {size} bytes, {reached} of {whole} edges")


if __name__ == "__main__":
    main()
