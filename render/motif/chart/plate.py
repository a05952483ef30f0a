"""A chart as a plate: its title above, and below it the key of its symbols, a scale bar and what is to be said about its size."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.drawing.display import Drawing, Operation, StrokePath, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.inks import INK, QUIET
from motifold.render.drawing.measure import grey_of, place
from motifold.render.motif.chart.ink import path_of
from motifold.symbols.record import dataclass

TITLE_PT = 11.0
NOTE_PT = 7.5
RULE = "#c9cfd6"
_BELOW_TITLE_MM = 3.6
_ABOVE_RULE_MM = 3.2
_BELOW_RULE_MM = 2.4
_LINE_MM = 4.2
_AROUND_MM = 2.0
_BAR_CM = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0)
_BAR_LEAST_MM = 14.0
"""A scale bar is the first of these lengths of work that is at least so long on paper."""


@dataclass(frozen=True, slots=True)
class PlateText:
    """What is set around a chart. ``key``: the drawing of its key. ``middle``: what the title is centred on, in the chart's mm.

    ``cm_per_mm``: how much of the finished work a mm of the chart is; None where no gauge says. ``across``: only from side to side, as rows
    are charted higher than they are. ``notes``: a line each.
    """

    title: str
    middle: float
    key: Drawing | None = None
    cm_per_mm: float | None = None
    across: bool = False
    notes: tuple[str, ...] = ()
    mono: bool = False


def make_plate(chart: Drawing, text: PlateText) -> Drawing:
    """The chart with its title, key and notes; everything centred on ``text.middle``."""
    half = max(
        text.middle - chart.box[0], chart.box[2] - text.middle, text_width_mm(text.title, "serif-bold", TITLE_PT) / 2,
        text.key.width_mm / 2 if text.key else 0.0, *(text_width_mm(note, "sans", NOTE_PT) / 2 for note in text.notes),
    )  # fmt: skip
    left, right = text.middle - half, text.middle + half
    operations = list(chart.operations)
    top = chart.box[3] + _BELOW_TITLE_MM
    operations.append(Text(text.middle, top, text.title, "serif-bold", TITLE_PT, INK, "middle"))
    top += 1.4 * cap_height_mm("serif-bold", TITLE_PT)
    foot, low = _foot(left, right, chart.box[1] - _ABOVE_RULE_MM, text)
    operations += foot
    box = (left - _AROUND_MM, low - _AROUND_MM, right + _AROUND_MM, top + _AROUND_MM)
    return replace(chart, box=box, operations=tuple(operations), title=text.title)


def _foot(left: float, right: float, y: float, text: PlateText) -> tuple[list[Operation], float]:
    """A rule, the key, and a last line: the scale bar on the left, the notes on the right (in the middle where there is no bar)."""
    quiet, rule = (grey_of(QUIET), grey_of(RULE)) if text.mono else (QUIET, RULE)
    bar, bar_width = scale_bar(left, 0.0, text, quiet)
    if text.key is None and not bar and not text.notes:
        return [], y + _ABOVE_RULE_MM
    out: list[Operation] = [StrokePath(path_of(((left, y), (right, y)), False, False, 1.0), rule, 0.2)]
    y -= _BELOW_RULE_MM
    if text.key is not None:
        y -= text.key.height_mm
        out += place(text.key, (left + right - text.key.width_mm) / 2, y)
    if not bar and not text.notes:
        return out, y
    lines = list(text.notes)
    wide = max((text_width_mm(note, "sans", NOTE_PT) for note in lines), default=0.0)
    beside = bool(bar) and bar_width + 6.0 + wide <= right - left
    y -= _LINE_MM
    out += scale_bar(left, y, text, quiet)[0]
    if bar and lines and not beside:
        y -= _LINE_MM
    for i, note in enumerate(lines):
        y -= _LINE_MM if i else 0.0
        out.append(
            Text(right, y, note, "sans", NOTE_PT, quiet, "end") if beside else
            Text(left if bar else (left + right) / 2, y, note, "sans", NOTE_PT, quiet, "start" if bar else "middle")
        )
    return out, y - 1.2


def scale_bar(x: float, y: float, text: PlateText, color: str) -> tuple[list[Operation], float]:
    """A bar that is so many centimetres of the finished work, with its name, and how wide both are; nothing where there is no gauge."""
    if text.cm_per_mm is None or text.cm_per_mm <= 0:
        return [], 0.0
    cm = next((length for length in _BAR_CM if length / text.cm_per_mm >= _BAR_LEAST_MM), None)
    if cm is None:
        return [], 0.0
    end, middle = x + cm / text.cm_per_mm, y + cap_height_mm("sans", NOTE_PT) / 2
    ends = [((at, middle - 0.9), (at, middle + 0.9)) for at in (x + 0.1, end)]
    lines = [((x + 0.1, middle), (end, middle)), *ends]
    out: list[Operation] = [StrokePath(path_of(line, False, False, 1.0), color, 0.2) for line in lines]
    across = " across" if text.across else ""
    words = f"{cm:g} cm ({cm / 2.54:.2g} in) of the work{across}"
    return [*out, Text(end + 1.6, y, words, "sans", NOTE_PT, color)], end + 1.6 - x + text_width_mm(words, "sans", NOTE_PT)

