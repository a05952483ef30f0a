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
    marks = tuple(marks)
    paths = [path_of(mark.points, mark.smooth, isinstance(mark, Fill) or mark.closed, pitch) for mark in marks]
    return styled(marks, paths, color, pitch, weight)


def styled(marks: Iterable[Mark], paths: Iterable[Path], color: str, pitch: float, weight: float = 1.0) -> tuple[Operation, ...]:
    """Marks whose ``paths`` are made already, as strokes and fills of one colour."""
    return tuple(
        StrokePath(path, color, _width(mark, weight) * pitch) if isinstance(mark, Stroke) else FillPath(path, color)
        for mark, path in zip(marks, paths, strict=True)
    )


def _width(mark: Stroke, weight: float) -> float:
    return max(mark.width * weight, min(HAIR_WIDTH, mark.width))
