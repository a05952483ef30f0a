"""Panels joined into a surface, and the order in which it is sewn."""

from __future__ import annotations

from typing import Literal

from motifold.render.pattern.model import SidePiece
from motifold.render.pattern.problem import Span
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Panel:
    """One panel: a copy of ``motif`` laid right side up; ``sides`` name its sides counter-clockwise.

    ``cell`` is its (row, column) in the net, if it has one. ``outline_cm``: its corners where the net lays it, y up; corner i is
    where side i starts. A circle has one side, and as its outline a fine polygon. Without a known width the outline is nominal
    (see ``Assembly.scaled``). ``sides_cm``: the length of each side, None where it isn't known. ``copy`` counts from 1.
    """

    name: str
    motif: str
    sides: tuple[str, ...]
    cell: tuple[int, int] | None
    outline_cm: tuple[tuple[float, float], ...]
    sides_cm: tuple[float | None, ...] = ()
    copy: int = 1


@dataclass(frozen=True, slots=True)
class Seam:
    """Two sides (or half sides) joined: ``a`` against ``b``; b None: a side folded on itself.

    ``kind``: "flat" for neighbours in the net, "fold" for what ``join`` brings together. ``stitches``: counted from the sides.
    ``corners``: the corners of the surface where it starts and ends, in the direction of side a (into ``Assembly.corners``).
    ``eased``: (stitches of a, of b) where the longer side is eased in.
    """

    name: str
    a: SidePiece
    b: SidePiece | None
    twist: bool
    kind: Literal["flat", "fold"]
    stitches: int
    span: Span
    corners: tuple[int, int] = (0, 0)
    eased: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class PassStep:
    """One seam of a pass, worked ``forward`` (from the start of side a to its end) or back."""

    seam: int
    forward: bool


@dataclass(frozen=True, slots=True)
class SeamPass:
    """One attachment of yarn to one fastening off. ``stitches`` includes one across each meeting of panels (``meetings`` of them).

    ``each``: the same step by step, with the meeting that leads to it; a closed pass has one more, back to where it began.
    """

    number: int
    steps: tuple[PassStep, ...]
    stitches: int
    closed: bool
    meetings: int = 0
    each: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Corner:
    """A point of the surface where panel corners meet: ``at`` = ((panel, corner index), ...); corner i is where side i starts.

    ``along``: sides that have the point within them, as the piece that ends there ("T1.left[1/2]": its middle, where it folds).
    """

    at: tuple[tuple[str, int], ...]
    degrees: float
    on_opening: bool
    along: tuple[SidePiece, ...] = ()


@dataclass(frozen=True, slots=True)
class Opening:
    """One boundary of the surface: its side pieces in the order that a right-handed worker meets them, RS facing.

    ``seams``: how many seams end on it. ``reversed``: for each side, whether it is met with the wrong side facing (after a twist).
    """

    sides: tuple[SidePiece, ...]
    girth_cm: float | None
    seams: int = 0
    reversed: tuple[bool, ...] = ()


@dataclass(frozen=True, slots=True)
class Gap:
    """Where passes meet at a corner and none goes through it: ``corner`` is its place in ``Assembly.corners``."""

    at: tuple[tuple[str, int], ...]
    corner: int = 0


@dataclass(frozen=True, slots=True)
class Rim:
    """An edging on the finished thing. ``opening``: its place in ``Assembly.openings``; ``depth_cm``: its rounds by gauge.

    ``turned``: folded back over the right side, so that it adds no depth. ``estimate``: no gauge of its own rounds was measured.
    ``spread``: stitches of its last round over those of its first: with 1 it is worked straight. ``sides``: those of the opening that it
    is worked along ("flag.1"), where it does not go all round.
    """

    name: str
    opening: int
    depth_cm: float
    turned: bool = False
    estimate: bool = False
    spread: float = 1.0
    sides: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Assembly:
    """The thing made. ``panels`` and all that follows hold every copy, copy by copy (panel "north" of the second copy: "north 2").

    ``scaled``: every outline is in true cm; otherwise outlines are nominal and no measurement may be printed from them.
    ``euler``: corners - edges + panels. ``adds_cm``: width that a seam adds between two panels. ``least_passes``: what Euler's theorem
    asks for at least, before flat work is put first. ``own_passes``: the pattern
    gave them. ``method`` and ``yarn`` of the seams, ``fold`` and ``form`` as the pattern says.
    """

    panels: tuple[Panel, ...]
    seams: tuple[Seam, ...]
    pieces: int
    orientable: bool
    openings: tuple[Opening, ...]
    corners: tuple[Corner, ...]
    passes: tuple[SeamPass, ...]
    gaps: tuple[Gap, ...]
    panel_width_cm: float | None
    copies: int = 1
    euler: int = 0
    scaled: bool = True
    adds_cm: float = 0.0
    least_passes: int = 0
    method: str = "slip stitch"
    yarn: str | None = None
    fold: tuple[str, ...] = ()
    form: str | None = None
    own_passes: bool = False
