"""``motifold size``: what fits whom."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from motifold.cli.common import (
    choose_target,
    finish,
    format_option,
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
from motifold.render.pattern.rounding import tenths
from motifold.render.sizing.model import BodyFit, Fit, GaugeReport, SizeTable
from motifold.render.worked import Worked


@click.command("size", epilog="Example: motifold size hat.toml")
@pattern_argument
@click.option("--dpi", type=click.IntRange(36, 1200), default=300, show_default=True, help="Dots per inch of a PNG.")
@format_option
@json_option
@output_option
@rounds_option
@size_option
def command(
    pattern: Path, dpi: int, asked: str | None, as_json: bool, output: str | None, rounds: int | None, size_name: str | None
) -> None:
    """The fit table: rounds, width, girth and ease for each body, and what would come closer.

    -o FILE.svg, .pdf or .png draws the growth curve instead.
    """
    job = load(pattern, rounds, size_name)
    if as_json:
        print_json(job, _json(job.worked, size_name), output)
    worked = require_worked(job)
    target = choose_target(output or (None if asked else "-"), pattern, "-sizes", ["txt", "svg", "pdf", "png"], asked)
    if target.kind == "txt":
        text = size_text(worked, size_name) + "\n"
        put(target.path / f"{pattern.stem}-sizes.txt" if target.folder and target.path else target.path, text.encode())
        finish(job)
    from motifold.cli.drawings import write_drawings
    from motifold.render.charts import NamedDrawing
    from motifold.render.sizing.curve import draw_growth

    drawing = draw_growth(worked.pattern, worked.table) if worked.table is not None else None
    if drawing is None:
        click.echo(f"{worked.pattern.title}: no sizes that grow by rounds, so there is no curve to draw.", err=True)
    else:
        write_drawings([NamedDrawing("growth", drawing)], target, f"{pattern.stem}-sizes", worked.pattern.author or "", dpi)
    finish(job)


def _bodies(table: SizeTable | None, size_name: str | None) -> list[BodyFit]:
    return [body for body in table.bodies if size_name is None or body.name.casefold() == size_name.casefold()] if table else []


def _json(worked: Worked | None, size_name: str | None) -> dict[str, Any]:
    from motifold.render.sizing.report import gauge_report

    table = worked.table if worked is not None else None
    report = gauge_report(worked.pattern) if worked is not None else None
    return {
        "measure": table.measure if table else None,
        "bodies": [_body_json(worked, body) for body in _bodies(table, size_name)] if worked is not None else [],
        "gauge": _gauge_json(report) if report is not None else None,
        "edgings": _edgings_json(worked) if worked is not None else [],
    }


def _body_json(worked: Worked, body: BodyFit) -> dict[str, Any]:
    from motifold.render.sizing.own import pattern_of_size
    from motifold.render.sizing.ruler import motifs_across

    own = pattern_of_size(worked.pattern, body.name)
    motif = _sized(worked)
    hook = own.materials.hook
    return {
        "name": body.name,
        "body_cm": round(body.body_cm, 4),
        "band_cm": [round(cm, 4) for cm in body.band_cm] if body.band_cm else None,
        "source": body.source,
        "caution": body.caution,
        "estimate": own.gauge is not None and (own.gauge.by_hook or own.gauge.estimate),
        "across": round(motifs_across(own, motif), 6) if motif is not None else None,
        "hook_mm": round(float(hook.cm) * 10, 4) if hook is not None and hook.kind == "length" else None,
        "chosen": _fit_json(body.chosen) if body.chosen else None,
        "fits": [_fit_json(fit) for fit in body.fits],
        "hook_scale": round(body.hook_scale, 4) if body.hook_scale is not None else None,
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
        "checkpoints": [
            {"round": point.round, "width_cm": round(point.width_cm, 4), "unblocked_cm": round(point.unblocked_cm, 4)}
            for point in _checkpoints(worked, body)
        ],
    }


def _checkpoints(worked: Worked, body: BodyFit) -> tuple[Any, ...]:
    from motifold.render.sizing.own import pattern_of_size
    from motifold.render.sizing.report import checkpoints

    motif = _sized(worked)
    rounds = _rounds(worked, body)
    return checkpoints(pattern_of_size(worked.pattern, body.name), motif, rounds) if motif is not None and rounds else ()


def _gauge_json(report: GaugeReport) -> dict[str, Any]:
    names = ("per_round_cm", "start_cm", "error_cm", "points", "row_cm", "stitch_cm", "after_wash", "estimate")
    return {name: round(value, 5) if isinstance(value := getattr(report, name), float) else value for name in names}


def _edgings_json(worked: Worked) -> list[dict[str, Any]]:
    from motifold.render.sizing.own import pattern_of_size
    from motifold.render.sizing.piece import edging_fits

    return [
        {
            "size": size.choice.name, "name": fit.name, "stitches": fit.stitches, "edge_stitches": fit.places,
            "edge_cm": round(fit.girth_cm, 4), "width_cm": round(fit.width_cm, 4), "flat_stitches": fit.flat, "ratio": list(fit.ratio),
            "lies": fit.lies, "own_gauge": fit.own,
        }
        for size in worked.sizes
        for fit in edging_fits(
            pattern_of_size(worked.pattern, size.choice.name), size.fabrics, size.widths_cm, size.assembly, size.edgings
        )
    ]  # fmt: skip


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
    from motifold.render.sizing.tell import gauge_lines

    if worked.table is None:
        why = "no gauge to work its sizes out from" if worked.pattern.size is not None else "no sizes in the file"
        lines = [f"{worked.pattern.title}: {why}.", *(f"  {text}" for text in gauge_lines(worked.pattern))]
        return "\n".join([*lines, *_edgings_text(worked)])
    imperial = in_inches(worked.pattern)
    bodies = _bodies(worked.table, size_name)
    lines = [f"{worked.pattern.title}: {worked.table.measure}", *(f"  {text}" for text in gauge_lines(worked.pattern))]
    for body in bodies:
        lines += ["", *_body_text(worked, body, imperial)]
    if any(closer.change in ("hook", "rounds") for body in bodies for closer in body.closer):
        lines += ["", "  Only hooks within one and a half sizes of the swatch's are named: prove the new width with a new swatch."]
    return "\n".join([*lines, *_edgings_text(worked)])


def _edgings_text(worked: Worked) -> list[str]:
    from motifold.render.sizing.tell import edging_lines

    edgings = edging_lines(worked.pattern, [(size.choice.name, size) for size in worked.sizes])
    return ["", "Edgings", *(f"  {text}" for text in edgings)] if edgings else []


def _body_text(worked: Worked, body: BodyFit, imperial: bool) -> list[str]:
    from motifold.render.sizing.naming import measured_as
    from motifold.render.sizing.tell import body_lines, checkpoint_text
    from motifold.render.sizing.units import inches_text

    def length(cm: float, inches: bool) -> str:
        return inches_text(cm) if inches else f"{tenths(cm)} cm".replace("-", "−")  # decimals stand below each other

    def row(fit: Fit) -> list[str]:
        sign = "+" if round(fit.ease_cm, 1) > 0 else ""
        return [
            ("* " if fit == body.chosen else "  ") + str(fit.rounds),
            length(fit.width_cm, imperial),
            length(fit.girth_cm, imperial),
            length(fit.girth_cm, not imperial),
            sign + length(fit.ease_cm, imperial),
            f"{'+' if round(fit.ease_pct, 1) > 0 else ''}{fit.ease_pct if round(fit.ease_pct, 1) else 0.0:.1f} %".replace("-", "−"),
            "yes" if fit.within else "no",
        ]

    lines = body_lines(worked.pattern, body, imperial)
    motif = _sized(worked)
    counted = motif.worked if motif is not None else "rounds"
    opens = any(size.assembly is not None and size.assembly.openings for size in worked.sizes)
    measure = worked.table.measure if worked.table is not None else ""
    measured = measured_as(worked.pattern, motif, measure, opens) if motif is not None else "girth"
    rows = [[cell.replace("\N{NO-BREAK SPACE}", " ") for cell in row(fit)] for fit in body.fits]
    lines.append(plain_table([f"  {counted}", "width" if measured != "width" else "motif", measured, "", "ease", "", "within"], rows))
    if body.chosen is None:
        done = _rounds(worked, body)
        taken = f": {done} {counted} are worked, the nearest" if done and len(body.fits) > 1 and not _own_rounds(worked, body) else ""
        lines.append(f"  Nothing lies within the ease{taken}." + (" What would come closer:" if body.closer else ""))
    elif body.closer:
        lines.append("  What would come closer to the middle of the ease:")
    lines += [f"  - {closer.reason}" for closer in body.closer]
    on_the_way = checkpoint_text(_checkpoints(worked, body), imperial)
    return [*lines, *([f"  {on_the_way}"] if on_the_way else [])]


def _rounds(worked: Worked, body: BodyFit) -> int | None:
    """How many rounds of the motif that is sized are worked for a body."""
    motif = _sized(worked)
    return next((size.choice.rounds.get(motif.name) for size in worked.sizes if motif and size.choice.name == body.name), None)


def _own_rounds(worked: Worked, body: BodyFit) -> bool:
    """Whether the file itself says how many rounds this size works."""
    from motifold.render.sizing.own import own_of

    own = own_of(worked.pattern, body.name)
    return own is not None and own.rounds is not None


def _sized(worked: Worked) -> Any:
    from motifold.render.sizing.reading import sized_motif

    return sized_motif(worked.pattern)
