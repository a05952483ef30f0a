"""``motifold size``: what fits whom."""

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
from motifold.render.sizing.model import BodyFit, Fit, SizeTable
from motifold.render.worked import Worked


@click.command("size")
@pattern_argument
@json_option
@output_option
@rounds_option
@size_option
def command(pattern: Path, as_json: bool, output: str | None, rounds: int | None, size_name: str | None) -> None:
    """The fit table: rounds, width, girth and ease for each body, and what would come closer."""
    job = load(pattern, rounds, size_name)
    table = job.worked.table if job.worked else None
    if as_json:
        print_json(job, _table_json(table, size_name), output)
    worked = require_worked(job)
    text = size_text(worked, size_name) + "\n"
    target = choose_target(output or "-", pattern, "-sizes", ["txt"])
    put(target.path / f"{pattern.stem}-sizes.txt" if target.folder and target.path else target.path, text.encode())
    finish(job)


def _bodies(table: SizeTable | None, size_name: str | None) -> list[BodyFit]:
    return [body for body in table.bodies if size_name is None or body.name.casefold() == size_name.casefold()] if table else []


def _table_json(table: SizeTable | None, size_name: str | None) -> dict[str, Any]:
    return {
        "measure": table.measure if table else None,
        "bodies": [
            {
                "name": body.name,
                "body_cm": round(body.body_cm, 4),
                "source": body.source,
                "chosen": _fit_json(body.chosen) if body.chosen else None,
                "fits": [_fit_json(fit) for fit in body.fits],
                "closer": [
                    {
                        "change": closer.change,
                        "reason": closer.reason,
                        "girth_cm": round(closer.girth_cm, 4),
                        "ease_pct": round(closer.ease_pct, 4),
                        "within": closer.within,
                        **closer.detail,
                    }
                    for closer in body.closer
                ],
            }
            for body in _bodies(table, size_name)
        ],
    }


def _fit_json(fit: Fit) -> dict[str, Any]:
    return {
        "rounds": fit.rounds,
        "width_cm": round(fit.width_cm, 4),
        "girth_cm": round(fit.girth_cm, 4),
        "ease_cm": round(fit.ease_cm, 4),
        "ease_pct": round(fit.ease_pct, 4),
        "within": fit.within,
    }


def size_text(worked: Worked, size_name: str | None = None) -> str:
    """The fit table as text, cm and inches; says what is missing where there is none."""
    from motifold.render.sizing.reading import in_inches
    from motifold.render.sizing.units import inches_text, length_text, one_length

    if worked.table is None:
        return f"{worked.pattern.title}: no sizes in the file, or no gauge to work them out from."
    lines = [f"{worked.pattern.title}: {worked.table.measure}"]
    imperial = in_inches(worked.pattern)
    counted = _counted(worked)
    for body in _bodies(worked.table, size_name):
        lines += ["", f"{body.name}: {length_text(body.body_cm, imperial)}" + (f", {body.source}" if body.source else "")]
        rows = [
            [
                ("* " if fit == body.chosen else "  ") + str(fit.rounds),
                inches_text(fit.width_cm) if imperial else f"{fit.width_cm:.1f} cm",
                inches_text(fit.girth_cm) if imperial else f"{fit.girth_cm:.1f} cm",
                f"{fit.girth_cm:.1f} cm" if imperial else inches_text(fit.girth_cm),
                one_length(fit.ease_cm, True) if imperial else f"{fit.ease_cm:+.1f} cm",
                f"{fit.ease_pct:+.1f} %",
                "yes" if fit.within else "no",
            ]
            for fit in body.fits
        ]
        lines.append(plain_table([f"  {counted}", "width", "girth", "", "ease", "", "within"], rows))
        if body.chosen is None:
            lines.append("  Nothing lies within the ease." + (" What would come closer:" if body.closer else ""))
        elif body.closer:
            lines.append("  What would come closer to the middle of the ease:")
        lines += [f"  - {closer.reason}" for closer in body.closer]
    if any(closer.change in ("hook", "rounds") for body in _bodies(worked.table, size_name) for closer in body.closer):
        lines += ["", "  Only hooks within one and a half sizes of the swatch's are named: prove the new width with a new swatch."]
    return "\n".join(lines)


def _counted(worked: Worked) -> str:
    from motifold.render.sizing.reading import sized_motif

    motif = sized_motif(worked.pattern)
    return motif.worked if motif is not None else "rounds"
