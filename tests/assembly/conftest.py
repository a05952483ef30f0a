"""Hand-made motifs and assemblies: the rooms before this one are not needed to test it."""

from __future__ import annotations

import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from motifold.render.fabric.model import EdgeItem, Fabric, Origin, Run, Side, Stitch
from motifold.render.pattern.model import AssemblySource, JoinSource, NetCell, SeamSource, SidePiece
from motifold.render.pattern.problem import NOWHERE, Span

sys.path.insert(0, str(Path(__file__).parent))  # tests of this folder import ``assembly_kit``

SQUARE = ("top", "left", "bottom", "right")
SHAPES = {1: "circle", 3: "triangle", 4: "square", 5: "pentagon", 6: "hexagon"}


def open_motif(sides: int = 4, rounds: int = 8, name: str = "square", shape: str | None = None) -> Fabric:
    """The last round of an open motif: ``rounds`` clusters of 3 dc a side, ch-1 spaces between, ch-2 spaces at the corners."""
    origin = Origin(0, (), NOWHERE)
    stitches: list[Stitch] = []
    runs: list[Run] = []

    def stitch() -> EdgeItem:
        stitches.append(Stitch(len(stitches), "dc", "stitch", 0, len(stitches) + 1, "A", origin))
        return EdgeItem("stitch", stitches[-1].id)

    def space(chains: int, corner: bool = False) -> EdgeItem:
        runs.append(Run(len(runs), "space", 0, chains, (), corner=corner))
        return EdgeItem("space", runs[-1].id)

    corners = [space(2, True) for _ in range(sides)] if sides > 1 else []
    found = []
    for i in range(sides):
        items: list[EdgeItem] = []
        for cluster in range(rounds):
            items += [space(1)] if cluster else []
            items += [stitch() for _ in range(3)]
        start, end = (corners[i], corners[(i + 1) % sides]) if corners else (None, None)
        side_name = SQUARE[i] if sides == 4 else str(i + 1)
        count = 4 * rounds - 1 + (2 if corners else 0)
        found.append(Side(side_name, tuple(items), start, end, count, {"dc": 3 * rounds, "ch-1 sp": rounds - 1}))
    polygon = sides if sides > 1 else 0
    return Fabric(
        name, shape or SHAPES.get(sides, f"polygon: {sides}"), polygon, "rounds", tuple(stitches), tuple(runs), (), (), tuple(found)
    )


def piece(text: str) -> SidePiece:
    panel, _, side = text.strip().partition(".")
    side, _, part = side.rstrip("]").partition("[")
    over, _, under = (part or "1/1").partition("/")
    return SidePiece(panel, side, int(over), int(under))


def join(text: str, line: int, ease: bool = False) -> JoinSource:
    mark = "~" if "~" in text else "+"
    a, b = text.split(mark)
    return JoinSource(Span(100 + line, 1, len(text)), piece(a), None if b.strip() == "itself" else piece(b), mark == "~", ease)


def cells(text: str) -> tuple[NetCell, ...]:
    found = []
    for row, line in enumerate(line for line in text.split("\n") if line.strip()):
        for column, word in enumerate(line.split()):
            if word != ".":
                found.append(NetCell(word, row, column, Span(row + 1, column + 1, len(word))))
    return tuple(found)


def source(
    net: str = "",
    joins: tuple[str, ...] | list[str] = (),
    open_sides: tuple[str, ...] | None = None,
    motif: str | None = "square",
    panels: dict[str, str] | None = None,
    passes: tuple[tuple[str, ...], ...] = (),
    adds: float = 0.0,
    copies: int = 1,
    ease: bool = False,
    form: str | None = None,
    method: str = "slip stitch",
) -> AssemblySource:
    """``[assembly]`` as a file would say it."""
    return AssemblySource(
        motif,
        panels or {},
        cells(net),
        tuple(join(text, i, ease) for i, text in enumerate(joins)),
        None if open_sides is None else tuple(piece(side) for side in open_sides),
        SeamSource(method=method, passes=passes, adds_cm=adds),
        copies=copies,
        form=form,
    )


BASKET = source(
    """
    .    north .
    west base  east
    .    south .
    """,
    ("north.left + west.top", "north.right + east.top", "south.left + west.bottom", "south.right + east.bottom"),
    ("north.top", "east.right", "south.bottom", "west.left"),
)

CUBE = source(
    """
    .    north .    .
    west base  east lid
    .    south .    .
    """,
    (
        "north.left + west.top",
        "north.right + east.top",
        "south.left + west.bottom",
        "south.right + east.bottom",
        "lid.top + north.top",
        "lid.bottom + south.bottom",
        "lid.right + west.left",
    ),
    (),
)


def solid(faces: list[tuple[int, ...]]) -> tuple[str, ...]:
    """Joins of a closed solid from its faces, each a ring of corners counter-clockwise seen from outside. Face i is panel "Pi"."""
    sides = {(ring[k], ring[(k + 1) % len(ring)]): f"P{i}.{k + 1}" for i, ring in enumerate(faces) for k in range(len(ring))}
    return tuple(f"{side} + {sides[b, a]}" for (a, b), side in sides.items() if a < b)


@pytest.fixture
def by_hand() -> SimpleNamespace:
    """The makers above, for tests: ``by_hand.source(...)``, ``by_hand.open_motif(...)``."""
    return SimpleNamespace(open_motif=open_motif, source=source, piece=piece, join=join, solid=solid, basket=BASKET, cube=CUBE)
