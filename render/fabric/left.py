"""What the hook leaves behind unworked, of the kinds of place that a line claims."""

from __future__ import annotations

from collections.abc import Iterator

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Cursor, any_of


def leave_behind(hook: Hook, cursor: Cursor, index: int) -> None:
    """The hook jumps ahead to an index: what it leaves behind unworked, of the kinds that the round claims, is noted."""
    lap = hook.lap
    if lap.cursor is not cursor or lap.leave or not lap.claims or not cursor.size:
        return
    if index - cursor.following == 1 and cursor.atom(cursor.following).space and not cursor.atom(index).space:
        return  # a mesh: the one space before the stitch is bridged
    left = list(left_between(lap, cursor, cursor.following, index))
    if len(left) == 1 and _under_chains(hook, cursor, left[0]):
        return
    lap.left.extend(left)


def _under_chains(hook: Hook, cursor: Cursor, index: int) -> bool:
    """Whether the one stitch that is passed lies under chains that come from a space, as those do that the line passes between spaces."""
    last = hook.lap.last_base
    from_space = last is not None and last.kind == "space"
    return from_space and bool(hook.pending) and hook.lap.passed > 0 and not cursor.atom(index).space


def left_between(lap: Lap, cursor: Cursor, start: int, stop: int) -> Iterator[int]:
    """What the line claims from ``start`` up to ``stop``: a group that it names is claimed whole, not stitch by stitch."""
    claimed = any_of(lap.claims, lap.groups_named)
    begun = cursor.atom(cursor.start).group if cursor.size and cursor.cyclic else -1
    for index in range(start, stop):
        atom = cursor.atom(index)
        if begun >= 0 and atom.group == begun and atom.group_name in lap.groups_named:
            continue  # the group that the round began in
        if claimed(atom) and (atom.head or atom.group_name not in lap.groups_named):
            yield index
