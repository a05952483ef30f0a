"""Edgings: the opening as an edge of stand-ins, then rounds on it; and the edge that a lone motif offers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.fabric.bench import DraftRun, DraftStitch, Hook, Lap, Workshop
from motifold.render.fabric.edge import Atom, Cursor
from motifold.render.fabric.finish import finished
from motifold.render.fabric.model import EdgeItem, Fabric, GivenItem, Origin, Side
from motifold.render.fabric.motif import has_mistakes, new_hook, work_text
from motifold.render.pattern.instructions import Group, Instructions, Join, Step, Work
from motifold.render.pattern.model import EdgingSource
from motifold.render.pattern.problem import NOWHERE, Problem


def work_edging(source: EdgingSource, given: Sequence[GivenItem], shop: Workshop) -> tuple[Fabric, tuple[Problem, ...]]:
    """Works an edging on what waits along an opening, in the order that a right-handed worker meets it, RS facing.

    "Corner" is where the opening turns; a text that comes out only with the corners of every panel on it means those.
    """
    text = _to_the_end_of_the_round(source.instructions)
    hook = _worked(text, given, shop)
    if has_mistakes(hook) and any(item.passing for item in given):
        each = tuple(replace(item, passing=False) for item in given)
        other = _worked(text, each, shop)
        if not has_mistakes(other):
            hook, given = other, each
    problems = hook.problems
    if has_mistakes(hook):
        again = new_hook(shop, 0)
        _lay_edge(again, given)
        work_text(again, text, mending=True)
        problems = again.problems
    return finished(hook, source.name, "edging", 0, "rounds"), tuple(problems)


def _worked(text: Instructions, given: Sequence[GivenItem], shop: Workshop) -> Hook:
    hook = new_hook(shop, 0)
    _lay_edge(hook, given)
    work_text(hook, text)
    return hook


def _to_the_end_of_the_round(text: Instructions) -> Instructions:
    """Along an edge of several sides "to end" is to the end of a side, but not where nothing follows it in its round than the join."""
    return replace(text, lines=tuple(replace(line, steps=_last_goes_around(line.steps)) for line in text.lines))


def _last_goes_around(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    at = next((i for i, step in enumerate(steps) if isinstance(step, Join) and not step.attach and i), 0)
    last = steps[at - 1] if at else None
    if not isinstance(last, Work | Group) or last.place is None or last.place.extent is None or last.place.extent.kind != "end":
        return steps
    around = replace(last.place, extent=replace(last.place.extent, kind="around"))
    return (*steps[: at - 1], replace(last, place=around), *steps[at:])


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
