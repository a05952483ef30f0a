"""Writing drawings: into a folder, a file each; into one file, the pages of a PDF or one sheet."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

import click

from motifold.cli.common import Target, put
from motifold.render.charts import NamedDrawing
from motifold.render.drawing import Drawing, UnsupportedOperation, to_pdf, to_png, to_svg
from motifold.render.drawing.stack import stack

KINDS = ("svg", "pdf", "png")


def write_drawings(drawings: Sequence[NamedDrawing], target: Target, stem: str, author: str = "", dpi: int = 300) -> None:
    """Put ``drawings`` where ``target`` says: each a file in a folder, each a page of one PDF, all on one sheet of one SVG or PNG."""
    if not drawings:
        raise click.UsageError("there is nothing to draw here.")
    if target.kind == "pdf" and not target.folder:
        put(target.path, to_pdf([d.drawing for d in drawings], author=author))
        return
    if not target.folder:
        put(target.path, _bytes(stack([d.drawing for d in drawings]), target.kind, author, dpi))
        return
    for named in drawings:
        path = target.path / file_name(stem, named.name, target.kind) if target.path else None
        put(path, _bytes(named.drawing, target.kind, author, dpi))


def _bytes(drawing: Drawing, kind: str, author: str, dpi: int) -> bytes:
    if kind == "svg":
        return to_svg(drawing).encode()
    return png_or_refused(lambda: to_png(drawing, dpi)) if kind == "png" else to_pdf(drawing, author=author)


def png_or_refused(make: Callable[[], bytes]) -> bytes:
    """A PNG; where it cannot be made (too many dots, no cairo) the command is refused, with what would mend it."""
    try:
        return make()
    except UnsupportedOperation as refused:
        raise click.UsageError(f"{refused}.") from None


def file_name(stem: str, name: str, kind: str) -> str:
    """"hat-chart", "Square, round 3", "svg" -> "hat-chart-Square-round-3.svg"."""
    safe = re.sub(r"[^\w.-]+", "-", name).strip("-.") or "drawing"
    return f"{stem}-{safe}.{kind}"
