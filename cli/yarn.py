"""``motifold yarn``: how much of each yarn each size takes."""

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
from motifold.render.pattern.quantity import PerLength, QuantityError, parse_per_length
from motifold.render.sizing.model import YarnNeed
from motifold.render.worked import Worked, needs_by_size, size_orders


@click.command("yarn", epilog="Example: motifold yarn hat.toml --size Large")
@pattern_argument
@click.option("--instead", metavar="LABEL", help='What another yarn would take, by its label: "125 m / 50 g".')
@click.option("--dpi", type=click.IntRange(36, 1200), default=300, show_default=True, help="Dots per inch of a PNG.")
@format_option
@json_option
@output_option
@rounds_option
@size_option
def command(
    pattern: Path,
    instead: str | None,
    dpi: int,
    asked: str | None,
    as_json: bool,
    output: str | None,
    rounds: int | None,
    size_name: str | None,
) -> None:
    """Metres, grams and balls of each yarn for each size, the margin included.

    -o FILE.svg, .pdf or .png draws them as bars, and the plan of the colourways, instead.
    """
    label = _label(instead)
    job = load(pattern, rounds, size_name)
    if as_json:
        print_json(job, _json(job.worked, label), output)
    worked = require_worked(job)
    target = choose_target(output or (None if asked else "-"), pattern, "-yarn", ["txt", "svg", "pdf", "png"], asked)
    if target.kind == "txt":
        text = yarn_text(worked, label) + "\n"
        put(target.path / f"{pattern.stem}-yarn.txt" if target.folder and target.path else target.path, text.encode())
        finish(job)
    from motifold.cli.drawings import write_drawings
    from motifold.render.charts import NamedDrawing
    from motifold.render.sizing.bars import draw_yarn
    from motifold.render.sizing.plan import draw_placing

    drawn = [("yarn", draw_yarn(worked.pattern, needs_by_size(worked)))]
    drawn += [("colourways", draw_placing(worked.pattern, size.assembly)) for size in worked.sizes[:1]]
    drawings = [NamedDrawing(name, drawing) for name, drawing in drawn if drawing is not None]
    if drawings:
        write_drawings(drawings, target, f"{pattern.stem}-yarn", worked.pattern.author or "", dpi)
    else:
        click.echo(f"{worked.pattern.title}: no gauge in the file, so no yarn amounts to draw.", err=True)
    finish(job)


def _label(instead: str | None) -> PerLength | None:
    if instead is None:
        return None
    try:
        return parse_per_length(instead)
    except QuantityError as error:
        hint = f"; {error.hint}" if error.hint else ""
        raise click.UsageError(f"--instead: {error.message}{hint}.") from None


def _json(worked: Worked | None, label: PerLength | None) -> dict[str, Any]:
    if worked is None:
        return {"sizes": {}}
    from motifold.render.sizing.yarn import margin_of

    needs = needs_by_size(worked)
    content: dict[str, Any] = {
        "sizes": {size: {need.yarn: _need_json(worked, need, label) for need in found} for size, found in needs.items()},
        "margin_pct": round(100 * margin_of(worked.pattern), 3),
    }
    colourways = _colourways_json(worked)
    if colourways:
        content["colourways"] = colourways
    orders = _orders(worked, needs)
    if any(orders.values()):
        content["orders"] = {
            size: [
                {
                    "motif": order.motif,
                    "first": order.first,
                    "less": order.less,
                    "metres": {order.first: round(order.metres[0], 3), order.second: round(order.metres[1], 3)},
                    "swapped": {order.first: round(order.swapped[0], 3), order.second: round(order.swapped[1], 3)},
                }
                for order in found
            ]
            for size, found in orders.items()
        }
    return content


def _orders(worked: Worked, needs: dict[str, tuple[YarnNeed, ...]]) -> dict[str, tuple[Any, ...]]:
    return {size.choice.name: size_orders(worked, size, needs[size.choice.name]) for size in worked.sizes}


def _colourways_json(worked: Worked) -> dict[str, Any]:
    from motifold.render.sizing.colourways import batches_of

    found: dict[str, Any] = {}
    for size in worked.sizes:
        made = batches_of(worked.pattern, size.fabrics, size.assembly)
        if made:
            found[size.choice.name] = {
                motif: {
                    batch.name: {"make": batch.made, "yarns": dict(batch.yarns), "panels": list(batch.panels)} for batch in several
                }
                for motif, several in made.items()
            }
    return found


def _need_json(worked: Worked, need: YarnNeed, label: PerLength | None) -> dict[str, Any]:
    from motifold.render.sizing.choices import other_ball
    from motifold.render.sizing.loops import UNCALIBRATED_ERROR

    content: dict[str, Any] = {
        "metres": round(need.metres, 3),
        "grams": None if need.grams is None else round(need.grams, 3),
        "balls": need.balls,
        "estimate": need.estimate,
        "parts": {part: round(metres, 3) for part, metres in need.parts.items()},
        "error_pct": 100 * UNCALIBRATED_ERROR if need.estimate else None,
        "left_grams": None if need.left_grams is None else round(need.left_grams, 3),
        "left_metres": None if need.left_metres is None else round(need.left_metres, 3),
    }
    asked = label or next((yarn.substitute for yarn in worked.pattern.yarns if yarn.key == need.yarn), None)
    if asked is not None:
        other = other_ball(need, asked)
        content["other"] = {
            "label": f"{asked.length} / {asked.mass}", "grams": round(other.grams, 3), "balls": other.balls,
            "left_metres": round(other.left_metres, 3),
        }  # fmt: skip
    return content


def yarn_text(worked: Worked, label: PerLength | None = None) -> str:
    """The amounts as text, metric and imperial; says what is missing where nothing can be worked out."""
    from motifold.render.sizing.amounts import printed_amounts
    from motifold.render.sizing.loops import UNCALIBRATED_ERROR
    from motifold.render.sizing.units import number_text
    from motifold.render.sizing.yarn import margin_of

    needs = needs_by_size(worked)
    if not any(needs.values()):
        return f"{worked.pattern.title}: no gauge in the file, so no yarn amounts: nothing is guessed."
    names = {yarn.key: f"{yarn.key} {yarn.name}" if yarn.name != yarn.key else yarn.key for yarn in worked.pattern.yarns}
    several = len(needs) > 1
    rows = [
        [
            *([size] if several else []),
            names.get(need.yarn, need.yarn),
            f"{amounts.metres} m",
            f"{amounts.yards} yd",
            "" if amounts.grams is None else f"{amounts.grams} g",
            "" if amounts.ounces is None else f"{amounts.ounces:g} oz",
            "" if amounts.balls is None else str(amounts.balls),
            "" if need.left_grams is None else f"{int(need.left_grams)} g",
        ]
        for size, found in needs.items()
        for need in found
        for amounts in [printed_amounts(need)]
    ]
    lines = [
        f"{worked.pattern.title}: yarn, with {number_text(100 * margin_of(worked.pattern))} % added",
        "",
        plain_table([*(["size"] if several else []), "yarn", "length", "", "mass", "", "balls", "left"], rows, left=1 + several),
    ]
    if any(need.estimate for found in needs.values() for need in found):
        error = f"{100 * UNCALIBRATED_ERROR:.0f}"
        guessed = [size for size, found in needs.items() if any(need.estimate for need in found)]
        these = "These are" if len(guessed) == len([size for size in needs if needs[size]]) else f"Those of {', '.join(guessed)} are"
        lines += ["", f"  {these} estimates: no weighed swatch stands behind them. They may be out by {error} % either way."]
    lone = _lone_text(worked)
    lines += ["", f"  {lone}"] if lone else []
    lines += _parts_text(worked, needs, names)
    for told in (_colourways_text(worked, names), _orders_text(worked, needs, names)):
        lines += ["", *(f"  {text}" for text in told)] if told else []
    others = _others_text(worked, needs, names, label)
    return "\n".join([*lines, *(["", *(f"  {text}" for text in others)] if others else [])])


def _lone_text(worked: Worked) -> str:
    """Where several go round and the file does not say how they are joined, the amounts are for one of each motif."""
    plan = worked.pattern.size
    if worked.pattern.assembly is not None or plan is None or plan.across is None or plan.across <= 1:
        return ""
    return "One of each motif is counted: the file has no [assembly] that says how many are made."


def _parts_text(worked: Worked, needs: dict[str, tuple[YarnNeed, ...]], names: dict[str, str]) -> list[str]:
    """What each yarn of each size goes into."""
    from motifold.render.sizing.tell import PARTS, parts_row
    from motifold.render.sizing.units import number_text
    from motifold.render.sizing.yarn import margin_of

    several = len(needs) > 1
    rows = [
        [*([size] if several else []), names.get(need.yarn, need.yarn), *parts_row(need)]
        for size, found in needs.items()
        for need in found
    ]
    margin = margin_of(worked.pattern)
    before = f", before the {number_text(100 * margin)} % are added" if margin else ""
    table = plain_table([*(["size"] if several else []), "yarn", *(head for _, head in PARTS)], rows, left=1 + several)
    return ["", f"  What it goes into{before}:", "", table.replace("\N{NO-BREAK SPACE}", " ")]


def _colourways_text(worked: Worked, names: dict[str, str]) -> list[str]:
    from motifold.render.sizing.colourways import batches_of
    from motifold.render.sizing.tell import together

    told = []
    for size in worked.sizes:
        for motif, several in batches_of(worked.pattern, size.fabrics, size.assembly).items():
            yarns = {batch.name: ", ".join(names.get(key, key) for key in batch.yarns.values()) for batch in several}
            made = [f"{batch.name}: make {batch.made} ({yarns[batch.name]})" for batch in several]
            told.append((size.choice.name, f"{motif}: {'; '.join(made)}."))
    return together(told, tuple(size.choice.name for size in worked.sizes))


def _orders_text(worked: Worked, needs: dict[str, tuple[YarnNeed, ...]], names: dict[str, str]) -> list[str]:
    from motifold.render.sizing.tell import order_text, together

    told = [(size, order_text(order, names)) for size, orders in _orders(worked, needs).items() for order in orders]
    return together(told, tuple(needs))


def _others_text(
    worked: Worked, needs: dict[str, tuple[YarnNeed, ...]], names: dict[str, str], label: PerLength | None
) -> list[str]:
    from motifold.render.sizing.choices import other_ball
    from motifold.render.sizing.tell import other_text, together

    told = []
    own = {yarn.key: yarn.substitute for yarn in worked.pattern.yarns}
    for size, found in needs.items():
        for need in found:
            asked = label or own.get(need.yarn)
            if asked is not None:
                told.append((size, f"{names.get(need.yarn, need.yarn)}: {other_text(other_ball(need, asked))}."))
    return together(told, tuple(needs))
