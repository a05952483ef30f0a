"""Motifs that are joined in their last round: what is worked in place of its chains, in which order, and how many times."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise

from motifold.render.assembly.model import Assembly
from motifold.render.assembly.steps import AssemblyStep, work_order
from motifold.render.fabric.model import EdgeItem, Fabric, Side
from motifold.render.pattern.instructions import Amount, Place
from motifold.render.words.counts import number_text
from motifold.render.words.printed import Printed
from motifold.render.words.voice import NBSP, Voice, listed
from motifold.render.worked import WorkedSize

MOST_RUNS = 12  # of names in one sentence


def joining_manner(told: Printed, assembly: Assembly) -> str:
    """How a side is joined in the last round, from what that side has: its spaces, or its stitches where it has none."""
    voice = told.voice
    text = "Join the motifs in their last round, in the order that the drawing numbers: each one is fastened off before the next is begun."
    if _says_itself(told, assembly):
        return text
    fabric = told.sizes[0].fabrics[assembly.panels[0].motif]
    side = fabric.sides[0]
    chains = sorted({fabric.runs[item.id].chains for item in side.items if item.kind == "space"})
    sl_st, next_to = voice.one("sl st"), "of the motif beside it"
    if chains:
        ways = [f"in place of each {voice.chains(n, 'sp')} work {_joining(voice, n)} in the corresponding space {next_to}" for n in chains]
        along = listed(ways)
    else:
        along = f"work {sl_st} in the corresponding stitch {next_to} after each stitch"
    text = f"{text} Along a joined side, {along}"
    if side.start is not None and side.start.kind == "space":
        n = fabric.runs[side.start.id].chains
        text += f"; at each of its corners, in place of {voice.stitch('ch')}{NBSP}{n}, work {_corner(voice, n)}"
    return f"{text}. What is not joined is worked as it is written."


def _joining(voice: Voice, chains: int) -> str:
    """A chain space joined in its middle: "sl st", "ch 1, sl st ... ch 1" for three chains."""
    half = (chains - 1) // 2
    sl_st = voice.one("sl st")
    return sl_st if half == 0 else f"{voice.stitch('ch')}{NBSP}{half}, {sl_st}, {voice.stitch('ch')}{NBSP}{chains - 1 - half},"


def _corner(voice: Voice, chains: int) -> str:
    half = max(1, chains // 2)
    ch = f"{voice.stitch('ch')}{NBSP}{half}"
    return f"{ch}, {voice.stitch('sl st')} in the corner {voice.craft('sp')} there, {ch}"


def _says_itself(told: Printed, assembly: Assembly) -> bool:
    """Whether a motif's own rounds say how it is joined to the one before."""
    own = {panel.motif for panel in assembly.panels}
    return any(_joins_to_another(motif.instructions) for motif in told.pattern.motifs if motif.name in own)


def _joins_to_another(node: object) -> bool:
    if isinstance(node, Place):
        return node.which == "corresponding"
    if isinstance(node, tuple):
        return any(_joins_to_another(part) for part in node)
    slots = getattr(node, "__dataclass_fields__", None) or ()
    return any(_joins_to_another(getattr(node, name)) for name in slots)


def joining_step(told: Printed, assembly: Assembly, step: AssemblyStep) -> str:
    """"Work A2 to A9, each joined along its left side: 5 joining sl sts in place of 3 ch-1 sps and 2 ch-2 sps"."""
    names = _names(step.made, work_order(assembly))
    if not step.own:
        return f"Work {names} as written."
    each = "each " if len(step.made) > 1 else ""
    sides = [f"side{NBSP}{side}" if side.isdigit() else side for side in step.own]
    word = "" if step.own[0].isdigit() else " side" if len(sides) == 1 else " sides"
    text = f"Work {names}, {each}joined along {'its ' if not step.own[0].isdigit() else ''}{listed(sides)}{word}"
    if not each:
        others = [name for name in step.panels if name not in step.made]
        text += f" to {listed(others)}" if others else ""
    motif = next(panel.motif for panel in assembly.panels if panel.name == step.made[0])
    made = [_joins(size, motif, step.own) for size in told.sizes]
    stitches = _number(told, [number for number, _ in made])
    told_of = f"{stitches}{NBSP}joining {told.voice.stitch('sl st', plural=stitches != '1')}"
    left_out = [
        f"{_number(told, [spaces.get(n, 0) for _, spaces in made])}{NBSP}{told.voice.chains(n, 'sps')}" for n in sorted(made[0][1])
    ]
    return f"{text}: {told_of}" + (f" in place of {listed(left_out)}." if left_out else ".")


def _number(told: Printed, numbers: Sequence[int]) -> str:
    return number_text(Amount(tuple(numbers) if len(set(numbers)) > 1 else (numbers[0],)))


def _joins(size: WorkedSize, motif: str, own: Sequence[str]) -> tuple[int, Counter[int]]:
    """Joining stitches, and by how many chains the spaces that they stand in place of; each corner once."""
    fabric = size.fabrics[motif]
    spaces: Counter[int] = Counter()
    others = 0
    ends: dict[int, EdgeItem] = {}
    for name in own:
        side = _side(fabric, name, own)
        inner = [item for item in side.items if item.kind == "space"]
        spaces.update(fabric.runs[item.id].chains for item in inner)
        others += 0 if inner else len(side.items)
        ends.update({item.id: item for item in (side.start, side.end) if item is not None and item.kind == "space"})
    spaces.update(fabric.runs[corner].chains for corner in ends)
    return others + sum(spaces.values()), spaces


def _side(fabric: Fabric, name: str, own: Sequence[str]) -> Side:
    return next((side for side in fabric.sides if side.name == name), fabric.sides[own.index(name) % len(fabric.sides)])


def _names(made: Sequence[str], order: Sequence[str]) -> str:
    """Those that follow each other in the order of work as "A2 to A9"."""
    place = {name: i for i, name in enumerate(order)}
    runs: list[list[str]] = [[made[0]]]
    for before, after in pairwise(made):
        if place[after] == place[before] + 1:
            runs[-1].append(after)
        else:
            runs.append([after])
    said = [f"{run[0]} to {run[-1]}" if len(run) > 2 else listed(run) for run in runs]
    if len(said) > MOST_RUNS:
        return f"{', '.join(said[:3])} and so on to {said[-1]}"
    return listed(said)
