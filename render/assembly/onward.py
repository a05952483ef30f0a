"""Going on from flat work into a fold without fastening off: one fold trail for as many of the flat runs as can be.

A run is a connected lot of net seams as they meet on the table. When its last seam is sewn the yarn can go on into a fold that starts at
the corner where it stands. Which corners fold trails start from can be chosen: sew a trail the other way, or let two trails change partners
where they meet. In terms of a flow (Ford and Fulkerson 1956): point every fold seam the way that it is sewn; a corner of odd degree d takes
(d - 1) / 2 seams that come to it, and one thing more: another seam (a trail ends there) or a run that goes on from there. A run finds its
corner by an augmenting path, which turns the seams along it; so the number of runs that go on is the greatest possible. Two runs that end
at one corner can part a trail that passes through it, each going on with one half: two runs more for one trail more.

The augmenting paths alone are exact and take no bound. Which trails are parted is a search that stops after ``MOST_TRIALS`` ways; a net
that needs more than that could come out with an attachment more than it must. On 3,000 random nets of up to ten seams, a fifth of them
twisted, the plan was as short as the shortest that trying every order finds.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations, pairwise

from motifold.symbols.record import dataclass

MOST_TRIALS = 400  # ways of parting trails that are looked at; what is sewn from panels has a few

Slot = int  # a corner of the surface, or -1 - i for the i-th ring of folds


@dataclass(frozen=True, slots=True)
class Going:
    """``slot[run]``: where a run goes on, None where it doesn't. ``forward[s]``: how fold seam s is sewn (rings are left out)."""

    slot: tuple[Slot | None, ...]
    forward: Mapping[int, bool]


def goings(
    ends: Sequence[tuple[int, int]],
    forward: Mapping[int, bool],
    starts: Sequence[int],
    reaches: Sequence[Sequence[Slot]],
    passing: Sequence[Sequence[int]],
) -> Going:
    """``forward``: every open fold trail from its start to its end; ``starts``: the corners where they start, one for each trail.

    ``reaches[run]``: the odd corners and rings that it could go on into, those it would rather have first; ``passing[run]``: the other
    corners where it ends and open fold trails pass.
    """
    plan = _Plan(ends, dict(forward), {*starts, *(slot for reach in reaches for slot in reach if slot < 0)}, reaches)
    for run in range(len(reaches)):
        plan.place(run)
    odd: dict[int, list[int]] = {}
    even: dict[int, list[int]] = {}
    for run in range(len(reaches)):
        for corners, at in ((reaches[run], odd), (passing[run], even)):
            for corner in corners:
                at.setdefault(corner, []).append(run)
    groups: list[tuple[int, tuple[int, ...]]] = [(corner, pair) for corner, runs in even.items() for pair in combinations(runs, 2)]
    groups += [(corner, three) for corner, runs in odd.items() if corner >= 0 for three in combinations(runs, 3)]
    plan = _best(plan, groups)
    return Going(tuple(plan.placed().get(run) for run in range(len(reaches))), plan.way)


def _best(plan: _Plan, groups: Sequence[tuple[int, tuple[int, ...]]]) -> _Plan:
    """The plan that has most runs go on when groups are let in one after another, in any order: up to ``MOST_TRIALS`` are tried."""
    best, trials = plan, MOST_TRIALS
    waiting = [plan]
    while waiting and trials > 0 and len(best.placed()) < len(plan.reaches):
        one = waiting.pop()
        for corner, group in groups[::-1]:
            trials -= 1
            other = one.parted(corner, group) if trials > 0 else None
            if other is not None:
                waiting.append(other)
                best = other if other.runs_gained() > best.runs_gained() else best
    return best


@dataclass(frozen=True, slots=True)
class _Move:
    """Something comes to ``slot``: ``seam``, now sewn the other way; or a run, where it is None."""

    slot: Slot
    seam: int | None


class _Plan:
    """``way``: how each seam is sewn; ``into``: the seams that come to a corner; ``free``: starts that no run has.

    ``holder``: the runs that have one. ``groups``: the corners of runs that go on from one corner together, trails parted for them.
    """

    def __init__(self, ends: Sequence[tuple[int, int]], way: dict[int, bool], free: set[Slot], reaches: Sequence[Sequence[Slot]]) -> None:
        self.ends, self.way, self.free, self.reaches = ends, way, free, reaches
        self.holder: dict[Slot, int] = {}
        self.groups: dict[int, Slot] = {}
        self.into: dict[int, set[int]] = {}
        for seam, ahead in way.items():
            self.into.setdefault(ends[seam][1 if ahead else 0], set()).add(seam)

    def placed(self) -> dict[int, Slot]:
        return {**{run: slot for slot, run in self.holder.items()}, **self.groups}

    def runs_gained(self) -> int:
        """Runs that go on, less the trails that were parted for them."""
        return len(self.holder) + len(self.groups) - sum(list(self.groups.values()).count(slot) // 2 for slot in set(self.groups.values()))

    def place(self, run: int) -> None:
        """Give the run a corner, if the others can make room for it."""
        self._make(self._augmenting([_Move(slot, None) for slot in self.reaches[run]]), run)

    def parted(self, corner: Slot, group: tuple[int, ...]) -> _Plan | None:
        """The plan with one seam that comes to the corner turned away, so that two runs more can go on from there; then all others again.

        Two runs at an even corner; three at an odd one, of which one has the place that is there without parting a trail.
        """
        if any(run in self.groups for run in group) or (len(group) == 3 and corner in self.groups.values()):
            return None
        plan = _Plan(self.ends, dict(self.way), set(self.free), self.reaches)
        plan.holder, plan.groups = dict(self.holder), dict(self.groups)
        for slot in [slot for slot, run in plan.holder.items() if run in group]:
            del plan.holder[slot]
            plan.free.add(slot)
        if len(group) == 3:
            plan._make(plan._augmenting([_Move(corner, None)]), group[0])
            if plan.holder.pop(corner, None) != group[0]:
                return None
        path = plan._augmenting([plan._turned(seam) for seam in sorted(plan.into.get(corner, ()))], corner)
        if not path:
            return None
        plan._make([_Move(corner, None), *path], None)
        plan.groups.update(dict.fromkeys(group, corner))
        done = plan.placed()
        for run in range(len(self.reaches)):
            if run not in done:
                plan.place(run)
        return plan

    def _turned(self, seam: int) -> _Move:
        return _Move(self.ends[seam][0 if self.way[seam] else 1], seam)

    def _make(self, path: Sequence[_Move], run: int | None) -> None:
        held = dict(self.holder)
        for before, move in pairwise(path):
            if move.seam is None:
                del self.holder[before.slot]
            else:
                self.into[before.slot].discard(move.seam)
                self.into.setdefault(move.slot, set()).add(move.seam)
                self.way[move.seam] = not self.way[move.seam]
        for at, move in enumerate(path):
            if move.seam is None:
                mover = held[path[at - 1].slot] if at else run
                if mover is not None:
                    self.holder[move.slot] = mover
        if path:
            self.free.discard(path[-1].slot)

    def _augmenting(self, first: Iterable[_Move], turned_away: Slot | None = None) -> list[_Move]:
        """The moves that end at a free corner, as few as it takes; none where there are none. No seam comes back to ``turned_away``."""
        came: dict[tuple[Slot, bool], tuple[_Move, tuple[Slot, bool] | None]] = {}
        waiting: deque[tuple[Slot, bool]] = deque()

        def reach(move: _Move, before: tuple[Slot, bool] | None) -> None:
            key = (move.slot, move.seam is None)
            if key not in came and key != (turned_away, False):
                came[key] = (move, before)
                waiting.append(key)

        for move in first:
            reach(move, None)
        while waiting:
            key = waiting.popleft()
            slot, by_run = key
            if by_run and slot in self.groups.values():
                continue  # full of runs; seams only pass
            if slot in self.free:
                path: list[_Move] = []
                at: tuple[Slot, bool] | None = key
                while at is not None:
                    move, at = came[at]
                    path.append(move)
                return path[::-1]
            if slot in self.holder:
                for other in self.reaches[self.holder[slot]]:
                    reach(_Move(other, None), key)
            if not (by_run and slot in self.holder):  # a corner has room for one run only
                for seam in sorted(self.into.get(slot, ())):
                    reach(self._turned(seam), key)
        return []
