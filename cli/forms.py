"""In which form drawings come: as they are, as the frames of a film, or over the sheets of a poster."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from motifold.cli.common import Target, choose_target
from motifold.cli.frames import write_frames
from motifold.cli.posters import on_sheets, poster_target
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    from pathlib import Path

    from motifold.render.charts import NamedDrawing
    from motifold.render.drawing.frame import Frame
    from motifold.render.drawing.papers import Sheet


@dataclass(frozen=True, slots=True)
class Form:
    """At most one of the three is asked for; none: the drawings as they are. ``width_mm``: of a poster."""

    frame: Frame | None = None
    width_mm: float | None = None
    true_size: bool = False

    @property
    def on_sheets(self) -> bool:
        return self.width_mm is not None or self.true_size


def form_target(form: Form, output: str | None, pattern: Path, suffix: str, asked: str | None) -> Target:
    """Where drawings of this form go; raises click.UsageError where they cannot go there."""
    from motifold.cli.drawings import KINDS

    if form.on_sheets:
        return poster_target(output, pattern, suffix, asked)
    return choose_target(output, pattern, suffix, KINDS, "png" if form.frame else asked)


def write_form(
    form: Form, drawings: Sequence[NamedDrawing], target: Target, stem: str, author: str, dpi: int, paper: Sheet | None
) -> None:
    """The drawings in this form; ``paper``: the sheets of a poster."""
    from motifold.cli.drawings import write_drawings

    if form.frame:
        write_frames(drawings, target, stem, form.frame)
    else:
        write_drawings(on_sheets(drawings, paper, form.width_mm) if form.on_sheets else drawings, target, stem, author, dpi)
