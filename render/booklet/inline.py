"""Plain text made fit to print: true fractions, multiplication signs, dashes and quotation marks, and words to break lines between."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterable
from dataclasses import replace
from math import gcd

from motifold.render.drawing.display import Face
from motifold.render.drawing.fonts import face_metrics, glyph_heights, text_width_mm
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.symbols.record import dataclass

# Fractions of The Unicode Standard, Number Forms and Latin-1; the others are set from superior and inferior digits and a fraction slash.
_VULGAR = {
    (1, 2): "½", (1, 4): "¼", (3, 4): "¾", (1, 3): "⅓", (2, 3): "⅔", (1, 8): "⅛", (3, 8): "⅜", (5, 8): "⅝", (7, 8): "⅞",
}
_SUPERIOR = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_INFERIOR = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_FRACTION = re.compile(r"(?<![\w/.,-])(?:(\d+)[ \u00a0])?(\d{1,2})/(\d{1,2})(?![\w/])(?!\.\d)")
_RANGE = re.compile(r"(?<![\w./-])(\d+)-(\d+)(?![\w/-])(?!\.\d)")
_TIMES = re.compile(r"([\d½¼¾⅓⅔⅛⅜⅝⅞₀-₉](?:[ \u00a0](?:cm|mm|in))?[ \u00a0]?)[xX]([ \u00a0]?)(?=\d)")
_TIMES_AFTER = re.compile(r"(?<=[)\]] )[xX](?= \d)")
_UNIT = re.compile(r"(?<=[\d½¼¾⅓⅔⅛⅜⅝⅞₀-₉]) (?=(?:mm|cm|m|in|ft|yd|g|kg|oz|lb|%)\b|%)")
_PRINTED_DENOMINATORS = {2, 3, 4, 5, 6, 8, 10, 12, 16, 32}


def fraction(numerator: int, denominator: int) -> str:
    """n/d as one figure.

    >>> fraction(1, 2), fraction(5, 16)
    ('½', '⁵⁄₁₆')
    """
    found = _VULGAR.get((numerator, denominator))
    return found or str(numerator).translate(_SUPERIOR) + "\u2044" + str(denominator).translate(_INFERIOR)


_SPELLED = {figure: f"{numerator}/{denominator}" for (numerator, denominator), figure in _VULGAR.items()}
_PLAIN = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉\u2044", "01234567890123456789/")
_COMPOSED = re.compile(r"(\d?)([⁰¹²³⁴-⁹]+\u2044[₀-₉]+|[½¼¾⅓⅔⅛⅜⅝⅞])")


def spelled(text: str) -> str:
    """Fractions as they are typed and read aloud.

    >>> spelled('(5⅛\xa0in, 3⁵⁄₁₆\xa0in)')
    '(5 1/8\xa0in, 3 5/16\xa0in)'
    """
    return _COMPOSED.sub(lambda match: (match[1] + " " if match[1] else "") + (_SPELLED.get(match[2]) or match[2].translate(_PLAIN)), text)


def _set_fraction(match: re.Match[str]) -> str:
    whole, numerator, denominator = match[1], int(match[2]), int(match[3])
    if denominator not in _PRINTED_DENOMINATORS or numerator == 0 or numerator >= denominator or gcd(numerator, denominator) > 1:
        return match[0]
    return (whole or "") + fraction(numerator, denominator)


@functools.lru_cache(maxsize=8192)
def typeset(text: str) -> str:
    """``text`` with the characters that print what it means; numbers stay on the line of their units.

    >>> typeset('5 1/8 in x 12 cm, Rnds 4-6, "ch-2 sp"')
    '5⅛\\xa0in × 12\\xa0cm, Rnds 4–6, “ch-2 sp”'
    """
    text = _FRACTION.sub(_set_fraction, text)
    text = _RANGE.sub("\\1–\\2", text)
    text = _TIMES.sub("\\1×\\2", text)
    text = _TIMES_AFTER.sub("×", text)
    text = _UNIT.sub("\u00a0", text)
    text = re.sub(r"(?<=\w)'(?=\w)", "’", text)
    text = re.sub(r'(^|[\s(\[–—])"', "\\1“", text)
    return re.sub(r'(?<![\d\s])"', "”", text)


@dataclass(frozen=True, slots=True)
class Type:
    """How words look: ``face``, ``size`` in points, ``color`` #rrggbb.

    ``tracking``: added after each character, ``rise``: above the baseline; both in thousandths of an em. ``leads_to``: what one comes to by
    touching them, an address or "#" and the key of a destination; "" where they are words alone.
    """

    face: Face
    size: float
    color: str = "#000000"
    tracking: float = 0.0
    rise: float = 0.0
    leads_to: str = ""


@functools.lru_cache(maxsize=16384)
def width_of(words: str, kind: Type) -> float:
    """Width of words in points."""
    return text_width_mm(words, kind.face, kind.size) / MM_PER_PT + len(words) * kind.tracking * kind.size / 1000


@dataclass(frozen=True, slots=True)
class Word:
    """What stays together on a line: pieces in their types, without a space between; ``space``: the width of the space after it.

    ``penalty``: how unwelcome a break after it is (0: welcome). ``forced``: the line ends here. ``glued``: no space follows.
    """

    pieces: tuple[tuple[str, Type], ...]
    width: float
    space: float
    penalty: float = 0.0
    forced: bool = False
    glued: bool = False


def has_fraction(word: Word) -> bool:
    """Whether a composed fraction is part of it."""
    return any(_COMPOSED.search(text) or "\u2044" in text for text, _ in word.pieces)


_TIE = 40.0        # "3 | dc", "Rnd | 4": better kept together
_WEAK_TIE = 12.0


def _penalty(word: str, following: str) -> float:
    """Breaks that trip a reader up: between a number and what it counts, or after an opening word."""
    if following == "*":
        return _TIE
    if word == "*" and following.isdigit():
        return _TIE / 2  # "rep from * | 2 more times", where it must be
    number, next_number = word.strip("([*,;").isdigit(), following.strip(")],.;*").isdigit()
    if number and following[:1].isalpha():
        return _TIE
    if next_number and word[-1:].isalpha():
        return _TIE
    if next_number and word[-1:] in ")]":
        return _TIE  # "[...] | 3 times"
    return _WEAK_TIE if word.lower() in {"in", "of", "to", "from", "with", "a", "each", "next"} else 0.0


def words_of(spans: Iterable[tuple[str, Type]], limit: float) -> tuple[Word, ...]:
    """The words of a paragraph; neighbouring spans without a space between them stay together. Nothing is wider than ``limit``."""
    words: list[Word] = []
    open_pieces: list[tuple[str, Type]] = []
    last = Type("serif", 10.0)

    def close(forced: bool = False) -> None:
        if open_pieces:
            width = sum(width_of(piece, kind) for piece, kind in open_pieces)
            words.append(Word(tuple(open_pieces), width, width_of(" ", last), forced=forced))
            open_pieces.clear()

    for text, last in spans:
        for part in re.split(r"([ \t\n])", text):
            if part in (" ", "\t", "\n", ""):
                if part:
                    close(part == "\n")
            else:
                open_pieces.extend(_fraction_pieces(part, last))
    close()
    plain = ["".join(piece for piece, _ in word.pieces) for word in words]
    tied = [replace(word, penalty=_penalty(plain[i], plain[i + 1])) for i, word in enumerate(words[:-1])] + words[-1:]
    return tuple(part for word in tied for part in (_cut(word, limit) if word.width > limit else (word,)))


def _fraction_pieces(word: str, kind: Type) -> list[tuple[str, Type]]:
    """A composed fraction's digits moved to stand on the baseline and hang from the height of capitals, as in the fonts' own fractions."""
    if "\u2044" not in word:
        return [(word, kind)]
    pieces: list[tuple[str, Type]] = []
    for part in re.split(r"([⁰¹²³⁴-⁹]+)(?=⁄)|(?<=⁄)([₀-₉]+)", word):
        if not part:
            continue
        heights = glyph_heights(kind.face, part[0]) if part[0] in "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉" else None
        if heights is None:
            pieces.append((part, kind))
        elif "₀" <= part[0] <= "₉":
            pieces.append((part, replace(kind, rise=round(-heights[0]))))
        else:
            pieces.append((part, replace(kind, rise=round(face_metrics(kind.face).cap_height * 1000 - heights[1]))))
    return pieces


def _cut(word: Word, limit: float) -> tuple[Word, ...]:
    """A word wider than the line, cut where it must be: a web address, a name without an end."""
    parts: list[Word] = []
    for text, kind in word.pieces:
        start = 0
        for end in range(1, len(text) + 1):
            if end == len(text) or width_of(text[start : end + 1], kind) > limit:
                parts.append(Word(((text[start:end], kind),), width_of(text[start:end], kind), 0.0, glued=True))
                start = end
    parts[-1] = replace(parts[-1], space=word.space, glued=False, penalty=word.penalty)
    return tuple(parts)
