"""Opens a round on the edge of the one before, and closes it: edge, corners, counts, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from motifold.render.fabric.below import perimeter
from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.blocks import begins_with_block
from motifold.render.fabric.claims import claimed_of_earlier, claimed_targets, counts_turning_chain, names_turning_chain
from motifold.render.fabric.corners import mark_corners
from motifold.render.fabric.counts import atoms_of, count
from motifold.render.fabric.edge import Cursor, oriented
from motifold.render.fabric.judge import judge
from motifold.render.fabric.lines import Job, in_ring
from motifold.render.fabric.making import hang, new_run
from motifold.render.fabric.marks import hang_markers
from motifold.render.fabric.wording import key_of, label_span, round_word
from motifold.render.pattern.instructions import (
    Chain,
    FastenOff,
    Group,
    Join,
    LeaveYarn,
    Marker,
    Repeat,
    Skip,
    Step,
    Turn,
    UseYarn,
    Words,
    Work,
)

Side = Literal["RS", "WS"]


def beginning_index(steps: Sequence[Step], blocks: bool = False) -> int:
    """How many steps only lead to the beginning: yarns, turns, and slip stitches that walk to where a beginning chain stands.

    ``blocks``: in rows of blocks they walk to whatever comes first, as "sl st in next 3 dc, (sl st, ch 3, 3 dc) in next ch-3 sp".
    """
    for index, step in enumerate(steps):
        if isinstance(step, UseYarn | LeaveYarn | Words | Marker | Turn | FastenOff | Skip):
            continue
        if isinstance(step, Join) and step.attach:
            continue
        if _only_walks(step):
            continue
        if isinstance(step, Chain) or (isinstance(step, Work) and (step.stitch.standing or step.stitch.beginning)):
            return index
        place = step.place if isinstance(step, Work | Group) else None
        into_space = place is not None and place.which == "same" and place.target.kind == "sp"
        return index if into_space or blocks else 0  # "sl st in next ch-2 sp, shell in same sp"
    return 0


def only_slips(steps: Sequence[Step]) -> bool:
    """Whether a finish only slips on to an even end: it is no round of slip stitches."""
    works = [step for step in steps if isinstance(step, Work)]
    others = any(isinstance(step, Chain | Group | Repeat) for step in steps)
    return not others and all(step.stitch.name == "sl st" and (step.place is None or step.place.extent is None) for step in works)


def _only_walks(step: Step) -> bool:
    if isinstance(step, Work):
        return step.stitch.name == "sl st"
    return isinstance(step, Repeat) and all(_only_walks(inner) for inner in step.steps)


def _turns(steps: Sequence[Step]) -> int:
    """Turns before anything of the round is worked."""
    turns = 0
    for step in steps:
        if isinstance(step, Turn):
            turns += 1
        elif not isinstance(step, UseYarn | LeaveYarn | Words | Marker | FastenOff | Chain | Join) and not _only_walks(step):
            break
    return turns


def _attaches(steps: Sequence[Step]) -> bool:
    for step in steps:
        if isinstance(step, Join):
            return step.attach
        if isinstance(step, Work):
            return step.stitch.standing or (step.place is not None and step.place.which == "any")
        if isinstance(step, Chain | Repeat):
            return False
    return False


def open_lap(hook: Hook, job: Job, steps: Sequence[Step]) -> Lap:
    """A new round: which side faces, what it meets and where it begins."""
    before = hook.laps[-1] if hook.laps else None
    index = len(hook.laps)
    attached = _attaches(steps)
    side: Side
    if before is None or job.kind in ("ring", "foundation"):
        side = job.side or "RS"
        lap = Lap(index, job.number, job.label, job.kind, side, 1 if side == "RS" else -1, job.line, Cursor())
        lap.linear = job.kind in ("foundation", "row")
        if before is None and job.kind in ("round", "row", "finish"):
            _nothing_to_stand_on(hook, lap, job)
    else:
        _check_ready(hook, job, before, steps, attached)
        side = _facing(hook, job, before, _turns(steps), attached)
        lap = Lap(index, job.number, job.label, job.kind, side, 1 if side == "RS" else -1, job.line, Cursor())
        lap.linear = job.kind == "row"
        if before.kind in ("ring", "foundation"):
            before.direction = -lap.direction if before.linear else lap.direction
            before.side = side
        inside = before.kind == "ring" and any(in_ring(step) for step in steps)
        if inside:
            lap.cursor = Cursor(round=before.index)
        elif job.kind == "round" and before.kind == "row":
            lap.cursor = perimeter(hook, before, lap)
        else:
            lap.cursor = _cursor_on(before, lap)
    lap.several = job.several
    lap.claims = claimed_targets(steps[beginning_index(steps, bool(hook.entered)) :], before.number if before is not None else None)
    lap.earlier = () if lap.claims else claimed_of_earlier(steps)
    lap.groups_named = frozenset(
        {target.name or "" for target in lap.claims if target.kind == "stitch"}
        & {atom.group_name for atom in lap.cursor.atoms if atom.group >= 0}
    )
    lap.names_tch = names_turning_chain(steps)
    if lap.names_tch:
        lap.counts_tch = counts_turning_chain(steps, hook.shop.size)
        _set_turning_chain_apart(lap.cursor)
    return lap


def _nothing_to_stand_on(hook: Hook, lap: Lap, job: Job) -> None:
    outer, hook.lap = hook.lap, lap
    founded = any(isinstance(step, Work) and step.stitch.name in ("fsc", "fhdc", "fdc", "ftr") for step in job.steps)
    if not founded and not begins_with_block(job.steps, hook.shop.definitions):
        hook.complain(
            "stand",
            label_span(job.line.span, job.label),
            f"{job.label} has nothing to stand on",
            "begin with a line Ring: or Chain:",
            key=key_of(job.line.span),
        )
        hook.tainted = True
    hook.lap = outer


def _check_ready(hook: Hook, job: Job, before: Lap, steps: Sequence[Step], attached: bool) -> None:
    """The round before must be joined if this one begins with a chain, and a yarn that was cut must be joined again."""
    outer, hook.lap = hook.lap, before
    if before.fastened and not attached and not job.doubtful and job.kind in ("round", "row", "finish"):
        hook.complain(
            "attach",
            label_span(job.line.span, job.label),
            f"the yarn was fastened off after {round_word(before)}, and nothing joins it again for {job.label}",
            "join it: With A, join with sl st in first st",
            key=key_of(job.line.span),
        )
        hook.tainted = True  # where it should begin is not known: what follows from that is no mistake of its own
    first = next(
        (step for step in steps if not isinstance(step, UseYarn | LeaveYarn | Words | Marker | Turn) and not _only_walks(step)), None
    )
    chained = (isinstance(first, Chain) and beginning_index(steps) > 0) or (bool(steps) and steps[0] is first and isinstance(first, Chain))
    if (
        before.kind == "round"
        and job.kind == "round"
        and before.end == "spiral"
        and not before.unjoined
        and chained
        and not before.fastened
    ):
        hook.complain(
            "unjoined",
            label_span(before.line.span, before.label) if before.line else None,
            f"{round_word(before)} is not joined, but {job.label} begins with a chain",
            f'add "join with sl st in first st" at the end of {round_word(before)}, or "do not join"',
            key=1,
            follows=True,
        )
        before.end = "joined"
    hook.lap = outer


def _facing(hook: Hook, job: Job, before: Lap, turns: int, attached: bool) -> Side:
    """Which side faces. Rows turn without being told; a label is believed where yarn is joined anew."""
    if before.kind in ("ring", "foundation"):
        return job.side or "RS"
    if attached and job.side is not None:
        return job.side
    turned = turns % 2 == 1
    if job.kind == "row" and before.linear and not before.fastened:
        turned = True
    side: Side = before.side if not turned else "WS" if before.side == "RS" else "RS"
    before.turned = turned and not before.fastened
    if job.side is not None and job.side != side and before.kind != "edge":
        outer, hook.lap = hook.lap, before
        hook.complain(
            "side",
            label_span(job.line.span, job.label),
            f"{job.label} is called {job.side}, but the {side} faces: "
            + ("the work was turned before it" if turned else "nothing turned the work before it"),
            _turn_hint(job, before, side, turned),
            key=1 if job.kind == "row" else key_of(job.line.span),  # rows that are one off all the way are one mistake
        )
        hook.lap = outer
        return side if job.kind == "row" else job.side
    return side


def _turn_hint(job: Job, before: Lap, side: Side, turned: bool) -> str:
    if job.kind == "row":
        return f"every row is turned: call it {side}"
    return f'take "turn" out at the end of {before.label}' if turned else f'add "turn" at the end of {before.label}'


def _cursor_on(before: Lap, lap: Lap) -> Cursor:
    flipped = before.direction != lap.direction
    cyclic = not before.linear
    atoms = oriented(before.atoms, flipped, cyclic)
    cursor = Cursor(atoms, cyclic=cyclic, flipped=flipped, round=before.index)
    cursor.sided = before.kind == "edge" and any(atom.name == "row end" for atom in atoms)
    if not cyclic or before.kind == "edge":
        cursor.begin_at(0, fresh=True, taken=True)
        return cursor
    if before.end != "joined":
        cursor.spiral = True
        cursor.begin_at(before.overrun % max(len(atoms), 1), fresh=True, taken=True)
        return cursor
    start = len(atoms) - 1 - before.join_at if flipped else before.join_at
    cursor.begin_at(start, fresh=False, taken=False)
    return cursor


def _set_turning_chain_apart(cursor: Cursor) -> None:
    """Where a line works into the turning chain in so many words, "each st" does not mean it too."""
    if cursor.cyclic or not cursor.size or not cursor.atoms[-1].standing:
        return
    cursor.atoms = [*cursor.atoms[:-1], replace(cursor.atoms[-1], apart=True)]


def close_lap(hook: Hook, job: Job) -> None:
    """The round is finished: its edge, corners and counts are known, and it is judged."""
    lap = hook.lap
    if hook.pending:
        if lap.linear or lap.kind in ("ring", "foundation"):
            _trailing_chain(hook, lap)
        else:
            hang(hook, next((ident for space, ident in lap.made if not space), None))
    if lap.end == "open" and lap.kind == "round":
        lap.end = "spiral"
    elif lap.end == "spiral":
        lap.unjoined = True
    lap.atoms = atoms_of(hook, lap)
    mark_corners(hook, lap, hook.laps[-1] if hook.laps else None)
    hang_markers(hook, lap, lap.atoms)
    count(hook, lap)
    hook.laps.append(lap)
    judge(hook, lap, job)


def _trailing_chain(hook: Hook, lap: Lap) -> None:
    chains, hook.pending = hook.pending, []
    if lap.kind in ("ring", "foundation"):
        new_run(hook, "ring" if lap.kind == "ring" else "foundation", chains)
        lap.made.extend((False, ident) for ident in chains)
    else:
        new_run(hook, "spine", chains, before=hook.last)
