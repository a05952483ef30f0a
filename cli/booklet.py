"""``motifold booklet``: the pages, and the sheets that are printed beside them."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

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
from motifold.cli.progress import Stages, stages

if TYPE_CHECKING:
    from motifold.render.booklet import Look
    from motifold.render.worked import Worked

PAPERS: dict[str, Literal["A4", "Letter", "A5"]] = {"a4": "A4", "letter": "Letter", "a5": "A5"}
IN_BLACK = ("handout", "class-sheet", "tester-sheet")
"""Sheets that are copied for many: in black and white unless asked for in colour."""


@click.command("booklet", epilog="Example: motifold booklet hat.toml --paper Letter -o hat.pdf")
@pattern_argument
@click.option("--paper", type=click.Choice(["A4", "Letter", "A5"], case_sensitive=False), default="A4", show_default=True, help="Sheet.")
@click.option("--plain", is_flag=True, help="Words instead of abbreviations.")
@click.option("--fold", is_flag=True, help="Two pages on each side of the sheet, in the order for folding and stapling.")
@click.option("--errata", is_flag=True, help="Only what has changed since the first edition, as a sheet of its own.")
@click.option("--handout", is_flag=True, help="For a class: each round's chart and each step of the assembly, with lines for notes.")
@click.option("--class-sheet", is_flag=True, help="For a class: the rounds with their counts left blank, and the answers on another page.")
@click.option("--tester-sheet", is_flag=True, help="For a tester: what the pattern says of each size, and room for what was measured.")
@click.option("--colour", "--color", is_flag=True, help="These sheets in colour; without it they are in black and white.")
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
    handout: bool,
    class_sheet: bool,
    tester_sheet: bool,
    colour: bool,
    terms: str | None,
    mono: bool,
    left_handed: bool,
    output: str | None,
    rounds: int | None,
    size_name: str | None,
) -> None:
    """Make the booklet: cover, materials, sizes, key, charts beside their rounds, assembly, finishing."""
    from motifold.render.booklet import Look
    from motifold.render.booklet.fold import HOW_TO_PRINT, SHEETS

    asked = (("errata", errata), ("handout", handout), ("class-sheet", class_sheet), ("tester-sheet", tester_sheet))
    kind = _kind([name for name, on in asked if on], fold, large_print, numbers, mono, colour)
    sheet = PAPERS[paper.lower()]
    if fold and sheet not in SHEETS:
        raise click.UsageError("--fold goes with --paper A4 or Letter: the sheet in the printer, which is folded to half its size.")
    suffix = f"-{kind}" if kind else ""
    target = choose_target(output, pattern, suffix, ["pdf"])
    job = load(pattern, rounds, size_name)
    worked = require_worked(job)
    size = next((s.choice.name for s in worked.sizes), None) if size_name is not None else None
    look = Look(
        paper=SHEETS[sheet] if fold else sheet,
        terms=None if terms is None else "UK" if terms.upper() == "UK" else "US",
        size=size,
        mono=mono or (kind in IN_BLACK and not colour),
        left_handed=left_handed,
        plain=plain,
        numbers=numbers,
        large_print=large_print,
    )
    if errata and not worked.pattern.edition.changes:
        raise click.UsageError("the pattern says nothing of changes: they stand under [pattern.changes], each below its version.")
    with stages() as line:
        data = _made(kind, worked, look, line)
    path = target.path / f"{pattern.stem}{suffix}.pdf" if target.folder and target.path else target.path
    put(path, data)
    if fold:
        click.echo(HOW_TO_PRINT, err=True)
    finish(job, written=True)


def _kind(sheets: Sequence[str], fold: bool, large_print: bool, numbers: bool, mono: bool, colour: bool) -> str:
    """What is printed: "" the booklet, "fold" the same for folding, or one of the sheets; raises click.UsageError for what cannot be."""
    if len(sheets) > 1:
        raise click.UsageError(f"{' and '.join(f'--{name}' for name in sheets)} are different sheets: ask for one at a time.")
    kind = sheets[0] if sheets else "fold" if fold else ""
    if fold and sheets:
        said = "an errata sheet is" if kind == "errata" else "these sheets are"
        raise click.UsageError(f"--fold and --{kind} cannot go together: {said} not folded.")
    if fold and large_print:
        raise click.UsageError("--fold and --large-print cannot go together: half a sheet is too small for large print.")
    if kind == "handout" and large_print:
        raise click.UsageError("--handout and --large-print cannot go together: its cells are too small for large print.")
    if numbers and sheets:
        raise click.UsageError(f"--numbers and --{kind} cannot go together: the numbers are pages of the booklet.")
    if colour and mono:
        raise click.UsageError("--colour and --mono contradict each other.")
    if colour and kind not in IN_BLACK:
        raise click.UsageError("--colour is for --handout, --class-sheet and --tester-sheet; everything else is in colour without it.")
    return kind


def _made(kind: str, worked: Worked, look: Look, line: Stages) -> bytes:
    """The bytes of what ``_kind`` named."""
    from motifold.render.booklet import booklet_content, errata_of, make_booklet, make_sheet
    from motifold.render.booklet.fold import make_folded

    if kind in IN_BLACK:
        from motifold.render.handouts import make_class_sheet, make_handout, make_tester_sheet

        line.now("setting the sheets")
        makers = {"handout": make_handout, "class-sheet": make_class_sheet, "tester-sheet": make_tester_sheet}
        return makers[kind](worked, look)
    line.now("drawing the charts and schematics")
    content = booklet_content(worked, look)
    line.now("setting the pages")
    if kind == "errata":
        return make_sheet(errata_of(content))
    return make_folded(content) if kind == "fold" else make_booklet(content)
