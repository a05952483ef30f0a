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
)
from motifold.render.proof import proof_json, proof_summary


@click.command("check")
@pattern_argument
@json_option
@output_option
@rounds_option
@size_option
def command(pattern: Path, as_json: bool, output: str | None, rounds: int | None, size_name: str | None) -> None:
    """Prove the pattern: counts round by round, sides, seams, and every problem at its place."""
    job = load(pattern, rounds, size_name)
    if as_json:
        print_json(job, proof_json(job.worked), output)
    worked = require_worked(job)
    target = choose_target(output or "-", pattern, "-check", ["txt"])
    text = proof_summary(worked) + "\n"
    put(target.path / f"{pattern.stem}-check.txt" if target.folder and target.path else target.path, text.encode())
    finish(job)
