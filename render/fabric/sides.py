"""The sides of the finished piece, corner to corner, counter-clockwise as the right side is seen."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from motifold.render.fabric.below import row_end_atoms
from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom
from motifold.render.fabric.model import EdgeItem, Side

_FOUR = ("top", "left", "bottom", "right")


def sides_of(hook: Hook, polygon: int, worked: Literal["rounds", "rows"]) -> tuple[Side, ...]:
    """All sides. A round shape without corners has one, the rim; a piece in rows has bottom, right, top and left."""
    last = next((lap for lap in reversed(hook.laps) if lap.atoms and lap.kind in ("round", "row", "finish", "foundation")), None)
    if last is None:
        return ()
    if last.linear or worked == "rows":
        return _of_rows(hook, last)
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


def _of_rows(hook: Hook, last: Lap) -> tuple[Side, ...]:
    """Bottom (the foundation), right row ends, top, left row ends: counter-clockwise from the lower left corner."""
    first = next((lap for lap in hook.laps if lap.kind in ("foundation", "ring", "row")), last)
    bottom = [atom for atom in first.atoms if atom.name or atom.space]
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
