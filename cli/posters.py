"""``--poster`` and ``--true-size``: drawings over several sheets of paper, at a size that is stated or the finished work's own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Final

import click

from motifold.cli.common import Target, choose_target

if TYPE_CHECKING:
    from pathlib import Path

    from motifold.render.charts import NamedDrawing
    from motifold.render.drawing.papers import Sheet

poster_option = click.option(
    "--poster", metavar="60cm", help="This wide in print, over as many sheets of paper as it takes, with a plan of them."
)
LEAST_MM, MOST_MM = 50.0, 5000.0
POSTER_KINDS: Final = ("pdf", "svg", "png")


def read_width(words: str | None) -> float | None:
    """"60cm", "24 in" -> mm. Raises click.UsageError for what is no length, and for under 5 cm or over 5 m."""
    if words is None:
        return None
    from motifold.render.pattern.quantity import QuantityError, parse_quantity

    try:
        width = 10 * float(parse_quantity(words).cm)
    except (QuantityError, ValueError) as wrong:
        raise click.UsageError(f"--poster takes a width such as 60cm or 24in, not '{words}' ({wrong}).") from None
    if not LEAST_MM <= width <= MOST_MM:
        raise click.UsageError(f"--poster takes a width from 5 cm to 5 m, not '{words}'.")
    return width


def poster_target(output: str | None, pattern: Path, suffix: str, asked: str | None) -> Target:
    """Where sheets go: the pages of one PDF, or a file each in a folder; raises click.UsageError for one picture."""
    target = choose_target(output, pattern, suffix, POSTER_KINDS, asked)
    if target.kind != "pdf" and not target.folder:
        raise click.UsageError("a poster is several sheets: name a PDF, or a folder for one file a sheet.")
    return target


def on_sheets(drawings: Sequence[NamedDrawing], paper: Sheet | None, width_mm: float | None) -> list[NamedDrawing]:
    """Each drawing, ``width_mm`` wide if that is given, over sheets of ``paper`` (A4 if none is named)."""
    from motifold.render.drawing.papers import SHEETS_MM
    from motifold.render.drawing.poster import TooLarge, enlarge, poster

    pages = []
    for named in drawings:
        drawing = enlarge(named.drawing, width_mm) if width_mm else named.drawing
        said = f"{drawing.width_mm / 10:.1f} by {drawing.height_mm / 10:.1f} cm in print."
        try:
            sheets = poster(drawing, SHEETS_MM[paper or "A4"], said)
        except TooLarge as wrong:
            raise click.UsageError(f"{named.name}: {wrong}.") from None
        pages += [replace(named, name=f"{named.name}-{name}" if name else named.name, drawing=sheet) for name, sheet in sheets]
    return pages
