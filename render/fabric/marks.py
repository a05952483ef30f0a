"""Stitch markers, and the stitch in the middle: places that are found by what hangs in them or by counting."""

from __future__ import annotations

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom, Cursor, Match, first_match, last_match, matcher
from motifold.render.pattern.instructions import Extent, Marker, Target


def mark(hook: Hook, step: Marker) -> None:
    """``pm``: in the stitch just made, in the first or the next one of the round. ``sm`` with a place: it moves up by itself."""
    lap, place = hook.lap, step.place
    made = len(lap.made)
    if step.manner == "slip":
        if place is None and lap.last_base is not None and lap.cursor.size:
            worked = lap.cursor.atom(lap.cursor.pos).marked and not lap.cursor.fresh
            lap.marks.append(made - 1 if worked and made else made)
    elif place is None or place.which in ("made", "same", "last", "current"):
        lap.marks.append(made if hook.pending or not made else made - 1)
    elif place.which == "first" and place.of is None:
        lap.marks.append(0)
    elif place.which == "next" and place.of is None and not place.each:
        lap.marks.append(made)


def hang_markers(hook: Hook, lap: Lap, atoms: list[Atom]) -> None:
    """The markers of a finished round: where it placed them, else straight above those of the round below, the middle one of several."""
    for position in lap.marks:
        if position < len(atoms):
            atoms[position].marked = True
    if lap.marks:
        return
    for below in lap.cursor.atoms:
        if below.marked:
            above = [atom for atom in atoms if not atom.space and _stands_in(hook, atom, below)]
            if above:
                above[(len(above) - 1) // 2].marked = True


def _stands_in(hook: Hook, atom: Atom, below: Atom) -> bool:
    legs = hook.stitches[atom.id].legs
    return any(leg.base.id == below.id and (leg.base.kind == "space") == below.space for leg in legs)


def middle(cursor: Cursor, match: Match) -> int | None:
    """The index of the middle one of all that match along the edge; of an even number, the one before the middle."""
    found: list[int] = []
    at = first_match(cursor, match, cursor.start, cursor.start + cursor.size - 1)
    while at is not None:
        found.append(at)
        at = first_match(cursor, match, at + 1, cursor.start + cursor.size - 1)
    return found[(len(found) - 1) // 2] if found else None


def before_index(hook: Hook, cursor: Cursor, extent: Extent, found: int) -> int:
    """The last index that "to 2 sts before marker" may take: so many are left before the place that was found."""
    count = extent.count.at(hook.shop.size) if extent.count is not None else 0
    index = last_match(cursor, matcher(extent.target or Target("st")), cursor.following, found - 1, count)
    return cursor.pos if index is None else index - 1
