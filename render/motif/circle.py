"""Places on a circle, an oval, or the half circle of a half motif."""

from __future__ import annotations

from cmath import phase as argument
from collections.abc import Sequence
from itertools import pairwise
from math import pi

from motifold.render.motif.outline import Outline
from motifold.render.motif.spread import part_around, part_between, spread_around, spread_between
from motifold.render.motif.task import PULL_LACE, PULL_SOLID, SLACK, Task, filled

_PIN = 50.0
"""Pull of a place that a petal fixes."""
_LEAN = 0.75
"""How far beside its foot a head may stand, over the height of its stem: it is drawn a quarter longer then."""
_UPRIGHT = 1.0
"""How strongly stitches along the straight sides of an oval are drawn over the one that they stand on."""
_OVER, _OPEN = 0.02, 1e-4
"""In gores: how strongly heads are drawn over their feet, and how stiff an open wedge is, against 1 for neighbours."""


def on_circle(task: Task, outline: Outline) -> list[float]:
    """Places round a closed outline without corners: even, drawn a little over their bases."""
    room, perimeter = task.room, outline.perimeter
    if task.course.open:
        return _on_half_circle(task, perimeter / 2)
    cut = bool(task.cuts) and perimeter > sum(room.full)
    gaps = _cut(task, perimeter) if cut else filled(room.like, room.full, room.slack, perimeter)
    even = _running(gaps)
    if task.ring:
        return part_around(even, room.least, perimeter)
    at = _unwrapped(task, outline)
    if at is None:
        return part_around(even, room.least, perimeter)
    feet, at = at, _fan_round(task, gaps, at, perimeter)
    if cut:
        stiff = [_OPEN if free else 1.0 for free in task.cuts]
        places = spread_around(at, [_OVER] * len(at), gaps, stiff, perimeter)
        return part_around(_leaning(task, places, at), room.least, perimeter)
    loose = any(room.slack)
    pull = PULL_LACE if loose else PULL_SOLID
    stiff = [SLACK if free else 1.0 for free in room.slack]
    if not task.pins:
        pulls = [_UPRIGHT if column else pull for column in _columns(task)]
        places = spread_around(at, pulls, gaps, stiff, perimeter)
        return part_around(_leaning(task, places, feet) if task.spine else places, room.least, perimeter)
    return _round_petals(task, outline, at, gaps, stiff, pull)


def _columns(task: Task) -> list[bool]:
    """Which stitches of an oval stand alone over its straight sides: upright there, all that is increased lies round its ends."""
    count = task.course.size
    beside = [{i for group in task.groups if k in group for i in group} for k in range(count)] if task.spine else []
    return [
        bool(beside) and abs(middle.real) < task.spine and not beside[k] & {(k - 1) % count, (k + 1) % count}
        for k, middle in enumerate(task.middles)
    ]


def _cut(task: Task, perimeter: float) -> list[float]:
    """Gaps of a round of gores: stitches side by side as they like to stand at their widest, all that is left over between the gores."""
    full = task.room.full
    left = (perimeter - sum(full)) / sum(task.cuts)
    return [gap + left if free else gap for gap, free in zip(full, task.cuts, strict=True)]


def _leaning(task: Task, places: list[float], at: list[float]) -> list[float]:
    """Heads no further beside the middle of their feet than their stems can lean."""
    lean = [_LEAN * stem.height for stem in task.course.stems]
    return [min(max(x, foot - reach), foot + reach) for x, foot, reach in zip(places, at, lean, strict=True)]


def _round_petals(task: Task, outline: Outline, at: list[float], gaps: list[float], stiff: list[float], pull: float) -> list[float]:
    """Petals stand where they stand; what lies between them keeps its room to their edges."""
    perimeter, count = outline.perimeter, len(at)
    fixed = [i in task.pins for i in range(count)]
    for i in range(count):
        if fixed[i]:
            at[i] += _wrapped(outline.project(task.pins[i], 0) - at[i], perimeter)
    least = list(task.room.least)
    for i in range(count):
        after = (i + 1) % count
        if fixed[i] and fixed[after]:
            gaps[i] = at[after] - at[i] + (perimeter if after == 0 else 0.0)
            least[i] = min(least[i], gaps[i])
        else:
            # Heads that stay below the outline come nearer to each other than their places on it.
            low = min(outline.level(task.middles[k]) + 1.1 * task.course.stems[k].height for k in (i, after))
            least[i] *= max(1.0, outline.apothem / low)
    pulls = [_PIN if pinned else pull for pinned in fixed]
    return part_around(spread_around(at, pulls, gaps, stiff, perimeter), least, perimeter, pulls)


def _on_half_circle(task: Task, length: float) -> list[float]:
    """From one end of the cut to the other: the first and the last stitch of a row lie along it."""
    room, count = task.room, task.course.size
    if count < 3:
        return [length * (k + 0.5) / count for k in range(count)] if count < 2 else [0.0, length]
    gaps = filled(room.like[:-1], room.full[:-1], room.slack[:-1], length)
    stiff = [SLACK if free else 1.0 for free in room.slack[:-1]]
    angles = [0.0]
    for before, after in zip(task.middles, task.middles[1:], strict=False):
        angles.append(angles[-1] + argument(after / before))
    at = [max(0.0, argument(task.middles[0])) + angle for angle in angles]
    targets = [x * length / pi for x in at[1:-1]]
    pull = 0.0 if task.ring else PULL_LACE if any(room.slack[:-1]) else PULL_SOLID
    inner = spread_between(targets, [max(pull, 1e-6)] * (count - 2), gaps, stiff, 0.0, length)
    return [0.0, *part_between(inner, room.least[:-1], 0.0, length), length]


def _running(gaps: Sequence[float]) -> list[float]:
    places = [0.0]
    for gap in gaps[:-1]:
        places.append(places[-1] + gap)
    return places


def _unwrapped(task: Task, outline: Outline) -> list[float] | None:
    """Places of the feet along the outline, counted on from stem to stem; None when they do not go round exactly once."""
    perimeter = outline.perimeter
    places = [outline.project(middle, 0) for middle in task.middles]
    counted = [places[0] - perimeter if places[0] > perimeter / 2 else places[0]]
    for before, after in pairwise(places):
        counted.append(counted[-1] + _wrapped(after - before, perimeter))
    last = counted[-1] + _wrapped(places[0] - places[-1], perimeter) - counted[0]
    return counted if abs(last - perimeter) < 0.02 * perimeter else None


def _wrapped(step: float, perimeter: float) -> float:
    return (step + perimeter / 2) % perimeter - perimeter / 2


def _fan_round(task: Task, gaps: Sequence[float], at: list[float], perimeter: float) -> list[float]:
    """``_fan`` on a closed outline: members of a group that lie across the start are read one turn later."""
    count = len(at)
    sums, counts = [0.0] * count, [0] * count
    for group in task.groups:
        places, laps, lap = [0.0], [0.0], 0.0
        for before, after in pairwise(group):
            lap += perimeter if after < before else 0.0
            places.append(places[-1] + (gaps[before] if (after - before) % count == 1 else at[after] + lap - at[before] - laps[-1]))
            laps.append(lap)
        base = sum(at[i] + lap for i, lap in zip(group, laps, strict=True)) / len(group)
        middle = (places[0] + places[-1]) / 2
        for i, x, lap in zip(group, places, laps, strict=True):
            sums[i] += base + x - middle - lap
            counts[i] += 1
    return [total / number if number else a for total, number, a in zip(sums, counts, at, strict=True)]
