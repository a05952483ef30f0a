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
    margin: float | None = None          # yarn to spare, 0.15 for "15 %"


@dataclass(frozen=True, slots=True)
class Yarn:
    """``key`` is the letter in the text; ``length`` its metres for grams; ``ball`` the grams of one ball."""

    key: str
    name: str
    hex: str | None = None
    weight: int | None = None
    length: PerLength | None = None
    ball: Quantity | None = None
    substitute: PerLength | None = None  # another yarn's metres for grams


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
    by_hook: bool = False                # another hook's swatch, in proportion: an estimate


@dataclass(frozen=True, slots=True)
class SpecialStitch:
    """``[stitch.KEY]``: ``name`` as printed, ``means`` as written, ``symbol`` its own SVG path data if given."""

    key: str
    name: str
    means: str
    definition: Definition | None
    symbol: str | None = None


@dataclass(frozen=True, slots=True)
class Colourway:
    """One motif in other yarns: ``yarns`` maps those of the text to those worked; what it leaves out stays."""

    name: str
    yarns: Mapping[str, str]


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
    colourways: tuple[Colourway, ...] = ()


@dataclass(frozen=True, slots=True)
class OwnOfSize:
    """``[size.own.NAME]``: what one size has of its own; None: as the others.

    ``assembly``: its own net, with the seams of the others. ``edgings``: how many rounds it works of those named.
    """

    rounds: int | None = None
    across: float | None = None
    hook: Quantity | None = None
    gauge: Gauge | None = None
    assembly: AssemblySource | None = None
    edgings: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class SizePlan:
    """``[size]``: ``bodies`` in the file's order, in cm (or an amount named in a table, resolved in sizing)."""

    measure: str
    motif: str | None
    across: float | None
    ease: Range | None                          # fractions: -0.08 to 0; or cm if ease_unit is "cm"
    bodies: tuple[tuple[str, float | str], ...]  # (name, cm) or (name, "table: head, 2 years")
    own: Mapping[str, OwnOfSize] = field(default_factory=dict)


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
    colourways: Mapping[str, str] = field(default_factory=dict)  # by panel; empty: spread so that no two alike touch


@dataclass(frozen=True, slots=True)
class EdgingSource:
    """``[edging.NAME]``: worked on the opening that ``opening`` lies on, or (no assembly) around ``motif``; ``gauge`` is its own."""

    name: str
    opening: SidePiece | None
    motif: str | None
    instructions: Instructions
    gauge: Gauge | None = None


@dataclass(frozen=True, slots=True)
class Edition:
    """Which printing this is, and whose. ``date``: as ISO 8601 has it, "2026-03-01".

    ``changes``: (version, what it changed), newest last.
    """

    version: str | None = None
    date: str | None = None
    copyright: str | None = None
    licence: str | None = None
    web: str | None = None
    changes: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class PictureSource:
    """``[picture.NAME]``: a picture of the designer's own. ``file`` is as written, ``at`` the cover, a motif, an edging, or a section."""

    name: str
    file: str
    caption: str = ""
    alt: str = ""
    at: str = "finishing"
    width_cm: float | None = None


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
    edition: Edition = field(default_factory=Edition)
    pictures: tuple[PictureSource, ...] = ()
    places: Mapping[KeyPath, Span] = field(default_factory=dict)

    def place(self, *keys: str | int) -> Span:
        """Where a key's value stands; the nearest key above it if the file does not have it."""
        path: KeyPath = keys
        while path:
            if path in self.places:
                return self.places[path]
            path = path[:-1]
        return NOWHERE
