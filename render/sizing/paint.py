"""Small helpers for the room's own pictures: boxes, lines, words and hatching, in millimetres, y up."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import floor, log10

from motifold.render.drawing.display import FillPath, Group, Operation, Path, Point, StrokePath, Text

INK = "#1a1a1a"
QUIET = "#595959"   # second words: 7 : 1 on white (WCAG 2, 1.4.3)
HAIR = "#dcdcdc"    # grid lines, below everything
PAPER = "#ffffff"
THIN_MM = 0.25
THICK_MM = 0.5
LETTER_PT = 9.0
SMALL_PT = 8.0
CAP_EM = 0.66       # height of capitals
MM_PER_PT = 25.4 / 72
GREYS = ("#5f6b73", "#b0a698", "#8a5f57", "#7d8f69", "#c2b280", "#6f6a8a")
"""For yarns whose colour the file does not say."""


def box(x0: float, y0: float, x1: float, y1: float) -> Path:
    return Path((("M", x0, y0), ("L", x1, y0), ("L", x1, y1), ("L", x0, y1), ("Z",)))


def polygon(points: Sequence[Point]) -> Path:
    first, *others = points
    return Path((("M", *first), *(("L", *point) for point in others), ("Z",)))


def line(points: Iterable[Point], color: str = INK, width: float = THIN_MM, dash: tuple[float, ...] = ()) -> StrokePath:
    first, *others = points
    return StrokePath(Path((("M", *first), *(("L", *point) for point in others))), color, width, dash, "butt", "miter")


def disc(x: float, y: float, radius: float) -> Path:
    k = 0.5522847498 * radius
    return Path((
        ("M", x + radius, y), ("C", x + radius, y + k, x + k, y + radius, x, y + radius),
        ("C", x - k, y + radius, x - radius, y + k, x - radius, y), ("C", x - radius, y - k, x - k, y - radius, x, y - radius),
        ("C", x + k, y - radius, x + radius, y - k, x + radius, y), ("Z",),
    ))  # fmt: skip


def words(x: float, y: float, text: str, size: float = LETTER_PT, color: str = INK, anchor: str = "start", bold: bool = False) -> Text:
    """Words whose capitals are centred on ``y``."""
    drop = CAP_EM * size * MM_PER_PT / 2
    face = "sans-bold" if bold else "sans"
    return Text(x, y - drop, text, face, size, color, anchor)  # type: ignore[arg-type]


def hatched(x0: float, y0: float, x1: float, y1: float, kind: str, color: str) -> Group:
    """Lines across a box, clipped to it: "rising", "falling", "upright" or "level"."""
    step, height = 1.1, y1 - y0
    lines: list[Operation] = []
    if kind == "level":
        lines = [line(((x0, y0 + i * step), (x1, y0 + i * step)), color, 0.3) for i in range(1, int(height / step) + 1)]
    elif kind == "upright":
        lines = [line(((x0 + i * step, y0), (x0 + i * step, y1)), color, 0.3) for i in range(1, int((x1 - x0) / step) + 1)]
    else:
        lean = height if kind == "rising" else -height
        for i in range(-int(height / step) - 1, int((x1 - x0 + height) / step) + 2):
            lines.append(line(((x0 + i * step, y0), (x0 + i * step + lean, y1)), color, 0.3))
    return Group(tuple(lines), clip=box(x0, y0, x1, y1))


def tint(color: str, share: float) -> str:
    """The colour mixed with white: ``share`` of it is left."""
    parts = [int(color[i : i + 2], 16) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(255 - share * (255 - part)):02x}" for part in parts)


def steps(low: float, high: float, most: int) -> tuple[float, ...]:
    """Round numbers (1, 2 or 5 times a power of ten apart) from ``low`` to ``high``, at most so many and one."""
    raw = max((high - low) / max(most, 1), 1e-9)
    power = 10.0 ** floor(log10(raw))
    step = next(factor * power for factor in (1, 2, 5, 10) if factor * power >= raw * (1 - 1e-9))
    first = floor(low / step + 1e-9)
    found = [round((first + i) * step, 9) for i in range(most + 4)]
    return tuple(value for value in found if low - 1e-9 <= value <= high + 1e-9)


def filled(path: Path, color: str) -> FillPath:
    return FillPath(path, color)


def pushed_apart(wanted: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Places as near to those wanted as ``gap`` between neighbours allows, in the same order from low to high, within the ends."""
    order = sorted(range(len(wanted)), key=lambda i: (wanted[i], i))
    placed = [0.0] * len(wanted)
    at = low
    for i in order:
        placed[i] = max(wanted[i], at)
        at = placed[i] + gap
    top = high
    for i in reversed(order):
        placed[i] = min(placed[i], top)
        top = placed[i] - gap
    return placed
