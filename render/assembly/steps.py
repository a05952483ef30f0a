"""Assembly as steps in order: runs of flat seams, folds, gaps to close; or motif after motif, joined as they grow."""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import replace
from typing import Literal

from motifold.render.assembly.flatlay import lay
from motifold.render.assembly.model import Assembly, PassStep, SeamPass
from motifold.render.assembly.sewing import joins_as_it_goes
from motifold.render.assembly.sides import corner_names, seam_corners
from motifold.symbols.record import dataclass

MOST_STEPS = 24


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
    For "motif": ``seams`` are those joined to motifs made before.
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
    meetings = len(steps) - 1 + (first > 0) + (whole and one.closed)
    return AssemblyStep(
        0,
        "seam" if any(flat[step.seam] for step in steps) else "fold",
        one.number,
        steps,
        tuple(seam.name for seam in seams),
        _unique(piece.panel for seam in seams for piece in (seam.a, seam.b) if piece is not None),
        sum(seam.stitches for seam in seams) + meetings,
        seam_corners(assembly, seams[0], steps[0].forward),
        seam_corners(assembly, seams[-1], not steps[-1].forward),
        attach=first == 0,
        fasten_off=last == len(one.steps),
        closed=whole and one.closed,
    )


def _motifs(assembly: Assembly) -> list[AssemblyStep]:
    """Motif after motif in the net's order, each joined to those that are there."""
    panels = assembly.panels[: len(assembly.panels) // assembly.copies]
    place = {panel.name: i for i, panel in enumerate(panels)}
    joined: list[list[int]] = [[] for _ in panels]
    for i, seam in enumerate(assembly.seams[: len(assembly.seams) // assembly.copies]):
        joined[max(place[seam.a.panel], place[(seam.b or seam.a).panel])].append(i)
    steps = []
    for panel, seams in zip(panels, joined, strict=True):
        found = [assembly.seams[i] for i in seams]
        others = _unique(p.panel for seam in found for p in (seam.a, seam.b or seam.a))
        steps.append(
            AssemblyStep(
                0,
                "motif",
                steps=tuple(PassStep(i, True) for i in seams),
                seams=tuple(seam.name for seam in found),
                panels=(panel.name, *(name for name in others if name != panel.name)),
                stitches=sum(seam.stitches for seam in found),
                attach=True,
                fasten_off=True,
            )
        )
    return steps
