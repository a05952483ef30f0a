"""Materials and gauge: what is needed, how much of it, and what the swatch must measure."""

from __future__ import annotations

from motifold.render.pattern.model import Gauge, Yarn
from motifold.render.pattern.quantity import PerLength
from motifold.render.sizing.amounts import printed_amounts
from motifold.render.sizing.choices import other_ball
from motifold.render.sizing.gauge import width_line
from motifold.render.sizing.hooks import hook_text
from motifold.render.sizing.loops import UNCALIBRATED_ERROR
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.own import own_of, reckoned_by_hook
from motifold.render.sizing.reading import in_inches
from motifold.render.sizing.report import UNEVEN, checkpoints
from motifold.render.sizing.swatch import weighed_rounds
from motifold.render.sizing.units import convert, number_text, one_length, swatch_text
from motifold.render.sizing.yarn import margin_of
from motifold.render.words.colourways import colourway_blocks
from motifold.render.words.counts import last_round
from motifold.render.words.model import Block, Items, Paragraph, Section, Table
from motifold.render.words.places import round_name
from motifold.render.words.printed import Printed, motif_words, plural, yarn_words
from motifold.render.words.voice import NBSP, listed
from motifold.render.worked import size_orders

WEIGHT_NAMES = ("Lace", "Super Fine", "Fine", "Light", "Medium", "Bulky", "Super Bulky", "Jumbo")
"""Standard names of the yarn weights 0 to 7 (Craft Yarn Council yarn weight system, www.YarnStandards.com)."""


def materials_section(printed: Printed) -> Section | None:
    """Yarns with their amounts for each size, hook and notions; None where the pattern names none of them."""
    pattern = printed.pattern
    items = [_yarn(printed, yarn) for yarn in pattern.yarns]
    hook = pattern.materials.hook
    if hook is not None and hook.kind == "length":
        gauge = printed.voice.term("gauge")
        same = f", or the size that gives you the {gauge}" if pattern.gauge is not None else ""
        items.append(f"{_hooks(printed, float(hook.cm) * 10)}{same}")
    items += [notion[:1].upper() + notion[1:] for notion in pattern.materials.notions]
    if not items:
        return None
    blocks: list[Block] = [Items(tuple(items))]
    blocks += _amounts(printed)
    blocks += colourway_blocks(printed)
    return Section("materials", "Materials", tuple(blocks))


def _hooks(printed: Printed, common_mm: float) -> str:
    """"4 mm (US G-6)"; where sizes have hooks of their own, "4 mm (US G-6); for Large 5 mm (US H-8)"."""
    found: dict[float, list[str]] = {}
    for name in printed.names:
        own = own_of(printed.pattern, name)
        own_mm = float(own.hook.cm) * 10 if own is not None and own.hook is not None else common_mm
        found.setdefault(round(own_mm, 4), []).append(name)
    if len(found) == 1:
        return f"{hook_text(next(iter(found)))} crochet hook"
    return "Crochet hooks: " + "; ".join(f"{hook_text(mm)} for {listed(names)}" for mm, names in found.items())


def _yarn(printed: Printed, yarn: Yarn) -> str:
    """"Yarn A: Fog, weight 3 (Light), 110 m (120 yd) to 50 g"."""
    parts = [f"Yarn {yarn.key}: {yarn.name}" if yarn.name != yarn.key else f"Yarn {yarn.key}"]
    if yarn.weight is not None and 0 <= yarn.weight < len(WEIGHT_NAMES):
        parts.append(f"weight{NBSP}{yarn.weight} ({WEIGHT_NAMES[yarn.weight]})")
    if yarn.length is not None:
        parts.append(_label(yarn.length))
    return ", ".join(parts)


def _label(length: PerLength) -> str:
    """"110 m (120 yd) to 50 g", or "170 yd (155 m) to 3.5 oz (99 g)": as the label has it first."""
    metres, grams = float(length.length.metres), float(length.mass.grams)
    metric = f"{number_text(metres)}{NBSP}m"
    yards = f"{number_text(round(convert(metres, 'm', 'yd')))}{NBSP}yd"
    if _in_yards(length):
        yards, metric = f"{number_text(convert(metres, 'm', 'yd'))}{NBSP}yd", f"{metres:.0f}{NBSP}m"
        return f"{yards} ({metric}) to {_mass(length, grams)}"
    return f"{metric} ({yards}) to {_mass(length, grams)}"


def _mass(length: PerLength, grams: float) -> str:
    if length.mass.unit in ("oz", "lb"):
        return f"{number_text(convert(grams, 'g', 'oz'))}{NBSP}oz ({grams:.0f}{NBSP}g)"
    return f"{number_text(grams)}{NBSP}g"


def _amounts(printed: Printed) -> list[Block]:
    """A table of yarn by size, and what stands behind its numbers."""
    rows = []
    for yarn in printed.pattern.yarns:
        needs = [printed.need(name, yarn) for name in printed.names]
        if any(needs):
            rows.append((yarn_words(yarn), *(amount_text(need, yarn) for need in needs)))
    if not rows:
        return []
    header = ("Yarn", *printed.names) if printed.several else ("Yarn", "Amount")
    needed = [need for name in printed.names for need in printed.needs.get(name, ())]
    named = (("seams", "seams"), ("edging", "edgings"), ("tails", "ends to weave in"))
    parts = [words for part, words in named if any(need.parts.get(part) for need in needed)]
    margin = margin_of(printed.pattern)
    spare = [f"{number_text(100 * margin)}{NBSP}% to spare"] if margin else []
    text = f"Amounts include {listed([*parts, *spare])}." if parts or spare else ""
    guessed = [name for name in printed.names if any(need.estimate for need in printed.needs.get(name, ()))]
    estimate = len(guessed) == sum(bool(printed.needs.get(name)) for name in printed.names)
    if guessed:
        these = "They" if estimate else f"Those for {listed(guessed)}"
        text += (
            f" {these} are estimates, reckoned without a weighed swatch:"
            f" they may be out by {UNCALIBRATED_ERROR * 100:.0f}{NBSP}% either way."
        )
    text += f" For another yarn, buy by length rather than by mass, and make a swatch to check the {printed.voice.term('gauge')}."
    table = Table("Yarn needed" + (" (estimated)" if estimate else ""), header, tuple(rows))
    return [table, Paragraph(" ".join((text.strip(), *_others(printed), *_turns(printed))))]


def _turns(printed: Printed) -> list[str]:
    """Which of two yarns that take turns goes further, in each size."""
    less: dict[str, list[str]] = {}
    for size in printed.sizes:
        orders = size_orders(printed.worked, size, printed.needs.get(size.choice.name, ()))
        if len(orders) == 1 and abs(orders[0].metres[0] - orders[0].metres[1]) >= 0.05 * sum(orders[0].metres):
            less.setdefault(orders[0].less, []).append(size.choice.name)
    if not less:
        return []
    alone = len(less) == 1 and len(next(iter(less.values()))) == len(printed.names)
    said = [f"less of {yarn} is needed" + ("" if alone else f" for {listed(names)}") for yarn, names in less.items()]
    return [f"The two yarns take turns, and {listed(said)}: of two leftovers, let the smaller be that one."]


def _others(printed: Printed) -> list[str]:
    """What the yarn that the file names beside each would take instead."""
    lines = []
    for yarn in printed.pattern.yarns:
        if yarn.substitute is None:
            continue
        needs = [printed.need(name, yarn) for name in printed.names]
        balls = [str(other_ball(need, yarn.substitute).balls) if need is not None else "–" for need in needs]
        if any(needs):
            counted = balls[0] if len(set(balls)) == 1 else f"{balls[0]}{NBSP}({', '.join(balls[1:])})"
            ball = "ball" if counted == "1" else "balls"
            lines.append(f"Instead of {yarn.key}, a yarn of {_label(yarn.substitute)}: {counted}{NBSP}{ball}.")
    return lines


def _in_yards(length: PerLength) -> bool:
    return length.length.unit in ("yd", "ft", "in")


def amount_text(need: YarnNeed | None, yarn: Yarn) -> str:
    """"42 m (46 yd), 19 g (0.7 oz), 1 ball"; yards first where the yarn's label has them."""
    if need is None:
        return "–"
    imperial = yarn.length is not None and _in_yards(yarn.length)
    amounts = printed_amounts(need)
    length, other = f"{amounts.metres}{NBSP}m", f"{amounts.yards}{NBSP}yd"
    parts = [f"{other} ({length})" if imperial else f"{length} ({other})"]
    if amounts.grams is not None and amounts.ounces is not None:
        mass, other = f"{amounts.grams}{NBSP}g", f"{number_text(amounts.ounces)}{NBSP}oz"
        parts.append(f"{other} ({mass})" if imperial else f"{mass} ({other})")
    if amounts.balls is not None:
        parts.append(plural(amounts.balls, "ball"))
    return ", ".join(parts)


def gauge_section(printed: Printed) -> Section | None:
    """What the swatch measures; None where the pattern has no gauge, or one that says nothing."""
    gauge = printed.pattern.gauge
    if gauge is None:
        return None
    lines = [*_rounds(printed, gauge), *_stitches(printed, gauge), *_weighed(printed, gauge), *_on_the_way(printed, gauge)]
    if not lines and not gauge.estimate:
        return None
    lines += _own_gauges(printed)
    if gauge.estimate:
        lines.append("Sizes are estimated: make a swatch before you trust them.")
    if gauge.after_wash is not None and gauge.after_wash != 1:
        change = round(100 * (gauge.after_wash - 1), 1)
        way = "smaller" if change < 0 else "larger"
        lines.append(f"After washing it is {number_text(abs(change))}{NBSP}% {way}, and all sizes are given as washed.")
    word = printed.voice.term("gauge")
    return Section("gauge", word[:1].upper() + word[1:], tuple(Paragraph(line) for line in lines))


def _kind(printed: Printed, gauge: Gauge) -> str:
    """What the swatch grows by: "round" or "row"."""
    source = next((m for m in printed.pattern.motifs if m.name == gauge.motif), None)
    return source.worked.removesuffix("s") if source is not None else "round"


def measured_points(printed: Printed, gauge: Gauge) -> list[tuple[str, str]]:
    """"5 rounds of the square" and how wide the swatch is then, from the fewest rounds on."""
    of = f" of {motif_words(gauge.motif, alone=len(printed.pattern.motifs) == 1)}" if gauge.motif else ""
    kind, inches = _kind(printed, gauge), in_inches(printed.pattern)
    points = sorted(gauge.points, key=lambda point: point.rounds)
    return [(f"{plural(point.rounds, kind)}{of}", swatch_text(point.width_cm, inches)) for point in points]


def _rounds(printed: Printed, gauge: Gauge) -> list[str]:
    """What was measured after so many rounds, from the smallest on; what the swatch weighs; how evenly it grows."""
    lines = [f"{what} = {width} across." for what, width in measured_points(printed, gauge)]
    line = width_line(gauge)
    if line is not None and line.points > 2 and line.error_cm <= UNEVEN * line.per_round_cm:
        off = one_length(line.error_cm, in_inches(printed.pattern))
        evenly = f" to within {off}" if not off.startswith("0\N{NO-BREAK SPACE}") else ""
        lines.append(f"It grows evenly: every {_kind(printed, gauge)} adds the same width{evenly}.")
    return lines


def _weighed(printed: Printed, gauge: Gauge) -> list[str]:
    """What the swatch weighs, and which swatch that is."""
    if not gauge.grams:
        return []
    rounds = weighed_rounds(gauge)
    if rounds:
        swatch = f"A swatch of {plural(rounds, _kind(printed, gauge))}"
    elif gauge.stitches and gauge.rows:
        swatch = f"A swatch of {number_text(gauge.stitches)}{NBSP}{printed.voice.craft('sts')} by {number_text(gauge.rows)}{NBSP}rows"
    else:
        swatch = "The swatch"
    return [f"{swatch} weighs {number_text(gauge.grams)}{NBSP}g."]


def _on_the_way(printed: Printed, gauge: Gauge) -> list[str]:
    """Widths to check against while the motif grows, off the hook and, where that differs, once washed."""
    motif = next((m for m in printed.pattern.motifs if m.name == gauge.motif), None)
    if motif is None or not gauge.points:
        return []
    fabrics = [size.fabrics[motif.name] for size in printed.sizes if motif.name in size.fabrics]
    last = min((last_round(fabric) for fabric in fabrics), default=0)
    points = checkpoints(printed.pattern, motif, last)
    if not points:
        return []
    widths = []
    washed = False
    for point in points:
        text = f"{swatch_text(point.unblocked_cm, in_inches(printed.pattern))} after {round_name(printed.voice, str(point.round))}"
        if abs(point.unblocked_cm - point.width_cm) > 0.05:
            text += f" ({one_length(point.width_cm, in_inches(printed.pattern))} once washed)"
            washed = True
        widths.append(text)
    return [f"On the way it measures{', off the hook,' if washed else ''} {listed(widths)}."]


def _own_gauges(printed: Printed) -> list[str]:
    """The swatches of sizes that have their own: "For Large: 5 rounds of the square = 13.6 cm across."."""
    lines = []
    for name in printed.names:
        own = own_of(printed.pattern, name)
        if own is None:
            continue
        lead = f"For {name}" + (f", with a {hook_text(float(own.hook.cm) * 10)} hook" if own.hook is not None else "")
        if own.gauge is None:
            if reckoned_by_hook(printed.pattern, name):
                lines.append(f"{lead}: no swatch was measured, so what it measures is an estimate.")
            continue
        told = [*_rounds(printed, own.gauge), *_stitches(printed, own.gauge), *_weighed(printed, own.gauge)]
        lines += [f"{lead}: {' '.join(told)}"] if told else []
    return lines


def _stitches(printed: Printed, gauge: Gauge) -> list[str]:
    parts, inches = [], in_inches(printed.pattern)
    if gauge.stitches and gauge.rows and gauge.width_cm and gauge.width_cm == gauge.height_cm:
        stitches = f"{number_text(gauge.stitches)}{NBSP}{printed.voice.craft('sts')}"
        return [f"{stitches} and {number_text(gauge.rows)}{NBSP}rows = {swatch_text(gauge.width_cm, inches)}."]
    if gauge.stitches and gauge.width_cm:
        parts.append(f"{number_text(gauge.stitches)}{NBSP}{printed.voice.craft('sts')} = {swatch_text(gauge.width_cm, inches)} across")
    if gauge.rows and gauge.height_cm:
        parts.append(f"{number_text(gauge.rows)}{NBSP}rows = {swatch_text(gauge.height_cm, inches)} high")
    return ["; ".join(parts) + "."] if parts else []
