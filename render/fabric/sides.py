"""The sides of the finished piece, corner to corner, counter-clockwise as the right side is seen."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Literal

from motifold.render.fabric.below import row_end_atoms
from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.corners import find_row_corners
from motifold.render.fabric.edge import Atom
from motifold.render.fabric.model import EdgeItem, Side

_FOUR = ("top", "left", "bottom", "right")
_FROM_BELOW = ("bottom", "right", "top", "left")


def sides_of(hook: Hook, polygon: int, worked: Literal["rounds", "rows"], half_of: int | None = None) -> tuple[Side, ...]:
    """All sides. A round shape without corners has one, the rim; a piece in rows has bottom, right, top and left.

    ``half_of``: worked in rows from a ring it is half of a motif with so many corners (0: a circle); its last side is the cut.
    """
    last = next((lap for lap in reversed(hook.laps) if lap.atoms and lap.kind in ("round", "row", "finish", "foundation")), None)
    if last is None:
        return ()
    if not last.linear and worked == "rows":
        return _of_border(hook, last) or _of_rows(hook, last)
    if last.linear or worked == "rows":
        return (_of_half(hook, last, half_of) if half_of is not None else ()) or _of_rows(hook, last)
    atoms = last.atoms if last.direction > 0 else last.atoms[::-1]
    corners = [index for index, atom in enumerate(atoms) if atom.corner]
    if polygon >= 3 and len(corners) != polygon:
        corners = _even(atoms, polygon)
    if polygon < 3 or len(corners) != polygon:
        return (_side("rim", atoms, None, None),)
    names = _FOUR if polygon == 4 else tuple(str(number) for number in range(1, polygon + 1))
    first = _where_it_began(last, atoms, corners)
    corners = corners[first:] + corners[:first]
    return tuple(_between(name, atoms, corners[number], corners[(number + 1) % polygon]) for number, name in enumerate(names))


def _where_it_began(last: Lap, atoms: Sequence[Atom], corners: Sequence[int]) -> int:
    """Number of the first corner from the place where the round began."""
    start = last.join_at if last.direction > 0 else len(atoms) - 1 - last.join_at
    size = len(atoms)
    ahead = [min((corner - start) % size, (start - corner) % size) for corner in corners]
    return ahead.index(min(ahead))


def _even(atoms: Sequence[Atom], polygon: int) -> list[int]:
    """Where nothing shows the corners: every n-th stitch, if that comes out even."""
    stitches = [index for index, atom in enumerate(atoms) if not atom.space]
    if len(stitches) < polygon or len(stitches) % polygon:
        return []
    return stitches[:: len(stitches) // polygon]


def _between(name: str, atoms: Sequence[Atom], start: int, end: int) -> Side:
    size = len(atoms)
    count = (end - start) % size or size
    items = [atoms[(start + step) % size] for step in range(1, count)]
    return _side(name, items, atoms[start], atoms[end])


def _item(atom: Atom | None) -> EdgeItem | None:
    return None if atom is None else EdgeItem("space" if atom.space else "stitch", atom.id)


def _side(name: str, items: Sequence[Atom], start: Atom | None, end: Atom | None) -> Side:
    """``stitches``: one for each stitch and each chain between the corners, and one chain of each corner space (its two panels keep
    one each); a corner stitch belongs to both of its sides and counts one half in each: one for the side's two ends."""
    counts: dict[str, int] = {}
    total = 0
    for atom in items:
        key = f"ch-{atom.chains} sp" if atom.space else atom.name
        counts[key] = counts.get(key, 0) + 1
        total += atom.chains if atom.space else 1
    corners = [atom for atom in (start, end) if atom is not None]
    if corners:
        total += sum(1 for atom in corners if atom.space and atom.chains) or (1 if not any(atom.space for atom in corners) else 0)
    return Side(
        name,
        tuple(EdgeItem("space" if atom.space else "stitch", atom.id) for atom in items),
        _item(start),
        _item(end),
        total,
        counts,
    )


def _of_border(hook: Hook, last: Lap) -> tuple[Side, ...]:
    """The four sides of a border that goes all round a piece in rows, named by what it was begun on; without corners of its own each
    side is what stands on one side of the piece. Empty where a side of the piece has none.
    """
    atoms = last.atoms if last.direction > 0 else last.atoms[::-1]
    ends = {side: {atom.id for atom in row_end_atoms(hook, left=side == "left")} for side in ("left", "right")}
    names = [_stands_on(hook, atom, ends) for atom in atoms]
    size = len(atoms)
    corners = [index for index, atom in enumerate(atoms) if atom.corner]
    if len(corners) != len(_FOUR):
        first = next((i for i in range(size) if names[i] == "bottom" != names[i - 1]), 0)
        order = [(first + step) % size for step in range(size)]
        found = {name: [atoms[i] for i in order if names[i] == name] for name in _FROM_BELOW}
        return tuple(_side(name, found[name], None, None) for name in _FROM_BELOW) if all(found.values()) else ()
    spans = [[(a + step) % size for step in range(1, (b - a) % size)] for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    fits = [sum(names[i] == _FROM_BELOW[(k + turn) % 4] for k, span in enumerate(spans) for i in span) for turn in range(4)]
    turn = fits.index(max(fits))
    sides = {
        _FROM_BELOW[(k + turn) % 4]: _between(_FROM_BELOW[(k + turn) % 4], atoms, corners[k], corners[(k + 1) % 4]) for k in range(4)
    }
    return tuple(sides[name] for name in _FROM_BELOW)


def _stands_on(hook: Hook, atom: Atom, ends: Mapping[str, set[int]]) -> str:
    """The side of a piece in rows that a place of its border stands on, through all rounds of the border."""
    before = hook.runs[atom.id].before if atom.space else atom.id
    while before is not None and hook.stitches[before].legs:
        base = hook.stitches[before].legs[0].base
        if base.foot == "row end":
            return "left" if base.id in ends["left"] else "right"
        before = hook.runs[base.id].before if base.kind == "space" else base.id
        if before is None or hook.laps[hook.stitches[before].round].kind == "foundation":
            return "bottom"
        if hook.laps[hook.stitches[before].round].kind == "row":
            return "top"
    return "bottom"


def _of_half(hook: Hook, last: Lap, whole: int) -> tuple[Side, ...]:
    """What the last row's corners part it into, counter-clockwise, and the cut along the row ends. Empty where its corners don't show, or
    where it was not begun in a ring."""
    if last.kind != "row" or any(lap.kind == "foundation" for lap in hook.laps):
        return ()
    atoms = last.atoms if last.direction > 0 else last.atoms[::-1]
    count = max((whole - 1) // 2, 0)
    found = find_row_corners(hook, last, count) if count else []
    if len(found) != count:
        return ()
    corners = sorted(found if last.direction > 0 else (len(atoms) - 1 - index for index in found))
    bounds = [-1, *corners, len(atoms)]
    arcs = [
        _side(str(k + 1), atoms[low + 1 : high], atoms[low] if low >= 0 else None, atoms[high] if high < len(atoms) else None)
        for k, (low, high) in enumerate(pairwise(bounds))
    ]
    cut = [*row_end_atoms(hook, left=True)[::-1], *row_end_atoms(hook, left=False)]
    return (*arcs, _side(str(len(arcs) + 1), cut, None, None))


def _of_rows(hook: Hook, last: Lap) -> tuple[Side, ...]:
    """Bottom (the foundation), right row ends, top, left row ends: counter-clockwise from the lower left corner."""
    first = next((lap for lap in hook.laps if lap.kind in ("foundation", "ring", "row")), last)
    bottom = [*(atom for atom in first.atoms if atom.name or atom.space), *_under_first(hook, first)]
    if first.direction > 0:  # worked from right to left; the side runs from left to right
        bottom = bottom[::-1]
    top = last.atoms if last.direction > 0 else last.atoms[::-1]
    right = row_end_atoms(hook, left=False)
    left = row_end_atoms(hook, left=True)[::-1]
    return (
        _side("bottom", bottom, None, None),
        _side("right", right, None, None),
        _side("top", top, None, None),
        _side("left", left, None, None),
    )


def _under_first(hook: Hook, foundation: Lap) -> list[Atom]:
    """The foot of the missed chains that count as the first stitch of row 1: it has its place along the foundation, as each stitch has."""
    row = next((lap for lap in hook.laps if lap.index == foundation.index + 1), None)
    if foundation.kind != "foundation" or row is None or row.standing is None:
        return []
    first = hook.stitches[row.standing]
    beside = first.legs[0].base.kind == "gap" and bool(first.chains)
    return [Atom(False, first.chains[0], "ch")] if beside else []
