"""``motifold chart``: the stitch charts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from motifold.cli.common import (
    finish,
    format_option,
    json_option,
    left_handed_option,
    load,
    mono_option,
    names_for_tab,
    output_option,
    pattern_argument,
    print_json,
    require_worked,
    rounds_option,
    size_option,
    terms_option,
)
from motifold.cli.forms import Form, form_target, write_form
from motifold.cli.frames import frame_option, read_frame_options, transparent_option
from motifold.cli.posters import poster_option, read_width

if TYPE_CHECKING:
    from motifold.render.fabric.model import Fabric
    from motifold.render.motif.chart.tiles import Paper


def _pieces(ctx: click.Context, param: click.Parameter, begun: str) -> list[str]:
    return names_for_tab(ctx, lambda pattern: [motif.name for motif in pattern.motifs] + [edging.name for edging in pattern.edgings], begun)


@click.command("chart", epilog="Example: motifold chart hat.toml --steps --mono -o charts/")
@pattern_argument
@click.option("--motif", metavar="NAME", help="One motif or edging only.", shell_complete=_pieces)
@click.option("--show", metavar="1-3", help="Only these rounds.")
@click.option("--steps", is_flag=True, help="One drawing for each round: earlier rounds grey, this one dark.")
@click.option("--one-repeat", is_flag=True, help="Draw what repeats only once, and say how often it is worked.")
@click.option(
    "--paper", type=click.Choice(["A4", "Letter", "A5"], case_sensitive=False),
    help="Pages of this size; what is too large for one goes over several that overlap, with a plan of them.",
)
@click.option("--key/--no-key", default=None, help="The key of the symbols below each chart; there unless it is a poster or a frame.")
@click.option("--dpi", type=click.IntRange(36, 1200), default=300, show_default=True, help="Dots per inch of a PNG.")
@poster_option
@click.option("--true-size", is_flag=True, help="As large as the finished work, to lay it on; on sheets of paper with a bar to measure.")
@frame_option
@transparent_option
@format_option
@mono_option
@left_handed_option
@terms_option
@json_option
@output_option
@rounds_option
@size_option
def command(
    pattern: Path,
    motif: str | None,
    show: str | None,
    steps: bool,
    one_repeat: bool,
    paper: Paper | None,
    key: bool | None,
    dpi: int,
    poster: str | None,
    true_size: bool,
    frame_words: str | None,
    transparent: bool,
    asked: str | None,
    mono: bool,
    left_handed: bool,
    terms: str | None,
    as_json: bool,
    output: str | None,
    rounds: int | None,
    size_name: str | None,
) -> None:
    """Draw the chart of each motif and edging, for the largest size unless --size names one. The ending of -o says SVG, PDF or PNG."""
    from motifold.render.charts import ChartSheet, charts_of, draw_charts, pattern_look, pieces_of
    from motifold.render.motif.chart import ChartLook, chart_json

    shown = _show(show)
    job = load(pattern, rounds, size_name)
    if job.worked is None:
        if as_json:
            print_json(job, {"unit": "mm", "pitch": ChartLook().pitch_mm, "charts": []}, output)
        require_worked(job)
        return
    if motif is not None:
        _known_piece(motif, [m.name for m in job.worked.pattern.motifs], [e.name for e in job.worked.pattern.edgings])
    uk = (terms or job.worked.pattern.terms).upper() == "UK"
    _within(shown, [f for size in job.worked.sizes for f in pieces_of(size, motif).values()])
    look = pattern_look(job.worked.pattern, ChartLook(mono=mono, left_handed=left_handed, show=shown, terms="UK" if uk else "US"))
    if as_json:
        print_json(job, chart_json(charts_of(job.worked, motif), look), output)
    form = Form(read_frame_options(frame_words, transparent, asked, output), read_width(poster), true_size)
    if sum((form.frame is not None, form.width_mm is not None, true_size)) > 1:
        raise click.UsageError("--frame, --poster and --true-size are three different things: only one of them.")
    if form.on_sheets and (steps or one_repeat):
        kind, other = "--true-size" if true_size else "--poster", "--steps" if steps else "--one-repeat"
        raise click.UsageError(f"{kind} shows the whole chart: {other} cannot go with it.")
    if form.on_sheets and key:
        raise click.UsageError("a poster has no key of its own; motifold key prints it on a page.")
    target = form_target(form, output, pattern, "-chart", asked)
    worked = require_worked(job)
    with_key = not (form.on_sheets or form.frame) if key is None else key
    around = ChartSheet(with_key, None if form.on_sheets else paper, one_repeat, true_size)
    drawings = draw_charts(worked, look, motif, steps, around)
    if not drawings and true_size:
        raise click.UsageError("there is no motif in rounds whose size the gauge tells, so nothing can be drawn in its true size.")
    if not drawings:
        finish(job)
    write_form(form, drawings, target, f"{pattern.stem}-chart", worked.pattern.author or "", dpi, paper)
    finish(job, written=True)


def _show(text: str | None) -> tuple[int, int] | None:
    """``1-3``, ``4``: the first and last round."""
    if text is None:
        return None
    match = re.fullmatch(r"\s*(\d{1,4})\s*(?:[-–]\s*(\d{1,4})\s*)?", text)
    if match is None or not (1 <= int(match[1]) <= int(match[2] or match[1])):
        raise click.UsageError(f"--show takes rounds such as 3 or 1-3, not '{text}'.")
    return int(match[1]), int(match[2] or match[1])


def _within(shown: tuple[int, int] | None, fabrics: Sequence[Fabric]) -> None:
    """Refuses rounds that no piece has."""
    last = max((this.number for fabric in fabrics for this in fabric.rounds if this.number is not None), default=0)
    if shown is not None and fabrics and shown[0] > last:
        word = "row" if all(fabric.worked == "rows" for fabric in fabrics) else "round"
        raise click.UsageError(f"--show asks for {word} {shown[0]}; the last {word} is {last}.")


def _known_piece(name: str, motifs: list[str], edgings: list[str]) -> None:
    if name not in (*motifs, *edgings):
        raise click.UsageError(f"there is no motif '{name}'; there are: {', '.join((*motifs, *edgings)) or 'none'}.")
