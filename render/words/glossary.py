"""Abbreviations that the text uses, and how its special stitches are made."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from motifold.render.pattern.instructions import Chain, Definition, Work
from motifold.render.pattern.model import SpecialStitch
from motifold.render.words.howto import how_to_begin, how_to_make, magic_ring, standing_stitch, stem_of
from motifold.render.words.model import Block, Items, Paragraph, RoundText, Section, Table
from motifold.render.words.printed import Printed
from motifold.render.words.steps import steps_text
from motifold.render.words.used import has_standing, makes_magic_ring, nodes, stitches_used, with_stems
from motifold.render.words.voice import NBSP, Voice, canonical_name, capitalised
from motifold.symbols.terms import abbreviation, full_name, meaning

_CRAFT = (
    "BLO", "FLO", "beg", "dec", "inc", "lp", "pm", "rep", "rnd", "RS", "sk", "sm", "sp", "st", "tch", "tog", "WS", "yo", "yrh", "yoh",
)  # fmt: skip
_SELDOM = ("alt", "approx", "bet", "CC", "cont", "foll", "MC", "patt", "prev", "rem", "tbl")
"""Abbreviations that only a designer's own words, or names of yarns, have."""
_NUMBERED = re.compile(r"(beg )?(?:ch-)?\d+-?\S* (cl|bobble|pc|puff|shell|picot)")
"""A special stitch whose name tells its size: only the word itself is an abbreviation."""
_PLURALS = {"lp": "loop(s)", "rnd": "round(s)", "sp": "space(s)", "st": "stitch(es)"}


def abbreviations_section(printed: Printed, sections: Iterable[Section], said: Iterable[Section] = ()) -> Section | None:
    """Every abbreviation that stands in ``sections``, in the chosen terms, with its full name; None where the words are plain.

    ``said``: sections of the designer's own sentences, where an abbreviation is one only as it is usually written ("Pat" is a person).
    """
    voice = printed.voice
    if voice.plain:
        return None
    rows: dict[str, str] = {}
    words = re.sub(r"\binv decs?\b", "", " ".join(_texts(sections)), flags=re.IGNORECASE)
    for used in with_stems(stitches_used((*printed.texts(), *definitions(printed)))):
        name = _NUMBERED.sub(r"\2", used)
        if name.removeprefix("beg ") in voice.defined:
            continue  # printed by its own name
        try:
            short = abbreviation(name, voice.terms)
            if re.search(rf"(?<![A-Za-z]){re.escape(short)}(?:s|es)?(?![A-Za-z])", words, re.IGNORECASE):
                rows[short] = full_name(name, voice.terms)
        except KeyError:
            continue  # the pattern's own: under special stitches
    sentences = " ".join(_texts(said))
    for key in (*_CRAFT, *_SELDOM):
        written = rf"(?<![A-Za-z0-9]){key}s?(?![A-Za-z])"
        exactly = key.isupper() or key in _SELDOM
        found = re.search(written, words, 0 if exactly else re.IGNORECASE) or re.search(written, sentences)
        long = meaning(key, voice.terms)
        if found and long and long != key and key not in rows:
            plural = key in _PLURALS
            rows[f"{key}(s)" if plural else key] = _PLURALS[key] if plural else long
    rows = {short: long for short, long in rows.items() if short != long}
    if not rows:
        return None
    table = Table(f"In {voice.terms} terms", ("Abbreviation", "Meaning"), tuple(sorted(rows.items(), key=_alphabetical)))
    return Section("abbreviations", "Abbreviations", (table,))


def _alphabetical(row: tuple[str, ...]) -> tuple[str, str]:
    return row[0].lower(), row[0]


def _texts(sections: Iterable[Section]) -> Iterable[str]:
    for section in sections:
        for block in section.blocks:
            yield from _words_of(block)


def _words_of(block: Block) -> tuple[str, ...]:
    if isinstance(block, RoundText):
        return block.label, block.text, block.counts
    if isinstance(block, Paragraph):
        return (block.text,)
    if isinstance(block, Items):
        return block.items
    return (*block.header, block.caption, *(cell for row in block.rows for cell in row))


def definitions(printed: Printed) -> tuple[SpecialStitch, ...]:
    """The pattern's own stitches that its texts use, also those that only another of them uses."""
    own = {stitch.key: stitch for stitch in printed.pattern.stitches}
    used: dict[str, SpecialStitch] = {}
    waiting: list[object] = list(printed.texts())
    while waiting:
        names = stitches_used(waiting)
        waiting = []
        for name in names:
            if name in own and name not in used:
                used[name] = own[name]
                waiting.append(own[name].definition)
    return tuple(stitch for key, stitch in own.items() if key in used)


def special_stitches_section(printed: Printed) -> Section | None:
    """How each special stitch that the text uses is made: the pattern's own first, then those of the trade that need telling."""
    voice = printed.voice
    own = definitions(printed)
    items = [_defined(printed, stitch) for stitch in own]
    texts = (*printed.texts(), *(stitch.definition for stitch in own))
    keys = {stitch.key for stitch in own}
    worked = {canonical_name(node.stitch) for node in nodes(texts) if isinstance(node, Work)}
    increased = dict.fromkeys(node.stitch.name for node in nodes(texts) if isinstance(node, Work) and node.stitch.increase == 2)
    if increased and not voice.plain:
        of = voice.stitch(next(iter(increased)), True) if len(increased) == 1 else f"of the {voice.craft('st')} in hand"
        items.append(f"Inc: Work 2{NBSP}{of} in the same {voice.craft('st')}.")
    by_itself = _only_in_definitions(printed, own)
    for name in stitches_used(texts):
        if name in keys or name in by_itself or (name not in worked and _sized_elsewhere(name, worked)):
            continue  # "24 picots" are the ch-3 picots of the lines
        how = _beginning(printed, name, texts) if name.startswith("beg ") else how_to_make(voice, name)
        if how:
            items.append(f"{_headword(voice.stitch(name))}: {how}")
    if makes_magic_ring(texts):
        items.append(f"Magic ring: {magic_ring(voice)}")
    if has_standing(texts):
        items.append(f"Standing stitch: {standing_stitch(voice)}")
    return Section("special stitches", "Special stitches", (Items(tuple(items)),)) if items else None


def _only_in_definitions(printed: Printed, own: tuple[SpecialStitch, ...]) -> frozenset[str]:
    """What is worked together only in the pattern's own stitches, which say themselves how that is done."""
    inside = {
        canonical_name(step.stitch)
        for stitch in own
        if stitch.definition is not None and _gathered_by_itself(printed.voice, stitch.definition) is not None
        for step in stitch.definition.steps
        if isinstance(step, Work)
    }
    return frozenset(inside - set(stitches_used(printed.texts())))


def _headword(name: str) -> str:
    return name[:1].upper() + name[1:]


def _sized_elsewhere(name: str, worked: Iterable[str]) -> bool:
    """Whether what is only counted by a plain name is worked by one that tells its size."""
    return any(_NUMBERED.sub(r"\2", other) == name for other in worked if other != name)


def _beginning(printed: Printed, name: str, texts: tuple[object, ...]) -> str | None:
    """How a "beg cl" is made: the chain in place of its first stitch, which the lines work themselves or leave to this sentence."""
    rest = name.removeprefix("beg ")
    own = next((stitch.definition for stitch in printed.pattern.stitches if stitch.key == rest), None)
    own_first = next((node.stitch.name for node in nodes(own) if isinstance(node, Work)), None)
    first = stem_of(rest) if own is None else own_first
    return how_to_begin(printed.voice, rest, first, _chained(name, texts))


def _chained(name: str, texts: object) -> bool:
    """Whether a chain is worked before it in every line that begins with one."""
    found = [
        isinstance(before, Chain)
        for line in nodes(texts)
        for steps in (getattr(line, "steps", ()),)
        for before, step in pairwise((None, *steps))
        if isinstance(step, Work) and canonical_name(step.stitch) == name
    ]
    return bool(found) and all(found)


def _gathered_by_itself(voice: Voice, definition: Definition) -> str | None:
    """How "dc5tog in same st" is made, which is a bobble by its construction; None for any other definition."""
    step = definition.steps[0] if len(definition.steps) == 1 else None
    if not isinstance(step, Work) or definition.spread or step.stitch.together < 2 or definition.gather not in (None, "bobble", "cluster"):
        return None
    legs, yo, loops = step.stitch.together, voice.term("yo"), voice.craft("lps")
    stitches = voice.counted(str(legs), voice.stitch(canonical_name(replace(step.stitch, together=1)), True))
    return f"Work {stitches} in the same place, each up to its last {yo}; {yo} and draw through all {legs + 1}{NBSP}{loops} on the hook."


def _defined(printed: Printed, stitch: SpecialStitch) -> str:
    voice = printed.voice
    definition = stitch.definition
    name = stitch.name[:1].upper() + stitch.name[1:]
    if definition is None:
        return f"{name}: {voice.said(stitch.means)}"
    text = steps_text(voice, definition.steps)
    together = _gathered_by_itself(voice, definition)
    if together is not None:
        return f"{name}: {together}"
    if not definition.spread:
        text = f"({text}) in the same place" if len(definition.steps) > 1 else f"{text} in the same place"
    text = capitalised(text)
    gathered = {
        "popcorn": "take the hook out of the loop, insert it in the top of the first of these stitches, and draw the loop through",
        "cluster": f"work each up to its last {voice.term('yo')}, then draw through all loops on the hook at once",
        "bobble": f"work each up to its last {voice.term('yo')}, then draw through all loops on the hook at once",
        "puff": "leave all loops on the hook, then draw through all of them at once",
    }
    return f"{name}: {text}{'; ' + gathered[definition.gather] if definition.gather else ''}."
