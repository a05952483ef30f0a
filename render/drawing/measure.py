"""Measuring and changing drawings: boxes, transforms, styles. Nothing is changed in place; a new list comes back."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from motifold.render.drawing.display import (
    Drawing,
    FillPath,
    Group,
    Image,
    Operation,
    Path,
    Point,
    StrokePath,
    Text,
    Transform,
    UnsupportedOperation,
)
from motifold.render.drawing.fonts import UNITS_PER_EM, glyph_heights, glyph_outline, shape, text_width_mm
from motifold.render.drawing.images import grey_image
from motifold.render.drawing.numbers import MM_PER_PT

Box = tuple[float, float, float, float]
Mark = StrokePath | FillPath | Text
IDENTITY = Transform()


def compose(outer: Transform, inner: Transform) -> Transform:
    """First ``inner``, then ``outer``."""
    return Transform(
        outer.a * inner.a + outer.c * inner.b, outer.b * inner.a + outer.d * inner.b,
        outer.a * inner.c + outer.c * inner.d, outer.b * inner.c + outer.d * inner.d,
        outer.a * inner.e + outer.c * inner.f + outer.e, outer.b * inner.e + outer.d * inner.f + outer.f,
    )


def apply(transform: Transform, point: Point) -> Point:
    x, y = point
    return transform.a * x + transform.c * y + transform.e, transform.b * x + transform.d * y + transform.f


def transform_path(path: Path, by: Transform) -> Path:
    """``path`` with every point moved by ``by``."""
    commands: list[tuple[str | float, ...]] = []
    for name, *values in path.commands:
        moved: list[str | float] = [name]
        for x, y in zip(values[0::2], values[1::2], strict=True):
            moved += apply(by, (float(x), float(y)))
        commands.append(tuple(moved))
    return Path(tuple(commands))


def transform(operations: Iterable[Operation], by: Transform) -> tuple[Operation, ...]:
    """The operations moved, turned or scaled; line widths and letters scale with them (``restyle`` sets widths anew)."""
    return (Group(tuple(operations), transform=by),)


def place(drawing: Drawing, x_mm: float, y_mm: float, scale: float = 1.0) -> tuple[Operation, ...]:
    """The drawing's operations with the lower left corner of its box at (x, y), scaled about it."""
    return transform(drawing.operations, Transform(scale, 0.0, 0.0, scale, x_mm - scale * drawing.box[0], y_mm - scale * drawing.box[1]))


def restyle(operations: Iterable[Operation], change: Callable[[Mark], Mark]) -> tuple[Operation, ...]:
    """Every stroke, fill and text passed through ``change``; groups keep their shape, pictures made of dots their dots."""
    changed: list[Operation] = []
    for operation in operations:
        match operation:
            case Group():
                changed.append(replace(operation, children=restyle(operation.children, change)))
            case Image():
                changed.append(operation)
            case _:
                changed.append(change(operation))
    return tuple(changed)


def relative_luminance(color: str) -> float:
    """Of ``#rrggbb``, 0 for black to 1 for white (WCAG 2, definition of relative luminance)."""
    channels = (int(color[i : i + 2], 16) / 255 for i in (1, 3, 5))
    red, green, blue = (value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4 for value in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(color: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2, definition).

    >>> round(contrast("#0072b2", "#ffffff"), 2)
    5.19
    """
    dark, light = sorted((relative_luminance(color), relative_luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def grey_of(color: str) -> str:
    """The grey as light as ``color``: its relative luminance turned back into sRGB.

    >>> grey_of("#ff0000"), grey_of("#ffffff")
    ('#7f7f7f', '#ffffff')
    """
    luminance = relative_luminance(color)
    level = 12.92 * luminance if luminance <= 0.0031308 else 1.055 * luminance ** (1 / 2.4) - 0.055
    return "#" + f"{round(level * 255):02x}" * 3


def in_greys(drawing: Drawing) -> Drawing:
    """The same drawing without colour."""
    greyed = restyle(drawing.operations, lambda operation: replace(operation, color=grey_of(operation.color)))
    return replace(drawing, operations=_grey_images(greyed))


def _grey_images(operations: Iterable[Operation]) -> tuple[Operation, ...]:
    found: list[Operation] = []
    for operation in operations:
        match operation:
            case Group():
                found.append(replace(operation, children=_grey_images(operation.children)))
            case Image():
                found.append(grey_image(operation))
            case _:
                found.append(operation)
    return tuple(found)


def _curve_extremes(p0: float, p1: float, p2: float, p3: float) -> Iterator[float]:
    """Values of a cubic Bezier coordinate where its derivative is zero, inside the curve."""
    a, b, c = p3 - 3 * p2 + 3 * p1 - p0, 2 * (p2 - 2 * p1 + p0), p1 - p0
    if abs(a) < 1e-12:
        roots = [-c / b] if abs(b) > 1e-12 else []
    else:
        discriminant = b * b - 4 * a * c
        roots = [] if discriminant < 0 else [(-b + sign * math.sqrt(discriminant)) / (2 * a) for sign in (1, -1)]
    for t in roots:
        if 0 < t < 1:
            yield (1 - t) ** 3 * p0 + 3 * (1 - t) ** 2 * t * p1 + 3 * (1 - t) * t * t * p2 + t**3 * p3


def path_box(path: Path) -> Box | None:
    """The box of the path itself, curves measured exactly; None for an empty path."""
    xs: list[float] = []
    ys: list[float] = []
    at = (0.0, 0.0)
    for name, *values in path.commands:
        points = [(float(x), float(y)) for x, y in zip(values[0::2], values[1::2], strict=True)]
        if name == "C":
            (x1, y1), (x2, y2), (x3, y3) = points
            xs += [x3, *_curve_extremes(at[0], x1, x2, x3)]
            ys += [y3, *_curve_extremes(at[1], y1, y2, y3)]
        elif points:
            xs.append(points[0][0])
            ys.append(points[0][1])
        if points:
            at = points[-1]
    return (min(xs), min(ys), max(xs), max(ys)) if xs else None


def text_start(text: Text) -> float:
    """How far left of its point the words begin, in mm along the baseline (0, half or all of their width)."""
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
    return -share * text_width_mm(text.words, text.face, text.size_pt) if share else 0.0


def text_transform(text: Text) -> Transform:
    """From the words' own line (baseline from (0, 0), mm) to where they stand."""
    turn = math.radians(text.angle_deg)
    cos, sin = (round(math.cos(turn), 12), round(math.sin(turn), 12))
    start = text_start(text)
    return Transform(cos, sin, -sin, cos, text.x_mm + start * cos, text.y_mm + start * sin)


def text_outline(text: Text) -> Path:
    """The words as one filled path (nonzero), where they stand."""
    em = text.size_pt * MM_PER_PT / UNITS_PER_EM
    frame = text_transform(text)
    commands: list[tuple[str | float, ...]] = []
    for glyph in shape(text.words, text.face):
        if glyph.character:
            at = compose(frame, Transform(em, 0.0, 0.0, em, glyph.x * em, 0.0))
            commands += transform_path(glyph_outline(glyph.face, glyph.character), at).commands
    return Path(tuple(commands))


def _text_corners(text: Text) -> list[Point]:
    em = text.size_pt * MM_PER_PT / UNITS_PER_EM
    glyphs = shape(text.words, text.face)
    heights = [height for glyph in glyphs if glyph.character and (height := glyph_heights(glyph.face, glyph.character))]
    if not heights:
        return []
    width = (glyphs[-1].x + glyphs[-1].advance) * em
    low, high = min(height[0] for height in heights) * em, max(height[1] for height in heights) * em
    return [(0.0, low), (width, low), (width, high), (0.0, high)]


def _boxes(operations: Iterable[Operation], by: Transform) -> Iterator[Box]:
    for operation in operations:
        match operation:
            case Group():
                inner = compose(by, operation.transform) if operation.transform else by
                box = _union(_boxes(operation.children, inner))
                clip = path_box(transform_path(operation.clip, inner)) if operation.clip else None
                if box and clip:
                    box = (max(box[0], clip[0]), max(box[1], clip[1]), min(box[2], clip[2]), min(box[3], clip[3]))
                if box and box[0] <= box[2] and box[1] <= box[3]:
                    yield box
            case StrokePath() | FillPath():
                box = path_box(transform_path(operation.path, by))
                if box:
                    scale = math.sqrt(abs(by.a * by.d - by.b * by.c))
                    spread = operation.width_mm / 2 * scale if isinstance(operation, StrokePath) else 0.0
                    yield box[0] - spread, box[1] - spread, box[2] + spread, box[3] + spread
            case Image():
                x, y, width, height = operation.x_mm, operation.y_mm, operation.width_mm, operation.height_mm
                corners = [apply(by, corner) for corner in ((x, y), (x + width, y), (x + width, y + height), (x, y + height))]
                yield (min(x for x, _ in corners), min(y for _, y in corners), max(x for x, _ in corners), max(y for _, y in corners))
            case Text():
                frame = compose(by, text_transform(operation))
                corners = [apply(frame, corner) for corner in _text_corners(operation)]
                if corners:
                    yield (min(x for x, _ in corners), min(y for _, y in corners), max(x for x, _ in corners), max(y for _, y in corners))
            case _:
                raise UnsupportedOperation(f"cannot measure {type(operation).__name__}")


def _union(boxes: Iterable[Box]) -> Box | None:
    found = list(boxes)
    return (min(b[0] for b in found), min(b[1] for b in found), max(b[2] for b in found), max(b[3] for b in found)) if found else None


def bounds(operations: Iterable[Operation]) -> Box | None:
    """The box of everything that is inked, in mm: line widths and the ink height of words included; None if nothing is.

    Sharp miters may stand out further than half their width.
    """
    return _union(_boxes(operations, IDENTITY))


def around(operations: Iterable[Operation], margin_mm: float, title: str, description: str) -> Drawing:
    """A drawing of the operations with an even margin around their ink."""
    kept = tuple(operations)
    x0, y0, x1, y1 = bounds(kept) or (0.0, 0.0, 0.0, 0.0)
    return Drawing((x0 - margin_mm, y0 - margin_mm, x1 + margin_mm, y1 + margin_mm), kept, title, description)
