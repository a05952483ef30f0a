"""Work that may be taken back: a pass that turns out not to fit, or a round tried in another reading."""

from __future__ import annotations

from dataclasses import fields

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom, Cursor
from motifold.render.fabric.model import Base, RunRole
from motifold.render.pattern.instructions import CountsAs
from motifold.render.pattern.problem import Problem, Span
from motifold.symbols.record import dataclass

_CURSOR = tuple(field.name for field in fields(Cursor) if field.name not in ("atoms", "absent"))


@dataclass(frozen=True, slots=True)
class PassMark:
    """Where a pass of a repeat began."""

    lengths: tuple[int, int, int, int, int, int]
    cursor: Cursor
    state: tuple[object, ...]
    yarn: str
    pending: tuple[int, ...]
    last: int | None
    last_base: Base | None
    told: frozenset[tuple[str, int]]
    taken: int
    overrun: int
    left: int


def mark_pass(hook: Hook, cursor: Cursor) -> PassMark:
    """Notes everything that one pass may change."""
    lap = hook.lap
    return PassMark(
        (len(hook.stitches), len(hook.runs), len(hook.groups), len(lap.stitches), len(lap.made), len(hook.problems)),
        cursor,
        tuple(getattr(cursor, name) for name in _CURSOR),
        hook.yarn,
        tuple(hook.pending),
        hook.last,
        lap.last_base,
        frozenset(hook.told),
        hook.taken,
        lap.overrun,
        len(lap.left),
    )


def take_back_pass(hook: Hook, mark: PassMark) -> None:
    """Undoes what was made since the mark."""
    lap = hook.lap
    stitches, runs, groups, own, made, problems = mark.lengths
    del hook.stitches[stitches:], hook.runs[runs:], hook.groups[groups:], lap.stitches[own:], lap.made[made:], hook.problems[problems:]
    for group in hook.open_groups:
        hook.groups[group].stitches = [ident for ident in hook.groups[group].stitches if ident < stitches]
    for name, value in zip(_CURSOR, mark.state, strict=True):
        setattr(mark.cursor, name, value)
    hook.yarn, hook.pending, hook.last, hook.taken = mark.yarn, list(mark.pending), mark.last, mark.taken
    lap.last_base, lap.overrun = mark.last_base, mark.overrun
    hook.told = set(mark.told)
    del lap.left[mark.left :]
    hook.origin = None
    for ident in hook.pending:
        hook.stitches[ident].run = None


@dataclass(frozen=True, slots=True)
class JobMark:
    """Where the work on a line began."""

    stitches: int
    runs: int
    groups: int
    laps: int
    problems: tuple[Problem, ...]
    told: frozenset[tuple[str, int]]
    idle: dict[int, tuple[Span, str, str | None]]
    busy: frozenset[int]
    throughout: dict[int, CountsAs]
    borne_out: frozenset[int]
    yarn: str
    tainted: bool
    steps_done: int
    lap: Lap
    before: tuple[object, ...]
    atoms: tuple[Atom, ...]
    chains: tuple[tuple[int, int, int | None], ...]
    old_runs: tuple[tuple[int, RunRole, int, tuple[int, ...]], ...]


_BEFORE = ("turned", "fastened", "direction", "side", "end", "overrun", "unjoined", "met")


def mark_job(hook: Hook) -> JobMark:
    """Notes everything that the work on one line may change."""
    before = hook.laps[-1] if hook.laps else None
    chains: tuple[tuple[int, int, int | None], ...] = ()
    old: tuple[tuple[int, RunRole, int, tuple[int, ...]], ...] = ()
    if before is not None and before.kind in ("foundation", "ring"):  # the next round may take chains from it
        chains = tuple((ident, hook.stitches[ident].round, hook.stitches[ident].run) for ident in before.stitches)
        old = tuple((run.id, run.role, run.chains, tuple(run.stitches)) for run in hook.runs if run.round == before.index)
    state: tuple[object, ...] = ()
    if before is not None:
        state = (*(getattr(before, name) for name in _BEFORE), tuple(before.stitches), tuple(before.made))
    return JobMark(
        len(hook.stitches),
        len(hook.runs),
        len(hook.groups),
        len(hook.laps),
        tuple(hook.problems),
        frozenset(hook.told),
        dict(hook.idle),
        frozenset(hook.busy),
        dict(hook.throughout),
        frozenset(hook.borne_out),
        hook.yarn,
        hook.tainted,
        hook.steps_done,
        hook.lap,
        state,
        tuple(before.atoms) if before is not None else (),
        chains,
        old,
    )


def take_back_job(hook: Hook, mark: JobMark) -> None:
    """Undoes everything since the mark."""
    del hook.stitches[mark.stitches :], hook.runs[mark.runs :], hook.groups[mark.groups :], hook.laps[mark.laps :]
    hook.problems, hook.told, hook.idle, hook.busy = list(mark.problems), set(mark.told), dict(mark.idle), set(mark.busy)
    hook.throughout, hook.yarn, hook.tainted, hook.steps_done = dict(mark.throughout), mark.yarn, mark.tainted, mark.steps_done
    hook.borne_out = set(mark.borne_out)
    hook.lap, hook.pending, hook.last, hook.here, hook.origin = mark.lap, [], None, None, None
    hook.open_groups.clear()
    hook.passes, hook.depth, hook.within = (), 0, None
    if hook.laps:
        before = hook.laps[-1]
        *values, stitches, made = mark.before
        for name, value in zip(_BEFORE, values, strict=True):
            setattr(before, name, value)
        assert isinstance(stitches, tuple) and isinstance(made, tuple)
        before.stitches, before.made, before.atoms = list(stitches), list(made), list(mark.atoms)
    for ident, number, run in mark.chains:
        hook.stitches[ident].round, hook.stitches[ident].run = number, run
    for ident, role, chains, members in mark.old_runs:
        run_now = hook.runs[ident]
        run_now.role, run_now.chains, run_now.stitches = role, chains, list(members)
