"""Places on a polygon: each side by itself, between its corners."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import sqrt

from motifold.render.motif.extents import CHANGE_MOST, LENGTH_MOST
from motifold.render.motif.frame import Frame
from motifold.render.motif.outline import Outline
from motifold.render.motif.spread import part_between, spread_between
from motifold.render.motif.task import PULL_SIDE, SLACK, Task, filled, level_of


def on_sides(task: Task, outline: Outline | Frame) -> list[float]:
    """Each side by itself, between its corners."""
    s = [0.0] * task.course.size
    cut = 1 if task.course.open else 0
    on_corner = {corner.at: number + cut for number, corner in enumerate(task.course.corners) if corner.on_stem}
    members: list[list[int]] = [[] for _ in range(task.corners)]
    corner0 = task.course.corners[0]
    first = 0 if cut else corner0.at if corner0.on_stem else (corner0.at + 1) % task.course.size
    for step in range(task.course.size):
        index = (first + step) % task.course.size
        if index in on_corner:
            s[index] = outline.start_of(on_corner[index])
        else:
            members[task.sides[index]].append(index)
    for number, stems in enumerate(members):
        _one_side(task, outline, number, stems, on_corner, s)
    return s


def _one_side(task: Task, outline: Outline | Frame, number: int, stems: list[int], on_corner: dict[int, int], s: list[float]) -> None:
    if not stems:
        return
    room, size = task.room, task.course.size
    start, end = outline.start_of(number), outline.start_of(number + 1)
    before = (stems[0] - 1) % size
    head, tail = room.corner[before], room.corner[stems[-1]]
    after_corner = (head[1], head[3]) if head else (room.least[before], room.like[before]) if before in on_corner else (0.4, 0.5)
    to_corner = (tail[0], tail[2]) if tail else (room.least[stems[-1]], room.like[stems[-1]])
    if task.course.open and (stems[0] == 0 or stems[-1] == size - 1):
        # The first and the last stitch of a row lie on the cut.
        if stems[0] == 0:
            s[0], after_corner, stems = start, (room.least[0], room.like[0]), stems[1:]
        if stems and stems[-1] == size - 1:
            s[size - 1], to_corner, stems = end, (room.least[size - 2], room.like[size - 2]), stems[:-1]
        if not stems:
            return
    least = [after_corner[0], *(room.least[i] for i in stems[:-1]), to_corner[0]]
    like = [after_corner[1], *(room.like[i] for i in stems[:-1]), to_corner[1]]
    full = [after_corner[1] * 1.15, *(room.full[i] for i in stems[:-1]), to_corner[1] * 1.15]
    slack = [False, *(room.slack[i] for i in stems[:-1]), False]
    gaps = filled(like, full, slack, end - start)
    at = [outline.project(task.middles[i], number) for i in stems]
    local = {stem: k for k, stem in enumerate(stems)}
    own = [[local[i] for i in group if i in local] for group in task.groups]
    sub = replace(task, groups=[group for group in own if group])
    whole = {i for group in task.groups if any(j not in local for j in group) for i in group if i in local}
    fanned = _fan(sub, gaps[1:], at)
    targets = [at[k] if stem in whole else fanned[k] for k, stem in enumerate(stems)]
    pulls = [0.0 if task.ring else 0.05 if stem in whole else PULL_SIDE for stem in stems]
    stiff = [1.0, *(SLACK if free else 1.0 for free in slack[1:-1]), 1.0]
    spread = spread_between(targets, pulls, gaps, stiff, start, end)
    if not task.ring:
        low, high = _reach(task, outline, number, stems)
        spread = _between(part_between(spread, least, start, end), low, high)
    for stem, x in zip(stems, part_between(spread, least, start, end), strict=True):
        s[stem] = x


def _reach(task: Task, outline: Outline | Frame, number: int, stems: list[int]) -> tuple[list[float], list[float]]:
    """How far along the side each stem can lean before it is drawn too long."""
    low, high = [], []
    for i in stems:
        middle, height = task.middles[i], task.course.stems[i].height
        rise = outline.apothem - level_of(task, i, outline)
        most = CHANGE_MOST if task.changed else LENGTH_MOST
        lean = sqrt(max((most * height) ** 2 - rise * rise, (0.2 * height) ** 2))
        centre = outline.abreast(middle, number)
        low.append(centre - lean)
        high.append(centre + lean)
    return low, high


def _between(places: list[float], low: list[float], high: list[float]) -> list[float]:
    """Places held between their bounds, still in order."""
    held = [min(max(x, a), b) if a <= b else x for x, a, b in zip(places, low, high, strict=True)]
    for i in range(1, len(held)):
        held[i] = max(held[i], held[i - 1])
    return held


def _fan(task: Task, gaps: Sequence[float], at: Sequence[float]) -> list[float]:
    """Targets: each base's place, and the fan of its stems about it. ``at``: the place of each stem's own foot."""
    sums = [0.0] * len(at)
    counts = [0] * len(at)
    for group in task.groups:
        places = [0.0]
        for before in group[:-1]:
            places.append(places[-1] + gaps[before])
        middle = (places[0] + places[-1]) / 2
        base = sum(at[i] for i in group) / len(group)
        for i, x in zip(group, places, strict=True):
            sums[i] += base + x - middle
            counts[i] += 1
    return [total / count if count else a for total, count, a in zip(sums, counts, at, strict=True)]
