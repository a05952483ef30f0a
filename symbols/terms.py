"""Names of stitches in a set of terms, read and written. A language is a table: see ``terms_us`` and ``terms_uk``.

Between the tables stands the canonical name, the US abbreviation: whatever the terms of a file, its stitches are the same.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal

from motifold.symbols.stitches import MAX_YARN_OVERS, fold_name, is_named, kind, stitch_name
from motifold.symbols.terms_model import Name, Table
from motifold.symbols.terms_uk import UK
from motifold.symbols.terms_us import US

Terms = Literal["US", "UK"]

_TABLES: dict[str, Table] = {"US": US, "UK": UK}
_COMPACT = re.compile(r"[\s.\-\u2010-\u2013]+")
_LONGEST = 80
_GATHERED = re.compile(r"(\d+)-(.+) (cl|bobble|pc|puff|shell)")
_FOLD_MANY = re.compile(r"(\d+)-?fold(.+)")


@lru_cache(maxsize=4096)
def canonical(words: str, terms: Terms) -> str | None:
    """The canonical US name of a stitch as someone wrote it in ``terms``: short or full, plural, old or variant spelling.

    None when it names no stitch. Words like "inc", "dec" and "st" are no stitches: what they mean depends on the text around them.

    >>> canonical("Half trebles", "UK"), canonical("FP dc", "US"), canonical("tr3tog", "UK"), canonical("frog", "US")
    ('hdc', 'FPdc', 'dc3tog', None)
    """
    if len(words) > _LONGEST:
        return None
    compact = _COMPACT.sub("", words.strip().lower())
    table = _TABLES[terms]
    for spelling in _singulars(compact):
        name = _read(spelling, table, 3)
        if name is not None:
            return name
    return None


def abbreviation(canonical_name: str, terms: Terms, plural: bool = False) -> str:
    """How the stitch is written short: ``abbreviation("dc", "UK")`` is "tr". KeyError for a stitch that the trade does not have."""
    name = _name(canonical_name, terms)
    return name.short_plural if plural else name.short


def full_name(canonical_name: str, terms: Terms, plural: bool = False) -> str:
    """How the stitch is written in full: "double crochet 3 together". KeyError for a stitch that the trade does not have."""
    name = _name(canonical_name, terms)
    return name.full_plural if plural else name.full


def word(key: str, terms: Terms) -> str:
    """A craft word by its US form: ``word("gauge", "UK")`` is "tension". KeyError for a word that is not in the table."""
    return _TABLES[terms].words[key]


def word_keys(terms: Terms) -> tuple[str, ...]:
    """The US forms of the craft words that a table has."""
    return tuple(_TABLES[terms].words)


def craft_word(key: str, terms: Terms, plain: bool = False) -> str:
    """A craft word short or in full: "sps", "spaces". KeyError for one that the table lacks."""
    return _TABLES[terms].craft[key][plain]


def craft_keys(terms: Terms) -> tuple[str, ...]:
    return tuple(_TABLES[terms].craft)


def meaning(abbreviated: str, terms: Terms) -> str | None:
    """What an abbreviation that is no stitch stands for ("rnd": "round"), or None."""
    return _TABLES[terms].meanings.get(abbreviated)


def _singulars(compact: str) -> tuple[str, ...]:
    """The spelling, and what it may be the plural of."""
    return (compact, *(compact.removesuffix(end) for end in ("s", "es") if compact.endswith(end) and len(compact) > len(end)))


@lru_cache(maxsize=8)
def _spellings(label: str) -> dict[str, str]:
    """Every compact spelling of a stitch without a rule of its own, to its canonical name: the folds spelled out, then the table's."""
    table = _TABLES[label]
    found: dict[str, str] = {}
    for prefix, fold in table.fold_spellings.items():
        for treble in table.treble_spellings:
            found[prefix + treble] = stitch_name(fold - 1 + table.first_fold)
    for treble in table.treble_spellings:
        found[treble] = stitch_name(table.first_fold)
    found.update(table.spellings)
    return found


def _read(compact: str, table: Table, depth: int) -> str | None:
    spelled = _spellings(table.label).get(compact)
    if spelled is not None:
        return spelled
    many = _FOLD_MANY.fullmatch(compact)
    if many:
        yarn_overs = int(many.group(1)) - 1 + table.first_fold if len(many.group(1)) < 4 else 0
        return stitch_name(yarn_overs) if many.group(2) in table.treble_spellings and 1 < yarn_overs <= MAX_YARN_OVERS else None
    if depth == 0:
        return None
    for pattern, template in table.readers:
        match = re.fullmatch(pattern, compact)
        if match is None:
            continue
        parts = [part if part.isdigit() else _read_singular(part, table, depth - 1) for part in match.groups()]
        if all(part is not None for part in parts):
            name = template.format("", *parts)
            if is_named(name):
                return name
    return None


def _read_singular(compact: str, table: Table, depth: int) -> str | None:
    return next((name for spelling in _singulars(compact) if (name := _read(spelling, table, depth)) is not None), None)


@lru_cache(maxsize=1024)
def _name(canonical_name: str, terms: str) -> Name:
    """The Name of a stitch in a set of terms, listed or built; KeyError if there is no such stitch."""
    table = _TABLES[terms]
    if canonical_name in table.names:
        return table.names[canonical_name]
    found = kind(canonical_name)
    if found.family == "basic" and found.name == canonical_name and canonical_name == stitch_name(found.yarn_overs):
        return _treble(found.yarn_overs - table.first_fold + 1, table)
    return _built(canonical_name, terms, table)


def _treble(fold: int, table: Table) -> Name:
    base = table.treble
    if fold <= len(table.fold_short):
        short, full = table.fold_short[fold - 1], table.fold_full[fold - 1]
        return Name(short + base.short, short + base.short_plural, full + base.full, full + base.full_plural)
    short, full = table.fold_many_short.format(fold), table.fold_many_full.format(fold)
    return Name(short, short, full, full + "s")


def _built(name: str, terms: str, table: Table) -> Name:
    for prefix in ("beg ", "crossed ", "rev "):
        if name.startswith(prefix):
            return _wrap(table.writers[prefix.strip()], _name(name.removeprefix(prefix), terms))
    gathered = _GATHERED.fullmatch(name)
    if gathered:
        count, stem, closed = gathered.groups()
        inner, outer = _name(stem, terms), _name(closed, terms)
        short, full = table.writers["gathered"]
        return Name(
            short.format(inner.short, n=count, g=outer.short),
            short.format(inner.short, n=count, g=outer.short_plural),
            full.format(inner.full, n=count, g=outer.full),
            full.format(inner.full, n=count, g=outer.full_plural),
        )
    found = kind(name)
    if found.stem == "ch":  # a picot of so many chains
        short, full = (part.format(n=found.chains) for part in table.writers["picot"])
        return Name(short, short + "s", full, full + "s")
    if found.gather == "together":
        inner = _name(name[: name.rindex(f"{found.legs}tog")], terms)
        short, full = table.writers["tog"]
        written = short.format(inner.short, n=found.legs)
        return Name(written, written, full.format(inner.full, n=found.legs), full.format(inner.full, n=found.legs))
    prefix = name[:2] if found.post else name[:1]
    return _wrap(table.writers[prefix], _name(name[len(prefix) :], terms))


def _wrap(writer: tuple[str, str], inner: Name) -> Name:
    short, full = writer
    return Name(short.format(inner.short), short.format(inner.short_plural), full.format(inner.full), full.format(inner.full_plural))


def plural_of(noun: str) -> str:
    """The plural of a stitch's own name: "petals", "V-sts", "bunches", "leaves" for "leaf"."""
    if noun.endswith(("s", "x", "z", "ch", "sh")):
        return noun + "es"
    if noun.endswith(("leaf", "half")):
        return noun[:-1] + "ves"
    if noun.endswith("y") and noun[-2:-1] not in ("a", "e", "i", "o", "u", ""):
        return noun[:-1] + "ies"
    return noun + "s"


__all__ = [
    "Terms", "abbreviation", "canonical", "craft_keys", "craft_word", "fold_name", "full_name", "meaning", "plural_of", "word", "word_keys",
]  # fmt: skip
