"""A set of terms is one table: how each stitch is called, written short and in full, and the craft words that differ."""

from __future__ import annotations

from collections.abc import Mapping

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Name:
    """A stitch's abbreviation and full name, singular and plural. An abbreviation that has no plural repeats itself: "3 dc"."""

    short: str
    short_plural: str
    full: str
    full_plural: str


@dataclass(frozen=True, slots=True)
class Table:
    """One set of terms.

    ``names``: by canonical US name, those that no rule gives. ``fold_short`` and ``fold_full``: prefix of the k-fold treble, k from 1;
    beyond the last the number itself is said (``fold_many_short``, ``fold_many_full``, with {0} for k). ``first_fold``: yarn overs of the
    1-fold treble (US 2, UK 1). ``treble``: its Name. ``spellings``: other spellings, compact (lower case, no spaces, hyphens or stops),
    to canonical name. ``fold_spellings``: other prefixes of the k-fold treble. ``readers``: patterns on a compact spelling to the canonical
    template, "{1}" a stitch read in the same terms, "{2}" a number kept. ``writers``: canonical form to (short, full) templates.
    ``words``: the craft words that differ; ``craft``: those that are short or in full, as (short, full); ``meanings``: what other
    abbreviations stand for.
    """

    label: str
    names: Mapping[str, Name]
    treble: Name
    first_fold: int
    fold_short: tuple[str, ...]
    fold_full: tuple[str, ...]
    fold_many_short: str
    fold_many_full: str
    fold_spellings: Mapping[str, int]
    treble_spellings: tuple[str, ...]
    spellings: Mapping[str, str]
    readers: tuple[tuple[str, str], ...]
    writers: Mapping[str, tuple[str, str]]
    words: Mapping[str, str]
    craft: Mapping[str, tuple[str, str]]
    meanings: Mapping[str, str]
