"""The finished piece: drafts become a Fabric."""

from __future__ import annotations

from typing import Literal

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.model import EdgeItem, Fabric, Round, Run, Side, Stitch, StitchGroup
from motifold.render.fabric.sides import sides_of


def finished(hook: Hook, name: str, shape: str, polygon: int, worked: Literal["rounds", "rows"]) -> Fabric:
    """Freezes what was made. References stay what they were: places in the tuples."""
    place = _places(hook)
    stitches = tuple(
        [
            Stitch(s.id, s.kind, s.role, s.round, at, s.yarn, s.origin, s.legs, s.gather, s.chains, s.run, s.group, s.behind)
            for s, at in zip(hook.stitches, place, strict=True)
        ]
    )
    runs = tuple(Run(r.id, r.role, r.round, r.chains, tuple(r.stitches), r.before, r.after, r.group, r.corner) for r in hook.runs)
    runs_of: dict[int, list[int]] = {}
    for run in runs:
        if run.group is not None:
            runs_of.setdefault(run.group, []).append(run.id)
    groups = tuple(
        StitchGroup(g.id, g.name, g.round, tuple(g.stitches), tuple(runs_of.get(g.id, ())), g.base, g.origin, g.corner) for g in hook.groups
    )
    rounds = tuple(
        Round(
            lap.number,
            lap.label,
            lap.kind,
            lap.side,
            lap.direction,
            lap.line.id if lap.line is not None else 0,
            tuple(lap.stitches),
            tuple([EdgeItem("space" if space else "stitch", ident) for space, ident in lap.made]),
            lap.end,
            lap.turned,
            lap.fastened,
            lap.attached,
            tuple(lap.yarns),
            lap.counts,
            lap.parts,
            lap.met,
        )
        for lap in hook.laps
    )
    sides: tuple[Side, ...] = sides_of(hook, polygon, worked, _half_of(shape))
    return Fabric(name, shape, polygon, worked, stitches, runs, groups, rounds, sides)


def _places(hook: Hook) -> list[int]:
    """Each stitch's number within its round, from 1."""
    found = [0] * len(hook.stitches)
    for lap in hook.laps:
        for number, ident in enumerate(lap.stitches, 1):
            found[ident] = number
    return found


_WHOLES = {"triangle": 3, "square": 4, "pentagon": 5, "hexagon": 6, "octagon": 8, "circle": 0}


def _half_of(shape: str) -> int | None:
    """The corners of the motif that a shape is half of: 6 for "half hexagon", 0 for "semicircle"; None for what is whole."""
    words = shape.split()
    if "semicircle" in words:
        return 0
    return _WHOLES.get(words[-1]) if "half" in words[:-1] else None
