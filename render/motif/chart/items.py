"""Furniture as data and as operations: a number, a letter in its ring, an arrow, a triangle where yarn comes or goes."""

from __future__ import annotations

from math import hypot
from typing import Literal

from motifold.render.drawing.display import Face, Group, Operation, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.inks import HAIR, QUIET
from motifold.render.drawing.measure import grey_of
from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.ink import operations
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.tones import GREY, TEXT_CONTRAST, readable, tone_of
from motifold.render.motif.model import Point
from motifold.symbols import marks as working
from motifold.symbols.ink import Fill, Mark, Stroke, circle
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import HAIR_WIDTH

NUMBER_PT = (7.0, 6.0)
LETTER_PT = 6.0
SIDE_PT = 6.0
"""As printed: nobody reads less than six points off a page on a lap."""
ItemKind = Literal["number", "attach", "fasten off", "arrow", "turn", "yarn", "repeat", "side"]


@dataclass(frozen=True, slots=True)
class Item:
    """One piece of furniture: its box is ``width`` by ``height`` u about ``center``; ``words`` set at ``size_pt``, or ``marks``.

    Of a repeat's bracket the box is that of its words; its ``marks`` reach further.

    ``target``: what it marks, or stands beside. ``leader``: a light line to what it belongs to, where that is not beside it; it runs under
    the stitches.
    """

    kind: ItemKind
    round_index: int
    center: Point
    width: float
    height: float
    words: str = ""
    size_pt: float = 0.0
    marks: tuple[Mark, ...] = ()
    yarn: str | None = None
    leader: tuple[Point, Point] | None = None
    target: Point | None = None


def text_size(words: str, size_pt: float, look: ChartLook, face: Face = "sans-bold") -> tuple[float, float]:
    """Width and height in u of a number or letter as it is printed."""
    return text_width_mm(words, face, size_pt) / look.pitch_mm, cap_height_mm(face, size_pt) / look.pitch_mm


def number_item(index: int, words: str, center: Point, size_pt: float, look: ChartLook) -> Item:
    width, height = text_size(words, size_pt, look)
    return Item("number", index, center, width, height, words, size_pt)


def letter_radius(yarn: str, look: ChartLook, size_pt: float = LETTER_PT) -> float:
    """The radius in u of the ring around a yarn's letter."""
    width, height = text_size(yarn, size_pt, look)
    return max(hypot(width, height) / 2 + 0.25 / look.pitch_mm, 0.2)


def letter_item(index: int, yarn: str, center: Point, look: ChartLook) -> Item:
    radius = letter_radius(yarn, look)
    return Item("yarn", index, center, 2 * radius, 2 * radius, yarn, LETTER_PT, working.tag(center, radius), yarn)


def arrow_item(index: int, center: Point, on: Point, length: float = working.ARROW) -> Item:
    width, height = max(abs(on[0]) * length + 0.16, 0.34), max(abs(on[1]) * length + 0.16, 0.34)
    return Item("arrow", index, center, width, height, marks=working.arrow(center, on, length))


def triangle_item(
    kind: Literal["attach", "fasten off"], index: int, center: Point, on: Point, size: float = working.TRIANGLE
) -> Item:
    side = size + 0.1
    tip = (center[0] + size * 0.433 * on[0], center[1] + size * 0.433 * on[1])
    marks = working.attach(tip, on, size) if kind == "attach" else working.fasten_off(tip, on, size)
    return Item(kind, index, center, side, side, marks=marks)


def draw_leader(item: Item, look: ChartLook) -> list[Operation]:
    """The light line from a number to its round, a small dot where it ends."""
    if item.leader is None:
        return []
    marks = (Stroke(item.leader, HAIR_WIDTH), Fill(circle(item.leader[1], 0.11), smooth=True))
    return [Group(operations(marks, HAIR, look.pitch_mm), css_class="leader")]


def item_box(item: Item) -> tuple[float, float, float, float]:
    """The box in u of its words, or of its marks where it has no words."""
    (x, y), w, h = item.center, item.width / 2, item.height / 2
    return (x - w, y - h, x + w, y + h)


def item_reach(item: Item) -> tuple[float, float, float, float]:
    """The box in u of all its ink: a bracket's line too."""
    boxes = [item_box(item), *((*p, *p) for mark in item.marks for p in mark.points)]
    return (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))


def draw_item(item: Item, fabric: Fabric, look: ChartLook) -> Operation:
    """One item as operations in mm, in its round's colour (a letter in its yarn's); letters upright."""
    this = fabric.rounds[item.round_index]
    color, letters, face = _inks(item, fabric, look)
    children = list(operations(item.marks, color, look.pitch_mm))
    if item.words:
        x, y = item.center[0] * look.pitch_mm, item.center[1] * look.pitch_mm - cap_height_mm(face, item.size_pt) / 2
        children.append(Text(x, y, item.words, face, item.size_pt, letters, "middle"))
    return Group(tuple(children), css_class=f"mark {item.kind.replace(' ', '-')}", data=(("round", str(this.number or 0)),))


def _inks(item: Item, fabric: Fabric, look: ChartLook) -> tuple[str, str, Face]:
    """The colours of an item's marks and of its words, and what they are set in."""
    if item.kind in ("repeat", "side"):
        color = grey_of(QUIET) if look.mono else QUIET
        return color, color, "sans"
    yarns = fabric.rounds[item.round_index].yarns
    tone = tone_of(item.round_index, fabric.rounds, look, item.yarn or (yarns[0] if yarns else ""))
    return tone.color, tone.color if tone.color == GREY else readable(tone.color, least=TEXT_CONTRAST), "sans-bold"
