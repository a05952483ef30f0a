"""``motifold key``: the symbols and what they mean."""

from __future__ import annotations

from pathlib import Path

import click

from motifold.cli.common import (
    Target,
    choose_target,
    finish,
    format_option,
    json_option,
    json_target,
    json_text,
    load,
    mono_option,
    output_option,
    print_json,
    put,
    require_worked,
    terms_option,
)


@click.command("key", epilog="Example: motifold key hat.toml -o key.pdf")
@click.argument("pattern", type=click.Path(path_type=Path), required=False)
@click.option("--paper", type=click.Choice(["A4", "Letter", "A5"], case_sensitive=False), default="A4", show_default=True)
@click.option("--dpi", type=click.IntRange(36, 1200), default=300, show_default=True, help="Dots per inch of a PNG.")
@click.option("--sprites", is_flag=True, help="The whole set as SVG symbols, for a web page to use.")
@format_option
@terms_option
@mono_option
@json_option
@output_option
def command(
    pattern: Path | None,
    paper: str,
    dpi: int,
    sprites: bool,
    asked: str | None,
    terms: str | None,
    mono: bool,
    as_json: bool,
    output: str | None,
) -> None:
    """Every symbol with its US and UK names, and how to read them; with a PATTERN, those that its charts use."""
    from motifold.render.booklet.paper import PAPERS_MM

    if sprites and (pattern is not None or as_json):
        raise click.UsageError("--sprites are the whole set as SVG; they take no pattern and no --json.")
    size = next(size for name, size in PAPERS_MM.items() if name.casefold() == paper.casefold())
    if pattern is None:
        _whole(size, sprites, terms, mono, as_json, (output, asked, dpi))
    else:
        _used(pattern, size[0] - 28.0, terms, mono, as_json, (output, asked, dpi))


Form = tuple[str | None, str | None, int]
"""Where a drawing goes: -o, --format, --dpi."""


def _whole(size: tuple[float, float], sprites: bool, terms: str | None, mono: bool, as_json: bool, form: Form) -> None:
    """The whole set: as a sheet, as sprites, or as numbers."""
    from motifold.cli.drawings import KINDS, write_drawings
    from motifold.render.charts import NamedDrawing
    from motifold.render.motif.chart import draw_key_sheet, key_json, key_sprites
    from motifold.symbols.key import whole_key

    output, asked, dpi = form
    if as_json:
        content = key_json([entry for section in whole_key() for entry in section.entries])
        put(json_target(output), (json_text({**content, "problems": []}) + "\n").encode())
        return
    if sprites:
        target = choose_target(output, Path("motifold"), "-symbols", ["svg"], asked)
        put(target.path / "motifold-symbols.svg" if target.folder and target.path else target.path, key_sprites().encode())
        return
    pages = draw_key_sheet(*size, terms="UK" if terms and terms.upper() == "UK" else "US" if terms else None, mono=mono)
    target = choose_target(output, Path("motifold"), "-key", KINDS, asked)
    write_drawings([NamedDrawing(f"key-{i}", page) for i, page in enumerate(pages, 1)], target, "motifold", dpi=dpi)


def _used(pattern: Path, width_mm: float, terms: str | None, mono: bool, as_json: bool, form: Form) -> None:
    """What the charts of a pattern use."""
    from motifold.cli.drawings import KINDS, write_drawings
    from motifold.render.charts import NamedDrawing, chart_marks, pattern_look
    from motifold.render.motif.chart import ChartLook, draw_key, entries_used, key_json

    output, asked, dpi = form
    target = Target(None, False, "json") if as_json else choose_target(output, pattern, "-key", KINDS, asked)
    job = load(pattern)
    if as_json and job.worked is None:
        print_json(job, key_json(()), output)
    worked = job.worked if as_json and job.worked else require_worked(job)
    uk = (terms or worked.pattern.terms).upper() == "UK"
    look = pattern_look(worked.pattern, ChartLook(terms="UK" if uk else "US", mono=mono))
    fabrics = [fabric for size in worked.sizes for fabric in (*size.fabrics.values(), *size.edgings.values())]
    entries = entries_used(fabrics, look)
    known = {entry.id for entry in entries}
    entries += tuple(entry for entry in chart_marks(worked, look) if entry.id not in known)
    if as_json:
        print_json(job, key_json(entries), output)
    drawing = draw_key(entries, look.terms, width_mm, mono=mono)
    write_drawings([NamedDrawing("key", drawing)], target, pattern.stem, worked.pattern.author or "", dpi)
    finish(job)
