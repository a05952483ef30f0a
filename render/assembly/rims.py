"""Edgings on the finished thing: which opening each lies on, whether it is turned back, and the bands that they make beside an edge."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from math import hypot

from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.shapes import side_index
from motifold.render.assembly.sides import interval
from motifold.render.pattern.model import SidePiece
from motifold.symbols.record import dataclass

Point = tuple[float, float]

_NAMES = ("brim", "rim", "cuff", "border", "edging", "band", "hem", "collar", "ribbing", "frill", "trim")
_TURNS = ("turned", "turn", "fold", "folded", "roll", "rolled", "flip", "flipped", "over", "back", "up", "down", "outside")
_HATS = ("hat", "cap", "beanie", "bonnet", "cosy", "cozy", "cover", "lampshade", "shade", "dome")
_BAGS = ("bag", "tote", "pouch", "purse", "sack", "basket", "pocket", "bucket")
STRAIGHT = 0.3  # neighbours that turn more sharply than this (1 + the cosine between them) are not mitred


def worn_over(assembly: Assembly) -> bool:
    """Whether the opening looks down, as a hat's does."""
    return any(word in _HATS for word in _words(assembly.form or ""))


def is_bag(assembly: Assembly) -> bool:
    """Whether its opening is a mouth between a front and a back."""
    return any(word in _BAGS for word in _words(assembly.form or ""))


def rims_of(
    assembly: Assembly, edgings: Iterable[tuple[str, SidePiece | None, float | None]], estimated: Collection[str] = ()
) -> tuple[Rim, ...]:
    """The edgings that lie on an opening and whose depth is known, from their names, opening sides and depths in cm.

    ``estimated``: the names of those whose depth was not measured.
    """
    known = [(name, side, depth) for name, side, depth in edgings if side is not None and depth]
    names = [name for name, _, _ in known]
    found = []
    for name, side, depth in known:
        opening = opening_of(assembly, side)
        if opening is not None:
            found.append(Rim(name, opening, depth, _turned(assembly, name, names), name in estimated))
    return tuple(found)


def opening_of(assembly: Assembly, side: SidePiece) -> int | None:
    """The place of the opening that a side, or any part of it, lies on."""
    panel = next((panel for panel in assembly.panels if panel.name == side.panel), None)
    index = side_index(panel.sides, side.side) if panel is not None else None
    if panel is None or index is None:
        return None
    low, high = interval(side)
    for number, opening in enumerate(assembly.openings):
        for piece in opening.sides:
            first, last = interval(piece)
            if (piece.panel, piece.side) == (panel.name, panel.sides[index]) and first < high and low < last:
                return number
    return None


def _turned(assembly: Assembly, name: str, names: Sequence[str]) -> bool:
    """Whether the form or a fold of the pattern turns this edging back: "hat, brim up", "basket, rim down", "Fold the cuffs back"."""
    own = set(_words(name))
    claimed = {word for other in names for word in _words(other)}
    for text in (assembly.form or "", *assembly.fold):
        for clause in re.split(r"[.;]", text):
            words = _words(clause)
            meant = [word for word in words if word in own or (word in _NAMES and word not in claimed)]
            ways = [word for word in words if word in _TURNS]
            if not meant or not ways or "not" in words:
                continue
            # Down is where a hat's brim hangs anyway, up where a basket's rim stands.
            straight = "down" if worn_over(assembly) else "up"
            plain = straight in ways and not set(ways) & {"over", "back", "outside", "fold", "folded", "roll", "rolled", "flip", "flipped"}
            return not plain or (straight == "up" and bool({"turn", "turned"} & set(ways)))
    return False


def _words(text: str) -> list[str]:
    """In small letters; a plural is its singular too."""
    found = re.findall("[a-z]+", text.lower())
    return [*found, *(word[:-1] for word in found if word.endswith("s") and len(word) > 3)]


def estimated_in(rims: Iterable[Rim]) -> bool:
    """Whether a measure that holds these edgings is an estimate: those that are turned back add nothing to it."""
    return any(rim.estimate and not rim.turned for rim in rims)


def depth_at(rims: Iterable[Rim], opening: int) -> float:
    """What the edgings of an opening add beyond it: those that are turned back add nothing."""
    return sum(rim.depth_cm for rim in rims if rim.opening == opening and not rim.turned)


@dataclass(frozen=True, slots=True)
class Edge:
    """A straight stretch of an open edge, the thing on its left; ``front``: in the upper layer."""

    a: Point
    b: Point
    front: bool = True


def band(edges: Sequence[Edge], off: float) -> list[tuple[Point, Point, Point, Point]]:
    """For each edge the four corners of the band along it, ``off`` outwards (negative: inwards); neighbours meet in a mitre."""
    starts = {_key(edge.a, edge.front): edge for edge in edges}
    ends = {_key(edge.b, edge.front): edge for edge in edges}
    found = []
    for edge in edges:
        before, after = ends.get(_key(edge.a, edge.front)), starts.get(_key(edge.b, edge.front))
        one, two = _mitre(edge, before), _mitre(edge, after)
        a, b = edge.a, edge.b
        found.append((a, b, (b[0] + two[0] * off, b[1] + two[1] * off), (a[0] + one[0] * off, a[1] + one[1] * off)))
    return found


def _key(point: Point, front: bool) -> tuple[float, float, bool]:
    return round(point[0], 3) + 0.0, round(point[1], 3) + 0.0, front


def _outward(edge: Edge) -> Point:
    dx, dy = edge.b[0] - edge.a[0], edge.b[1] - edge.a[1]
    length = hypot(dx, dy) or 1.0
    return dy / length, -dx / length


def _mitre(edge: Edge, other: Edge | None) -> Point:
    mine = _outward(edge)
    if other is None:
        return mine
    theirs = _outward(other)
    share = 1 + mine[0] * theirs[0] + mine[1] * theirs[1]
    return ((mine[0] + theirs[0]) / share, (mine[1] + theirs[1]) / share) if share > STRAIGHT else mine
