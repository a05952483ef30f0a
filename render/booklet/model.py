"""What a booklet is made of, and how its pages are to look."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import field
from typing import Literal

from motifold.render.drawing.display import Drawing
from motifold.render.pattern.model import Edition
from motifold.render.words.model import Document
from motifold.symbols.record import dataclass

PaperName = Literal["A4", "Letter", "A5", "Half Letter"]
FigureRole = Literal["chart", "key", "growth", "net", "seams", "colourways", "join", "step", "finished", "photograph", "numbers", "code"]


@dataclass(frozen=True, slots=True)
class Look:
    """How the booklet is wanted: sheet, terms (None: the file's), one size or all (None), colour or none, for which hand.

    ``numbers``: with the growth curve, the yarn by colour and part, and the plan of the colourways. ``large_print``: for eyes that need
    it: text of 18 points in one column, drawings enlarged.
    """

    paper: PaperName = "A4"
    terms: Literal["US", "UK"] | None = None
    size: str | None = None
    mono: bool = False
    left_handed: bool = False
    plain: bool = False
    numbers: bool = False
    large_print: bool = False


@dataclass(frozen=True, slots=True)
class Anew:
    """How a drawing is made anew at a scale, where its letters and lines must not shrink with it.

    ``grows``: the width and height in mm that grow with the scale, at scale 1; ``keeps``: what stands around that, about as large at
    any scale.
    """

    draw: Callable[[float], Drawing]
    grows: tuple[float, float]
    keeps: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing with its caption and where it belongs.

    ``subject``: the motif or edging it shows; of a photograph the part it stands in ("cover", "assembly", "finishing", a motif or edging).
    ``step``: which numbered item of the assembly it stands beside, from 1. The drawing may be scaled between ``smallest`` (still legible)
    and ``largest`` (still handsome) times its own size; from ``comfortable`` on, a larger print is not worth another page.
    ``variants``: the same drawn for other widths, as a key in more or fewer columns; the widest that fits its room is printed.
    ``redrawn``: how the same drawing is made anew at a scale; ``drawing`` then only measures it.
    """

    role: FigureRole
    drawing: Drawing
    caption: str
    subject: str | None = None
    step: int | None = None
    smallest: float = 0.6
    largest: float = 1.6
    comfortable: float = 0.85
    variants: tuple[Drawing, ...] = ()
    redrawn: Anew | None = None


@dataclass(frozen=True, slots=True)
class Cover:
    """The front page. ``facts``: what a buyer looks for, (label, value).

    ``hero``: the picture, printed at most ``finest`` times its own size; ``second``: a smaller one beside it. ``contents``: the parts of a
    long booklet with their pages and the keys of their destinations.
    """

    title: str
    summary: str
    author: str
    facts: tuple[tuple[str, str], ...]
    hero: Drawing | None
    second: Drawing | None = None
    contents: tuple[tuple[str, int, str], ...] = ()
    finest: float = 3.0


@dataclass(frozen=True, slots=True)
class PageStyle:
    """``accent`` is the one colour of headings and rules, #rrggbb, at least 4.5:1 on white (WCAG 2, 1.4.3)."""

    paper: PaperName = "A4"
    accent: str = "#20506b"
    mono: bool = False
    large_print: bool = False


@dataclass(frozen=True, slots=True)
class BookletContent:
    """All that is printed.

    ``swatches``: (words that a table's row or a list's item begins with, #rrggbb): a spot of the yarn's colour is set beside them.
    """

    document: Document
    cover: Cover
    figures: tuple[Figure, ...]
    style: PageStyle
    author: str = ""
    swatches: tuple[tuple[str, str], ...] = ()
    edition: Edition = field(default_factory=Edition)
