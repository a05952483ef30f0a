"""In whose words: a set of terms, abbreviated or in full, for one size or for all of them."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import field

from motifold.render.pattern.instructions import Amount, StitchSpec
from motifold.render.words.translate import translated
from motifold.symbols.record import dataclass
from motifold.symbols.terms import Terms, abbreviation, craft_keys, craft_word, full_name, plural_of, word

NBSP = "\N{NO-BREAK SPACE}"

_LONG = {"ch": "chain", "chs": "chains", **{key.lower(): craft_word(key, "US", plain=True) for key in craft_keys("US")}}
_LONG |= {"rnd": "Round", "rnds": "Rounds"}
_SHORT = re.compile(rf"\b(?:{'|'.join(sorted(_LONG, key=len, reverse=True))})\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class WordsLook:
    """How the written pattern should read.

    ``plain``: words instead of abbreviations. ``size``: the one size that is printed, None for all. ``left_handed``: right and left change
    places where a direction is said.
    """

    terms: Terms = "US"
    plain: bool = False
    size: str | None = None
    left_handed: bool = False


@dataclass(frozen=True, slots=True)
class Voice:
    """A look, with the names of the pattern's own stitches; ``size`` is the index of the one size that is printed (None: all).

    ``rows``: the piece is worked in rows, so that its lines are called rows. ``source``: the terms that the file is written in (None: the
    same), for the designer's own sentences. ``other_side``: "working in other side of foundation ch" has been said, so that a chain is one
    of those. ``hand``: the stitch worked last, of which "inc" then is one. ``imperial``: inches before centimetres.
    """

    terms: Terms = "US"
    plain: bool = False
    size: int | None = None
    left_handed: bool = False
    defined: Mapping[str, str] = field(default_factory=dict)
    rows: bool = False
    source: Terms | None = None
    other_side: bool = False
    hand: str | None = None
    imperial: bool = False

    def craft(self, key: str) -> str:
        """A craft word, short or in full: "sps", or "spaces"."""
        return craft_word(key, self.terms, self.plain)

    def term(self, key: str) -> str:
        """A craft word that differs between US and UK: "sk" / "miss", "center" / "centre"; in full where the words are plain."""
        if key == "sk" and self.plain:
            key = "skip"
        if key == "yo" and self.plain:
            key = "yarn over"
        return word(key, self.terms)

    @property
    def the(self) -> str:
        """The article, which only plain words have."""
        return "the " if self.plain else ""

    def number(self, amount: Amount) -> str:
        """"5", or one number for each size: "5 (6, 7)"."""
        if not amount.varies or self.size is not None:
            return str(amount.at(self.size or 0))
        first, *rest = amount.values
        return f"{first}{NBSP}({', '.join(map(str, rest))})"

    def is_one(self, amount: Amount) -> bool:
        """Whether the number is 1 in what is printed, so that its noun is singular and the number need not be said."""
        return self.number(amount) == "1"

    def chains(self, number: int, noun: str = "") -> str:
        """"ch-2 sp", "chain-2 space"; without a noun "ch-2"."""
        stem = f"{'chain' if self.plain else 'ch'}-{number}"
        return f"{stem} {self.craft(noun)}" if noun else stem

    def stitch(self, name: str, plural: bool = False) -> str:
        """A stitch of the trade by its canonical name, or one of the pattern's own by its key."""
        if name in self.defined:
            return plural_of(self.defined[name]) if plural else self.defined[name]
        if name.startswith("beg ") and name[4:] in self.defined:
            return f"{self.craft('beg')} {self.stitch(name[4:], plural)}"
        try:
            return full_name(name, self.terms, plural) if self.plain else abbreviation(name, self.terms, plural)
        except KeyError:
            return plural_of(name) if plural else name

    def one(self, name: str) -> str:
        """A stitch as one of its kind, with the article that only plain words have: "dc", "a double crochet"."""
        return with_article(self.stitch(name)) if self.plain else self.stitch(name)

    def said(self, text: str) -> str:
        """The designer's own words, with stitch names in the chosen terms and, for a left-handed worker, right and left changed."""
        text = translated(text, self.source or self.terms, self.terms)
        return handed(text) if self.left_handed else text

    def spelt_out(self, text: str) -> str:
        """Plain words for the abbreviations of a remark: "working in other side of foundation chain"."""
        return _SHORT.sub(lambda found: _LONG[found.group().lower()], text) if self.plain else text

    def counted(self, number: str, noun: str) -> str:
        """A number and its noun, held together on the line."""
        return f"{number}{NBSP}{noun}"


def canonical_name(spec: StitchSpec) -> str:
    """The canonical name of what a spec works: "dc3tog", "FPdc", "ch-3 picot", "5-dc cl", "inv dec"."""
    if spec.invisible:
        return "inv dec"
    name = spec.name
    if name == "picot" and spec.size is not None:
        name = f"ch-{spec.size} picot"
    elif spec.size is not None and spec.of is not None:
        beginning = "beg " if name.startswith("beg ") else ""
        name = f"{beginning}{spec.size}-{spec.of} {name.removeprefix('beg ')}"
    if spec.beginning and not name.startswith("beg "):
        name = f"beg {name}"
    if spec.post is not None:
        name = ("FP" if spec.post == "front" else "BP") + name
    return f"{name}{spec.together}tog" if spec.together > 1 else name


_DIRECTION = re.compile(r"\b(right|left)\b(?![ -](?:side|handed))", re.IGNORECASE)


def handed(text: str) -> str:
    """Right and left changed; the right side of the work stays the right side.

    >>> handed("from right to left, right side facing")
    'from left to right, right side facing'
    """

    def other(match: re.Match[str]) -> str:
        word = match.group()
        swapped = "left" if word.lower() == "right" else "right"
        return swapped.capitalize() if word[0].isupper() else swapped

    return _DIRECTION.sub(other, text)


def with_article(noun: str) -> str:
    """"a dc", "an sc", "an htr", "an extended dc": by the sound that an abbreviation is spelt out with."""
    first = noun.split()[0]
    spelt_out = len(first) <= 4 and first.lower() == first and not set("aeiou") & set(first)
    vowel = first[0] in "aefhilmnorsx" if spelt_out else first[:1].lower() in "aeiou"
    return f"{'an' if vowel or first.startswith('FP') else 'a'} {noun}"


def ordinal_word(number: int) -> str:
    """"first", "second" ..; "7th" where a word would be clumsy."""
    words = ("first", "second", "third", "fourth", "fifth", "sixth")
    return words[number - 1] if 1 <= number <= len(words) else f"{number}th"


def listed(parts: Sequence[str]) -> str:
    """"a", "a and b", "a, b and c"."""
    return " and ".join(parts) if len(parts) < 3 else f"{', '.join(parts[:-1])} and {parts[-1]}"


def capitalised(text: str) -> str:
    """With a capital at the start of the line, past any mark or bracket; a yarn's key or a number stays as it is."""
    for index, letter in enumerate(text):
        if letter.isalpha():
            return text[:index] + letter.upper() + text[index + 1 :]
        if letter not in "*[({ ":
            return text
    return text
