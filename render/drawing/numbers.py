"""Numbers and words as the writers print them: short, fixed, and the same on every machine."""

from __future__ import annotations

import re

MM_PER_PT = 25.4 / 72  # the PostScript point, 1/72 of the defined inch

# Characters that XML 1.0 (section 2.2, Char) does not allow, and lone surrogates, which no encoding of text allows.
_NOT_TEXT = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def number(value: float, decimals: int = 3) -> str:
    """``value`` with at most ``decimals`` decimals, no trailing zeros and no minus zero.

    >>> number(1.5), number(-0.0001), number(2.0)
    ('1.5', '0', '2')
    """
    words = f"{value:.{decimals}f}".rstrip("0").rstrip(".")
    if words == "-0":
        return "0"
    if words[-1] not in "0123456789":
        raise ValueError(f"{value} has no place on paper")
    return words


def clean_words(words: str) -> str:
    """``words`` without the characters that no XML file may hold."""
    return _NOT_TEXT.sub("", words)
