"""The pattern's own passes, proved: every seam once, and each pass a walk that the yarn can make without being fastened off."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.model import PassStep
from motifold.render.assembly.passes import Trail
from motifold.render.assembly.sides import listed
from motifold.render.pattern.problem import Problem, Span


def prove_passes(
    written: Sequence[Sequence[int]], names: Sequence[str], ends: Sequence[tuple[int, int]], span: Span
) -> tuple[tuple[Trail, ...], tuple[Problem, ...]]:
    """``written``: the seams of each pass by number. A pass that cannot be walked is cut where it breaks, and the problem says where."""
    problems = []
    times = [0] * len(ends)
    for one in written:
        for seam in one:
            times[seam] += 1
    twice = [names[s] for s, count in enumerate(times) if count > 1]
    if twice:
        problems.append(
            Problem("pass-twice", "error", span, f"{listed(twice)}: sewn more than once by these passes", "name each seam in one pass only")
        )
    missing = [names[s] for s, count in enumerate(times) if count == 0]
    if missing:
        hint = "add it to a pass, or leave `passes` out and they are planned"
        problems.append(Problem("pass-missing", "error", span, f"{listed(missing)}: no pass sews it", hint))
    trails: list[Trail] = []
    for number, one in enumerate(written, start=1):
        walked, breaks = _walk(one, ends)
        trails += walked
        for before, after in breaks:
            message = f"pass {number} can't go on from {names[before]} to {names[after]}: they share no corner"
            problems.append(
                Problem("pass-broken", "error", span, message, "start a new pass there: the yarn has to be fastened off and attached again")
            )
            break
    return tuple(trails), tuple(problems)


def _walk(seams: Sequence[int], ends: Sequence[tuple[int, int]]) -> tuple[list[Trail], list[tuple[int, int]]]:
    trails, breaks = [], []
    # For each way that the last seam can have been worked: the steps so far. At most two, since a seam has two directions.
    ways: list[tuple[PassStep, ...]] = []
    for seam in seams:
        onward = _onward(ways, seam, ends)
        if not onward:
            if ways:
                trails.append(_trail(ways[0], ends))
                breaks.append((ways[0][-1].seam, seam))
            onward = [(PassStep(seam, True),), (PassStep(seam, False),)]
        ways = onward
    if ways:
        trails.append(min((_trail(way, ends) for way in ways), key=lambda trail: not trail.closed))
    return trails, breaks


def _onward(ways: list[tuple[PassStep, ...]], seam: int, ends: Sequence[tuple[int, int]]) -> list[tuple[PassStep, ...]]:
    found: dict[bool, tuple[PassStep, ...]] = {}
    for way in ways:
        last = way[-1]
        corner = ends[last.seam][1 if last.forward else 0]
        for forward in (True, False):
            if ends[seam][0 if forward else 1] == corner:
                found.setdefault(forward, (*way, PassStep(seam, forward)))
    return list(found.values())


def _trail(steps: tuple[PassStep, ...], ends: Sequence[tuple[int, int]]) -> Trail:
    first, last = steps[0], steps[-1]
    start = ends[first.seam][0 if first.forward else 1]
    return Trail(steps, start == ends[last.seam][1 if last.forward else 0])
