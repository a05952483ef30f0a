"""A checked pattern file: everything that it says, typed, with the place of every key."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from motifold.render.pattern.instructions import Definition, Instructions
from motifold.render.pattern.problem import NOWHERE, Span
from motifold.render.pattern.quantity import PerLength, Quantity, Range
from motifold.symbols.record import dataclass

Terms = Literal["US", "UK"]
KeyPath = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Materials:
    hook: Quantity | None = None
    notions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Yarn:
    """``key`` is the letter in the text; ``length`` its metres for grams; ``ball`` the grams of one ball."""

    key: str
    name: str
    hex: str | None = None
    weight: int | None = None
    length: PerLength | None = None
    ball: Quantity | None = None


@dataclass(frozen=True, slots=True)
class GaugePoint:
    """A measured swatch: after ``rounds`` rounds it is ``width_cm`` across (side to side, or over the diameter)."""

    rounds: int
    width_cm: float


@dataclass(frozen=True, slots=True)
class Gauge:
    """The designer's swatch. Rounds and width of a motif, and/or ``stitches`` over ``width_cm`` and ``rows`` over ``height_cm``."""

    motif: str | None = None
    points: tuple[GaugePoint, ...] = ()
    grams: float | None = None
    grams_rounds: int | None = None
    stitches: float | None = None
    width_cm: float | None = None
    rows: float | None = None
    height_cm: float | None = None
    after_wash: float | None = None      # factor on widths, 0.97 for "-3 %"
    estimate: bool = False


@dataclass(frozen=True, slots=True)
class SpecialStitch:
    """``[stitch.KEY]``: ``name`` as printed, ``means`` as written, ``symbol`` its own SVG path data if given."""

    key: str
    name: str
    means: str
    definition: Definition | None
    symbol: str | None = None


@dataclass(frozen=True, slots=True)
class MotifSource:
    """``[motif.NAME]``: ``sides`` is how many corners the shape has (0: a circle; 4 for rows)."""

    name: str
    shape: str
    sides: int
    worked: Literal["rounds", "rows"]
    instructions: Instructions
    last_round: int | None = None
    counts_as: bool | None = None


@dataclass(frozen=True, slots=True)
class SizePlan:
    """``[size]``: ``bodies`` in the file's order, in cm (or an amount named in a table, resolved in sizing)."""

    measure: str
    motif: str | None
    across: float | None
    ease: Range | None                          # fractions: -0.08 to 0; or cm if ease_unit is "cm"
    bodies: tuple[tuple[str, float | str], ...]  # (name, cm) or (name, "table: head, 2 years")


@dataclass(frozen=True, slots=True)
class SidePiece:
    """``C.top[1/2]``: panel, side and part (``part`` of ``parts``; 1 of 1 is the whole side); itself: folded on itself."""

    panel: str
    side: str
    part: int = 1
    parts: int = 1


@dataclass(frozen=True, slots=True)
class JoinSource:
    """One entry of ``join``: ``a + b`` (opposite directions) or ``a ~ b`` (twisted); ``b`` None: ``a + itself``.

    ``ease``: the longer side is eased in evenly. ``ratio``: (3, 2) for "3 sts to 2 rows": 3 of one side's stitches to 2 of the other's.
    """

    span: Span
    a: SidePiece
    b: SidePiece | None
    twist: bool = False
    ease: bool = False
    ratio: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class NetCell:
    """A panel's place in the net: ``row`` from the top, ``column`` from the left, both from 0."""

    panel: str
    row: int
    column: int
    span: Span


@dataclass(frozen=True, slots=True)
class SeamSource:
    method: str = "slip stitch"
    yarn: str | None = None
    passes: tuple[tuple[str, ...], ...] = ()
    adds_cm: float = 0.0


@dataclass(frozen=True, slots=True)
class AssemblySource:
    """``[assembly]``: ``panels`` maps those whose motif differs; ``motif`` is every other panel's. ``open_span``: where ``open`` stands."""

    motif: str | None
    panels: Mapping[str, str]
    net: tuple[NetCell, ...]
    join: tuple[JoinSource, ...]
    open: tuple[SidePiece, ...] | None
    seam: SeamSource
    copies: int = 1
    fold: tuple[str, ...] = ()
    form: str | None = None
    span: Span = NOWHERE
    open_span: Span | None = None


@dataclass(frozen=True, slots=True)
class EdgingSource:
    """``[edging.NAME]``: worked on the opening that ``opening`` lies on, or (no assembly) around ``motif``."""

    name: str
    opening: SidePiece | None
    motif: str | None
    instructions: Instructions


@dataclass(frozen=True, slots=True)
class Pattern:
    """One pattern file, read. ``places`` gives the span of each key path that the file has."""

    path: str
    source: str
    title: str
    terms: Terms
    summary: str = ""
    format: int = 1
    level: str | None = None
    author: str | None = None
    language: str = "en"
    materials: Materials = field(default_factory=Materials)
    yarns: tuple[Yarn, ...] = ()
    gauge: Gauge | None = None
    stitches: tuple[SpecialStitch, ...] = ()
    motifs: tuple[MotifSource, ...] = ()
    size: SizePlan | None = None
    assembly: AssemblySource | None = None
    edgings: tuple[EdgingSource, ...] = ()
    notes_before: tuple[str, ...] = ()
    notes_after: tuple[str, ...] = ()
    places: Mapping[KeyPath, Span] = field(default_factory=dict)

    def place(self, *keys: str | int) -> Span:
        """Where a key's value stands; the nearest key above it if the file does not have it."""
        path: KeyPath = keys
        while path:
            if path in self.places:
                return self.places[path]
            path = path[:-1]
        return NOWHERE
