"""General-purpose graph drawing of the same stitch graph, for information: what one gets who knows nothing of crochet.

Each stitch is a node as large as its symbol; edges join neighbours of a round and every stitch to what it is worked into. The programs
are those of the Debian package ``graphviz``; where they are not installed, nothing is measured.
"""

from __future__ import annotations

import shutil
import subprocess
from itertools import pairwise
from math import atan2, cos, hypot, pi, sin
from time import perf_counter

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, Placed

PROGRAMS = ("neato", "sfdp")


def is_there(program: str) -> bool:
    return shutil.which(program) is not None


def general_layout(fabric: Fabric, program: str, limit_s: float) -> tuple[Layout, float] | None:
    """The Fabric with every stitch upright on its node, and the seconds taken; None where it takes longer than ``limit_s``."""
    begin = perf_counter()
    try:
        done = subprocess.run(
            [program, "-Tplain", "-Goverlap=prism", "-Gstart=1"],
            input=_graph(fabric), capture_output=True, text=True, timeout=limit_s, check=True,
        )  # fmt: skip
    except (subprocess.TimeoutExpired, subprocess.CalledProcessError):
        return None
    seconds = perf_counter() - begin
    at: dict[int, tuple[float, float]] = {}
    for line in done.stdout.splitlines():
        word, *rest = line.split()
        if word == "node" and rest[0] != "ring":
            at[int(rest[0])] = (float(rest[1]), float(rest[2]))
    return _placed(fabric, at), seconds


def _graph(fabric: Fabric) -> str:
    lines = ["graph {", "node [shape=box, label=\"\", fixedsize=true]", "ring [width=0.8, height=0.8]"]
    for stitch in fabric.stitches:
        if stitch.role != "standing":
            wide, high = (0.8, 0.36) if stitch.kind == "ch" else (0.76, 2.2 if stitch.legs else 0.34)
            lines.append(f"{stitch.id} [width={wide}, height={high}]")
    for before, after in pairwise(fabric.stitches):
        if "standing" not in (before.role, after.role):
            lines.append(f"{before.id} -- {after.id} [len=1]")
    for stitch in fabric.stitches:
        for leg in stitch.legs if stitch.role != "standing" else ():
            for base in _bases(fabric, leg.base.kind, leg.base.id):
                lines.append(f"{stitch.id} -- {base} [len=2.2]")
    return "\n".join([*lines, "}"])


def _bases(fabric: Fabric, kind: str, number: int) -> list[str]:
    if kind == "ring":
        return ["ring"]
    if kind == "space":
        return [str(i) for i in fabric.runs[number].stitches[:1]]
    return [str(i) for i in (fabric.stitches[number].chains[-1:] or (number,))]


def _placed(fabric: Fabric, at: dict[int, tuple[float, float]]) -> Layout:
    """Each stitch a symbol of its true size, pointing away from the middle of all."""
    x0, y0 = (sum(p[i] for p in at.values()) / max(len(at), 1) for i in (0, 1))
    placed = []
    for stitch in fabric.stitches:
        if stitch.id not in at:
            continue
        x, y = at[stitch.id][0] - x0, at[stitch.id][1] - y0
        way = atan2(y, x) if hypot(x, y) > 1e-9 else pi / 2
        c, s = cos(way), sin(way)
        if stitch.kind == "ch":
            placed.append(Placed(stitch.id, ((x + 0.4 * s, y - 0.4 * c),), (x - 0.4 * s, y + 0.4 * c), (c, s)))
        else:
            feet = ((x - 1.1 * c, y - 1.1 * s),) * max(len(stitch.legs), 1)
            placed.append(Placed(stitch.id, feet, (x + 1.1 * c, y + 1.1 * s), (c, s)))
    return Layout("rounds", tuple(placed), (), ())
