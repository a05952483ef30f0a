"""What the pages show, read off their operators (ISO 32000-1, 8 and 9): words with their places, sizes, colours and grounds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from io import BytesIO
from itertools import combinations
from typing import Any

import pikepdf
import pytest

from motifold.render.booklet import Look
from motifold.render.booklet.boxes import Picture
from motifold.render.booklet.plan import Plan
from motifold.render.drawing.measure import contrast

Matrix = tuple[float, float, float, float, float, float]
Point = tuple[float, float]
WHITE = (1.0, 1.0, 1.0)


@dataclass(frozen=True)
class Shown:
    """One showing of words: baseline from ``start`` to ``end`` in points, their size, their colour and that of the ground below them."""

    start: Point
    end: Point
    size: float
    color: tuple[float, ...]
    ground: tuple[float, ...]
    figure: bool

    @property
    def level(self) -> bool:
        return abs(self.start[1] - self.end[1]) < 0.01

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Of level words: from a little below the baseline to the height of capitals."""
        return self.start[0], self.start[1] - 0.15 * self.size, self.end[0], self.start[1] + 0.62 * self.size


@dataclass
class _State:
    matrix: Matrix = (1, 0, 0, 1, 0, 0)
    color: tuple[float, ...] = (0.0,)


@dataclass
class _Page:
    widths: dict[str, tuple[int, list[float]]]
    state: _State = field(default_factory=_State)
    saved: list[_State] = field(default_factory=list)
    fills: list[tuple[list[Point], tuple[float, ...]]] = field(default_factory=list)
    path: list[list[Point]] = field(default_factory=list)
    tags: list[str] = field(default_factory=list)
    text: Matrix = (1, 0, 0, 1, 0, 0)
    font: str = ""
    size: float = 0.0


def times(a: Matrix, b: Matrix) -> Matrix:
    return (
        a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
    )  # fmt: skip


def at(m: Matrix, x: float, y: float) -> Point:
    return m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]


def inside(ring: list[Point], p: Point) -> bool:
    found = False
    for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]], strict=True):
        if (ay > p[1]) != (by > p[1]) and p[0] < ax + (p[1] - ay) / (by - ay) * (bx - ax):
            found = not found
    return found


def rgb(color: tuple[float, ...]) -> tuple[float, float, float]:
    return (color[0], color[0], color[0]) if len(color) == 1 else (color[0], color[1], color[2])


def words_on(page: pikepdf.Page) -> Iterator[Shown]:
    """Every showing of words on the page, in the order of drawing."""
    now = _Page({str(name): (int(font.FirstChar), [float(w) for w in font.Widths]) for name, font in page.Resources.Font.items()})
    for operands, operator in pikepdf.parse_content_stream(page):
        name = str(operator)
        if name == "TJ":
            yield _shown(now, operands[0])
        else:
            _obey(now, name, operands)


def _obey(now: _Page, name: str, operands: Any) -> None:
    match name:
        case "q":
            now.saved.append(_State(now.state.matrix, now.state.color))
        case "Q":
            now.state = now.saved.pop()
        case "cm":
            now.state.matrix = times(_matrix(operands), now.state.matrix)
        case "rg" | "g" | "k":
            now.state.color = tuple(float(value) for value in operands)
        case "BDC" | "BMC":
            now.tags.append(str(operands[0]))
        case "EMC":
            now.tags.pop()
        case "Tm":
            now.text = _matrix(operands)
        case "Tf":
            now.font, now.size = str(operands[0]), float(operands[1])
        case "re":
            x, y, w, h = (float(value) for value in operands)
            now.path.append([at(now.state.matrix, *p) for p in ((x, y), (x + w, y), (x + w, y + h), (x, y + h))])
        case "m":
            now.path.append([at(now.state.matrix, float(operands[0]), float(operands[1]))])
        case "l":
            now.path[-1].append(at(now.state.matrix, float(operands[0]), float(operands[1])))
        case "c":
            now.path[-1] += _curve(now.path[-1][-1], [at(now.state.matrix, float(operands[i]), float(operands[i + 1])) for i in (0, 2, 4)])
        case "f" | "f*" | "B":
            now.fills += [(ring, now.state.color) for ring in now.path if len(ring) > 2]
            now.path = []
        case "S" | "n" | "s":
            now.path = []


def _matrix(operands: Any) -> Matrix:
    a, b, c, d, e, f = (float(value) for value in operands)
    return a, b, c, d, e, f


def _curve(start: Point, rest: list[Point]) -> list[Point]:
    points = []
    for t in (0.25, 0.5, 0.75, 1.0):
        parts = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        points.append(tuple(sum(k * p[axis] for k, p in zip(parts, (start, *rest), strict=True)) for axis in (0, 1)))
    return points  # type: ignore[return-value]


def _shown(now: _Page, array: Any) -> Shown:
    first, widths = now.widths[now.font]
    shown, hidden, pen, begun = 0.0, 0.0, 0.0, None
    for part in array:
        if isinstance(part, pikepdf.String):
            begun = pen if begun is None else begun
            pen += sum(widths[code - first] for code in bytes(part)) / 1000
        else:
            pen -= float(part) / 1000
    shown, hidden = pen * now.size, (begun or 0.0) * now.size
    whole = times(now.text, now.state.matrix)
    start, end = at(whole, hidden, 0.0), at(whole, shown, 0.0)
    size = now.size * (whole[2] ** 2 + whole[3] ** 2) ** 0.5
    middle = at(whole, (hidden + shown) / 2, now.size * 0.3)
    ground = next((color for ring, color in reversed(now.fills) if inside(ring, middle)), WHITE)
    return Shown(start, end, size, rgb(now.state.color), rgb(ground), "/Figure" in now.tags)


def hexed(color: tuple[float, ...]) -> str:
    return "#" + "".join(f"{round(value * 255):02x}" for value in color)


def overlap(one: Shown, two: Shown) -> bool:
    a, b = one.box, two.box
    return min(a[2], b[2]) - max(a[0], b[0]) > 0.6 and min(a[3], b[3]) - max(a[1], b[1]) > 0.6


def test_words_are_read_off_where_they_stand(samples: Any) -> None:
    """The reader itself: the cover's title is the largest, and words on coloured discs have those as their ground."""
    with pikepdf.open(BytesIO(samples.made("lighthouse-basket"))) as pdf:
        cover, *inner = [list(words_on(page)) for page in pdf.pages]
        assert 30 < max(one.size for one in cover) < 50
        grounds = {one.ground for page in inner for one in page if one.figure}
        assert WHITE in grounds and len(grounds) > 1


def test_words_read_on_their_ground_stand_on_the_sheet_and_do_not_meet(sample: str, samples: Any) -> None:
    look_at(samples.made(sample))


@pytest.mark.parametrize("look", [Look("Letter"), Look("A5", mono=True)])
def test_so_they_do_on_other_sheets(look: Look, samples: Any) -> None:
    look_at(samples.made("lighthouse-basket", look))


def look_at(booklet: bytes) -> None:
    """4.5 to 1 (WCAG 2.2, 1.4.3); 7 pt at least where the booklet sets them; 7 mm at least from the edge of the sheet."""
    with pikepdf.open(BytesIO(booklet)) as pdf:
        for number, page in enumerate(pdf.pages, 1):
            width, height = (float(side) for side in page.MediaBox[2:])
            shown = list(words_on(page))
            assert shown
            for one in shown:
                assert contrast(hexed(one.color), hexed(one.ground)) >= 4.5, (number, one)
                assert one.figure or one.size >= 7.0, (number, one)
                assert all(20 < x < width - 20 and 20 < y < height - 20 for x, y in (one.start, one.end)), (number, one)
            set_here = [one for one in shown if one.level and not one.figure]
            assert not [(number, one, two) for one, two in combinations(set_here, 2) if overlap(one, two)]


def test_large_print_says_the_same_in_18_points_and_its_drawings_grow(samples: Any) -> None:
    large, usual = Look(large_print=True), samples.content("signal-bunting")
    assert samples.content("signal-bunting", large).document == usual.document
    with pikepdf.open(BytesIO(samples.made("signal-bunting", large))) as pdf:
        shown = [one for page in pdf.pages[1:] for one in words_on(page)]
    here = [one for one in shown if not one.figure]
    assert {round(one.size) for one in here} >= {18} and all(one.size > 13 for one in here)
    assert not [one for one in shown if one.figure and one.size < 8.0]

    def scale(plan: Plan) -> float:
        marks = [mark for page in plan.pages[1:] for placed in page.placed for mark in placed.box.marks]
        return max(mark.scale for mark in marks if isinstance(mark, Picture) and mark.redrawn)

    assert scale(samples.plan("signal-bunting", large)) > scale(samples.plan("signal-bunting"))
