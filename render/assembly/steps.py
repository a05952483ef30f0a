"""Assembly as steps in order: runs of flat seams, folds, gaps to close; or motif after motif, joined as they grow."""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.model import Assembly, PassStep, SeamPass
from motifold.render.assembly.sewing import joins_as_it_goes
from motifold.render.assembly.sides import corner_names, seam_corners
from motifold.symbols.record import dataclass

MOST_STEPS = 24
MOST_MOTIFS = 12  # joined as they are worked, with a step for each; of more those alike share a step


@dataclass(frozen=True, slots=True)
class AssemblyStep:
    """One thing to do, for one copy.

    ``kind``: "seam" (what lies side by side, or a whole pass), "fold" (sides brought together), "gap" (a hole to draw up), "motif"
    (join as you go: work this motif, joining its last round), "fold flat" (``text``, as the pattern says).
    ``steps``: the seams sewn, in order and direction, of pass ``pass_number``; ``seams`` their names, ``panels`` all that take part.
    ``stitches``: with one across each meeting of panels, the one that leads here from the step before included. ``start``, ``end``: panel
    corners where it starts and ends ("base.top-left"), those of the sides that it sews first: the others may not be there yet.
    ``number`` counts the steps; ``pass_number`` is the figure at the seams in the drawings. ``attach``, ``fasten_off``: whether the yarn is
    joined before it and cut after it. ``closed``: it ends where it started. ``corners``: for "gap", the panel corners round it.
    For "motif": ``seams`` are those joined to motifs made before, ``made`` the motifs worked in this step, in order (all joined along the
    same sides), ``own`` those sides by name; ``stitches`` is for one of them.
    """

    number: int
    kind: Literal["seam", "fold", "gap", "motif", "fold flat"]
    pass_number: int | None = None
    steps: tuple[PassStep, ...] = ()
    seams: tuple[str, ...] = ()
    panels: tuple[str, ...] = ()
    stitches: int = 0
    start: tuple[str, ...] = ()
    end: tuple[str, ...] = ()
    attach: bool = False
    fasten_off: bool = False
    closed: bool = False
    text: str | None = None
    corners: tuple[tuple[str, int], ...] = ()
    made: tuple[str, ...] = ()
    own: tuple[str, ...] = ()


@lru_cache(maxsize=8)
def assembly_steps(assembly: Assembly) -> tuple[AssemblyStep, ...]:
    """The steps for one copy. Folds are steps of their own, unless that makes more than ``MOST_STEPS``: then each pass is one step."""
    if joins_as_it_goes(assembly.method):
        steps = _motifs(assembly)
    else:
        passes = assembly.passes[: len(assembly.passes) // assembly.copies]
        # What lies side by side when everything is laid out is sewn flat, whether the net or a join says so.
        flat = lay(assembly, 100.0, 100.0).touching
        steps = [step for one in passes for step in _of_pass(assembly, one, flat, apart=True)]
        if len(steps) > MOST_STEPS:
            steps = [step for one in passes for step in _of_pass(assembly, one, flat, apart=False)]
        gaps = assembly.gaps[: len(assembly.gaps) // assembly.copies]
        steps += [
            AssemblyStep(0, "gap", panels=_unique(name for name, _ in gap.at), start=corner_names(assembly, gap.corner), corners=gap.at)
            for gap in gaps
        ]
    steps += [AssemblyStep(0, "fold flat", text=text) for text in assembly.fold]
    return tuple(replace(step, number=i) for i, step in enumerate(steps, start=1))


def _unique(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))


def _of_pass(assembly: Assembly, one: SeamPass, flat: tuple[bool, ...], apart: bool) -> list[AssemblyStep]:
    """A pass cut into flat runs and folds; whole where ``apart`` is false."""
    cuts = [0]
    for i in range(1, len(one.steps)):
        if apart and not (flat[one.steps[i - 1].seam] and flat[one.steps[i].seam]):
            cuts.append(i)
    cuts.append(len(one.steps))
    return [_step(assembly, one, flat, first, last) for first, last in itertools.pairwise(cuts)]


def _step(assembly: Assembly, one: SeamPass, flat: tuple[bool, ...], first: int, last: int) -> AssemblyStep:
    steps = one.steps[first:last]
    seams = [assembly.seams[step.seam] for step in steps]
    whole = first == 0 and last == len(one.steps)
    return AssemblyStep(
        0,
        "seam" if any(flat[step.seam] for step in steps) else "fold",
        one.number,
        steps,
        tuple(seam.name for seam in seams),
        _unique(piece.panel for seam in seams for piece in (seam.a, seam.b) if piece is not None),
        sum(one.each[first:last]) + (one.closed and last == len(one.steps)),
        seam_corners(assembly, seams[0], steps[0].forward),
        seam_corners(assembly, seams[-1], not steps[-1].forward),
        attach=first == 0,
        fasten_off=last == len(one.steps),
        closed=whole and one.closed,
    )


def work_order(assembly: Assembly) -> tuple[str, ...]:
    """The motifs of one copy in the order in which they are made, where they are joined as they are worked: the net's, row by row."""
    return tuple(panel.name for panel in assembly.panels if panel.copy == 1)


def _motifs(assembly: Assembly) -> list[AssemblyStep]:
    """Motif after motif, each joined to those that are there; of many, those that are joined along the same sides together."""
    order = work_order(assembly)
    place = {name: i for i, name in enumerate(order)}
    joined: list[list[int]] = [[] for _ in order]
    for i, seam in enumerate(assembly.seams[: len(assembly.seams) // assembly.copies]):
        joined[max(place[seam.a.panel], place[(seam.b or seam.a).panel])].append(i)
    alike: dict[object, list[int]] = {}
    for i, name in enumerate(order):
        own = tuple(_own_side(assembly, seam, name) for seam in joined[i])
        alike.setdefault(i if len(order) <= MOST_MOTIFS else own, []).append(i)
    return [_motif_step(assembly, [order[i] for i in group], [joined[i] for i in group]) for group in alike.values()]


def _own_side(assembly: Assembly, seam: int, panel: str) -> str:
    one = assembly.seams[seam]
    return one.a.side if one.a.panel == panel or one.b is None else one.b.side


def _motif_step(assembly: Assembly, made: list[str], joined: list[list[int]]) -> AssemblyStep:
    found = [assembly.seams[i] for group in joined for i in group]
    others = _unique(p.panel for seam in found for p in (seam.a, seam.b or seam.a))
    return AssemblyStep(
        0,
        "motif",
        steps=tuple(PassStep(i, True) for group in joined for i in group),
        seams=tuple(seam.name for seam in found),
        panels=(*made, *(name for name in others if name not in made)),
        stitches=sum(assembly.seams[i].stitches for i in joined[0]),
        attach=True,
        fasten_off=True,
        made=tuple(made),
        own=tuple(_own_side(assembly, i, made[0]) for i in joined[0]),
    )
