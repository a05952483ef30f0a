"""Panels joined into a surface, and the order in which it is sewn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from motifold.render.pattern.model import SidePiece
from motifold.render.pattern.problem import Span


@dataclass(frozen=True, slots=True)
class Panel:
    """One panel: a copy of ``motif`` laid right side up; ``sides`` name its sides counter-clockwise.

    ``cell`` is its (row, column) in the net, if it has one. ``outline_cm``: its corners where the net lays it, y up.
    """

    name: str
    motif: str
    sides: tuple[str, ...]
    cell: tuple[int, int] | None
    outline_cm: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Seam:
    """Two sides (or half sides) joined: ``a`` against ``b``; b None: a side folded on itself.

    ``kind``: "flat" for neighbours in the net, "fold" for what ``join`` brings together. ``stitches``: counted from the sides.
    """

    name: str
    a: SidePiece
    b: SidePiece | None
    twist: bool
    kind: Literal["flat", "fold"]
    stitches: int
    span: Span


@dataclass(frozen=True, slots=True)
class PassStep:
    """One seam of a pass, worked ``forward`` (from the start of side a to its end) or back."""

    seam: int
    forward: bool


@dataclass(frozen=True, slots=True)
class SeamPass:
    """One attachment of yarn to one fastening off. ``stitches`` includes one across each meeting of panels."""

    number: int
    steps: tuple[PassStep, ...]
    stitches: int
    closed: bool


@dataclass(frozen=True, slots=True)
class Corner:
    """A point of the surface where panel corners meet: ``at`` = ((panel, corner index), ...)."""

    at: tuple[tuple[str, int], ...]
    degrees: float
    on_opening: bool


@dataclass(frozen=True, slots=True)
class Opening:
    """One boundary of the surface: its side pieces in the order that a right-handed worker meets them, RS facing."""

    sides: tuple[SidePiece, ...]
    girth_cm: float | None


@dataclass(frozen=True, slots=True)
class Gap:
    """Where passes meet at a corner and none goes through it."""

    at: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Assembly:
    panels: tuple[Panel, ...]
    seams: tuple[Seam, ...]
    pieces: int
    orientable: bool
    openings: tuple[Opening, ...]
    corners: tuple[Corner, ...]
    passes: tuple[SeamPass, ...]
    gaps: tuple[Gap, ...]
    panel_width_cm: float | None
