"""Sides and pieces of sides: how they are written, where they lie, and what they hold."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from math import lcm

from motifold.render.assembly.model import Assembly, Seam
from motifold.render.fabric.model import EdgeItem, Fabric, Side
from motifold.render.pattern.model import SidePiece
from motifold.symbols.record import dataclass

NAMED = 4  # panels or joins that a sentence names


def listed(names: Sequence[str]) -> str:
    """Names in a sentence, of many the first.

    >>> listed("ABCD"), listed("ABCDEF")
    ('A, B, C, D', 'A, B, C, D and 2 more')
    """
    return ", ".join(names[:NAMED]) + (f" and {len(names) - NAMED} more" if len(names) > NAMED else "")


def side_text(piece: SidePiece) -> str:
    """A side as the pattern writes it.

    >>> side_text(SidePiece("C", "top", 1, 2))
    'C.top[1/2]'
    """
    part = "" if piece.parts == 1 else f"[{piece.part}/{piece.parts}]"
    return f"{piece.panel}.{piece.side}{part}"


def corner_name(assembly: Assembly, at: tuple[str, int]) -> str:
    """A panel's corner by the sides that meet there: "base.top-left", "L.6-1" (between sides 6 and 1)."""
    name, index = at
    for panel in assembly.panels:
        if panel.name == name:
            return f"{name}.{corner_of(panel.sides, index)}"
    return name


def corner_names(assembly: Assembly, corner: int) -> tuple[str, ...]:
    """All panel corners that meet at a corner of the surface, by name; a fold within a side as "T1.left[1/2]" (the end of that piece)."""
    found = assembly.corners[corner]
    return (*(corner_name(assembly, at) for at in found.at), *(side_text(piece) for piece in found.along))


def seam_corners(assembly: Assembly, seam: Seam, at_start: bool) -> tuple[str, ...]:
    """All panel corners that meet where a seam starts or ends, those of its own sides first: its side a's, then its side b's.

    While the work lies open only these are there; the others come to it as more is sewn.
    """
    low, high = interval(seam.a)
    if seam.b is None:
        middle = (low + high) / 2
        own = [_place_name(assembly, seam.a, share) for share in ((low, high) if at_start else (middle,))]
    else:
        ends = interval(seam.b)
        own = [
            _place_name(assembly, seam.a, low if at_start else high),
            _place_name(assembly, seam.b, ends[0 if at_start == seam.twist else 1]),
        ]
    own = [name for name in own if name]
    return tuple(dict.fromkeys([*own, *corner_names(assembly, seam.corners[0 if at_start else 1])]))


def _place_name(assembly: Assembly, piece: SidePiece, share: Fraction) -> str:
    """A place on a side: a corner at either end, elsewhere the piece that ends there."""
    sides = next(panel.sides for panel in assembly.panels if panel.name == piece.panel)
    at = sides.index(piece.side)
    if share in (0, 1):
        return corner_name(assembly, (piece.panel, (at + int(share)) % len(sides)))
    return side_text(pieces_between(piece.panel, piece.side, Fraction(0), share)[-1])


def corner_of(sides: tuple[str, ...], index: int) -> str:
    """The corner where side ``index`` starts.

    >>> corner_of(("top", "left", "bottom", "right"), 1)
    'top-left'
    """
    before, after = sides[index - 1], sides[index]
    if len(sides) == 1:
        return "start"
    return f"{after}-{before}" if before in ("left", "right") and after in ("top", "bottom") else f"{before}-{after}"


@dataclass(frozen=True, slots=True)
class Edge:
    """A stretch of one panel's side, from ``low`` to ``high`` (0 to 1 along the side, counter-clockwise). Panels and sides by number."""

    panel: int
    side: int
    low: Fraction
    high: Fraction


def interval(piece: SidePiece) -> tuple[Fraction, Fraction]:
    """From where to where it runs along its side, 0 to 1."""
    return _interval(piece.part, piece.parts)


@lru_cache(maxsize=1024)
def _interval(part: int, parts: int) -> tuple[Fraction, Fraction]:
    return Fraction(part - 1, parts), Fraction(part, parts)


def pieces_between(panel: str, side: str, low: Fraction, high: Fraction) -> tuple[SidePiece, ...]:
    """What lies between two places of a side, in as few pieces ``k/n`` as it takes, in order."""
    width = high - low
    if width > 0 and width.numerator == 1 and (low / width).denominator == 1:
        return (SidePiece(panel, side, int(low / width) + 1, width.denominator),)
    grid = lcm(low.denominator, high.denominator)
    first, last = int(low * grid), int(high * grid)
    return tuple(SidePiece(panel, side, k + 1, grid) for k in range(first, last))


def stitch_range(side: Side, low: Fraction, high: Fraction) -> tuple[int, int]:
    """Fewest and most stitches of a stretch: half of 29 is 14 or 15, as its maker places the middle one."""
    exact = side.stitches * (high - low)
    fewest = exact.numerator // exact.denominator
    return fewest, fewest + (exact.denominator != 1)


def _weight(fabric: Fabric, item: EdgeItem) -> int:
    return fabric.runs[item.id].chains if item.kind == "space" else 1


def items_between(fabric: Fabric, side: Side, low: Fraction, high: Fraction) -> tuple[EdgeItem, ...]:
    """What a stretch holds between the corners: each item belongs where its middle lies, a tie to the earlier stretch."""
    if low == 0 and high == 1:
        return side.items
    lead = 0 if side.start is None else 1
    total = lead + sum(_weight(fabric, item) for item in side.items) + (0 if side.end is None else 1)
    found = []
    at = lead
    for item in side.items:
        weight = _weight(fabric, item)
        middle = Fraction(2 * at + weight, 2 * total) if total else Fraction(0)
        if (low < middle or low == 0) and middle <= high:
            found.append(item)
        at += weight
    return tuple(found)
