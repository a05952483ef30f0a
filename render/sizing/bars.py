"""The yarn bar: how much of each yarn each size takes, and for which part of the work."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from motifold.render.drawing.display import Drawing, Operation, StrokePath
from motifold.render.drawing.fonts import text_width_mm
from motifold.render.pattern.model import Pattern, Yarn
from motifold.render.sizing import paint
from motifold.render.sizing.amounts import printed_amounts
from motifold.render.sizing.loops import UNCALIBRATED_ERROR
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.paint import INK, LETTER_PT, QUIET, SMALL_PT
from motifold.render.sizing.units import NBSP, number_text
from motifold.render.sizing.yarn import margin_of

_WIDE = 92.0
_BAR, _STEP, _GAP = 6.0, 8.2, 4.2
_PARTS = (("motifs", "motifs", ""), ("seams", "seams", "rising"), ("edging", "edging", "upright"), ("tails", "ends", "level"))
"""Part, its name in the legend, its hatching."""
_MOST_BARS = 60


def draw_yarn(pattern: Pattern, needs: Mapping[str, Sequence[YarnNeed]]) -> Drawing | None:
    """Bars from the top down, a group for each size; None where no amount is known."""
    rows = [(size, need) for size, found in needs.items() for need in found][:_MOST_BARS]
    if not rows:
        return None
    longest = max(need.metres for _, need in rows)
    several = len(needs) > 1
    yarns = {yarn.key: yarn for yarn in pattern.yarns}
    names = {need.yarn: _name(yarns.get(need.yarn), need.yarn) for _, need in rows}
    left = max(text_width_mm(name, "sans", LETTER_PT) for name in names.values()) + 3.0
    imperial = any(y.length is not None and y.length.length.unit in ("yd", "ft", "in") for y in pattern.yarns)
    operations: list[Operation] = []
    right, y, before = 0.0, 0.0, ""
    for size, need in rows:
        if several and size != before:
            y -= _GAP + 1.2 if before else 0.0
            operations.append(paint.words(-left, y - _BAR / 2 + 1.2, size, LETTER_PT, INK, bold=True))
            y -= _STEP - 1.6
        before = size
        operations.append(paint.words(-left, y - _BAR / 2, names[need.yarn]))
        colour = _colour(yarns.get(need.yarn), list(names).index(need.yarn))
        operations += _bar(y, need, colour, _WIDE / longest, yarns.get(need.yarn))
        label = _amount(need, imperial)
        end = need.metres * _WIDE / longest + 2.0
        operations.append(paint.words(end, y - _BAR / 2, label))
        right = max(right, end + text_width_mm(label, "sans", LETTER_PT))
        y -= _STEP
    estimate = any(need.estimate for _, need in rows)
    legend, wide, bottom = _legend(pattern, [need for _, need in rows], -left, y - 3.4, estimate)
    operations += legend
    title = f"{pattern.title}: yarn by colour and part"
    box = (-left - 1, bottom - 1, max(right, wide) + 1, 4.0)
    return Drawing(box, tuple(operations), title, _told(pattern, needs, names, imperial, estimate))


def _name(yarn: Yarn | None, key: str) -> str:
    return key if yarn is None or yarn.name == key else f"{key} {yarn.name}"


def _colour(yarn: Yarn | None, place: int) -> str:
    return yarn.hex if yarn is not None and yarn.hex else paint.GREYS[place % len(paint.GREYS)]


def _bar(top: float, need: YarnNeed, colour: str, mm_per_metre: float, yarn: Yarn | None) -> list[Operation]:
    """The parts one after another, then what is to spare; a tick below wherever another ball begins."""
    found: list[Operation] = []
    x, bottom = 0.0, top - _BAR
    for part, _, hatch in _PARTS:
        wide = need.parts.get(part, 0.0) * mm_per_metre
        if wide <= 0:
            continue
        if hatch:
            found.append(paint.filled(paint.box(x, bottom, x + wide, top), paint.tint(colour, 0.35)))
            found.append(paint.hatched(x, bottom, x + wide, top, hatch, INK))
        else:
            found.append(paint.filled(paint.box(x, bottom, x + wide, top), colour))
        found.append(StrokePath(paint.box(x, bottom, x + wide, top), INK, 0.2, (), "butt", "miter"))
        x += wide
    end = need.metres * mm_per_metre
    if end > x + 0.05:
        found.append(StrokePath(paint.box(x, bottom, end, top), QUIET, 0.2, (0.8, 0.6), "butt", "miter"))
    if yarn is not None and yarn.length is not None and need.balls and need.balls > 1:
        ball = float(yarn.ball.grams) if yarn.ball is not None else float(yarn.length.mass.grams)
        each = ball * float(yarn.length.metres_per_gram) * mm_per_metre
        if each > 2.0:
            ticks = [i * each for i in range(1, need.balls)]
            found += [paint.line(((t, bottom - 1.3), (t, bottom)), INK, 0.35) for t in ticks]
    return found


def _amount(need: YarnNeed, imperial: bool) -> str:
    amounts = printed_amounts(need)
    metres, yards = f"{amounts.metres}{NBSP}m", f"{amounts.yards}{NBSP}yd"
    text = ("about " if need.estimate else "") + (f"{yards} ({metres})" if imperial else f"{metres} ({yards})")
    if amounts.grams is not None and amounts.ounces is not None:
        text += f", {number_text(amounts.ounces)}{NBSP}oz" if imperial else f", {amounts.grams}{NBSP}g"
    if amounts.balls is not None:
        text += f", {amounts.balls}{NBSP}ball{'' if amounts.balls == 1 else 's'}"
    return text


def _legend(
    pattern: Pattern, needs: Sequence[YarnNeed], left: float, y: float, estimate: bool
) -> tuple[list[Operation], float, float]:
    """Which hatching is which part, and what the ticks are; how far it reaches to the right and down."""
    found: list[Operation] = []
    x = left
    shown = [(name, hatch) for part, name, hatch in _PARTS if any(need.parts.get(part) for need in needs)]
    for name, hatch in [*shown, (f"{number_text(100 * margin_of(pattern))}{NBSP}% to spare", "dashed")]:
        if hatch == "dashed":
            found.append(StrokePath(paint.box(x, y - 2, x + 6, y + 2), QUIET, 0.2, (0.8, 0.6), "butt", "miter"))
        else:
            found.append(paint.filled(paint.box(x, y - 2, x + 6, y + 2), paint.tint("#5f6b73", 0.35) if hatch else "#5f6b73"))
            if hatch:
                found.append(paint.hatched(x, y - 2, x + 6, y + 2, hatch, INK))
            found.append(StrokePath(paint.box(x, y - 2, x + 6, y + 2), INK, 0.2, (), "butt", "miter"))
        found.append(paint.words(x + 7.4, y, name, SMALL_PT, QUIET))
        x += 7.4 + text_width_mm(name, "sans", SMALL_PT) + 5.0
    if any(need.balls and need.balls > 1 for need in needs):
        found.append(paint.line(((x + 1, y - 1.3), (x + 1, y + 1.3)), INK, 0.35))
        found.append(paint.words(x + 3, y, "another ball begins", SMALL_PT, QUIET))
        x += 3 + text_width_mm("another ball begins", "sans", SMALL_PT) + 5.0
    bottom = y - 3.0
    if estimate:
        note = f"About: an estimate, no weighed swatch stands behind it. It may be out by {100 * UNCALIBRATED_ERROR:.0f}{NBSP}% either way."
        found.append(paint.words(left, y - 6.0, note, SMALL_PT, INK))
        x, bottom = max(x, left + text_width_mm(note, "sans", SMALL_PT)), y - 8.6
    return found, x, bottom


def _told(
    pattern: Pattern, needs: Mapping[str, Sequence[YarnNeed]], names: Mapping[str, str], imperial: bool, estimate: bool
) -> str:
    """The picture in words."""
    sizes = []
    for size, found in needs.items():
        said = "; ".join(f"{names.get(need.yarn, need.yarn)}: {_amount(need, imperial)}" for need in found)
        sizes.append(f"{size}: {said}" if len(needs) > 1 else said)
    kind = "Estimated yarn" if estimate else "Yarn"
    return f"{kind} with {number_text(100 * margin_of(pattern))}{NBSP}% to spare. {'. '.join(sizes)}."


