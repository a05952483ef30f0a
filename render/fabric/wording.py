"""How things are called in a problem: in the terms that the file was written in."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.bench import Lap, Terms
from motifold.render.pattern.instructions import Group, Place, StitchSpec, Target, Work
from motifold.render.pattern.problem import Span
from motifold.symbols.stitches import kind as kind_of
from motifold.symbols.terms import abbreviation, plural_of


def stitch_word(kind: str, terms: Terms, amount: int = 1) -> str:
    """A stitch's abbreviation, or the name of a pattern's own stitch; plural where there are several."""
    try:
        return abbreviation(kind, terms, plural=amount != 1)
    except KeyError:
        return kind if amount == 1 else plural_of(kind)


def target_word(target: Target, terms: Terms, amount: int = 1) -> str:
    """What a place names: "ch-2 sps", "dc", "sts"."""
    many = "" if amount == 1 else "s"
    corner = "corner " if target.corner else ""
    if target.kind == "stitch":
        length = f"ch-{target.chains} " if target.name == "picot" and target.chains is not None else ""
        return corner + length + stitch_word(target.name or "st", terms, amount)
    if target.kind == "sp":
        word = "lp" if target.loop else "sp"
        return f"{corner}ch-{target.chains} {word}{many}" if target.chains is not None else f"{corner}{word}{many}"
    if target.kind == "group":
        return f"{corner}group{many}"
    if target.kind in ("ch", "foundation"):
        return "ch"
    if target.kind == "corner":
        return f"corner{many}"
    if target.kind == "row end":
        return f"row end{many}"
    if target.kind == "between":
        name = target.name or "group"
        return f"gap{many} between {f'{name}s' if name in ('group', 'st') else stitch_word(name, terms, 2)}"
    return f"{corner}st{many}"


def counted_word(key: str, amount: int, terms: Terms) -> str:
    """A key of ``Round.counts`` with its number: "36 dc", "1 ch-2 sp"."""
    if key.startswith("ch-") and key.endswith(" sp"):
        return f"{amount} {key}" + ("" if amount == 1 else "s")
    return f"{amount} {stitch_word(key, terms, amount)}"


def listed(parts: Sequence[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    if len(parts) < 2:
        return "".join(parts)
    return ", ".join(parts[:-1]) + " and " + parts[-1]


def round_word(lap: Lap) -> str:
    """What a round is called: "Rnd 3", "the ring", "the edge"."""
    if lap.number is not None:
        return lap.label
    return {"ring": "the ring", "foundation": "the foundation", "edge": "the edge", "finish": "the finish"}.get(lap.kind, "the start")


def key_of(span: Span) -> int:
    """One number for a place in the file, to tell a problem once."""
    return span.line * 10_000 + span.column + 1


def label_span(span: Span, label: str) -> Span:
    """The label at the beginning of a line, of which all is too long to underline."""
    return Span(span.line, span.column, min(span.length, len(label)))


def height_in_chains(kind: str) -> int:
    """How many chains stand for a stitch at the beginning: sl st 0, sc 1, hdc 2, dc 3, tr 4 and one for each yarn over more."""
    try:
        found = kind_of(kind)
    except KeyError:
        return 0
    if found.stem in ("ch", "sl st"):
        return 0
    if found.yarn_overs == 0:
        return 1
    return 2 if found.half else found.yarn_overs + 2


def spec_words(spec: StitchSpec, terms: Terms) -> str:
    """What a stitch is called in the text: "inc", "dc3tog"."""
    if spec.increase > 1:
        return "inc"
    post = {"front": "FP", "back": "BP", None: ""}[spec.post]
    name = f"{spec.name}{spec.together}tog" if spec.together > 1 else spec.name
    return stitch_word(post + name, terms)


_ORDINALS = {1: "1st", 2: "2nd", 3: "3rd"}


def ordinal(number: int) -> str:
    """``1st``, ``2nd``, ``4th``."""
    return _ORDINALS.get(number, f"{number}th")


_WHICH = {
    "next": "next ", "same": "same ", "last": "last ", "first": "first ", "each": "each ", "beg": "beg ", "current": "",
    "center": "center ",
    "top": "top ", "any": "any ",
}  # fmt: skip


def _which(place: Place, terms: Terms) -> str:
    return "centre " if place.which == "center" and terms == "UK" else _WHICH.get(place.which, "")


def skip_word(terms: Terms) -> str:
    """What passing a stitch is called: "sk", in UK terms "miss"."""
    return "miss" if terms == "UK" else "sk"


def place_words(place: Place, terms: Terms, size: int) -> str:
    """A place without its preposition: "next 3 sts", "beg sp"."""
    count = place.count.at(size)
    if place.target.kind == "ring":
        return "ring"
    number = f"{count} " if count > 1 else ""
    if place.target.kind == "between":
        name = place.target.name or "group"
        return (
            f"sp between {_which(place, terms)}{number}{f'{name}s' if name in ('group', 'st') else stitch_word(name, terms, count)}"
        )
    if place.target.kind in ("tch", "missed"):
        return "tch"
    if place.of is not None:
        part = ordinal(place.ordinal or 0) + " " if place.which == "nth" else _which(place, terms)
        inner = target_word(place.target, terms)
        return (
            f"{part}of {place_words(place.of, terms, size)}"
            if place.which == "top"
            else f"{part}{inner} of {place_words(place.of, terms, size)}"
        )
    if place.which == "nth":
        far = " from hook" if place.from_hook else ""
        return f"{ordinal(place.ordinal or 0)} {target_word(place.target, terms)}{far}"
    if place.which == "beg" and place.target.kind == "ch":
        return f"beg ch-{place.target.chains}" if place.target.chains else "beg ch"
    return f"{_which(place, terms)}{number}{target_word(place.target, terms, count)}"


def into(place: Place, terms: Terms, size: int) -> str:
    """A place with its preposition: "in next 3 sts", "around next dc"."""
    return f"{'around' if place.manner == 'around' else 'in'} {place_words(place, terms, size)}"


def step_words(step: Work | Group, terms: Terms, size: int) -> str:
    """A step about as its line says it: "3 dc in beg sp"."""
    if isinstance(step, Group):
        return f"( ... ) {into(step.place, terms, size)}"
    count = step.count.at(size)
    word = spec_words(step.stitch, terms)
    many = f"{count} {stitch_word(word, terms, count) if word == step.stitch.name else word}" if count > 1 else word
    return many if step.place is None else f"{many} {into(step.place, terms, size)}"
