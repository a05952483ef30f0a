"""Playing a drawing to a writer: the one walk over the display list that all writers share."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Protocol

from motifold.render.drawing.display import FillPath, Group, Image, Operation, Path, StrokePath, Text, UnsupportedOperation


class Writer(Protocol):
    """What a writer must be able to do. ``begin`` and ``end`` stand around the children of a group."""

    def stroke(self, operation: StrokePath) -> None: ...

    def fill(self, operation: FillPath) -> None: ...

    def text(self, operation: Text) -> None: ...

    def image(self, operation: Image) -> None: ...

    def begin(self, group: Group) -> None: ...

    def end(self, group: Group) -> None: ...


def play(operations: Iterable[Operation], writer: Writer) -> None:
    """Hands every operation to the writer, in order. Raises ``UnsupportedOperation`` for anything that is not of the display list."""
    for operation in operations:
        match operation:
            case StrokePath():
                writer.stroke(operation)
            case FillPath():
                writer.fill(operation)
            case Text():
                writer.text(operation)
            case Image():
                writer.image(operation)
            case Group():
                writer.begin(operation)
                play(operation.children, writer)
                writer.end(operation)
            case _:
                raise UnsupportedOperation(f"no writer draws {type(operation).__name__}")


def _style(stroke: StrokePath) -> tuple[object, ...]:
    return stroke.color, stroke.width_mm, stroke.dash_mm, stroke.cap, stroke.join


def merge_strokes(operations: Iterable[Operation]) -> Iterator[Operation]:
    """Neighbouring strokes of one style as one path: they print the same and take a third of the room."""
    waiting: list[StrokePath] = []
    for operation in operations:
        if waiting and not (isinstance(operation, StrokePath) and _style(operation) == _style(waiting[0])):
            yield _joined(waiting)
            waiting = []
        if isinstance(operation, StrokePath):
            waiting.append(operation)
        elif isinstance(operation, Group):
            yield replace(operation, children=tuple(merge_strokes(operation.children)))
        else:
            yield operation
    if waiting:
        yield _joined(waiting)


def gathered(operations: Iterable[Operation]) -> Iterator[Operation]:
    """Neighbouring strokes of one colour sorted by their style: which lies on top cannot be seen, and the style changes less often."""
    waiting: list[StrokePath] = []
    for operation in operations:
        if waiting and not (isinstance(operation, StrokePath) and operation.color == waiting[0].color):
            yield from sorted(waiting, key=_pen_order)
            waiting = []
        if isinstance(operation, StrokePath):
            waiting.append(operation)
        else:
            yield operation
    yield from sorted(waiting, key=_pen_order)


def _pen_order(stroke: StrokePath) -> tuple[float, tuple[float, ...], str, str]:
    return stroke.width_mm, stroke.dash_mm, stroke.cap, stroke.join


def dissolve(operations: Iterable[Operation]) -> Iterator[Operation]:
    """Without the groups that neither move nor clip: for pictures, where nobody can ask what belongs together."""
    for operation in operations:
        if not isinstance(operation, Group):
            yield operation
        elif operation.transform or operation.clip:
            yield replace(operation, children=tuple(dissolve(operation.children)), css_class=None, data=(), title=None)
        else:
            yield from dissolve(operation.children)


def _joined(strokes: list[StrokePath]) -> StrokePath:
    if len(strokes) == 1:
        return strokes[0]
    return replace(strokes[0], path=Path(tuple(command for stroke in strokes for command in stroke.path.commands)))
