"""Drawings as exact text: one line for each operation, so that a test can say what is drawn."""

from __future__ import annotations

from motifold.render.drawing.display import Drawing, FillPath, Group, Image, StrokePath, Text
from motifold.render.drawing.numbers import number
from motifold.render.drawing.svg import path_data
from motifold.render.drawing.writer import play


class _Recorder:
    def __init__(self) -> None:
        self.lines: list[str] = []
        self._depth = 0

    def _line(self, *parts: str) -> None:
        self.lines.append("  " * self._depth + " ".join(part for part in parts if part))

    def stroke(self, operation: StrokePath) -> None:
        dash = "dash " + ",".join(number(length) for length in operation.dash_mm) if operation.dash_mm else ""
        style = f"{operation.color} {number(operation.width_mm)} {operation.cap}/{operation.join}"
        self._line("stroke", style, dash, path_data(operation.path))

    def fill(self, operation: FillPath) -> None:
        self._line("fill", operation.color, operation.rule, path_data(operation.path))

    def text(self, operation: Text) -> None:
        turn = f"turned {number(operation.angle_deg)}" if operation.angle_deg else ""
        place = f"{operation.anchor} at {number(operation.x_mm)},{number(operation.y_mm)}"
        self._line("text", operation.color, f"{operation.face} {number(operation.size_pt)}pt", place, turn, repr(operation.words))

    def image(self, operation: Image) -> None:
        box = ",".join(number(value) for value in (operation.x_mm, operation.y_mm, operation.width_mm, operation.height_mm))
        self._line("image", operation.kind, f"{len(operation.data)} bytes", box)

    def begin(self, group: Group) -> None:
        by = group.transform
        moved = "by " + ",".join(number(v, 6) for v in (by.a, by.b, by.c, by.d, by.e, by.f)) if by else ""
        clip = f"clipped to {path_data(group.clip)}" if group.clip else ""
        data = " ".join(f"{key}={value!r}" for key, value in group.data)
        self._line("group", f".{group.css_class}" if group.css_class else "", data, repr(group.title) if group.title else "", moved, clip)
        self._depth += 1

    def end(self, group: Group) -> None:
        self._depth -= 1


def record(drawing: Drawing) -> str:
    """The drawing in words and numbers (mm, three decimals), one operation a line."""
    recorder = _Recorder()
    recorder._line("drawing", ",".join(number(value) for value in drawing.box), repr(drawing.title))
    play(drawing.operations, recorder)
    return "\n".join(recorder.lines) + "\n"
