"""Patterns built by hand for the sizing room: no file is read, so a fault elsewhere cannot hide one here."""

from __future__ import annotations

from motifold.render.pattern.instructions import Amount, Chain, CountClaim, Instructions, Label, Line, Place, StitchSpec, Target, Work
from motifold.render.pattern.model import Gauge, GaugePoint, Materials, MotifSource, Pattern, SizePlan, Yarn
from motifold.render.pattern.problem import NOWHERE
from motifold.render.pattern.quantity import parse_per_length, parse_quantity, parse_range


def line(kind: str, number: int | None, stitch: str, following: bool = False, count: Amount | None = None) -> Line:
    place = Place(NOWHERE, "next", Target("st"))
    claims = (CountClaim(NOWHERE, count, Target("st")),) if count else ()
    label = Label(kind, number, number, following)  # type: ignore[arg-type]
    return Line(0, NOWHERE, label, (Work(0, NOWHERE, StitchSpec(stitch), Amount((3,)), place),), claims)


def motif(
    name: str = "square", stitch: str = "dc", rounds: int = 2, following: bool = True, shape: str = "square", last_round: int | None = None
) -> MotifSource:
    lines = tuple(line("rnd", n, stitch) for n in range(1, rounds + 1))
    if following:
        lines = (*lines, line("rnd", rounds + 1, stitch, True))
    return MotifSource(name, shape, 0 if shape == "circle" else 4, "rounds", Instructions(lines), last_round)


def strip(count: Amount) -> MotifSource:
    chain = Line(0, NOWHERE, Label("chain"), (Chain(0, NOWHERE, count),))
    rows = (line("row", 1, "sc", count=count), line("row", 2, "sc", count=count))
    return MotifSource("strip", "strip", 4, "rows", Instructions((chain, *rows)))


SWATCH = Gauge("square", (GaugePoint(8, 12.8),), 11.5, 8)
SQUARE = motif()


def pattern(
    motifs: tuple[MotifSource, ...] = (SQUARE,),
    gauge: Gauge | None = SWATCH,
    across: float | None = 4,
    ease: str | None = "0 % to 12 %",
    bodies: tuple[tuple[str, float | str], ...] = (("Small", 42.0), ("Medium", 48.0), ("Large", 54.0)),
    measure: str = "girth of what it holds",
    hook: str | None = "4 mm",
) -> Pattern:
    size = SizePlan(measure, None, across, parse_range(ease) if ease else None, bodies) if bodies else None
    label = parse_per_length("110 m / 50 g")
    yarns = tuple(Yarn(key, key, None, 3, label, parse_quantity("50 g")) for key in "AB")
    materials = Materials(parse_quantity(hook) if hook else None)
    return Pattern("x.toml", "", "X", "US", materials=materials, yarns=yarns, gauge=gauge, motifs=motifs, size=size)


