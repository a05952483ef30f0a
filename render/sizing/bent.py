"""A mitered square: rows that lose (or gain) two stitches each at their middle, where the work turns a corner."""

from __future__ import annotations

from itertools import pairwise

from motifold.render.fabric.model import Fabric, Round

_ALIKE = 0.25
"""How far the ends of the rows may be from the half foundation for both to be sides of one square."""


def is_mitered(fabric: Fabric) -> bool:
    """Whether nearly every row changes by two stitches, and all of that at its middle."""
    rows = [r for r in fabric.rounds if r.kind == "row" and r.met]
    steps = [(before, row) for before, row in pairwise(rows) if row.met != before.met]
    if len(rows) < 4 or len(steps) < (len(rows) - 1) * 2 / 3:
        return False
    return all(_turns_at_its_middle(fabric, before, row) for before, row in steps)


def side_of_mitered_cm(fabric: Fabric, stitch_cm: float, rows_cm: float) -> float | None:
    """Half of the longest row, if the ends of the rows are as long: the side of the square. None where they are not."""
    half = stitch_cm * max(r.met for r in fabric.rounds if r.kind == "row") / 2
    return half if half > 0 and abs(rows_cm / half - 1) <= _ALIKE else None


def _turns_at_its_middle(fabric: Fabric, before: Round, row: Round) -> bool:
    if abs(row.met - before.met) != 2:
        return False
    stitches = [fabric.stitches[item.id] for item in row.edge if item.kind == "stitch"]
    bases = [{(leg.base.kind, leg.base.id) for leg in stitch.legs} for stitch in stitches]
    if row.met < before.met:
        changed = [index for index, under in enumerate(bases) if len(under) > 1]
    else:
        changed = [index for index, (one, other) in enumerate(pairwise(bases)) if one & other]
        changed += [index + 1 for index in changed]
    middle = (len(stitches) - 1) / 2
    return bool(changed) and all(abs(index - middle) <= 1.5 for index in changed)
