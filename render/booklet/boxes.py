"""What pages are made of: boxes of a known height that are stacked and never torn, and the marks inside them.

A box's marks stand relative to its upper left corner, in points, y down. Every mark carries its tags, from the outermost structure element
inwards; a mark without tags is an artifact (ISO 14289-1, 7.1): a rule, a page number.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import field, replace

from motifold.render.booklet.inline import Type, Word
from motifold.render.booklet.model import Anew
from motifold.render.drawing.display import Drawing
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Tag:
    """One structure element (ISO 32000-1, 14.8.4): its type, and a key that tells it from its like.

    ``alt``: alternative text of a Figure. ``scope``: "Column" or "Row" of a TH. ``numbering``: "Decimal", "Disc" or "None" of an L.
    """

    name: str
    key: str
    alt: str = ""
    scope: str = ""
    numbering: str = ""


Tags = tuple[Tag, ...]


@dataclass(frozen=True, slots=True)
class LineOfWords:
    """Words from ``x`` on the baseline ``y``. ``ends``: the last line of its paragraph (no space is written after it)."""

    x: float
    y: float
    words: tuple[Word, ...]
    tags: Tags = ()
    ends: bool = True


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A filled rectangle, always an artifact; rules are thin ones. ``outline``: a hairline around it."""

    x: float
    y: float
    width: float
    height: float
    color: str
    outline: str | None = None


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing, the upper left corner of its box at (x, y), ``scale`` times its own size; ``redrawn``: made anew at that scale."""

    x: float
    y: float
    drawing: Drawing
    scale: float
    tags: Tags = ()
    redrawn: Anew | None = None

    @property
    def width(self) -> float:
        """As printed, in points."""
        return self.drawing.width_mm / MM_PER_PT * self.scale

    @property
    def height(self) -> float:
        return self.drawing.height_mm / MM_PER_PT * self.scale


BoxMark = LineOfWords | Rectangle | Picture


@dataclass(frozen=True, slots=True)
class Destination:
    """A place that the outline names, at ``level`` 0 for the booklet's parts; None: one that is only led to."""

    key: str
    title: str
    level: int | None


@dataclass(frozen=True, slots=True)
class Box:
    """A slice of a column. ``before``: room above it, dropped at the head of a column. ``keep``: no break after it.

    ``reluctance``: how many lines of room may be left free to avoid a break after it.
    ``continued``: what is printed above it where a column begins with it: a table's head, once more, as an artifact.
    """

    height: float
    marks: tuple[BoxMark, ...] = ()
    before: float = 0.0
    keep: bool = False
    reluctance: float = 0.0
    destination: Destination | None = None
    continued: Box | None = None


def words_line(text: str, kind: Type, x: float, y: float, tags: Tags = ()) -> LineOfWords:
    """One line that is not broken: a label, a number, a running head."""
    from motifold.render.booklet.inline import width_of

    return LineOfWords(x, y, (Word(((text, kind),), width_of(text, kind), 0.0),), tags)


def moved(mark: BoxMark, dx: float, dy: float) -> BoxMark:
    """The mark elsewhere. Lines are moved by the ten thousand while plans are compared: made anew without a look at their fields."""
    if isinstance(mark, LineOfWords):
        return LineOfWords(mark.x + dx, mark.y + dy, mark.words, mark.tags, mark.ends)
    return replace(mark, x=mark.x + dx, y=mark.y + dy)


def stacked(boxes: Sequence[Box], keep: bool = False) -> Box:
    """Boxes one below the other as one that is not torn."""
    marks: list[BoxMark] = []
    y = 0.0
    for index, box in enumerate(boxes):
        y += box.before if index else 0.0
        marks += [moved(mark, 0.0, y) for mark in box.marks]
        y += box.height
    destination = next((box.destination for box in boxes if box.destination), None)
    return Box(y, tuple(marks), boxes[0].before if boxes else 0.0, keep, destination=destination)


def beside(parts: Iterable[tuple[float, Box]]) -> Box:
    """Boxes side by side, each at its x, tops level."""
    kept = list(parts)
    marks = tuple(moved(mark, x, 0.0) for x, box in kept for mark in box.marks)
    destination = next((box.destination for _, box in kept if box.destination), None)
    return Box(max((box.height for _, box in kept), default=0.0), marks, destination=destination)


def height_of(boxes: Sequence[Box]) -> float:
    """Stacked at the head of a column."""
    return sum(box.height + (box.before if index else 0.0) for index, box in enumerate(boxes))


@dataclass(frozen=True, slots=True)
class PlacedBox:
    """A box on a page, its upper left corner at (x, y) from the page's upper left corner."""

    x: float
    y: float
    box: Box


@dataclass(frozen=True, slots=True)
class Page:
    """``number`` from 1. ``running``: the words at its head (None: no head and no page number, as on a cover)."""

    number: int
    placed: tuple[PlacedBox, ...]
    running: str | None = None
    furniture: tuple[BoxMark, ...] = field(default=())
