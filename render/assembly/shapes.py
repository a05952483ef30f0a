"""The outline of one panel: how long its sides are and at what angle they meet."""

from __future__ import annotations

from math import acos, cos, degrees, hypot, pi, radians, sin, tan

from motifold.render.fabric.model import Fabric
from motifold.symbols.record import dataclass

Point = tuple[float, float]

SQUARE_SIDES = ("top", "left", "bottom", "right")  # counter-clockwise, as a square lies in the net with its right side up
CIRCLE_POINTS = 72


@dataclass(frozen=True, slots=True)
class Shape:
    """A panel's shape, centred on the origin, y up. ``corners[i]`` is where side i starts.

    ``names``: the sides, counter-clockwise. ``angles``: the interior angle at each corner, in degrees. A circle has one side, one
    corner of 180 degrees and a fine polygon as ``outline``; a shape with straight sides has its corners as outline. ``starts[i]`` is the
    place of corner i in the outline. ``lengths``: of the sides, in the unit of the points.
    """

    names: tuple[str, ...]
    angles: tuple[float, ...]
    outline: tuple[Point, ...]
    starts: tuple[int, ...]
    lengths: tuple[float, ...]

    def scaled(self, across: float, along: float | None = None) -> Shape:
        """The same ``across`` times as large (``along``: upwards, where that differs)."""
        up = across if along is None else along
        outline = tuple((x * across, y * up) for x, y in self.outline)
        if up == across:
            return Shape(self.names, self.angles, outline, self.starts, tuple(length * across for length in self.lengths))
        return Shape(self.names, self.angles, outline, self.starts, _side_lengths(outline, self.starts))


def side_names(fabric: Fabric) -> tuple[str, ...]:
    """The sides of a motif by name, in the order of ``Fabric.sides``: a square's as laid in the net, others as the Fabric calls them."""
    names = tuple(side.name for side in fabric.sides)
    if not is_square(fabric):
        return names if len(set(names)) == len(names) and all(names) else tuple(str(i + 1) for i in range(len(names)))
    turn = names.index("top") if "top" in names else 0
    return names if names[turn:] + names[:turn] == SQUARE_SIDES else SQUARE_SIDES


def side_index(names: tuple[str, ...], name: str) -> int | None:
    """Which side ``name`` means: its name, or its number counter-clockwise; a circle's one side is also its "edge".

    >>> side_index(("top", "left", "bottom", "right"), "2"), side_index(("1", "2", "3"), "top")
    (1, None)
    """
    if name in names:
        return names.index(name)
    if name.isdecimal() and 1 <= int(name) <= len(names):
        return int(name) - 1
    return 0 if len(names) == 1 and name in ("edge", "side", "rim") else None


def is_square(fabric: Fabric) -> bool:
    """Four sides at right angles (strips worked in rows too)."""
    return len(fabric.sides) == 4 and not is_half(fabric)


def is_half(fabric: Fabric) -> bool:
    return names_half(fabric.shape)


def names_half(shape: str) -> bool:
    """Whether a shape's name says that it is half of another."""
    words = shape.split()
    return "half" in words[:-1] or "semicircle" in words


def is_rows(fabric: Fabric) -> bool:
    """Worked in rows: its width and its height are two measures."""
    return fabric.worked == "rows" and is_square(fabric)


def side_length_cm(corners: int, width_cm: float) -> float:
    """The side of a regular motif that is ``width_cm`` across, measured square to a side (fewer than 3 corners: round, over the diameter).

    With n sides and an apothem a, s = 2 a tan(pi / n); an even motif is 2 a across, an odd one a + R, from a side to the corner
    facing it.

    >>> round(side_length_cm(4, 12.8), 3), round(side_length_cm(6, 10), 3), round(side_length_cm(3, 3**0.5), 3)
    (12.8, 5.774, 2.0)
    """
    if corners < 3:
        return pi * width_cm
    if corners % 2 == 0:
        return width_cm * tan(pi / corners)
    return 2 * width_cm / (1 / tan(pi / corners) + 1 / sin(pi / corners))


def cut_and_depth(corners: int) -> tuple[float, float]:
    """How long a half's cut is and how far it reaches from there, for a whole motif with so many corners whose apothem is 1.

    The cut of an even motif runs from corner to corner, of an odd one from a corner to the middle of the side across from it.

    >>> [round(cm, 3) for cm in cut_and_depth(4)], [round(cm, 3) for cm in cut_and_depth(6)], cut_and_depth(0)
    ([2.828, 1.414], [2.309, 1.0], (2.0, 1.0))
    """
    if corners < 3:
        return 2.0, 1.0
    radius = 1 / cos(pi / corners)
    return radius + (1.0 if corners % 2 else radius), radius * max(sin(2 * pi * k / corners) for k in range(corners))


def first_side_cm(fabric: Fabric, width_cm: float) -> float:
    """The whole side of a motif that is ``width_cm`` wide; a half's width is its cut."""
    corners = whole_corners(fabric)
    if not is_half(fabric) or corners % 2 or corners < 3:
        return side_length_cm(corners, width_cm)
    return side_length_cm(corners, 2 * width_cm / cut_and_depth(corners)[0])


def shape_of(fabric: Fabric) -> Shape:
    """A motif's shape with a side of 1 (round: a rim of 1; rows: 1 wide, 1 high).

    A half is cut from corner to corner, or from a corner to the middle of the side across from it; its cut is its last side.
    """
    names = side_names(fabric)
    if is_half(fabric):
        return _half_of_odd(names) if whole_corners(fabric) % 2 else _half(names)
    if len(names) == 1:
        outline = tuple(_polar(1 / (2 * pi), -90 + 360 * i / CIRCLE_POINTS) for i in range(CIRCLE_POINTS))
        return Shape(names, (180.0,), outline, (0,), (1.0,))
    count = max(len(names), 3)
    # A square's first side lies where its name says; other motifs stand on side 1.
    middle = {"top": 90.0, "left": 180.0, "bottom": 270.0, "right": 0.0}.get(names[0], 270.0)
    outline = _regular(count, middle)
    return Shape(names, (180.0 * (count - 2) / count,) * len(names), outline, tuple(range(len(names))), (1.0,) * len(names))


def _regular(count: int, middle: float) -> tuple[Point, ...]:
    radius = 1 / (2 * sin(pi / count))
    return tuple(_polar(radius, middle - 180 / count + 360 * i / count) for i in range(count))


def whole_corners(fabric: Fabric) -> int:
    """How many corners the motif has, or what it is half of."""
    return corners_of_whole(fabric.shape, len(fabric.sides))


def corners_of_whole(shape: str, sides: int) -> int:
    """The same by the name of its shape and its number of sides."""
    if not names_half(shape):
        return 0 if sides == 1 else sides
    if sides <= 2:
        return 0
    # k sides: k - 1 whole sides of an even motif, or k - 2 whole sides and a half one; the word decides between the two.
    odd = any(word in shape for word in ("triangle", "pentagon", "heptagon", "nonagon"))
    return 2 * (sides - 2) + 1 if odd else 2 * (sides - 1)


def _half(names: tuple[str, ...]) -> Shape:
    count = len(names)
    if count <= 2:
        steps = CIRCLE_POINTS // 2
        arc = tuple(_polar(1 / (2 * pi), 180.0 * i / steps) for i in range(steps + 1))
        return Shape(names, (90.0,) * count, arc, (0, steps)[:count], (0.5, 1 / pi)[:count])
    outline = _regular(2 * (count - 1), 90.0 / (count - 1))[:count]
    return Shape(names, _angles(outline), outline, tuple(range(count)), _side_lengths(outline, range(count)))


def _half_of_odd(names: tuple[str, ...]) -> Shape:
    """Half of a motif with an odd number of sides: whole sides, half a side, and the cut through the middle."""
    whole = 2 * (len(names) - 2) + 1
    points = _regular(whole, 180.0 / whole)
    last, after = points[len(names) - 2], points[len(names) - 1]
    outline = (*points[: len(names) - 1], ((last[0] + after[0]) / 2, (last[1] + after[1]) / 2))
    return Shape(names, _angles(outline), outline, tuple(range(len(names))), _side_lengths(outline, range(len(names))))


def _angles(outline: tuple[Point, ...]) -> tuple[float, ...]:
    angles = []
    for i, (x, y) in enumerate(outline):
        (ax, ay), (bx, by) = outline[i - 1], outline[(i + 1) % len(outline)]
        ax, ay, bx, by = ax - x, ay - y, bx - x, by - y
        angles.append(round(degrees(acos((ax * bx + ay * by) / (hypot(ax, ay) * hypot(bx, by)))), 9))
    return tuple(angles)


def _side_lengths(outline: tuple[Point, ...], starts: tuple[int, ...] | range) -> tuple[float, ...]:
    """Straight sides only."""
    corners = [outline[i] for i in starts]
    return tuple(round(hypot(b[0] - a[0], b[1] - a[1]), 12) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))


def _polar(radius: float, angle: float) -> Point:
    return radius * cos(radians(angle)), radius * sin(radians(angle))
