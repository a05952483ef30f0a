"""A large chart that the cover shows too: its stitches are in the file once, as a form (ISO 32000-1, 8.10) that both pages draw."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from motifold.render.booklet.boxes import BoxMark, Page, Picture
from motifold.render.booklet.model import Anew
from motifold.render.drawing.display import Drawing, Group, Operation, Transform
from motifold.render.drawing.measure import in_greys
from motifold.render.drawing.numbers import MM_PER_PT, number
from motifold.render.drawing.pdf import draw_on_canvas
from motifold.symbols.record import dataclass

_STITCHES = ("stitch", "ring", "link")  # classes of what a chart is without its numbers and names
_LARGE = 400                 # stitches from which on a form is worth its own object
_AS_GOOD_AS_FITTING = 0.98   # letters this much smaller are still of their size


@dataclass(frozen=True, slots=True)
class Final:
    """A drawing as it is printed: made anew at ``made`` times its own size, and printed at ``scale`` times that.

    ``form``: the name of the form that holds its stitches; they are the operations from ``start`` to ``end``. ``turn``: what lays the
    drawing on its side, already taken off its operations.
    """

    drawing: Drawing
    scale: float
    made: float
    form: str = ""
    start: int = 0
    end: int = 0
    turn: Transform | None = None


Finals = Mapping[int, Final]
"""By the identity of the operations that were measured: a drawing that lies on its side has those of the one that stands."""


def finals_of(pages: Sequence[Page], canvas: Any, mono: bool) -> Finals:
    """All drawings that are made anew for their size; the stitches of large ones that are printed twice are written as forms."""
    pictures = [mark for page in pages for placed in page.placed for mark in _pictures(placed.box.marks)]
    finals = {_identity(mark.drawing): _final(mark, mono) for mark in pictures if mark.redrawn is not None}
    for place, mark in enumerate(pictures):
        known = _identity(mark.drawing)
        if mark.redrawn is None and known in finals and _can_be_shared(finals[known]) and _only_stitches(mark.drawing):
            finals[known] = _with_form(finals[known], f"stitches{place}", canvas)
    return finals


def _turn_of(drawing: Drawing) -> Group | None:
    """The one group that the whole of a turned drawing is."""
    [only] = drawing.operations if len(drawing.operations) == 1 else [None]
    return only if isinstance(only, Group) and only.transform is not None and only.clip is None else None


def _identity(drawing: Drawing) -> int:
    turned = _turn_of(drawing)
    return id(drawing.operations if turned is None else turned.children)


def draw_picture(mark: Picture, page_height: float, finals: Finals, canvas: Any, mono: bool) -> None:
    """The picture on the page in hand."""
    final = finals.get(_identity(mark.drawing))
    if final is not None and mark.redrawn is None and final.form:
        left, bottom, _, _ = mark.drawing.box
        unit = mark.scale / MM_PER_PT / final.made
        foot = page_height - mark.y - mark.height
        upright = Transform(unit, 0.0, 0.0, unit, mark.x - unit * left * final.made, foot - unit * bottom * final.made)
        _do(final.form, canvas, upright)
        return
    if final is None or mark.redrawn is None:
        final = Final(in_greys(mark.drawing) if mono else mark.drawing, mark.scale, 1.0)
    drawing, scale = final.drawing, final.scale
    x = mark.x + (mark.width - drawing.width_mm / MM_PER_PT * scale) / 2
    y = page_height - mark.y - drawing.height_mm / MM_PER_PT * scale
    if not final.form:
        draw_on_canvas(drawing, canvas, x * MM_PER_PT, y * MM_PER_PT, scale, pooled=True)
        return
    turn, unit = final.turn or Transform(), scale / MM_PER_PT
    parts = drawing.operations[: final.start], drawing.operations[final.end :]
    below, above = (replace(drawing, operations=(Group(part, final.turn),)) for part in parts)
    draw_on_canvas(below, canvas, x * MM_PER_PT, y * MM_PER_PT, scale, pooled=True)
    left, bottom = x - unit * drawing.box[0], y - unit * drawing.box[1]
    _do(final.form, canvas, Transform(unit * turn.a, unit * turn.b, unit * turn.c, unit * turn.d, left, bottom))
    draw_on_canvas(above, canvas, x * MM_PER_PT, y * MM_PER_PT, scale, pooled=True)


def _pictures(marks: Iterable[BoxMark]) -> list[Picture]:
    return [mark for mark in marks if isinstance(mark, Picture)]


def _can_be_shared(final: Final) -> bool:
    """Not a form yet, and its stitches at hand: those of one that was enlarged with its letters lie deeper, and it is printed as it is."""
    turned = _turn_of(final.drawing)
    operations = final.drawing.operations if turned is None else turned.children
    return not final.form and any(_is_stitch(operation) for operation in operations)


def _is_stitch(operation: Operation) -> bool:
    return isinstance(operation, Group) and (operation.css_class or "").split(" ")[0] in _STITCHES


def _only_stitches(drawing: Drawing) -> bool:
    return len(drawing.operations) >= _LARGE and all(_is_stitch(operation) for operation in drawing.operations)


def _final(mark: Picture, mono: bool) -> Final:
    """Made anew for its size, and never larger than was measured.

    Letters that keep their size around a smaller drawing may need more room than was measured: then it is made that much smaller, and
    once more where even so it needs more room.
    """
    redrawn = mark.redrawn
    if redrawn is None:
        return Final(mark.drawing, mark.scale, 1.0)
    made = min(mark.scale, _scale_for(redrawn, mark.width * MM_PER_PT, mark.height * MM_PER_PT))
    drawing = redrawn.draw(made)
    fitting = _fitting(drawing, mark)
    if fitting < _AS_GOOD_AS_FITTING:
        made *= fitting
        drawing = redrawn.draw(made)
        fitting = _fitting(drawing, mark)
    return Final(in_greys(drawing) if mono else drawing, fitting, made)


def _scale_for(redrawn: Anew, width: float, height: float) -> float:
    """The scale at which it stands within a room in mm; about so, since what stands around it is set for each scale."""
    room = zip((width, height), redrawn.grows, redrawn.keeps, strict=True)
    return max(min((side - keeps) / max(grows, 1e-6) for side, grows, keeps in room), 1e-3)


def _fitting(drawing: Drawing, mark: Picture) -> float:
    """The scale at which a drawing stands within the room of ``mark``, at most 1."""
    return min(1.0, mark.width * MM_PER_PT / max(drawing.width_mm, 1e-6), mark.height * MM_PER_PT / max(drawing.height_mm, 1e-6))


def _with_form(final: Final, name: str, canvas: Any) -> Final:
    turned = _turn_of(final.drawing)
    operations = final.drawing.operations if turned is None else turned.children
    places = [place for place, operation in enumerate(operations) if _is_stitch(operation)]
    # The ring stands before all lines, the stitches together behind them: the form holds the longest run.
    end = places[-1] + 1
    start = end
    while start > 0 and _is_stitch(operations[start - 1]):
        start -= 1
    before = [operation for operation in operations[:start] if _is_stitch(operation)]
    others = [operation for operation in operations[:start] if not _is_stitch(operation)]
    core = (*before, *operations[start:end])
    drawing = replace(final.drawing, operations=(*others, *core, *operations[end:]))
    turn = None if turned is None else turned.transform
    left, bottom, *_ = drawing.box
    reach = max(map(abs, drawing.box)) + 5
    canvas.beginForm(name, -reach, -reach, reach, reach)
    # drawn so that one point of the form is one mm of the drawing, its origin the drawing's own
    draw_on_canvas(replace(drawing, operations=core), canvas, left * MM_PER_PT, bottom * MM_PER_PT, MM_PER_PT, pooled=True)
    canvas.endForm()
    return replace(final, drawing=drawing, form=name, start=len(others), end=len(others) + len(core), turn=turn)


def _do(form: str, canvas: Any, at: Transform) -> None:
    factors = " ".join(number(value, 6) for value in (at.a, at.b, at.c, at.d))
    canvas.addLiteral(f"q {factors} {number(at.e)} {number(at.f)} cm")
    canvas.doForm(form)
    canvas.addLiteral("Q")
