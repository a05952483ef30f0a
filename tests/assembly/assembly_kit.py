"""Assemblies of every kind, and measures of what is drawn of them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import cos, radians, sin
from types import SimpleNamespace

from motifold.render.assembly import assemble
from motifold.render.assembly.model import Assembly
from motifold.render.assembly.schematics import draw_finished, draw_net, draw_steps
from motifold.render.assembly.sheet import bezier, line_meets_box, words_box, words_boxes
from motifold.render.drawing.display import Drawing, FillPath, Group, Operation, StrokePath, Text

HAT = (
    "front right back left\ncrown . . .",
    ["left.right + front.left", "crown.left + left.bottom", "crown.right + right.bottom", "crown.bottom + back.bottom"],
)
BAG = (
    ". . a . .\n. b c d .\ne f g h i\n. j k l .\n. . m . .",
    [
        *("a.left + b.top", "a.right + d.top", "b.left + e.top", "d.right + i.top"),
        *("e.bottom + j.left", "i.bottom + l.right", "j.bottom + m.left", "l.bottom + m.right"),
    ],
)


LIDDED = (
    ". lid .\n. back .\nwest base east\n. front .",
    ["back.left + west.top", "back.right + east.top", "front.left + west.bottom", "front.right + east.bottom"],
)
CUSHION = (
    "F1 F2 . B1 B2\nF3 F4 . B3 B4",
    ["F1.top + B2.top", "F2.top + B1.top", "F1.left + B2.right", "F3.left + B4.right", "F2.right + B1.left", "F4.right + B3.left"],
)


def sources(by_hand: SimpleNamespace) -> dict[str, tuple[object, int]]:
    """Assemblies of every kind, and how many sides their motif has."""
    rows = "\n".join(" ".join(f"{chr(65 + r)}{c + 1}" for c in range(9)) for r in range(12))
    return {
        "basket": (by_hand.basket, 4),
        "cube": (by_hand.cube, 4),
        "hat": (by_hand.source(*HAT, form="hat"), 4),
        "bag": (by_hand.source(*BAG), 4),
        "cowl": (by_hand.source("A B C D E F", ["F.right + A.left"]), 4),
        "twisted cowl": (by_hand.source("A B C D E F", ["F.right ~ A.left"]), 4),
        "cuffs": (by_hand.source("A B\nC D", ["B.right + A.left", "D.right + C.left"], copies=2), 4),
        "blanket": (by_hand.source(rows), 4),
        "jacket": (by_hand.source("", ["L.1 + L.3", "R.1 + R.3", "L.5 + R.5"]), 6),
        "bunting": (by_hand.source("", ["A.2 + B.2", "B.3 + C.3", "C.2 + D.2"]), 3),
        "pouch": (by_hand.source("F", ["F.bottom + itself"]), 4),
        "envelope": (by_hand.source("", ["F.left + B.right", "F.right + B.left", "F.bottom + B.bottom"]), 4),
        "cushion": (by_hand.source("", ["front.edge + back.edge"]), 1),
        "lidded box": (by_hand.source(*LIDDED), 4),
        "cushion of eight": (by_hand.source(*CUSHION), 4),
        "dodecahedron": (by_hand.source("", by_hand.solid(DODECAHEDRON)), 5),
    }


NAMES = (
    *("basket", "cube", "hat", "bag", "cowl", "twisted cowl", "cuffs", "blanket", "jacket", "bunting", "pouch", "envelope", "cushion"),
    *("dodecahedron", "lidded box", "cushion of eight"),
)

DODECAHEDRON = [
    *((0, 1, 2, 3, 4), (0, 5, 10, 6, 1), (1, 6, 11, 7, 2), (2, 7, 12, 8, 3), (3, 8, 13, 9, 4), (4, 9, 14, 5, 0)),
    *((15, 10, 5, 14, 19), (16, 11, 6, 10, 15), (17, 12, 7, 11, 16), (18, 13, 8, 12, 17), (19, 14, 9, 13, 18), (19, 18, 17, 16, 15)),
]


def made(by_hand: SimpleNamespace, name: str, width: float | None = 12.8) -> Assembly:
    source, sides = sources(by_hand)[name]
    assembly, problems = assemble(source, {"square": by_hand.open_motif(sides)}, {"square": width})
    assert assembly is not None and problems == ()
    return assembly


def drawings(assembly: Assembly) -> list[Drawing]:
    finished = draw_finished(assembly)
    return [draw_net(assembly), *draw_steps(assembly), *([finished] if finished else [])]


def flat(operations: tuple[Operation, ...]) -> Iterator[Operation]:
    for operation in operations:
        if isinstance(operation, Group):
            assert operation.transform is None
            yield from flat(operation.children)
        else:
            yield operation


def strokes_over_words(drawing: Drawing) -> list[str]:
    """Words that a line runs through, unless something was filled between the two that covers the line there."""
    operations = list(flat(drawing.operations))
    boxes = {}
    for place, stroke in enumerate(operations):
        if isinstance(stroke, StrokePath):
            xs, ys = zip(*points_of(stroke), strict=True)
            boxes[place] = (min(xs), min(ys), max(xs), max(ys))
    crossed = []
    for at, text in enumerate(operations):
        if not isinstance(text, Text):
            continue
        box = words_box((text.x_mm, text.y_mm), text.words, text.size_pt, text.face, text.anchor)
        reach = box[2] - box[0] + 5
        near = (text.x_mm - reach, text.y_mm - reach, text.x_mm + reach, text.y_mm + reach)
        for place, b in boxes.items():
            if b[0] > near[2] or b[2] < near[0] or b[1] > near[3] or b[3] < near[1]:
                continue
            stroke = operations[place]
            if isinstance(stroke, StrokePath) and _meets(stroke, box, text):
                between = [o for o in operations[place:at] if isinstance(o, FillPath)]
                if not any(_covers(o, box, text) for o in between):
                    crossed.append(f"{text.words!r} at {text.x_mm:.1f}, {text.y_mm:.1f}")
                    break
    return crossed


def points_of(operation: StrokePath | FillPath) -> list[tuple[float, float]]:
    points: list[tuple[float, float]] = []
    for name, *values in operation.path.commands:
        v = [float(x) for x in values]
        if name == "C":
            points += [bezier(points[-1], (v[0], v[1]), (v[2], v[3]), (v[4], v[5]), i / 12) for i in range(1, 13)]
        elif name == "Z":
            points.append(points[0])
        else:
            points.append((v[0], v[1]))
    return points


def _level(point: tuple[float, float], text: Text) -> tuple[float, float]:
    """The point in the frame in which the words stand level."""
    c, s = cos(radians(-text.angle_deg)), sin(radians(-text.angle_deg))
    x, y = point[0] - text.x_mm, point[1] - text.y_mm
    return text.x_mm + c * x - s * y, text.y_mm + s * x + c * y


def _meets(stroke: StrokePath, box: tuple[float, float, float, float], text: Text) -> bool:
    return any(line_meets_box(a, b, box) for a, b in pairwise(_level(p, text) for p in points_of(stroke)))


def _covers(fill: FillPath, box: tuple[float, float, float, float], text: Text) -> bool:
    """Whether a convex fill holds all corners of the words' box (a tag's disc: nearly)."""
    ring = [_level(p, text) for p in points_of(fill)]
    shrunk = 0.9 if any(name == "C" for name, *_ in fill.path.commands) else 0.0
    corners = [(x, y) for x in (box[0] + shrunk, box[2] - shrunk) for y in (box[1] + shrunk, box[3] - shrunk)]
    turns = [[(b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) for a, b in pairwise(ring)] for p in corners]
    return all(min(turn) >= -1e-9 or max(turn) <= 1e-9 for turn in turns)


def words_over_words(drawing: Drawing) -> list[str]:
    """Words that stand on others."""
    texts = [o for o in flat(drawing.operations) if isinstance(o, Text)]
    boxes = [words_boxes((t.x_mm, t.y_mm), t.words, t.size_pt, t.face, t.anchor, t.angle_deg) for t in texts]
    clashes = []
    for i, ours in enumerate(boxes):
        for j, theirs in enumerate(boxes[:i]):
            if any(a[0] < b[2] - 0.05 and b[0] < a[2] - 0.05 and a[1] < b[3] - 0.05 and b[1] < a[3] - 0.05 for a in ours for b in theirs):
                clashes.append(f"{texts[i].words!r} on {texts[j].words!r}")
    return clashes
