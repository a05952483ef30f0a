"""How the panels are joined, step by step: the same steps, in the same order and with the same numbers, as the drawings show."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import groupby
from typing import Literal

from motifold.render.assembly.model import Assembly, PassStep
from motifold.render.assembly.sewing import joins_as_it_goes
from motifold.render.assembly.steps import AssemblyStep, assembly_steps
from motifold.render.pattern.instructions import Amount
from motifold.render.pattern.model import SidePiece
from motifold.render.words.counts import number_text
from motifold.render.words.joining import joining_manner, joining_step
from motifold.render.words.model import Block, Items, Paragraph, Section
from motifold.render.words.printed import Printed, motif_words
from motifold.render.words.voice import NBSP, Voice, listed, ordinal_word
from motifold.symbols.terms import canonical

MOST_OF = 12  # "5 of every 12" can still be counted while working

_CROCHETED = ("sl st", "sc", "hdc", "dc", "tr")


def assembly_section(told: Printed) -> Section | None:
    """What to make, how the seams are worked, and the steps in their order; None where nothing is assembled."""
    nets: dict[tuple[object, ...], list[tuple[str, Assembly]]] = {}
    for size in told.sizes:
        if size.assembly is not None and size.assembly.panels:
            nets.setdefault(_net_of(size.assembly), []).append((size.choice.name, size.assembly))
    blocks: list[Block] = []
    for sizes in nets.values():
        if len(nets) > 1:
            blocks.append(Paragraph(f"For {listed([name for name, _ in sizes])}:"))
        blocks += _joined(told, [assembly for _, assembly in sizes])
    return Section("assembly", "Assembly", tuple(blocks)) if blocks else None


def _net_of(assembly: Assembly) -> tuple[object, ...]:
    """What sizes must have in common to be put together by the same words: their panels and seams."""
    panels = tuple((panel.name, panel.motif) for panel in assembly.panels)
    return panels, tuple((seam.a, seam.b, seam.twist) for seam in assembly.seams)


def _joined(told: Printed, assemblies: list[Assembly]) -> list[Block]:
    """The steps of sizes that are put together alike."""
    assembly = assemblies[0]
    blocks: list[Block] = [Paragraph(text) for text in (_made(told, assembly), _manner(told, assembly)) if text]
    steps = tuple(_step(told, assemblies, index) for index in range(len(assembly_steps(assembly))))
    if steps:
        blocks.append(Items(steps, numbered=True))
    if assembly.copies > 1:
        blocks.append(Paragraph(f"Make {assembly.copies} in this way."))
    return blocks


def _made(told: Printed, assembly: Assembly) -> str:
    made = []
    for motif in told.pattern.motifs:
        number = sum(panel.motif == motif.name for panel in assembly.panels)
        if number:
            made.append(motif_words(motif.name, number, alone=len(told.pattern.motifs) == 1))
    return f"You need {listed(made)}." if made else ""


def _manner(told: Printed, assembly: Assembly) -> str:
    """How all seams are worked, said once."""
    if joins_as_it_goes(assembly.method):
        return joining_manner(told, assembly)
    if not assembly.passes:
        return ""
    yarn = f" with {_yarn(assembly)}" if assembly.yarn else ""
    method = method_text(told.voice, assembly.method)
    if _crocheted(assembly):
        each = "one for each stitch and each chain of the sides, and one across each meeting of panels"
        text = f"Join the sides in {method}{yarn}, {each}."
    else:
        text = f"Sew the sides together in {method}{yarn}."
    if all(step.pass_number is None for step in assembly_steps(assembly)):
        return text
    return f"{text} A pass is one length of yarn, from where it is attached to where it is fastened off; the drawings number the passes."


def method_text(voice: Voice, method: str) -> str:
    """A seam's stitch in full: "single crochet" is UK double crochet; other stitches have one name."""
    stitch = canonical(method, "US")
    return Voice(voice.terms, plain=True).stitch(stitch) if stitch in _CROCHETED else method


def _crocheted(assembly: Assembly) -> bool:
    """Whether the seams are worked with the hook, so that their stitches can be counted off the sides."""
    return canonical(assembly.method, "US") in _CROCHETED


def _yarn(assembly: Assembly) -> str:
    """The yarn of the seams by its key; "yarn A" where a panel has that name too."""
    if assembly.yarn is None:
        return "the yarn"
    return f"yarn{NBSP}{assembly.yarn}" if any(panel.name == assembly.yarn for panel in assembly.panels) else assembly.yarn


def _step(told: Printed, assemblies: list[Assembly], index: int) -> str:
    """One step; numbers of stitches for every printed size."""
    voice = told.voice
    steps = [found[index] for assembly in assemblies if len(found := assembly_steps(assembly)) > index]
    step, assembly = steps[0], assemblies[0]
    numbers = tuple(s.stitches for s in steps)
    stitches = number_text(Amount(numbers if len(set(numbers)) > 1 else numbers[:1]))
    counted = f"({stitches}{NBSP}{voice.craft('st' if stitches == '1' else 'sts')})"
    match step.kind:
        case "seam" | "fold":
            return _seam_step(voice, assemblies, step, counted)
        case "gap":
            return f"Close the gap where {listed(step.panels)} meet: run a yarn end through their corners, draw it up and fasten it."
        case "motif":
            return joining_step(told, assembly, step)
        case "fold flat":
            text = voice.said(step.text or "")
            return text[:1].upper() + text[1:] + ("" if text.endswith(".") else ".")


def _seam_step(voice: Voice, assemblies: Sequence[Assembly], step: AssemblyStep, counted: str) -> str:
    assembly = assemblies[0]
    parts = []
    if step.attach:
        at = f" at {_corner(step.start[0])}" if step.start else ""
        parts.append(f"attach {_yarn(assembly)}{at}")
    for manner, seams in groupby(step.steps, lambda one: _how(assembly, one)):
        parts += _sewn(voice, assemblies, manner, list(seams))
    text = ", ".join(parts[:-1]) + (", then " if len(parts) > 1 else "") + parts[-1]
    text = f"{text} {counted}"
    if step.closed:
        text += ", back to where you began"
    if step.fasten_off:
        text += "; fasten off"
    if step.pass_number is None:
        return text[:1].upper() + text[1:] + "."
    return f"Pass{NBSP}{step.pass_number}{'' if step.attach else ', continued'}: {text}."


def _how(assembly: Assembly, one: PassStep) -> Literal["itself", "fold", "flat"]:
    seam = assembly.seams[one.seam]
    return "itself" if seam.b is None else "fold" if seam.kind == "fold" else "flat"


def _sewn(voice: Voice, assemblies: Sequence[Assembly], manner: str, steps: Sequence[PassStep]) -> list[str]:
    """Seams that are sewn alike, one after another: what is done is said once, "join a to b", "c to d"."""
    assembly = assemblies[0]
    verb = "join" if _crocheted(assembly) else "sew"  # a crocheted seam joins two sides, a needle sews them
    told = []
    for one in steps:
        seam, eased = assembly.seams[one.seam], _eased(voice, assemblies, one.seam)
        twist = ", with a twist," if seam.twist else ""
        if seam.b is None:
            told.append(f"fold {side_words(seam.a)} in half and {verb} it to itself")
        elif manner == "fold" and len(steps) == 1:
            told.append(f"bring together{twist} {side_words(seam.a)} and {side_words(seam.b)}{eased} and {verb} them")
        else:
            lead = "" if told else f"bring the sides together and {verb} " if manner == "fold" else f"{verb} "
            told.append(f"{lead}{side_words(seam.a)}{twist} to {side_words(seam.b)}{eased}")
    return told


def _eased(voice: Voice, assemblies: Sequence[Assembly], index: int) -> str:
    """" (easing the 40 stitches of side 2 of A into 30: take 3 of every 4)", for every printed size."""
    pairs = [assembly.seams[index].eased for assembly in assemblies]
    counts = [(max(pair), min(pair)) for pair in pairs if pair is not None and pair[0] != pair[1]]
    seam = assemblies[0].seams[index]
    if len(counts) < len(pairs) or seam.b is None or seam.eased is None:
        return ""
    longer = side_words(seam.a if seam.eased[0] > seam.eased[1] else seam.b)
    many, few = (number_text(Amount(ns if len(set(ns)) > 1 else ns[:1])) for ns in zip(*counts, strict=True))
    ways = {_taken(*count, voice.term("skip")) for count in counts}
    how = ways.pop() if len(ways) == 1 else f"spread those that are {voice.term('skipped')} evenly"
    return f" (easing the {many}{NBSP}stitches of {longer} into {few}: {how})"


def _taken(many: int, few: int, miss: str) -> str:
    """How a longer side is eased in evenly.

    >>> _taken(40, 30, "skip"), _taken(33, 29, "miss")
    ('take 3 of every 4', 'miss 4, one after every 7 or 8')
    """
    ratio = Fraction(few, many)
    if ratio.denominator <= MOST_OF:
        return f"take {ratio.numerator} of every {ratio.denominator}"
    missed = many - few
    low, over = divmod(few, missed)
    return f"{miss} {missed}, one after every {low}{f' or {low + 1}' if over else ''}"


def side_words(piece: SidePiece) -> str:
    """"the top of base", "side 3 of L", "the first half of the left of C", "the last third of side 2 of L"."""
    side = f"side{NBSP}{piece.side}" if piece.side.isdigit() else f"the {piece.side}"
    if piece.parts == 1:
        return f"{side} of {piece.panel}"
    part = "half" if piece.parts == 2 else "third" if piece.parts == 3 else "quarter" if piece.parts == 4 else f"{piece.parts}th part"
    last = piece.parts > 2 and piece.part == piece.parts
    which = "last" if last else "middle" if (piece.part, piece.parts) == (2, 3) else ordinal_word(piece.part)
    return f"the {which} {part} of {side} of {piece.panel}"


def _corner(name: str) -> str:
    """"base.top-left" is the top-left corner of base; "L.6-1" the corner of L between sides 6 and 1."""
    panel, _, corner = name.rpartition(".")
    if "[" in corner:
        side, _, share = corner.rstrip("]").partition("[")
        part, _, parts = share.partition("/")
        along = f"side{NBSP}{side}" if side.isdigit() else f"the {side}"
        if 2 * int(part) == int(parts):
            return f"the middle of {along} of {panel}"
        return f"the end of the {ordinal_word(int(part))} of {parts} parts of {along} of {panel}"
    first, _, second = corner.partition("-")
    if first.isdigit() and second.isdigit():
        return f"the corner of {panel} between sides {first} and {second}"
    return f"the {corner} corner of {panel}" if second else panel

