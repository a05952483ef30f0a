"""One standing example of every symbol, foot at the origin and head above it, for the key and for whoever wants to learn them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import cos, hypot, pi, sin

from motifold.symbols import sizes as s
from motifold.symbols.feet import space_ring
from motifold.symbols.footprint import Foot
from motifold.symbols.footprint import stitch_kind as kind_or_dc
from motifold.symbols.glyphs import LegAt, chain_oval, dot, stitch_marks
from motifold.symbols.ink import Mark, Point
from motifold.symbols.record import dataclass
from motifold.symbols.stitches import Gather, Kind, kind

_UP: Point = (0.0, 1.0)
_TOGETHER_PITCH = 0.85
_FAN = 0.85


@dataclass(frozen=True, slots=True)
class Part:
    """One stitch of a group: its kind ("ch" for a chain), and how its ``legs`` of the kind ``stem`` are closed, if it has several."""

    kind: str
    stem: str = ""
    legs: int = 1
    gather: Gather | None = None


def specimen(name: str, into: Foot = "loops") -> tuple[Mark, ...]:
    """The symbol of a kind as it stands alone, worked ``into`` what is said. KeyError for a name that the trade does not have."""
    found = kind(name)
    if found.stem == "ch":
        return _picot(found.chains) if found.chains else (chain_oval((-s.OVAL_LENGTH / 2, 0.2), (s.OVAL_LENGTH / 2, 0.2)),)
    if found.gather == "crossed":
        return _crossed(found)
    if found.family == "special" and found.gather is None:
        return _fan(found, into)
    head = (0.0, found.height)
    if found.gather == "together":
        stem = name[: name.rindex(f"{found.legs}tog")] if name != "inv dec" else "sc"
        how: Foot = "front loop" if found.invisible else into
        legs = [LegAt(stem, ((i - (found.legs - 1) / 2) * _TOGETHER_PITCH, 0.0), how) for i in range(found.legs)]
        return stitch_marks(name, legs, head, _UP, "together")
    legs = [LegAt(found.stem if found.gather else name, (0.0, 0.0), into)] * (found.legs if found.gather else 1)
    marks = stitch_marks(name, legs, head, _UP, found.gather)
    return (*marks, space_ring([(0.0, 0.0)], [head])) if into == "space" else marks


def increase(stem: str, count: int = 2) -> tuple[Mark, ...]:
    """So many of one stitch in one place: stems that share a foot and keep their own heads."""
    return _spread([(stem, i) for i in range(count)], count, kind(stem).height, "loops")


def spike_specimen(stem: str) -> tuple[Mark, ...]:
    """A stitch whose foot stands rows below: its stem is as long as that is deep, its bars and head stay at the top."""
    return stitch_marks(stem, [LegAt(stem, (0.0, 0.0))], (0.0, 2.1 * kind(stem).height), _UP)


def group_specimen(parts: Sequence[Part]) -> tuple[Mark, ...]:
    """Stitches and chains worked into one place, as they stand there: fanned about one foot, each as tall as it is."""
    heights = [kind_or_dc(part.kind).height for part in parts if part.kind != "ch"]
    if not heights:
        return ()
    if len(parts) == 1:
        return _upright(parts[0])
    step = min(_FAN * len(heights) / sum(heights), pi / len(parts))
    marks: list[Mark] = []
    heads: list[Point | None] = []
    for place, part in enumerate(parts):
        height = kind_or_dc(part.kind).height
        angle = pi / 2 - (place - (len(parts) - 1) / 2) * step
        up = (cos(angle), sin(angle))
        foot = (0.16 * (place - (len(parts) - 1) / 2), 0.0)
        heads.append(None if part.kind == "ch" else (foot[0] + height * up[0], height * up[1]))
        head = heads[-1]
        if head is not None:
            marks += stitch_marks(part.kind, [LegAt(part.stem or part.kind, foot)] * part.legs, head, up, part.gather)
    return (*marks, *_chains_between(heads))


def _upright(part: Part) -> tuple[Mark, ...]:
    legs = [LegAt(part.stem or part.kind, (0.0, 0.0))] * part.legs
    return stitch_marks(part.kind, legs, (0.0, kind_or_dc(part.stem or part.kind).height), _UP, part.gather)


def _chains_between(heads: Sequence[Point | None]) -> list[Mark]:
    """Ovals in the places without a head, evenly between the heads on either side; none before the first or after the last."""
    marks: list[Mark] = []
    known = [i for i, head in enumerate(heads) if head is not None]
    for a, b in pairwise(known):
        start, end = heads[a], heads[b]
        if start is None or end is None or b == a + 1:
            continue
        room = 0.42 / hypot(end[0] - start[0], end[1] - start[1])
        for i in range(b - a - 1):
            ends = [room + (1 - 2 * room) * (i + t) / (b - a - 1) for t in (0.02, 0.98)]
            tips = [(start[0] + t * (end[0] - start[0]), start[1] + t * (end[1] - start[1])) for t in ends]
            marks.append(chain_oval(tips[0], tips[1]))
    return marks


def _fan(found: Kind, into: Foot) -> tuple[Mark, ...]:
    """A shell, or a V whose arms a chain holds apart."""
    if not found.chains:
        return _spread([(found.stem, i) for i in range(found.legs)], found.legs, found.height, into)
    marks = list(_spread([(found.stem, 0), (found.stem, 2)], 3, found.height, into))
    half = s.OVAL_LENGTH / 2
    return (*marks, chain_oval((-half + 0.03, found.height - 0.02), (half - 0.03, found.height - 0.02)))


def _spread(stems: list[tuple[str, int]], places: int, height: float, into: Foot) -> tuple[Mark, ...]:
    """Stems fanned about the origin at the places of an arc where their heads just clear each other."""
    step = min(_FAN / height, pi / max(places, 2))
    marks: list[Mark] = []
    feet: list[Point] = []
    heads: list[Point] = []
    for stem, place in stems:
        angle = pi / 2 - (place - (places - 1) / 2) * step
        up = (cos(angle), sin(angle))
        foot = (0.16 * (place - (places - 1) / 2), 0.0)
        head = (foot[0] + height * up[0], height * up[1])
        feet.append(foot)
        heads.append(head)
        marks += stitch_marks(stem, [LegAt(stem, foot)], head, up)
    return (*marks, space_ring(feet, heads)) if into == "space" else tuple(marks)


def _crossed(found: Kind) -> tuple[Mark, ...]:
    half = 0.5
    marks: list[Mark] = []
    for side in (-1.0, 1.0):
        marks += stitch_marks(found.stem, [LegAt(found.stem, (-side * half, 0.0))], (side * half, found.height), _UP)
    return tuple(marks)


def _picot(chains: int) -> tuple[Mark, ...]:
    """A loop of ovals that begins and ends on its dot."""
    count = max(2, min(chains, 9))
    radius = max(0.42, 0.84 * (count + 0.7) / (2 * pi))
    marks: list[Mark] = [dot((0.0, s.DOT_RADIUS))]
    spare = 0.62 / radius
    step = (2 * pi - spare) / count
    for i in range(count):
        a = -pi / 2 + spare / 2 + (i + 0.5) * step
        reach = min(0.39, radius * sin(step / 2) - 0.015)
        cx, cy = radius * cos(a), s.DOT_RADIUS + radius + radius * sin(a)
        tx, ty = -sin(a), cos(a)
        marks.append(chain_oval((cx - reach * tx, cy - reach * ty), (cx + reach * tx, cy + reach * ty)))
    return tuple(marks)
