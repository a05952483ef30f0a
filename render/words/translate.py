"""Stitch names in the designer's own sentences, from the terms of the file into those that are printed."""

from __future__ import annotations

import re
from functools import lru_cache

from motifold.symbols.terms import Terms, abbreviation, canonical, full_name, word, word_keys

_WORD = re.compile(r"[A-Za-z][A-Za-z0-9-]*|\d+")
_LONGEST = 4
@lru_cache(maxsize=2)
def _craft(source: Terms, to: Terms) -> dict[str, str]:
    """The craft words that differ, from one set of terms to the other; "sl st" is a stitch and translated as one."""
    pairs = ((word(key, source), word(key, to)) for key in word_keys(source) if key not in ("sl st", "terms"))
    found: dict[str, str] = {}
    for before, after in pairs:
        if before != after:
            found.setdefault(before, after)
    return found


def translated(text: str, source: Terms, to: Terms) -> str:
    """``text`` with the stitch names and craft words that differ between the two sets of terms.

    >>> translated("The dc of Rnd 2 lean to the left; skip none.", "US", "UK")
    'The tr of Rnd 2 lean to the left; miss none.'
    """
    if source == to:
        return text
    words = list(_WORD.finditer(text))
    out, end, index = [], 0, 0
    while index < len(words):
        found, used = _longest(text, words, index, source, to)
        start = words[index].start()
        out.append(text[end:start])
        end = words[index + used - 1].end()
        out.append(text[start:end] if found is None else found)
        index += used
    return "".join(out) + text[end:]


def _longest(text: str, words: list[re.Match[str]], index: int, source: Terms, to: Terms) -> tuple[str | None, int]:
    """The translation of the longest name that begins here, and how many words it takes; None and 1 where there is none."""
    for used in range(min(_LONGEST, len(words) - index), 0, -1):
        phrase = text[words[index].start() : words[index + used - 1].end()]
        if any(mark not in " \u00a0-" and not mark.isalnum() for mark in phrase):
            continue
        found = _name(" ".join(phrase.split()), source, to)
        if found is not None:
            return found, used
    return None, 1


@lru_cache(maxsize=2048)
def _name(phrase: str, source: Terms, to: Terms) -> str | None:
    lower = phrase.lower()
    craft = _craft(source, to).get(lower)
    if craft is not None:
        return _cased(phrase, craft)
    name = canonical(phrase, source)
    if name is None:
        return None
    for plural in (False, True):
        if lower == abbreviation(name, source, plural).lower():
            return _cased(phrase, abbreviation(name, to, plural))
        if lower == full_name(name, source, plural).lower() or (plural and lower == f"{full_name(name, source).lower()}s"):
            return _cased(phrase, full_name(name, to, plural))
    if lower in ("treble", "trebles") and source == "US":
        return _cased(phrase, full_name(name, to, lower.endswith("s")))
    return None


def _cased(phrase: str, word: str) -> str:
    return word[:1].upper() + word[1:] if phrase[:1].isupper() and phrase[1:2].islower() else word
