"""Writing drawings: one file for one drawing, a numbered or named file for each of several, one PDF for all."""

from __future__ import annotations

import re
from collections.abc import Sequence

import click

from motifold.cli.common import Target, put
from motifold.render.charts import NamedDrawing
from motifold.render.drawing import Drawing, to_pdf, to_png, to_svg

KINDS = ("svg", "pdf", "png")


def write_drawings(drawings: Sequence[NamedDrawing], target: Target, stem: str, author: str = "", dpi: int = 300) -> None:
    """Put ``drawings`` where ``target`` says. Several in one SVG or PNG file cannot be: each gets its name added to the file's."""
    if not drawings:
        raise click.UsageError("there is nothing to draw here.")
    if target.kind == "pdf" and not target.folder:
        put(target.path, to_pdf([d.drawing for d in drawings], author=author))
        return
    if target.path is None:
        if len(drawings) > 1:
            raise click.UsageError(f"there are {len(drawings)} drawings: name a folder, or a .pdf file that can hold them all.")
        put(None, _bytes(drawings[0].drawing, target.kind, author, dpi))
        return
    for named in drawings:
        if target.folder:
            path = target.path / f"{stem}-{_safe(named.name)}.{target.kind}"
        elif len(drawings) == 1:
            path = target.path
        else:
            path = target.path.with_name(f"{target.path.stem}-{_safe(named.name)}{target.path.suffix}")
        put(path, _bytes(named.drawing, target.kind, author, dpi))


def _bytes(drawing: Drawing, kind: str, author: str, dpi: int) -> bytes:
    if kind == "svg":
        return to_svg(drawing).encode()
    return to_png(drawing, dpi) if kind == "png" else to_pdf(drawing, author=author)


def _safe(name: str) -> str:
    """A name as part of a file name."""
    return re.sub(r"[^\w.-]+", "-", name).strip("-.") or "drawing"
