"""The packaged faces: how wide words are, how high letters stand, and the outlines of their glyphs.

The typefaces are Source Sans Pro and Source Serif Pro (SIL Open Font License), taken from their Python packages as TrueType files. What is
measured here is what the writers draw: ``shape`` decides glyphs, kerning and replacements once for all of them. 1 em = 1000 units.
"""

from __future__ import annotations

import functools
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from importlib import resources
from pathlib import Path as FilePath
from typing import Any

from motifold.render.drawing.display import Face, Path
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.drawing.pairs import PairTable, adjustment, pair_tables

UNITS_PER_EM = 1000

# The bold faces are the semibold cuts: beside hairlines a full bold is too black in print.
_FILES: Mapping[Face, tuple[str, str]] = {
    "sans": ("font_source_sans_pro", "SourceSansPro-Regular.ttf"),
    "sans-bold": ("font_source_sans_pro", "SourceSansPro-Semibold.ttf"),
    "sans-italic": ("font_source_sans_pro", "SourceSansPro-It.ttf"),
    "serif": ("font_source_serif_pro", "SourceSerifPro-Regular.ttf"),
    "serif-bold": ("font_source_serif_pro", "SourceSerifPro-Semibold.ttf"),
    "serif-italic": ("font_source_serif_pro", "SourceSerifPro-It.ttf"),
}

# Where a face lacks a character, its upright cut is asked, then the sans, which has arrows, Greek and Cyrillic too.
_FALLBACKS: Mapping[Face, tuple[Face, ...]] = {
    "sans": ("serif",),
    "sans-bold": ("sans", "serif-bold"),
    "sans-italic": ("sans", "serif-italic"),
    "serif": ("sans",),
    "serif-bold": ("sans-bold", "serif"),
    "serif-italic": ("serif", "sans-italic", "sans"),
}

# Characters that look and mean the same as one that the faces have.
_SAME_AS = {"\u2011": "-", "\u2010": "-", "\u2027": "·", "\u2219": "·", "\u25e6": "o", "\u25cf": "•", "\u2015": "—", "\u02bc": "’"}
# Spaces that the faces lack, as a part of the em (The Unicode Standard, General Punctuation).
_SPACES = {
    "\u2002": 500, "\u2003": 1000, "\u2004": 333, "\u2005": 250, "\u2006": 167, "\u2007": 500,
    "\u2008": 200, "\u2009": 200, "\u200a": 100, "\u202f": 200, "\u205f": 222, "\u3000": 1000,
}
REPLACEMENT = "\u25ca"  # the lozenge: every face has it, and nobody takes it for a letter


@dataclass(frozen=True, slots=True)
class Glyph:
    """One glyph of shaped words: ``character`` in ``face`` (perhaps not the one asked for), at ``x``, in units, kerning included.

    ``advance`` is from its x to the next glyph's. ``character`` is "" for a space that the face lacks: nothing is drawn there.
    """

    character: str
    face: Face
    x: float
    advance: float


@dataclass(frozen=True, slots=True)
class FaceMetrics:
    """Heights above the baseline in em (``descent`` below it, as a positive number)."""

    ascent: float
    descent: float
    cap_height: float
    x_height: float


@dataclass(frozen=True, slots=True)
class _Font:
    file: Any
    cmap: Mapping[int, str]
    metrics: FaceMetrics


def font_path(face: Face) -> FilePath:
    """The TrueType file of ``face``, inside its installed package."""
    package, name = _FILES[face]
    return FilePath(str(resources.files(package).joinpath("files", name)))


@functools.cache
def _font(face: Face) -> _Font:
    from fontTools.ttLib import TTFont

    file = TTFont(font_path(face), lazy=True)
    scale = 1 / file["head"].unitsPerEm
    os2, hhea = file["OS/2"], file["hhea"]
    metrics = FaceMetrics(hhea.ascent * scale, -hhea.descent * scale, os2.sCapHeight * scale, os2.sxHeight * scale)
    return _Font(file, file.getBestCmap(), metrics)


def face_metrics(face: Face) -> FaceMetrics:
    return _font(face).metrics


@functools.cache
def _glyph_width(face: Face, character: str) -> float:
    font = _font(face)
    return float(font.file["hmtx"][font.cmap[ord(character)]][0] * UNITS_PER_EM / font.file["head"].unitsPerEm)


@functools.cache
def _pair_tables(face: Face) -> tuple[PairTable, ...]:
    return pair_tables(_font(face).file.reader["GPOS"])


@functools.cache
def kerning(face: Face, left: str, right: str) -> float:
    """How much nearer (negative) ``right`` stands to ``left``, in units; both are characters that the face has."""
    font = _font(face)
    first, second = (font.file.getGlyphID(font.cmap[ord(character)]) for character in (left, right))
    return float(adjustment(_pair_tables(face), first, second) * UNITS_PER_EM / font.file["head"].unitsPerEm)


@functools.cache
def _find(face: Face, character: str) -> tuple[Face, str]:
    """The face and character that stand for ``character``: itself, its equal, another face's, or the replacement."""
    for wanted in (character, _SAME_AS.get(character, "")):
        if not wanted:
            continue
        for candidate in (face, *_FALLBACKS[face]):
            if ord(wanted) in _font(candidate).cmap:
                return candidate, wanted
    return face, REPLACEMENT


def _drawable(words: str) -> str:
    """Composed characters, any white space as a plain space, and nothing that has no width (marks of direction, soft hyphens)."""
    composed = unicodedata.normalize("NFC", words)
    spaced = (" " if character in "\t\n\r\v\f\u2028\u2029" else character for character in composed)
    return "".join(character for character in spaced if unicodedata.category(character) not in ("Cc", "Cf", "Cs"))


@functools.lru_cache(maxsize=16384)
def shape(words: str, face: Face) -> tuple[Glyph, ...]:
    """The glyphs that draw ``words``, left to right; never fails: what no face has becomes a lozenge."""
    glyphs: list[Glyph] = []
    x = 0.0
    for character in _drawable(words):
        if character in _SPACES and ord(character) not in _font(face).cmap:
            glyphs.append(Glyph("", face, x, float(_SPACES[character])))
        else:
            found_face, found = _find(face, " " if character == "\u00a0" else character)
            last = glyphs[-1] if glyphs else None
            if last is not None and last.face == found_face and last.character:
                kern = kerning(found_face, last.character, found)
                if kern:
                    glyphs[-1] = Glyph(last.character, last.face, last.x, last.advance + kern)
                    x += kern
            glyphs.append(Glyph(found, found_face, x, _glyph_width(found_face, found)))
        x += glyphs[-1].advance
    return tuple(glyphs)


def text_width_mm(words: str, face: Face, size_pt: float) -> float:
    """How wide ``words`` are printed, kerning included."""
    glyphs = shape(words, face)
    return (glyphs[-1].x + glyphs[-1].advance) / UNITS_PER_EM * size_pt * MM_PER_PT if glyphs else 0.0


def ascent_mm(face: Face, size_pt: float) -> float:
    return face_metrics(face).ascent * size_pt * MM_PER_PT


def descent_mm(face: Face, size_pt: float) -> float:
    """Below the baseline, as a positive length."""
    return face_metrics(face).descent * size_pt * MM_PER_PT


def cap_height_mm(face: Face, size_pt: float) -> float:
    return face_metrics(face).cap_height * size_pt * MM_PER_PT


def has_character(character: str, face: Face) -> bool:
    """Whether ``face`` itself has the character."""
    return ord(character) in _font(face).cmap


@functools.cache
def glyph_outline(face: Face, character: str) -> Path:
    """The outline of one character that ``face`` has, in units, y up, baseline at 0; filled nonzero."""
    from fontTools.pens.basePen import BasePen

    class PathPen(BasePen):  # type: ignore[misc]
        """Collects path commands; its base class turns TrueType's quadratic curves into cubic ones."""

        def __init__(self, glyph_set: Any) -> None:
            super().__init__(glyph_set)
            self.commands: list[tuple[str | float, ...]] = []

        def _moveTo(self, point: tuple[float, float]) -> None:
            self.commands.append(("M", *point))

        def _lineTo(self, point: tuple[float, float]) -> None:
            self.commands.append(("L", *point))

        def _curveToOne(self, first: tuple[float, float], second: tuple[float, float], end: tuple[float, float]) -> None:
            self.commands.append(("C", *first, *second, *end))

        def _closePath(self) -> None:
            self.commands.append(("Z",))

    font = _font(face)
    glyph_set = font.file.getGlyphSet()
    pen = PathPen(glyph_set)
    glyph_set[font.cmap[ord(character)]].draw(pen)
    return Path(tuple(pen.commands))


@functools.cache
def glyph_heights(face: Face, character: str) -> tuple[float, float] | None:
    """Lowest and highest ink of one character, in units; None where there is no ink."""
    font = _font(face)
    glyph = font.file["glyf"][font.cmap[ord(character)]]
    return (glyph.yMin, glyph.yMax) if glyph.numberOfContours else None
