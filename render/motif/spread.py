"""Places in one dimension: pull each head to its target, keep gaps even, never closer than the least gap, never out of order.

Two linear-time steps: a tridiagonal least-squares problem, then least gaps by pooling adjacent violators (isotonic regression).
"""

from __future__ import annotations

from collections.abc import Sequence


def tridiagonal(diagonal: list[float], off: Sequence[float], right: list[float]) -> list[float]:
    """Solve a symmetric tridiagonal system; ``off[i]`` couples i and i + 1 (Thomas algorithm)."""
    count = len(diagonal)
    scaled, value = [0.0] * count, [0.0] * count
    below = 0.0
    for i in range(count):
        pivot = diagonal[i] - below * (scaled[i - 1] if i else 0.0)
        over = off[i] if i < count - 1 else 0.0
        scaled[i] = over / pivot
        value[i] = (right[i] - below * (value[i - 1] if i else 0.0)) / pivot
        below = over
    for i in range(count - 2, -1, -1):
        value[i] -= scaled[i] * value[i + 1]
    return value


def spread_between(
    targets: Sequence[float], pulls: Sequence[float], gaps: Sequence[float], stiff: Sequence[float], start: float, end: float
) -> list[float]:
    """Places between two fixed ends. ``gaps`` and ``stiff`` have one more entry than ``targets``: the first and last reach the ends."""
    count = len(targets)
    if not count:
        return []
    diagonal = [pulls[i] + stiff[i] + stiff[i + 1] for i in range(count)]
    right = [pulls[i] * targets[i] + stiff[i] * gaps[i] - stiff[i + 1] * gaps[i + 1] for i in range(count)]
    right[0] += stiff[0] * start
    right[-1] += stiff[count] * end
    return tridiagonal(diagonal, [-stiff[i + 1] for i in range(count - 1)], right)


def spread_around(
    targets: Sequence[float], pulls: Sequence[float], gaps: Sequence[float], stiff: Sequence[float], perimeter: float
) -> list[float]:
    """Places round a closed outline; ``gaps[i]`` follows place i and the last one closes the circle (Sherman-Morrison on the corner
    entry).
    """
    count = len(targets)
    if count == 1:
        return [targets[0]]
    pulls = [max(pull, 1e-6) for pull in pulls]
    diagonal = [pulls[i] + stiff[i - 1] + stiff[i] for i in range(count)]
    right = [pulls[i] * targets[i] + stiff[i - 1] * gaps[i - 1] - stiff[i] * gaps[i] for i in range(count)]
    close = stiff[-1]
    right[0] -= close * perimeter
    right[-1] += close * perimeter
    if count == 2:
        off = -(stiff[0] + stiff[1])
        det = diagonal[0] * diagonal[1] - off * off
        return [(right[0] * diagonal[1] - off * right[1]) / det, (diagonal[0] * right[1] - off * right[0]) / det]
    gamma = -diagonal[0]
    diagonal[0] -= gamma
    diagonal[-1] -= close * close / gamma
    off_all = [-s for s in stiff[:-1]]
    first = tridiagonal(diagonal, off_all, right)
    second = tridiagonal(diagonal, off_all, [gamma] + [0.0] * (count - 2) + [-close])
    factor = (first[0] - close * first[-1] / gamma) / (1 + second[0] - close * second[-1] / gamma)
    return [a - factor * b for a, b in zip(first, second, strict=True)]


def pooled(values: Sequence[float], weights: Sequence[float] | None = None) -> list[float]:
    """The nearest non-decreasing sequence, in (weighted) least squares (pool adjacent violators)."""
    blocks: list[tuple[float, float, int]] = []
    for i, value in enumerate(values):
        weight = weights[i] if weights else 1.0
        total, count = value * weight, 1
        while blocks and blocks[-1][0] / blocks[-1][1] > total / weight:
            before, heavy, many = blocks.pop()
            total, weight, count = total + before, weight + heavy, count + many
        blocks.append((total, weight, count))
    return [total / weight for total, weight, count in blocks for _ in range(count)]


def part_between(places: Sequence[float], least: Sequence[float], start: float, end: float) -> list[float]:
    """Places moved as little as possible so that every gap (the ends' too) has its least; too little room is shared out."""
    if not places:
        return []
    scale = min(1.0, (end - start) / max(sum(least), 1e-9))
    run, offsets = 0.0, []
    for gap in least[:-1]:
        run += gap * scale
        offsets.append(run)
    low, high = start, end - least[-1] * scale - run
    moved = pooled([place - offset for place, offset in zip(places, offsets, strict=True)])
    return [min(max(value, low), max(high, low)) + offset for value, offset in zip(moved, offsets, strict=True)]


def part_around(places: Sequence[float], least: Sequence[float], perimeter: float, weights: Sequence[float] | None = None) -> list[float]:
    """The same round a closed outline: three copies are unrolled, the middle one kept."""
    count = len(places)
    if all((places[(i + 1) % count] + (perimeter if i == count - 1 else 0.0)) - places[i] >= least[i] for i in range(count)):
        return list(places)
    scale = min(1.0, perimeter / max(sum(least), 1e-9))
    run, offsets = 0.0, []
    for gap in least:
        offsets.append(run)
        run += gap * scale
    values = [places[i] - offsets[i] + turn * (perimeter - run) for turn in (-1, 0, 1) for i in range(count)]
    moved = pooled(values, [*weights] * 3 if weights else None)[count : 2 * count]
    return [value + offset for value, offset in zip(moved, offsets, strict=True)]
