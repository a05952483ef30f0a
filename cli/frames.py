"""``--frame``: drawings as the frames of a film or the slides of a talk."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

import click

from motifold.cli.common import Target, put

if TYPE_CHECKING:
    from motifold.render.charts import NamedDrawing
    from motifold.render.drawing.frame import Frame

frame_option = click.option(
    "--frame", "frame_words", metavar="1920x1080", help="PNG pictures of this many dots for a film or slides, all at one scale."
)
transparent_option = click.option("--transparent", is_flag=True, help="Frames without a background.")


def read_frame_options(words: str | None, transparent: bool, asked: str | None, output: str | None) -> Frame | None:
    """``--frame`` and ``--transparent``; raises click.UsageError where they cannot be, or where another form than PNG is asked for."""
    if words is None:
        if transparent:
            raise click.UsageError("--transparent is for frames: say how large with --frame 1920x1080.")
        return None
    if asked not in (None, "png") or (output or "").lower().endswith((".svg", ".pdf")):
        raise click.UsageError("frames are PNG pictures; for another form leave --frame out.")
    from motifold.render.drawing.frame import Frame, read_frame

    try:
        return Frame(*read_frame(words), background=None if transparent else "#ffffff")
    except ValueError as wrong:
        raise click.UsageError(f"{wrong}.") from None


def write_frames(drawings: Sequence[NamedDrawing], target: Target, stem: str, frame: Frame) -> None:
    """Each drawing as a PNG of the frame's size: a single one as the file that is named, several in a folder."""
    from motifold.cli.drawings import file_name, png_or_refused
    from motifold.render.drawing.frame import frame_png, framed

    if not drawings:
        raise click.UsageError("there is nothing to draw here.")
    if len(drawings) > 1 and not target.folder:
        raise click.UsageError(f"there are {len(drawings)} frames: name a folder with -o.")
    for named, drawing in zip(drawings, framed([d.drawing for d in drawings], frame), strict=True):
        path = target.path / file_name(stem, named.name, "png") if target.folder and target.path else target.path
        put(path, png_or_refused(partial(frame_png, drawing, frame)))
