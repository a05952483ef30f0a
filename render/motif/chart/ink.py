"""Marks in u to operations in mm."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from motifold.render.drawing.display import FillPath, Operation, Path, StrokePath
from motifold.symbols.ink import Fill, Mark, Point, Stroke
from motifold.symbols.sizes import HAIR_WIDTH

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


_EDGE_MM = 0.115
"""The dark edge of a line that is drawn in a pale colour; of a broad one a third."""
_CORE_MM = 0.04
"""A finer core would not be seen."""
_CAP_STEPS = 4
"""A round end is drawn in so many pieces, as the outlines of single marks are."""


def weighted(mark: Mark, weight: float) -> Mark:
    """The mark with its stroke that much heavier or lighter, but never thinner than a hairline."""
    if weight == 1.0 or isinstance(mark, Fill):
        return mark
    return Stroke(mark.points, _width(mark, weight), mark.smooth, mark.closed)


def capsules(strokes: Sequence[Stroke]) -> NDArray[np.float64]:
    """The outlines of straight strokes with their round ends, ten points each, in u: (stroke, point, x or y)."""
    import numpy as np

    ends = np.asarray([stroke.points for stroke in strokes])
    half = np.asarray([stroke.width / 2 for stroke in strokes])[:, None]
    along = ends[:, 1] - ends[:, 0]
    length = np.hypot(along[:, 0], along[:, 1])[:, None]
    along = np.where(length > 1e-12, along / np.maximum(length, 1e-12), (1.0, 0.0)) * half
    side = np.stack([along[:, 1], -along[:, 0]], axis=1)
    turns = np.pi * np.arange(_CAP_STEPS + 1)[None, :, None] / _CAP_STEPS
    turn = side[:, None, :] * np.cos(turns) + along[:, None, :] * np.sin(turns)
    return np.concatenate([ends[:, 1, None] + turn, ends[:, 0, None] - turn], axis=1)


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


def styled(
    marks: Iterable[Mark], paths: Iterable[Path], color: str, pitch: float, weight: float = 1.0, core: str | None = None
) -> tuple[Operation, ...]:
    """Marks whose ``paths`` are made already, as strokes and fills of one colour; with ``core`` its strokes are only the edges of that.

    All edges come first, so that the cores of strokes that meet run together.
    """
    drawn = tuple(
        StrokePath(path, color, _width(mark, weight) * pitch) if isinstance(mark, Stroke) else FillPath(path, color)
        for mark, path in zip(marks, paths, strict=True)
    )
    if core is None:
        return drawn
    inner = (op for op in drawn if isinstance(op, StrokePath) and op.width_mm > 2 * _EDGE_MM + _CORE_MM)
    return (*drawn, *(StrokePath(op.path, core, op.width_mm - 2 * max(_EDGE_MM, op.width_mm / 3)) for op in inner))


def _width(mark: Stroke, weight: float) -> float:
    return max(mark.width * weight, min(HAIR_WIDTH, mark.width))
