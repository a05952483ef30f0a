"""Drawings as PDF content: the same operations as the SVG writer's, words as text in embedded subsets of the packaged fonts."""

from __future__ import annotations

import functools
from collections.abc import Sequence
from io import BytesIO
from typing import Any

from motifold.render.drawing.display import Drawing, Face, FillPath, Group, Image, Path, StrokePath, Text, Transform
from motifold.render.drawing.fonts import Glyph, font_path, shape
from motifold.render.drawing.measure import text_transform
from motifold.render.drawing.numbers import MM_PER_PT, clean_words, number
from motifold.render.drawing.writer import dissolve, gathered, merge_strokes, play

PT_PER_MM = 1 / MM_PER_PT
_FOR_PRINT = 2  # decimals of mm
_AS_FINE = 1.5  # times its own size that a drawing may be printed with them
_OPERATORS = {"M": "m", "L": "l", "C": "c", "Z": "h"}


@functools.cache
def pdf_font(face: Face) -> Any:
    """reportlab's font object for ``face``, registered once; each document embeds its own subset of it."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    font = TTFont(f"motifold-{face}", str(font_path(face)))
    pdfmetrics.registerFont(font)
    return font


def color_operator(color: str, stroke: bool) -> str:
    """``#rrggbb`` as a PDF colour operator; greys as DeviceGray, so that a drawing in greys holds no colour at all."""
    red, green, blue = (number(int(color[i:i + 2], 16) / 255, 4) for i in (1, 3, 5))
    if red == green == blue:
        return f"{red} {'G' if stroke else 'g'}"
    return f"{red} {green} {blue} {'RG' if stroke else 'rg'}"


def path_operators(path: Path, decimals: int = 3) -> str:
    """Path construction operators; numbers as ``numbers.number`` writes them, without a call for each: a chart has a hundred thousand."""
    parts = []
    for name, *values in path.commands:
        parts += [f"{round(value, decimals) + 0.0:.9g}" for value in values]  # type: ignore[arg-type]  # numbers behind the name
        parts.append(_OPERATORS[name])  # type: ignore[index]
    said = " ".join(parts)
    if "n" in said:  # nan, inf
        raise ValueError(f"{path.commands} have no place on paper")
    return said


def _literal(codes: bytes) -> str:
    """A PDF literal string in ASCII (ISO 32000-1, 7.3.4.2)."""
    return "".join(
        "\\" + chr(code) if code in b"\\()" else chr(code) if 32 <= code < 127 else f"\\{code:03o}"
        for code in codes
    )


def _shown(glyphs: Sequence[Glyph], canvas: Any) -> list[tuple[str, str]]:
    """The glyphs as (font resource, TJ array) pieces; what differs from the fonts' own advances becomes TJ adjustments (9.4.3)."""
    pieces: list[tuple[str, list[str]]] = []
    pen = 0.0  # where the shown glyphs have brought the pen, in units; the next one may have to stand elsewhere
    for glyph in glyphs:
        if not glyph.character:
            continue
        font = pdf_font(glyph.face)
        [(subset, codes)] = font.splitString(glyph.character, canvas._doc)
        resource = font.getSubsetInternalName(subset, canvas._doc)
        if not pieces or pieces[-1][0] != resource:
            pieces.append((resource, []))
        array = pieces[-1][1]
        if abs(glyph.x - pen) > 1e-6:
            array.append(number(pen - glyph.x))
        if array and array[-1].startswith("("):
            array[-1] = array[-1][:-1] + _literal(codes) + ")"
        else:
            array.append(f"({_literal(codes)})")
        pen = glyph.x + font.face.getCharWidth(ord(glyph.character))
    return [(resource, " ".join(array)) for resource, array in pieces]


def text_operators(glyphs: Sequence[Glyph], size: float, canvas: Any) -> str:
    """Text-showing operators (inside BT ... ET, text matrix set) for shaped glyphs; ``size`` in the units of the current space."""
    return " ".join(f"{resource} {number(size, 4)} Tf [{array}] TJ" for resource, array in _shown(glyphs, canvas))


@functools.lru_cache(maxsize=256)
def _pen(color: str, width: float, cap: str, join: str, dash: tuple[float, ...]) -> tuple[tuple[str, str], ...]:
    """What sets a stroke's style, and the operators for it."""
    return (
        ("stroke", color_operator(color, stroke=True)),
        ("width", f"{number(width)} w"),
        ("cap", f"{1 if cap == 'round' else 0} J"),
        ("join", f"{1 if join == 'round' else 0} j"),
        ("dash", f"[{' '.join(number(length) for length in dash)}] 0 d"),
    )


class _PdfWriter:
    """Writes content operators to a reportlab canvas. Colours and widths in force are remembered, and written only when they change."""

    def __init__(self, canvas: Any, decimals: int = 3) -> None:
        self._canvas = canvas
        self._decimals = decimals
        self._state: dict[str, str] = {}
        self._saved: list[dict[str, str]] = []
        self.code: list[str] = []

    def _set(self, what: str, operator: str) -> None:
        if self._state.get(what) != operator:
            self._state[what] = operator
            self.code.append(operator)

    def stroke(self, operation: StrokePath) -> None:
        for what, operator in _pen(operation.color, operation.width_mm, operation.cap, operation.join, operation.dash_mm):
            self._set(what, operator)
        self.code.append(path_operators(operation.path, self._decimals) + " S")

    def fill(self, operation: FillPath) -> None:
        self._set("fill", color_operator(operation.color, stroke=False))
        self.code.append(path_operators(operation.path, self._decimals) + (" f" if operation.rule == "nonzero" else " f*"))

    def text(self, operation: Text) -> None:
        shown = text_operators(shape(operation.words, operation.face), operation.size_pt * MM_PER_PT, self._canvas)
        if shown:
            self._set("fill", color_operator(operation.color, stroke=False))
            self.code.append(f"BT {_numbers(text_transform(operation))} Tm {shown} ET")

    def image(self, operation: Image) -> None:
        """Through the canvas, which keeps each picture once in a document; its operators are taken to where they belong."""
        from reportlab.lib.utils import ImageReader

        written = self._canvas._code
        before = len(written)
        size = (operation.x_mm, operation.y_mm, operation.width_mm, operation.height_mm)
        self._canvas.drawImage(ImageReader(BytesIO(operation.data)), *size, mask="auto" if operation.kind == "png" else None)
        self.code += written[before:]
        del written[before:]

    def begin(self, group: Group) -> None:
        if group.transform or group.clip:
            self._saved.append(dict(self._state))
            self.code.append("q")
            if group.transform:
                self.code.append(f"{_numbers(group.transform)} cm")
            if group.clip:
                self.code.append(f"{path_operators(group.clip)} W n")

    def end(self, group: Group) -> None:
        if group.transform or group.clip:
            self._state = self._saved.pop()
            self.code.append("Q")


def _numbers(transform: Transform) -> str:
    factors = [number(value, 6) for value in (transform.a, transform.b, transform.c, transform.d)]
    return f"{' '.join(factors)} {number(transform.e)} {number(transform.f)}"


def draw_on_canvas(drawing: Drawing, canvas: Any, x_mm: float, y_mm: float, scale: float = 1.0, pooled: bool = False) -> None:
    """Draws on a reportlab canvas, the lower left corner of the drawing's box at (x, y) from the page's lower left corner.

    The canvas's own state of colours, fonts and matrix is left as it was. ``pooled``: for print alone: neighbouring strokes of one colour
    are gathered by their widths, and places are as fine as the finest setter of print has dots (2540 an inch, 0.01 mm), in half the room.
    """
    writer = _PdfWriter(canvas, _FOR_PRINT if pooled and scale <= _AS_FINE else 3)
    play(merge_strokes(gathered(dissolve(drawing.operations)) if pooled else drawing.operations), writer)
    unit = scale * PT_PER_MM
    to_page = Transform(unit, 0.0, 0.0, unit, x_mm * PT_PER_MM - unit * drawing.box[0], y_mm * PT_PER_MM - unit * drawing.box[1])
    canvas.addLiteral("\n".join(["q", f"{_numbers(to_page)} cm", *writer.code, "Q"]))


def open_canvas(buffer: BytesIO, language: str, compress: bool = True) -> Any:
    """A reportlab canvas whose bytes depend on what is drawn alone: dates are fixed, or SOURCE_DATE_EPOCH's (reproducible-builds.org)."""
    from reportlab.pdfgen.canvas import Canvas

    # An embedded initial font: with its own default, reportlab names an unembedded Helvetica on every page.
    canvas = Canvas(buffer, invariant=1, pageCompression=int(compress), lang=language, initialFontName=pdf_font("sans").fontName)
    canvas.setCreator("Motifold")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    return canvas


def to_pdf(drawings: Drawing | Sequence[Drawing], *, title: str = "", author: str = "", language: str = "en") -> bytes:
    """One page for each drawing, as large as its box.

    The title is the first drawing's if none is given.
    """
    pages = (drawings,) if isinstance(drawings, Drawing) else tuple(drawings)
    buffer = BytesIO()
    canvas = open_canvas(buffer, language)
    canvas.setTitle(clean_words(title or (pages[0].title if pages else "")))
    canvas.setAuthor(clean_words(author))
    canvas.setSubject(clean_words(" ".join(page.description for page in pages)))
    for page in pages:
        canvas.setPageSize((page.width_mm * PT_PER_MM, page.height_mm * PT_PER_MM))
        draw_on_canvas(page, canvas, 0.0, 0.0)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()
