"""``motifold booklet``: the pages."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import click

from motifold.cli.common import (
    choose_target,
    finish,
    left_handed_option,
    load,
    mono_option,
    output_option,
    pattern_argument,
    put,
    require_worked,
    rounds_option,
    size_option,
    terms_option,
)
from motifold.cli.progress import stages

PAPERS: dict[str, Literal["A4", "Letter", "A5"]] = {"a4": "A4", "letter": "Letter", "a5": "A5"}


@click.command("booklet", epilog="Example: motifold booklet hat.toml --paper Letter -o hat.pdf")
@pattern_argument
@click.option("--paper", type=click.Choice(["A4", "Letter", "A5"], case_sensitive=False), default="A4", show_default=True, help="Sheet.")
@click.option("--plain", is_flag=True, help="Words instead of abbreviations.")
@click.option("--fold", is_flag=True, help="Two pages on each side of the sheet, in the order for folding and stapling.")
@click.option("--errata", is_flag=True, help="Only what has changed since the first edition, as a sheet of its own.")
@terms_option
@click.option("--large-print", is_flag=True, help="Text of 18 points in one column, charts and drawings enlarged.")
@click.option("--numbers", is_flag=True, help="With the growth curve, yarn by colour and part, and the plan of colourways.")
@mono_option
@left_handed_option
@output_option
@rounds_option
@size_option
def command(
    pattern: Path,
    paper: str,
    plain: bool,
    large_print: bool,
    numbers: bool,
    fold: bool,
    errata: bool,
    terms: str | None,
    mono: bool,
    left_handed: bool,
    output: str | None,
    rounds: int | None,
    size_name: str | None,
) -> None:
    """Make the booklet: cover, materials, sizes, key, charts beside their rounds, assembly, finishing."""
    from motifold.render.booklet import Look, booklet_content, errata_of, make_booklet, make_sheet
    from motifold.render.booklet.fold import HOW_TO_PRINT, SHEETS, make_folded

    if fold and errata:
        raise click.UsageError("--fold and --errata cannot go together: an errata sheet is not folded.")
    if fold and large_print:
        raise click.UsageError("--fold and --large-print cannot go together: half a sheet is too small for large print.")
    sheet = PAPERS[paper.lower()]
    if fold and sheet not in SHEETS:
        raise click.UsageError("--fold goes with --paper A4 or Letter: the sheet in the printer, which is folded to half its size.")
    suffix = "-errata" if errata else "-fold" if fold else ""
    target = choose_target(output, pattern, suffix, ["pdf"])
    job = load(pattern, rounds, size_name)
    worked = require_worked(job)
    size = next((s.choice.name for s in worked.sizes), None) if size_name is not None else None
    look = Look(
        paper=SHEETS[sheet] if fold else sheet,
        terms=None if terms is None else "UK" if terms.upper() == "UK" else "US",
        size=size,
        mono=mono,
        left_handed=left_handed,
        plain=plain,
        numbers=numbers,
        large_print=large_print,
    )
    if errata and not worked.pattern.edition.changes:
        raise click.UsageError("the pattern says nothing of changes: they stand under [pattern.changes], each below its version.")
    with stages() as line:
        line.now("drawing the charts and schematics")
        content = booklet_content(worked, look)
        line.now("setting the pages")
        data = make_sheet(errata_of(content)) if errata else make_folded(content) if fold else make_booklet(content)
    path = target.path / f"{pattern.stem}{suffix}.pdf" if target.folder and target.path else target.path
    put(path, data)
    if fold:
        click.echo(HOW_TO_PRINT, err=True)
    finish(job)
