"""How a chart is to look: everything that a drawing of the same stitches can be asked to do differently."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from math import atan2, tau

from motifold.symbols.record import dataclass
from motifold.symbols.sizes import U_MM
from motifold.symbols.terms import Terms


@dataclass(frozen=True, slots=True)
class Repeat:
    """``times`` in all. Rounds: counter-clockwise from angle ``start`` to ``end`` (radians) about the centre, the first one worked.

    Rows: from x ``start`` to ``end``, the leftmost of them. ``cut``: points in u along which rounds are cut at ``start``, from the inside
    outwards, where the repeat is drawn by itself; empty: straight.
    """

    times: int
    start: float
    end: float
    cut: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class ChartLook:
    """``pitch_mm``: u on paper. ``mono``: for a black-and-white printer. ``left_handed``: mirrored work, upright numbers.

    ``show``: first and last round drawn (numbers of rounds; what is made before round 1 goes with it). ``emphasise``: this round
    dark, the others grey, for growing charts. ``yarn_colors``: yarn key to #rrggbb; ``yarn_names``: to what it is called. ``symbols``: a
    pattern's own, stitch key to SVG path data. ``names``: how its own stitches are called. ``furniture``: numbers and working marks.
    ``sector``: only what stands between these two angles about the centre (radians, counter-clockwise from the first to the second), for
    one side of a long edging. ``once``: the repeat that is drawn a single time, everything else of it being left out; it is bracketed, or
    its edges are drawn.

    Numbers and letters are set for ``pitch_mm`` as it is printed: choose the pitch for the page, and do not scale the drawing after. A
    drawing is cropped to what it shows; with ``emphasise`` it keeps the box of the whole chart, so that a series has one size and place.
    """

    pitch_mm: float = U_MM
    mono: bool = False
    left_handed: bool = False
    show: tuple[int, int] | None = None
    emphasise: int | None = None
    yarn_colors: Mapping[str, str] = field(default_factory=dict)
    yarn_names: Mapping[str, str] = field(default_factory=dict)
    symbols: Mapping[str, str] = field(default_factory=dict)
    names: Mapping[str, str] = field(default_factory=dict)
    terms: Terms = "US"
    title: str | None = None
    furniture: bool = True
    sector: tuple[float, float] | None = None
    once: Repeat | None = None


def in_sector(point: tuple[float, float], sector: tuple[float, float] | None) -> bool:
    """Whether a point lies between the two angles; everything does where there are none."""
    return sector is None or (atan2(point[1], point[0]) - sector[0]) % tau <= (sector[1] - sector[0]) % tau
