"""Marks in u to operations in mm."""

from __future__ import annotations

from collections.abc import Iterable

from motifold.render.drawing.display import FillPath, Operation, Path, StrokePath
from motifold.symbols.ink import Fill, Mark, Point, Stroke
from motifold.symbols.sizes import HAIR_WIDTH


def weighted(mark: Mark, weight: float) -> Mark:
    """The mark with its stroke that much heavier or lighter, but never thinner than a hairline."""
    if weight == 1.0 or isinstance(mark, Fill):
        return mark
    return Stroke(mark.points, _width(mark, weight), mark.smooth, mark.closed)


def path_of(points: tuple[Point, ...], smooth: bool, closed: bool, pitch: float) -> Path:
    """Points in u as a path in mm."""
    flat = [(x * pitch, y * pitch) for x, y in points]
    commands: list[tuple[str | float, ...]] = [("M", *flat[0])]
    if smooth:
        commands += [("C", *flat[i], *flat[i + 1], *flat[i + 2]) for i in range(1, len(flat) - 2, 3)]
    else:
        commands += [("L", *p) for p in flat[1:]]
    if closed:
        commands.append(("Z",))
    return Path(tuple(commands))


def operations(marks: Iterable[Mark], color: str, pitch: float, weight: float = 1.0) -> tuple[Operation, ...]:
    """Marks as strokes and fills of one colour; ``pitch`` is u in mm."""
    out: list[Operation] = []
    for mark in marks:
        if isinstance(mark, Stroke):
            width = _width(mark, weight)
            out.append(StrokePath(path_of(mark.points, mark.smooth, mark.closed, pitch), color, width * pitch))
        else:
            out.append(FillPath(path_of(mark.points, mark.smooth, True, pitch), color))
    return tuple(out)


def _width(mark: Stroke, weight: float) -> float:
    return max(mark.width * weight, min(HAIR_WIDTH, mark.width))
