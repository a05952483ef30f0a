"""``motifold schematic``: how the panels go together."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from motifold.cli.common import (
    finish,
    format_option,
    json_option,
    load,
    output_option,
    pattern_argument,
    print_json,
    require_worked,
    rounds_option,
    size_option,
)
from motifold.cli.forms import Form, form_target, write_form
from motifold.cli.frames import frame_option, read_frame_options, transparent_option
from motifold.cli.posters import poster_option, read_width

if TYPE_CHECKING:
    from motifold.render.drawing.papers import Sheet


@click.command("schematic", epilog="Example: motifold schematic hat.toml --size Large -o net.pdf")
@pattern_argument
@click.option("--steps", is_flag=True, help="One drawing for each seam pass and fold.")
@click.option("--dpi", type=click.IntRange(36, 1200), default=300, show_default=True, help="Dots per inch of a PNG.")
@poster_option
@click.option("--paper", type=click.Choice(["A4", "Letter"], case_sensitive=False), help="The sheets of a poster; A4 by default.")
@frame_option
@transparent_option
@format_option
@json_option
@output_option
@rounds_option
@size_option
def command(
    pattern: Path,
    steps: bool,
    dpi: int,
    poster: str | None,
    paper: Sheet | None,
    frame_words: str | None,
    transparent: bool,
    asked: str | None,
    as_json: bool,
    output: str | None,
    rounds: int | None,
    size_name: str | None,
) -> None:
    """Draw the net with its seams, and the finished thing with its measurements, for the largest size unless --size names one."""
    from motifold.render.assembly.form import finished_note
    from motifold.render.assembly.schematics import schematic_json
    from motifold.render.schematics import draw_schematics, drawn_size

    job = load(pattern, rounds, size_name)
    size = drawn_size(job.worked) if job.worked else None
    assembly = size.assembly if size is not None else None
    if as_json:
        nothing: dict[str, Any] = {"size": None, "panels": [], "seams": [], "measures": [], "edgings": []}
        print_json(job, schematic_json(assembly, size.rims, size.choice.name) if assembly and size else nothing, output)
    form = Form(read_frame_options(frame_words, transparent, asked, output), read_width(poster))
    if form.frame and form.on_sheets:
        raise click.UsageError("--frame makes pictures and --poster sheets of paper: only one of them.")
    target = form_target(form, output, pattern, "-schematic", asked)
    worked = require_worked(job)
    if assembly is None or size is None:
        click.echo(f"{worked.pattern.title}: the pattern has no assembly, so there is nothing to draw.", err=True)
        finish(job)
    else:
        note = None if steps else finished_note(assembly)
        if note is not None:
            click.echo(note, err=True)
        drawings = draw_schematics(worked, size, steps)
        if steps and not drawings:
            raise click.UsageError("nothing is sewn or folded here, so there are no steps to draw.")
        write_form(form, drawings, target, f"{pattern.stem}-schematic", worked.pattern.author or "", dpi, paper)
        finish(job, written=True)
