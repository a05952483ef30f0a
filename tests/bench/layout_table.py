"""Prints the layout's measures over the gallery, with time, beside a floor: plain polar placement that draws the same outlines.

Run: python tests/bench/layout_table.py [NAME ...]

Columns: symbols; pairs that overlap, and that come too near; stems and chain pitches, smallest and largest; the last round's bow, corner
and aspect; symmetry; stitches out of order; ink; milliseconds for 1,000 symbols (``lay``: Fabric to Layout; ``draw``: the chart from it).
``floor``: pairs that overlap there; ``time``: how many times as long as the floor ours takes to place and draw.
A second table has, for information, what general-purpose graph drawing makes of the same stitches, where it is installed.
"""

from __future__ import annotations

import sys
from math import cos, pi, sin
from pathlib import Path
from time import process_time

sys.path.insert(0, str(Path(__file__).parents[1] / "motif"))

import by_hand
import gallery
import graph_layout
import measures

from motifold.render.fabric.model import Fabric
from motifold.render.motif import Layout, Placed, lay_out
from motifold.render.motif.chart import ChartLook, ChartOf, chart_json, draw_chart
from motifold.render.motif.radial import lay_rounds

MOST_NODES = 1200
LIMIT_S = 60.0
"""What graph drawing is asked to do: no more stitches, no longer."""


def polar(fabric: Fabric) -> Layout:
    """The floor: every round's symbols evenly on a circle, rounds 2.5 u apart, whatever they are worked into."""
    placed = []
    for number in range(len(fabric.rounds)):
        stitches = [s for s in fabric.round_stitches(number) if s.role != "standing"]
        for k, stitch in enumerate(stitches):
            x, y = cos(2 * pi * k / len(stitches)), sin(2 * pi * k / len(stitches))
            foot, head = 2.5 * number + 0.3, 2.5 * number + 2.5
            if stitch.kind == "ch":
                middle = 2.5 * number + 1.4
                tips = ((middle * x + 0.4 * y, middle * y - 0.4 * x), (middle * x - 0.4 * y, middle * y + 0.4 * x))
                placed.append(Placed(stitch.id, (tips[0],), tips[1], (x, y)))
            else:
                feet = ((foot * x, foot * y),) * max(len(stitch.legs), 1)
                placed.append(Placed(stitch.id, feet, (head * x, head * y), (x, y)))
    return Layout("rounds", tuple(placed), (), ())


def seconds_to_draw(fabric: Fabric, layout: Layout) -> float:
    start = process_time()
    draw_chart(fabric, layout, ChartLook(furniture=False))
    return process_time() - start


def row(name: str, fabric: Fabric) -> str:
    start = process_time()
    layout = lay_out(fabric)
    seconds = process_time() - start
    drawn = seconds_to_draw(fabric, layout)
    start = process_time()
    plain = polar(fabric)
    floor_seconds = process_time() - start
    floor_seconds += seconds_to_draw(fabric, plain)
    symbols = measures.symbols(fabric, layout)
    found = measures.contacts(symbols)
    floor = measures.contacts(measures.symbols(fabric, plain))
    parts = [part for _, part in measures.lengths(fabric, layout)]
    pitches = measures.pitches(fabric, layout) or [1.0]
    error, order = 0.0, 0
    if fabric.worked == "rounds":
        ground = lay_rounds(fabric)
        for number, course in ground.courses.items():
            error = max(error, measures.symmetry_error(layout, course, ground.order[number]))
            order += measures.order_errors(layout, course)
    shape = measures.polygon_shape(fabric, layout) if fabric.worked == "rounds" else None
    sides = f"{shape.bow:6.4f} {shape.corner:5.2f} {shape.aspect:6.4f}" if shape else " " * 19
    return (
        f"{name[:28]:28s} {len(layout.placed):5d} {len(found.overlaps):4d} {len(found.near):4d} {min(parts):5.2f} {max(parts):5.2f} "
        f"{min(pitches):5.2f} {max(pitches):5.2f} {sides} {error:8.1e} {order:5d} {measures.ink_share(symbols):5.3f} "
        f"{seconds / len(layout.placed) * 1e6:5.0f} {drawn / len(layout.placed) * 1e6:5.0f} {len(floor.overlaps):6d} "
        f"{(seconds + drawn) / max(floor_seconds, 1e-9):5.1f}"
    )


def graph_rows(fabrics: dict[str, Fabric]) -> None:
    """What general-purpose graph drawing makes of motifs of up to ``MOST_NODES`` stitches."""
    there = [program for program in graph_layout.PROGRAMS if graph_layout.is_there(program)]
    for program in graph_layout.PROGRAMS:
        if program not in there:
            print(f"{program}: missing (it is in the Debian package graphviz)")
    for name, fabric in fabrics.items():
        for program in there if len(fabric.stitches) <= MOST_NODES else ():
            found = graph_layout.general_layout(fabric, program, LIMIT_S)
            if found is None:
                print(f"{name[:28]:28s} {program}: given up after {LIMIT_S:g} s")
                continue
            layout, seconds = found
            pairs = measures.contacts(measures.symbols(fabric, layout)).overlaps
            print(f"{name[:28]:28s} {program:6s} {len(layout.placed):5d} symbols, {len(pairs):5d} pairs overlap, "
                  f"{seconds / len(layout.placed) * 1e6:7.0f} ms/1000")  # fmt: skip


def main(names: list[str]) -> None:
    print(f"{'':28s}  symb over near       stems       pitch bow   corner aspect symmetry order   ink   lay  draw  floor  time")
    fabrics: dict[str, Fabric] = {}
    for piece in gallery.PIECES:
        if not names or any(name in piece.name for name in names):
            fabrics[piece.name] = gallery.fabric_of(piece)
            print(row(piece.name, fabrics[piece.name]))
    print()
    graph_rows(fabrics)
    if not names:
        large = {
            "open square, 34": by_hand.open_square(34), "sc circle, 57": by_hand.flat_circle(57, "sc", 6, 1),
            "swatch 100 x 100": by_hand.swatch(100, 100),
        }  # fmt: skip
        for name, fabric in large.items():
            start = process_time()
            layout = lay_out(fabric)
            placed = process_time() - start
            start = process_time()
            draw_chart(fabric, layout, ChartLook())
            drawn = process_time() - start
            start = process_time()
            chart_json([ChartOf(name, "", fabric, layout)], ChartLook())
            told = process_time() - start
            print(f"{name:28s} {len(layout.placed):5d} symbols: placed in {placed:5.2f} s, drawn in {drawn:5.2f} s, told in {told:5.2f} s")


if __name__ == "__main__":
    main(sys.argv[1:])
