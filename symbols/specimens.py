"""One standing example of every symbol, foot at the origin and head above it, for the key and for whoever wants to learn them."""

from __future__ import annotations

from math import cos, pi, sin

from motifold.symbols import sizes as s
from motifold.symbols.feet import space_ring
from motifold.symbols.footprint import Foot
from motifold.symbols.glyphs import LegAt, chain_oval, dot, stitch_marks
from motifold.symbols.ink import Mark, Point
from motifold.symbols.stitches import Kind, kind

_UP: Point = (0.0, 1.0)
_TOGETHER_PITCH = 0.85
_FAN = 0.85


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
