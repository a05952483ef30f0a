"""``motifold check``: the proof."""

from __future__ import annotations

from pathlib import Path

import click

from motifold.cli.common import finish, json_option, load, pattern_argument, print_json, require_worked, rounds_option, size_option
from motifold.render.proof import proof_json, proof_summary


@click.command("check")
@pattern_argument
@json_option
@rounds_option
@size_option
def command(pattern: Path, as_json: bool, rounds: int | None, size_name: str | None) -> None:
    """Prove the pattern: counts round by round, sides, seams, and every problem at its place."""
    job = load(pattern, rounds, size_name)
    if as_json:
        print_json(job, proof_json(job.worked))
    worked = require_worked(job)
    click.echo(proof_summary(worked))
    finish(job)
