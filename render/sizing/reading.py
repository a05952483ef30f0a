"""What the text itself says about sizes: how many rounds it can have, which numbers differ, how tall its rounds are."""

from __future__ import annotations

import re
from collections.abc import Iterator

from motifold.render.pattern.instructions import Amount, Chain, Group, Instructions, Join, Line, Repeat, RepeatRounds, Step, UseYarn, Work
from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.sizing.loops import height_in_widths

_INCHES = re.compile(r"""(?:\d|[½⅓⅔¼¾⅛⅜⅝⅞])\s*(?:in(?:ch(?:es)?)?\b|ft\b|yd\b|["″])""")
_MEASURES = (("size", "bodies"), ("gauge", "width"), ("gauge", "height"), ("gauge", "points"))
"""Where a pattern's lengths stand: what is printed has its units in the same order."""


def in_inches(pattern: Pattern) -> bool:
    """Whether the pattern writes most of its lengths in inches: then they are printed first."""
    lines = pattern.source.splitlines()
    found = {True: 0, False: 0}
    for path, span in pattern.places.items():
        if path[:2] in _MEASURES and 1 <= span.line <= len(lines):
            text = lines[span.line - 1][span.column - 1 : span.column - 1 + span.length]
            inches, metric = bool(_INCHES.search(text)), bool(re.search(r"\d\s*(?:mm|cm|m)\b", text))
            if inches != metric:
                found[inches] += 1
    return found[True] > found[False]


def grows(motif: MotifSource) -> bool:
    """Whether the text can be worked for any number of rounds ("Rnd 4 and following")."""
    return any(line.label.following for line in motif.instructions.lines)


def last_labelled(motif: MotifSource) -> int:
    """The highest round or row number of the text; 0 where it has none."""
    return max((line.label.last or line.label.first or 0 for line in motif.instructions.lines), default=0)


def ends_by_measure(motif: MotifSource) -> bool:
    """Whether rounds are repeated "until piece measures ...": then the gauge decides how many there are."""
    return any(isinstance(step, RepeatRounds) and step.until_cm is not None for line in motif.instructions.lines for step in line.steps)


def sized_motif(pattern: Pattern) -> MotifSource | None:
    """The motif that the sizes are about: named by the size, else by the gauge or the assembly, else the only one.

    Of several that nothing names, the first that grows.
    """
    named = (
        pattern.size.motif if pattern.size else None,
        pattern.gauge.motif if pattern.gauge else None,
        pattern.assembly.motif if pattern.assembly else None,
    )
    by_name = {motif.name: motif for motif in pattern.motifs}
    for name in named:
        if name in by_name:
            return by_name[name]
    growing = [motif for motif in pattern.motifs if grows(motif)]
    return next(iter((*growing, *pattern.motifs)), None)


def amounts(node: object) -> Iterator[Amount]:
    """Every number of a tree of instructions, in reading order."""
    if isinstance(node, Amount):
        yield node
    elif isinstance(node, tuple):
        for part in node:
            yield from amounts(part)
    else:
        for name in getattr(node, "__dataclass_fields__", ()):
            yield from amounts(getattr(node, name))


def numbers_in_brackets(pattern: Pattern) -> int:
    """How many sizes the text writes numbers for, "80 (90, 100)": 3; 1 where no number differs."""
    texts: list[Instructions] = [m.instructions for m in pattern.motifs] + [e.instructions for e in pattern.edgings]
    return max((len(a.values) for text in texts for a in amounts(text)), default=1)


def yarns_named(pattern: Pattern) -> tuple[str, ...]:
    """The yarns that any text changes to or works with by name."""
    texts: list[Instructions] = [m.instructions for m in pattern.motifs] + [e.instructions for e in pattern.edgings]
    steps = [step for text in texts for line in text.lines for step in _all(line.steps)]
    return tuple(dict.fromkeys(step.yarn for step in steps if isinstance(step, UseYarn) and step.yarn is not None))


def _all(steps: tuple[Step, ...]) -> Iterator[Step]:
    for step in steps:
        yield step
        if isinstance(step, Group | Repeat | Join):
            yield from _all(step.steps)


def varies(motif: MotifSource) -> bool:
    return any(amount.varies for amount in amounts(motif.instructions))


def tallest(line: Line) -> tuple[str, float] | None:
    """The tallest stitch that a line works, and its height in stitch widths; None for a line without stitches."""
    found = [(height_in_widths(name), name) for name in _stitches(line.steps)]
    if not found:
        return None
    height, name = max(found)
    return (name, height) if height > 0 else None


def _stitches(steps: tuple[Step, ...]) -> Iterator[str]:
    for step in steps:
        if isinstance(step, Work):
            yield step.stitch.of or step.stitch.name
        elif isinstance(step, Chain):
            yield from step.counts_as.stitches if step.counts_as else ()
        elif isinstance(step, Group | Repeat | Join):
            yield from _stitches(step.steps)


def mean_height(motif: MotifSource) -> float | None:
    """Mean height of the text's rounds, each as tall as its tallest stitch, in stitch widths; None where no round has a stitch."""
    heights = [found[1] for line in motif.instructions.lines if line.label.kind in ("rnd", "row") and (found := tallest(line))]
    return sum(heights) / len(heights) if heights else None


def last_stitch(motif: MotifSource) -> tuple[str, float] | None:
    """The tallest stitch of the last round that has one, and its height in stitch widths."""
    lines = [line for line in motif.instructions.lines if line.label.kind in ("rnd", "row")]
    return next((found for line in reversed(lines) if (found := tallest(line))), None)


def stated_stitches(motif: MotifSource) -> Amount | None:
    """The stitches of the last round that states them, or of the foundation: what a piece that varies by its brackets is wide."""
    lines = motif.instructions.lines
    for line in reversed(lines):
        claims = [c for c in line.counts if c.target.kind in ("st", "stitch")]
        whole = [c for c in claims if c.target.kind == "st"] or claims
        if whole and any(c.amount.varies for c in whole):
            sizes = max(len(c.amount.values) for c in whole)
            return Amount(tuple(sum(c.amount.at(i) for c in whole) for i in range(sizes)))
    for line in lines:
        if line.label.kind in ("chain", "foundation", "ring"):
            for step in line.steps:
                if isinstance(step, Chain | Work) and step.count.varies:
                    return step.count
    return None
