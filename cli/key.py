"""``motifold key``: the symbols and what they mean."""

from __future__ import annotations

from pathlib import Path

import click

from motifold.cli.common import choose_target, finish, format_option, load, output_option, put, require_worked, terms_option


@click.command("key")
@click.argument("pattern", type=click.Path(path_type=Path), required=False)
@click.option("--dpi", type=click.IntRange(36, 1200), default=300, show_default=True, help="Dots per inch of a PNG.")
@click.option("--sprites", is_flag=True, help="The whole set as SVG symbols, for a web page to use.")
@format_option
@terms_option
@output_option
def command(pattern: Path | None, dpi: int, sprites: bool, asked: str | None, terms: str | None, output: str | None) -> None:
    """Every symbol with its US and UK names; with a PATTERN, those that its charts use."""
    from motifold.cli.drawings import KINDS, write_drawings
    from motifold.render.charts import NamedDrawing, pattern_look
    from motifold.render.motif.chart import ChartLook, draw_key, draw_key_sheet, entries_used, key_sprites

    if sprites:
        if pattern is not None:
            raise click.UsageError("--sprites are the whole set; it takes no pattern.")
        target = choose_target(output, Path("motifold"), "-symbols", ["svg"], asked)
        put(target.path / "motifold-symbols.svg" if target.folder and target.path else target.path, key_sprites().encode())
        return
    if pattern is None:
        target = choose_target(output, Path("motifold"), "-key", KINDS, asked)
        write_drawings([NamedDrawing("key", draw_key_sheet())], target, "motifold", dpi=dpi)
        return
    target = choose_target(output, pattern, "-key", KINDS, asked)
    job = load(pattern)
    worked = require_worked(job)
    uk = (terms or worked.pattern.terms).upper() == "UK"
    look = pattern_look(worked.pattern, ChartLook(terms="UK" if uk else "US"))
    fabrics = [fabric for size in worked.sizes for fabric in (*size.fabrics.values(), *size.edgings.values())]
    drawing = draw_key(entries_used(fabrics, look), look.terms)
    write_drawings([NamedDrawing("key", drawing)], target, pattern.stem, worked.pattern.author or "", dpi)
    finish(job)
