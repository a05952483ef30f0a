"""The nearest thing that can be read, for a word that cannot; worked out only when a problem is said."""

from __future__ import annotations

from functools import lru_cache

from motifold.render.pattern.notation.context import NotationContext
from motifold.render.pattern.notation.lexicon import Lexeme
from motifold.render.pattern.notation.phrases import PHRASES
from motifold.render.pattern.spelling import nearest
from motifold.symbols.terms import Terms, abbreviation, full_name

_STITCHES = (
    "sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr", "picot", "cl", "bobble", "pc", "puff", "shell", "V-st",
    "esc", "ehdc", "edc", "fsc", "fhdc", "fdc", "sc2tog", "hdc2tog", "dc2tog", "dc3tog", "tr2tog", "FPsc", "BPsc", "FPhdc",
    "BPhdc", "FPdc", "BPdc", "FPtr", "BPtr", "inv dec",
)  # fmt: skip


def is_known(lexeme: Lexeme) -> bool:
    """Whether the reader knows the word, though not at this place."""
    return lexeme.kind == "word" and lexeme.raw in PHRASES


def unexplained(lexeme: Lexeme) -> tuple[str, str]:
    """Message and hint for "petal", "fan", "leaf" worked as a stitch: as a place they are a group, as a stitch the file must say what."""
    name = {"leaves": "leaf"}.get(lexeme.raw, lexeme.raw.removesuffix("s"))
    return (
        f'"{lexeme.raw}" is worked as a stitch, but the file does not say what it is',
        f'explain it: [stitch.{name}] means = "(sc, 3 dc, sc) in same st"',
    )


def suggestion(lexeme: Lexeme, context: NotationContext) -> str | None:
    """A hint that names the nearest word, or None where none comes near."""
    if not lexeme.raw[:1].isalpha() or len(lexeme.raw) > _LONGEST:
        return None
    return _suggestion(lexeme.raw, context.terms, tuple(sorted({*context.defined, *context.defined.values()})))


_LONGEST = 30


@lru_cache(maxsize=256)
def _suggestion(word: str, terms: Terms, own: tuple[str, ...]) -> str | None:
    """What is misspelt is a stitch more often than any other word, and the pattern's own stitch more often than any."""
    if word in PHRASES:
        return None
    stitches = (*own, *(f"{name}s" for name in own if not name.endswith("s")), *_stitches(terms))
    guess = nearest(word, _others(terms), [name for name in stitches if name != word])
    return f'did you mean "{guess}"?' if guess else None


@lru_cache(maxsize=2)
def _stitches(terms: Terms) -> tuple[str, ...]:
    """The commoner stitches in these terms, the commonest first; and the words that are worked as they are."""
    return tuple(dict.fromkeys([*(abbreviation(name, terms) for name in _STITCHES), "inc", "dec"]))


@lru_cache(maxsize=2)
def _others(terms: Terms) -> tuple[str, ...]:
    """What else can be read: the trade's phrases, and names of stitches in full."""
    known = {spelling for spelling in PHRASES if len(spelling) > 1}
    for name in _STITCHES:
        full = full_name(name, terms)
        known.update((full, full_name(name, terms, plural=True), *(word for word in full.split() if len(word) > 4)))
    return tuple(sorted(known))
