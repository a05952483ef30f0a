"""Cuts a text into words, numbers, marks and brackets, each with its place. Nothing is understood yet.

What differs only in typing is made one here: curly quotes, dashes, no-break spaces, capitals, ``ch2-sp`` and ``ch 2 sp``,
``3x`` and ``3 ×``.
"""

from __future__ import annotations

import re
from typing import Literal, NamedTuple

TokenKind = Literal["word", "num", "ord", "measure", "sep", "colon", "equals", "dash", "mark", "open", "close", "brace", "odd"]

LARGEST = 100_000
"""No motif has more stitches in a line; a longer number is a slip of the finger."""


class Token(NamedTuple):
    """``text`` is lower case. ``first``: the first on its line of the text. ``tight``: nothing but a hyphen stands before it."""

    kind: TokenKind
    text: str
    start: int
    end: int
    number: int = 0
    first: bool = False
    tight: bool = False


_ONE_FOR_ONE = str.maketrans({
    "‘": "'", "’": "'", "ʼ": "'", "′": "'", "“": '"', "”": '"', "″": '"',
    "∗": "*", "⁎": "*", "✱": "*", "★": "*", "☆": "*", "‐": "-", "‑": "-", "−": "-", "–": "-", "［": "[", "］": "]",
})  # fmt: skip

_TOKEN = re.compile(
    r"""
    (?P<comment>\#[^\n]*)
  | (?P<newline>\n)
  | (?P<space>[^\S\n]+)
  | (?P<brace>\{[^{}]*\})
  | (?P<measure>\d{1,9}(?:\.\d{1,9})?\s?(?:cm|mm|inches|inch|in\.(?=\s*[A-Z(\n]|\s*$)|")(?![^\W\d_]))
  | (?P<ord>\d{1,9})(?:st|nd|rd|th)(?![^\W_])
  | (?P<num>\d+)
  | (?P<odd_fraction>[¼½¾⅓⅔⅛⅜⅝⅞])
  | (?P<word>[^\W\d_¼½¾⅓⅔⅛⅜⅝⅞]+(?:'[^\W\d_]+)*)(?:\(e?s\))?
  | (?P<mark>\*+|[†‡§]+)
  | (?P<times>[×✕✖])
  | (?P<dash>-{2,}|—|-)
  | (?P<sep>[,;.…])
  | (?P<colon>:)
  | (?P<equals>=)
  | (?P<and>[&+])
  | (?P<open>[(\[])
  | (?P<close>[)\]])
  | (?P<odd>.)
    """,
    re.VERBOSE | re.IGNORECASE,
)

_RUN_TOGETHER = frozenset({"chsp", "chsps", "chlp", "chlps"})

_NEVER_ENDS_A_SENTENCE = frozenset({"sl", "beg", "prev", "foll", "approx", "rep", "rnd", "rnds", "rem", "cont", "alt", "no"})
_NEVER_BEGINS_ONE = frozenset({"in", "into", "of", "from", "to", "tog", "times", "around"})


def tokenize(text: str) -> list[Token]:
    """The tokens of a text in order. Comments and spaces are left out; characters that say nothing are kind "odd"."""
    plain = text.translate(_ONE_FOR_ONE)
    tokens: list[Token] = []
    first, last_end, hyphen = True, -1, False
    for match in _TOKEN.finditer(plain):
        kind = match.lastgroup
        start, end = match.span()
        if kind in ("space", "comment"):
            hyphen = False
            continue
        if kind == "newline":
            first, hyphen = True, False
            continue
        if kind == "dash" and _is_hyphen(plain, start, end):
            hyphen = True
            continue
        tight = hyphen or start == last_end
        if kind == "word":
            word = match["word"].lower()
            if word in _RUN_TOGETHER:
                tokens.append(Token("word", "ch", start, start + 2, 0, first, tight))
                word, start, first, tight = word[2:], start + 2, False, True
            tokens.append(Token("word", word, start, end, 0, first, tight))
        else:
            tokens.append(_token(kind or "odd", match, start, end, first, tight))
        first, hyphen, last_end = False, False, end
    return _without_stops_of_abbreviations(_stars_as_times(tokens))


def _is_hyphen(plain: str, start: int, end: int) -> bool:
    """A single dash with a letter or figure close on both sides joins words; any other dash parts them."""
    return (
        end - start == 1 and plain[start] == "-" and start > 0 and end < len(plain) and plain[start - 1].isalnum() and plain[end].isalnum()
    )


_SIGNS: dict[str, TokenKind] = {
    "sep": "sep", "measure": "measure", "colon": "colon", "equals": "equals", "mark": "mark", "open": "open", "close": "close",
    "brace": "brace", "odd": "odd", "odd_fraction": "odd", "dash": "dash", "times": "word", "and": "word",
}  # fmt: skip
_ONE_SPELLING = {"times": "x", "and": "and", "dash": "--"}


def _token(kind: str, match: re.Match[str], start: int, end: int, first: bool, tight: bool) -> Token:
    raw = match[kind]
    if kind == "num" or kind == "ord":
        return Token("num" if kind == "num" else "ord", raw, start, end, int(raw) if len(raw) < 10 else LARGEST + 1, first, tight)
    if kind == "sep" and raw == "…":
        raw = "."
    text = _ONE_SPELLING.get(kind) or (raw.lower() if kind == "measure" else raw)
    return Token(_SIGNS[kind], text, start, end, 0, first, tight)


_GOES_ON = ("word", "num", "ord", "mark", "measure")
_BEFORE_TIMES = frozenset({"inc", "dec", "invdec", "increase", "decrease"})


def _stars_as_times(tokens: list[Token]) -> list[Token]:
    """The star of "(sc, inc) * 6" and "inc *6" is a times sign: a bracket or an increase stands before it, and after its number nothing
    that is worked.
    """
    last = len(tokens) - 1
    for index, token in enumerate(tokens):
        if token.kind != "mark" or token.text != "*" or not 0 < index < last or tokens[index + 1].kind != "num":
            continue
        before, after = tokens[index - 1], tokens[index + 2] if index + 2 <= last else None
        ends = after is None or after.first or after.kind not in _GOES_ON or after.text in ("times", "time")
        multiplies = before.kind == "close" or (before.text in _BEFORE_TIMES and not _closes_a_star(tokens, index))
        if ends and not token.first and multiplies:
            tokens[index] = token._replace(kind="word", text="x")
    return tokens


_FARTHEST = 60
"""How many words before and after a star are looked at: more than stand in one repeat."""


def _closes_a_star(tokens: list[Token], index: int) -> bool:
    """Whether a star opens before this one in the line, and no "rep" that could end it stands there: "*2 sc, inc* 4 times"."""
    nearest, farthest = max(index - _FARTHEST, 0), min(index + _FARTHEST, len(tokens))
    start = next((at for at in range(index, nearest, -1) if tokens[at].first), nearest)
    end = next((at for at in range(index + 1, farthest) if tokens[at].first), farthest)
    stars = sum(token.kind == "mark" and token.text == "*" for token in tokens[start:index])
    return stars % 2 == 1 and not any(token.text in ("rep", "repeat") for token in tokens[start:end])


def _without_stops_of_abbreviations(tokens: list[Token]) -> list[Token]:
    """Drops the full stop of "sl. st" and of "2 sts. in": it ends no sentence."""
    kept: list[Token] = []
    for index, token in enumerate(tokens):
        if token.text == "." and token.kind == "sep" and token.tight and kept and kept[-1].kind == "word" and index + 1 < len(tokens):
            after = tokens[index + 1]
            if not after.first and after.kind == "word" and after.text in _NEVER_BEGINS_ONE:
                continue
            if not after.first and kept[-1].text in _NEVER_ENDS_A_SENTENCE and after.kind in ("word", "num", "mark"):
                continue
        kept.append(token)
    return kept
