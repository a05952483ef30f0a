"""Edgings: the opening as an edge of stand-ins, then rounds on it; and the edge that a lone motif offers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.fabric.bench import DraftRun, DraftStitch, Hook, Lap, Workshop
from motifold.render.fabric.edge import Atom, Cursor
from motifold.render.fabric.finish import finished
from motifold.render.fabric.model import EdgeItem, Fabric, GivenItem, Origin, Side
from motifold.render.fabric.motif import has_mistakes, new_hook, work_text
from motifold.render.pattern.model import EdgingSource
from motifold.render.pattern.problem import NOWHERE, Problem


def work_edging(source: EdgingSource, given: Sequence[GivenItem], shop: Workshop) -> tuple[Fabric, tuple[Problem, ...]]:
    """Works an edging on what waits along an opening, in the order that a right-handed worker meets it, RS facing.

    "Corner" is where the opening turns; a text that comes out only with the corners of every panel on it means those.
    """
    hook = _worked(source, given, shop)
    if has_mistakes(hook) and any(item.passing for item in given):
        each = tuple(replace(item, passing=False) for item in given)
        other = _worked(source, each, shop)
        if not has_mistakes(other):
            hook, given = other, each
    problems = hook.problems
    if has_mistakes(hook):
        again = new_hook(shop, 0)
        _lay_edge(again, given)
        work_text(again, source.instructions, mending=True)
        problems = again.problems
    return finished(hook, source.name, "edging", 0, "rounds"), tuple(problems)


def _worked(source: EdgingSource, given: Sequence[GivenItem], shop: Workshop) -> Hook:
    hook = new_hook(shop, 0)
    _lay_edge(hook, given)
    work_text(hook, source.instructions)
    return hook


def _lay_edge(hook: Hook, given: Sequence[GivenItem]) -> None:
    lap = Lap(0, None, "the edge", "edge", "RS", 1, None, Cursor())
    hook.lap = lap
    nobody = Origin(0, (), NOWHERE)
    last: int | None = None
    sides = {name: number for number, name in enumerate(dict.fromkeys(item.side for item in given))}
    groups: dict[tuple[str, int], int] = {}
    for item in given:
        turns = item.corner and not item.passing
        if item.kind == "space":
            chains = []
            for _ in range(item.chains):
                ident = len(hook.stitches)
                hook.stitches.append(DraftStitch(ident, "ch", "given", 0, "", nobody, run=len(hook.runs)))
                lap.stitches.append(ident)
                chains.append(ident)
            run = DraftRun(len(hook.runs), "given", 0, item.chains, chains, before=last, corner=turns)
            hook.runs.append(run)
            atom = Atom(True, run.id, "", item.chains, corner=turns, starts_side=item.starts_side)
            lap.made.append((True, run.id))
        else:
            last = len(hook.stitches)
            hook.stitches.append(DraftStitch(last, item.name or "st", "given", 0, "", nobody))
            lap.stitches.append(last)
            atom = Atom(False, last, item.name or "st", corner=turns, starts_side=item.starts_side)
            lap.made.append((False, last))
        atom.side, atom.side_name = sides[item.side], item.side.rpartition(".")[2]
        if item.group >= 0:
            panel = item.side.rpartition(".")[0]
            atom.group = groups.setdefault((panel, item.group), len(groups))
            atom.group_name = item.group_name
        key = f"ch-{item.chains} sp" if item.kind == "space" else item.name
        lap.counts[key] = lap.counts.get(key, 0) + 1
        lap.atoms.append(atom)
    lap.parts = dict(lap.counts)
    lap.met = sum(1 for atom in lap.atoms if not atom.space)
    lap.end = "joined"
    hook.laps.append(lap)


def motif_edge(fabric: Fabric) -> tuple[GivenItem, ...]:
    """The edge of a lone motif, counter-clockwise: each side led by its corner, which is met once. Rows: all four sides."""
    items: list[GivenItem] = []
    sides = fabric.sides
    if fabric.worked == "rows" and len(sides) == 4:
        sides = (*sides[2:], *sides[:2])  # from the right end of the top, where the last row may have ended
    for side in sides:
        name = f"{fabric.name}.{side.name}"
        if side.start is not None:
            items.append(_given(fabric, side.start, name, side, corner=True, starts=True))
        for number, item in enumerate(side.items):
            starts = side.start is None and number == 0
            corner = fabric.worked == "rows" and side.name in ("top", "bottom") and number in (0, len(side.items) - 1)
            items.append(_given(fabric, item, name, side, corner=corner, starts=starts))
    return tuple(items)


def _given(fabric: Fabric, item: EdgeItem, name: str, side: Side, *, corner: bool, starts: bool) -> GivenItem:
    if item.kind == "space":
        chains = fabric.runs[item.id].chains
        return GivenItem("space", "", chains, corner, starts, name, fabric.name, item, *fabric.named_group(item))
    kind = fabric.stitches[item.id].kind
    if fabric.runs_along_row_ends(side):
        kind = "row end"
    return GivenItem("stitch", kind, 0, corner, starts, name, fabric.name, item, *fabric.named_group(item))
