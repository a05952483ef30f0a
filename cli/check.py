"""``motifold check``: the proof."""

from __future__ import annotations

from pathlib import Path

import click

from motifold.cli.common import (
    choose_target,
    finish,
    json_option,
    load,
    output_option,
    pattern_argument,
    print_json,
    put,
    require_worked,
    rounds_option,
    size_option,
    tell,
)
from motifold.render.proof import proof_json, proof_summary
from motifold.render.worked import Worked


@click.command("check", epilog="Example: motifold check hat.toml --watch")
@pattern_argument
@json_option
@output_option
@rounds_option
@size_option
@click.option("--watch", "watching", is_flag=True, help="Check again after each save, until Ctrl-C.")
def command(pattern: Path, as_json: bool, output: str | None, rounds: int | None, size_name: str | None, watching: bool) -> None:
    """Prove the pattern: counts round by round, sides, seams, and every problem at its place."""
    if watching:
        _watch(pattern, as_json, output, rounds, size_name)
    job = load(pattern, rounds, size_name)
    if as_json:
        print_json(job, proof_json(job.worked), output)
    worked = require_worked(job)
    target = choose_target(output or "-", pattern, "-check", ["txt"])
    put(target.path / f"{pattern.stem}-check.txt" if target.folder and target.path else target.path, _told(worked).encode())
    finish(job)


def _told(worked: Worked) -> str:
    """The summary, and that all is good where it is."""
    good = "" if worked.problems else "\nno problems\n"
    return f"{proof_summary(worked)}\n{good}"


def _watch(pattern: Path, as_json: bool, output: str | None, rounds: int | None, size_name: str | None) -> None:
    """The same proof after each save, to be read by someone at a terminal."""
    if as_json or output not in (None, "-") or str(pattern) == "-":
        raise click.UsageError("--watch shows one pattern file on the screen: no --json, no -o and no standard input with it.")
    from motifold.cli.watch import watch

    def look() -> None:
        try:
            job = load(pattern, rounds, size_name)
        except click.UsageError as wrong:  # a size that this save has taken out, a file that is away for a moment
            click.echo(wrong.format_message(), err=True)
            return
        tell(job)
        if job.worked is not None:
            click.echo(_told(job.worked), nl=False)

    watch(pattern, look)
