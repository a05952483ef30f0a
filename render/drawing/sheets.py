"""A drawing that is too large for a page, over several sheets that overlap: each with its name, its place among the others and trim marks.

What a sheet says about itself stands in its foot. With ``check`` there is a bar of five centimetres too, so that whoever prints it can see
with a ruler that nothing was scaled on the way.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Final

from motifold.render.drawing.display import Drawing, FillPath, Group, Operation, Path, Point, StrokePath, Text, Transform
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.inks import HAIR, INK, PAPER, QUIET
from motifold.render.drawing.measure import bounds

MARGIN_MM: Final = 12.0
FOOT_MM: Final = 9.0
OVERLAP_MM: Final = 14.0
CHECK_MM: Final = 50.0
NAME_PT, NOTE_PT = 13.0, 7.5
_TICK_MM = 4.0


@dataclass(frozen=True, slots=True)
class Split:
    """``across`` by ``down`` sheets of paper of ``page`` (width, height in mm), each with ``wide`` by ``high`` mm of the drawing."""

    page: tuple[float, float]
    wide: float
    high: float
    across: int
    down: int

    @property
    def sheets(self) -> int:
        return self.across * self.down


def split_over(size_mm: tuple[float, float], page: tuple[float, float]) -> Split:
    """The fewest sheets of ``page`` (as it lies) that show a drawing of this size."""
    room = page[0] - 2 * MARGIN_MM, page[1] - 2 * MARGIN_MM - FOOT_MM
    across, down = (
        max(1, ceil((size - OVERLAP_MM) / (space - OVERLAP_MM) - 1e-9)) for size, space in zip(size_mm, room, strict=True)
    )
    return Split(page, *room, across, down)


def sheet_name(row: int, column: int) -> str:
    """A1 is the top left, A2 beside it, B1 below."""
    return f"{chr(65 + row % 26) * (1 + row // 26)}{column + 1}"


def corner_of(drawing: Drawing, split: Split, row: int, column: int) -> Point:
    """The lower left corner of a sheet's part, in the drawing's mm; the drawing lies in the middle of all sheets together."""
    spare = (
        split.across * (split.wide - OVERLAP_MM) + OVERLAP_MM - drawing.width_mm,
        split.down * (split.high - OVERLAP_MM) + OVERLAP_MM - drawing.height_mm,
    )
    left = drawing.box[0] - spare[0] / 2 + column * (split.wide - OVERLAP_MM)
    top = drawing.box[3] + spare[1] / 2 - row * (split.high - OVERLAP_MM)
    return left, top - split.high


def make_sheets(drawing: Drawing, split: Split, title: str, check: bool = False) -> tuple[tuple[str, Drawing], ...]:
    """All sheets with their names, in rows from the top left."""
    return tuple(
        (sheet_name(row, column), make_sheet(drawing, split, row, column, title, check))
        for row in range(split.down)
        for column in range(split.across)
    )


def make_sheet(drawing: Drawing, split: Split, row: int, column: int, title: str, check: bool = False) -> Drawing:
    """One sheet. The first tells what the whole shows; the others only which they are."""
    x, y = corner_of(drawing, split, row, column)
    area = (x, y, x + split.wide, y + split.high)
    shift = Transform(e=MARGIN_MM - x, f=MARGIN_MM + FOOT_MM - y)
    kept = tuple(op for op in drawing.operations if _meets(_reach(op), area))
    name = sheet_name(row, column)
    several = split.sheets > 1
    operations: list[Operation] = [Group(kept, transform=shift, clip=box_path(*area)), *_joins(split, row, column)]
    left = MARGIN_MM
    if several:
        operations.append(Text(left, MARGIN_MM, name, "serif-bold", NAME_PT, INK))
        left += 12.0
        operations += _locator(split, row, column, split.page[0] - MARGIN_MM, MARGIN_MM)
    operations.append(Text(left, MARGIN_MM, title, "sans", NOTE_PT, QUIET))
    if check:
        operations += check_bar(split.page[0] - MARGIN_MM - (14.0 if several else 0.0) - CHECK_MM, MARGIN_MM)
    about = f"Sheet {name} of {split.sheets}"
    if not several:
        return Drawing((0.0, 0.0, *split.page), tuple(operations), title, drawing.description)
    about = f"{about}: {drawing.description}" if row == column == 0 else f"{about}."
    return Drawing((0.0, 0.0, *split.page), tuple(operations), f"{title}, sheet {name}", about)


def check_bar(x: float, y: float) -> list[Operation]:
    """A bar of exactly 5 cm from (x, y), and what it is for, above it."""
    lines = [line_path((x, y + 1.1), (x + CHECK_MM, y + 1.1)), *(line_path((at, y), (at, y + 2.2)) for at in (x, x + CHECK_MM))]
    strokes: list[Operation] = [StrokePath(path, INK, 0.2, cap="butt") for path in lines]
    words = "5 cm (2 in less 1 mm): measure it"
    return [*strokes, Text(x + CHECK_MM / 2, y + 3.2, words, "sans", NOTE_PT - 0.5, QUIET, "middle")]


def outlines_over(drawing: Drawing, split: Split, scale: float, origin: Point) -> list[Operation]:
    """The sheets as boxes with their names, over a small picture of the drawing: its mm times ``scale``, from ``origin``."""
    out: list[Operation] = []
    for row in range(split.down):
        for column in range(split.across):
            x, y = corner_of(drawing, split, row, column)
            ax, ay = (x - origin[0]) * scale, (y - origin[1]) * scale
            bx, by = ax + split.wide * scale, ay + split.high * scale
            out.append(StrokePath(box_path(ax, ay, bx, by), QUIET, 0.2))
            mx, my, name = (ax + bx) / 2, (ay + by) / 2, sheet_name(row, column)
            half = text_width_mm(name, "serif-bold", 12.0) / 2 + 1.2
            out.append(FillPath(box_path(mx - half, my - 3, mx + half, my + 3), PAPER))
            out.append(Text(mx, my - cap_height_mm("serif-bold", 12.0) / 2, name, "serif-bold", 12.0, INK, "middle"))
    return out


def span(drawing: Drawing, split: Split) -> tuple[float, float, float, float]:
    """The box of all sheets together, in the drawing's mm."""
    first, last = corner_of(drawing, split, 0, 0), corner_of(drawing, split, split.down - 1, split.across - 1)
    return first[0], last[1], last[0] + split.wide, first[1] + split.high


def box_path(x0: float, y0: float, x1: float, y1: float) -> Path:
    return Path((("M", x0, y0), ("L", x1, y0), ("L", x1, y1), ("L", x0, y1), ("Z",)))


def line_path(start: Point, end: Point) -> Path:
    return Path((("M", *start), ("L", *end)))


def _joins(split: Split, row: int, column: int) -> list[Operation]:
    """Where the neighbouring sheets lie: a fine broken line in the middle of each overlap, ticks at its ends and the neighbour's name."""
    left, low = MARGIN_MM, MARGIN_MM + FOOT_MM
    right, top = left + split.wide, low + split.high
    half = OVERLAP_MM / 2
    out: list[Operation] = []

    def line(a: Point, b: Point, dash: tuple[float, ...] = ()) -> None:
        out.append(StrokePath(line_path(a, b), HAIR if dash else QUIET, 0.12 if dash else 0.18, dash, cap="butt"))

    for there, at, way in ((column > 0, left + half, -1), (column + 1 < split.across, right - half, 1)):
        if there:
            line((at, low), (at, top), (0.5, 1.3))
            line((at, low), (at, low - _TICK_MM))
            line((at, top), (at, top + _TICK_MM))
            words = sheet_name(row, column + way)
            out.append(Text(at + 1.2 * way, top + 1.2, words, "sans", NOTE_PT, QUIET, "start" if way > 0 else "end"))
    for there, at, way in ((row > 0, top - half, -1), (row + 1 < split.down, low + half, 1)):
        if there:
            line((left, at), (right, at), (0.5, 1.3))
            line((left, at), (left - _TICK_MM, at))
            line((right, at), (right + _TICK_MM, at))
            level = at + (1.2 if way < 0 else -1.2 - cap_height_mm("sans", NOTE_PT))
            out.append(Text(left - 1.2, level, sheet_name(row + way, column), "sans", NOTE_PT, QUIET, "end"))
    return out


def _locator(split: Split, row: int, column: int, right: float, low: float) -> list[Operation]:
    """A tiny picture of all sheets, this one filled."""
    high = min(6.5, 1.8 * split.down)
    cell_high = high / split.down
    cell_wide = min(cell_high * split.wide / split.high, 12.0 / split.across)
    out: list[Operation] = []
    for i in range(split.down):
        for j in range(split.across):
            x, y = right - (split.across - j) * cell_wide, low + high - (i + 1) * cell_high
            box = box_path(x, y, x + cell_wide, y + cell_high)
            if (i, j) == (row, column):
                out.append(FillPath(box, QUIET))
            out.append(StrokePath(box, QUIET, 0.12))
    return out


def _meets(box: tuple[float, float, float, float] | None, area: tuple[float, float, float, float]) -> bool:
    return box is not None and box[0] <= area[2] and box[2] >= area[0] and box[1] <= area[3] and box[3] >= area[1]


def _reach(operation: Operation) -> tuple[float, float, float, float] | None:
    """A box that surely holds the ink: of handles and points, which is quick; exact for what has words or is moved."""
    paths: list[tuple[Path, float]] = []
    parts = operation.children if isinstance(operation, Group) and operation.transform is None else (operation,)
    for part in parts:
        if isinstance(part, StrokePath):
            paths.append((part.path, part.width_mm / 2))
        elif isinstance(part, FillPath):
            paths.append((part.path, 0.0))
        else:
            return bounds((operation,))
    numbers = [(values[i : i + 2], more) for path, more in paths for _, *values in path.commands for i in range(0, len(values), 2)]
    if not numbers:
        return None
    xs = [(float(pair[0]), more) for pair, more in numbers]
    ys = [(float(pair[1]), more) for pair, more in numbers]
    return (min(x - m for x, m in xs), min(y - m for y, m in ys), max(x + m for x, m in xs), max(y + m for y, m in ys))
