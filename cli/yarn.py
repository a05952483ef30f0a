"""``motifold yarn``: how much of each yarn each size takes."""

from __future__ import annotations

from pathlib import Path
from typing import Any

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
from motifold.cli.tables import plain_table
from motifold.render.sizing.model import YarnNeed
from motifold.render.worked import Worked, needs_by_size


@click.command("yarn")
@pattern_argument
@json_option
@output_option
@rounds_option
@size_option
def command(pattern: Path, as_json: bool, output: str | None, rounds: int | None, size_name: str | None) -> None:
    """Metres, grams and balls of each yarn for each size, the margin included."""
    job = load(pattern, rounds, size_name)
    if as_json:
        needs = needs_by_size(job.worked) if job.worked else {}
        sizes = {size: {need.yarn: _need_json(need) for need in found} for size, found in needs.items()}
        print_json(job, {"sizes": sizes}, output)
    worked = require_worked(job)
    target = choose_target(output or "-", pattern, "-yarn", ["txt"])
    text = yarn_text(worked) + "\n"
    put(target.path / f"{pattern.stem}-yarn.txt" if target.folder and target.path else target.path, text.encode())
    finish(job)


def _need_json(need: YarnNeed) -> dict[str, Any]:
    return {
        "metres": round(need.metres, 3),
        "grams": None if need.grams is None else round(need.grams, 3),
        "balls": need.balls,
        "estimate": need.estimate,
        "parts": {part: round(metres, 3) for part, metres in need.parts.items()},
    }


def yarn_text(worked: Worked) -> str:
    """The amounts as text, metric and imperial; says what is missing where nothing can be worked out."""
    from motifold.render.sizing.amounts import printed_amounts
    from motifold.render.sizing.yarn import MARGIN

    needs = needs_by_size(worked)
    if not any(needs.values()):
        return f"{worked.pattern.title}: no gauge in the file, so no yarn amounts: nothing is guessed."
    names = {yarn.key: f"{yarn.key} {yarn.name}" for yarn in worked.pattern.yarns}
    rows = [
        [
            size if several else "",
            names.get(need.yarn, need.yarn),
            f"{amounts.metres} m",
            f"{amounts.yards} yd",
            "" if amounts.grams is None else f"{amounts.grams} g",
            "" if amounts.ounces is None else f"{amounts.ounces:g} oz",
            "" if amounts.balls is None else str(amounts.balls),
        ]
        for several in [len(needs) > 1]
        for size, found in needs.items()
        for need in found
        for amounts in [printed_amounts(need)]
    ]
    lines = [
        f"{worked.pattern.title}: yarn, with {MARGIN:.0%} added",
        "",
        plain_table(["size" if len(needs) > 1 else "", "yarn", "length", "", "mass", "", "balls"], rows),
    ]
    if any(need.estimate for found in needs.values() for need in found):
        lines += ["", "  These are estimates: no weighed swatch stands behind them."]
    return "\n".join(lines)
