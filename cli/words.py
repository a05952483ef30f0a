"""``motifold words``: the written pattern."""

from __future__ import annotations

from pathlib import Path

import click

from motifold.cli.common import (
    choose_target,
    finish,
    left_handed_option,
    load,
    output_option,
    pattern_argument,
    put,
    require_worked,
    rounds_option,
    size_option,
    terms_option,
)

ENDINGS = {"txt": "txt", "md": "md", "html": "html"}


@click.command("words", epilog="Example: motifold words hat.toml --terms UK -o hat.md")
@pattern_argument
@terms_option
@click.option("--plain", is_flag=True, help="Words instead of abbreviations.")
@click.option("--format", "form", type=click.Choice(["txt", "md", "html"]), help="Plain text, Markdown or an HTML fragment.")
@left_handed_option
@output_option
@rounds_option
@size_option
def command(
    pattern: Path,
    terms: str | None,
    plain: bool,
    form: str | None,
    left_handed: bool,
    output: str | None,
    rounds: int | None,
    size_name: str | None,
) -> None:
    """Write the pattern out, for all sizes unless --size names one; on standard output unless -o names a file."""
    from motifold.render.words import WordsLook, to_html_fragment, to_markdown, to_text, write_document
    from motifold.render.worked import needs_by_size

    target = choose_target(output or "-", pattern, "-words", list(ENDINGS), form)
    job = load(pattern, rounds, size_name)
    worked = require_worked(job)
    size = next((s.choice.name for s in worked.sizes), None) if size_name is not None else None
    used = (terms or worked.pattern.terms).upper()
    look = WordsLook(terms="UK" if used == "UK" else "US", plain=plain, size=size, left_handed=left_handed)
    document = write_document(worked, needs_by_size(worked), look)
    write = {"txt": to_text, "md": to_markdown, "html": to_html_fragment}[target.kind]
    text = write(document)
    path = target.path / f"{pattern.stem}-words.{target.kind}" if target.folder and target.path else target.path
    put(path, (text if text.endswith("\n") else text + "\n").encode())
    finish(job)
