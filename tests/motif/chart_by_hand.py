"""A round motif built by hand: Fabric and plain polar positions, for testing what draws them."""

from __future__ import annotations

from math import cos, pi, sin

from motifold.render.fabric.model import Base, EdgeItem, Fabric, Leg, Origin, Round, Stitch
from motifold.render.motif.model import Layout, Placed, Point, RoundShape
from motifold.render.pattern.problem import Span
from motifold.symbols.stitches import kind

ORIGIN = Origin(7, (), Span(1, 1, 1))


def disc(stitch: str = "dc", rounds: int = 3, yarns: str = "A", turned: bool = False) -> tuple[Fabric, Layout]:
    """Rounds of 12, 24, 36 ... of one stitch about a magic ring, each worked into the round below."""
    stitches: list[Stitch] = []
    placed: list[Placed] = []
    shapes: list[RoundShape] = []
    made: list[Round] = [_round(None, "Ring", "ring", (), yarns[0], 1)]
    step, below = kind(stitch).height + 0.25, []
    for number in range(1, rounds + 1):
        count, ids = 12 * number, []
        out = 0.95 + step * (number - 1)
        reach = max(out + kind(stitch).height, 1.0)
        spread = 1.05 * count / (2 * pi)
        out, reach = (out, reach) if reach > spread else (spread - kind(stitch).height, spread)
        direction = -1 if turned and number % 2 == 0 else 1
        yarn = yarns[(number - 1) % len(yarns)]
        for i in range(count):
            angle = direction * 2 * pi * i / count
            base = Base("ring", 0, "ring") if number == 1 else Base("stitch", below[_under(i, count, len(below), turned)], "loops")
            made_one = Stitch(len(stitches), stitch, "stitch", number, i + 1, yarn, ORIGIN, (Leg(stitch, base),))
            normal = (cos(angle), sin(angle))
            placed.append(Placed(made_one.id, (_at(normal, out),), _at(normal, reach), normal))
            ids.append(made_one.id)
            stitches.append(made_one)
        ring = tuple(_at((cos(i * pi / 60), sin(i * pi / 60)), reach) for i in range(120))
        shapes.append(RoundShape(number, ring, (), (reach, 0.0), (1.0, 0.0)))
        made.append(_round(number, f"Rnd {number}", "round", tuple(ids), yarn, direction))
        below = ids
    fabric = Fabric("disc", "circle", 0, "rounds", tuple(stitches), (), (), tuple(made), ())
    return fabric, Layout("rounds", tuple(placed), (), tuple(shapes))


def _under(i: int, count: int, below: int, turned: bool) -> int:
    """Which stitch of the round below; after a turn its last one is met first."""
    there = i * below // count
    return below - 1 - there if turned else there


def _at(normal: Point, far: float) -> Point:
    return (normal[0] * far, normal[1] * far)


def _round(number: int | None, label: str, what: str, ids: tuple[int, ...], yarn: str, direction: int) -> Round:
    counts = {"dc": len(ids)} if ids else {}
    return Round(
        number=number, label=label, kind="ring" if what == "ring" else "round", side="RS" if direction > 0 else "WS", direction=direction,
        line=0,
        stitches=ids, edge=tuple(EdgeItem("stitch", i) for i in ids), end="joined", turned=direction < 0, fastened=False, attached=False,
        yarns=(yarn,), counts=counts, parts=counts, met=len(ids),
    )  # fmt: skip
