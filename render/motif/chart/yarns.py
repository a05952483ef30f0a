"""The yarns of a chart as a line below it: each letter and the rounds that it works. Drawn wherever there are several yarns."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.drawing.display import Group, Operation, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.inks import INK
from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.ink import operations
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.tones import TEXT_CONTRAST, number_of, readable
from motifold.symbols import marks as working

_PT = 7.0
_RADIUS_MM = 1.55
_LINE_MM = 4.6
_GAP_MM = 4.0
_INDENT_MM = 0.5


def yarn_list(fabric: Fabric, look: ChartLook, box: tuple[float, float, float, float]) -> list[Operation]:
    """Groups in lines under ``box`` (mm): a yarn's letter, its name and its rounds; none where the whole Fabric has one yarn."""
    if not look.furniture or len({yarn for this in fabric.rounds for yarn in this.yarns}) < 2:
        return []
    out: list[Operation] = []
    left = box[0] + _INDENT_MM
    x, y = left, box[1] - _LINE_MM / 2
    for yarn, words in _rounds_by_yarn(fabric, look).items():
        wide = 2 * _RADIUS_MM + 0.9 + text_width_mm(words, "sans", _PT)
        if x > left and x + wide > box[2]:
            x, y = left, y - _LINE_MM
        out.append(_entry(yarn, words, x, y, look))
        x += wide + _GAP_MM
    return out


def yarn_list_height(lines: Sequence[Operation]) -> float:
    """The room in mm that these lines take."""
    levels = {op.children[-1].y_mm for op in lines if isinstance(op, Group) and isinstance(op.children[-1], Text)}
    return _LINE_MM * len(levels)


def _entry(yarn: str, words: str, x: float, y: float, look: ChartLook) -> Group:
    u = look.pitch_mm
    color = "#000000" if look.mono else readable(look.yarn_colors.get(yarn, INK), least=TEXT_CONTRAST)
    center = (x + _RADIUS_MM, y)
    base = y - cap_height_mm("sans-bold", _PT) / 2
    ring = operations(working.tag((center[0] / u, center[1] / u), _RADIUS_MM / u), color, u)
    letter = Text(center[0], base, yarn, "sans-bold", _PT - 0.5, color, "middle")
    return Group((*ring, letter, Text(x + 2 * _RADIUS_MM + 0.9, base, words, "sans", _PT, INK)), css_class="yarn-list")


def _is_told(fabric: Fabric, index: int, look: ChartLook) -> bool:
    """Whether this round is in the chart."""
    number = number_of(index, fabric.rounds)
    return look.show is None or look.show[0] <= max(number, 1) <= look.show[1]


def _rounds_by_yarn(fabric: Fabric, look: ChartLook) -> dict[str, str]:
    """"Moss, Rnds 1–3, 5" for each yarn, in the order in which they are first used."""
    worked: dict[str, list[int]] = {}
    for index, this in enumerate(fabric.rounds):
        for yarn in this.yarns if _is_told(fabric, index, look) else ():
            if this.number is not None and this.number not in worked.setdefault(yarn, []):
                worked[yarn].append(this.number)
    unit = "Row" if fabric.worked == "rows" else "Rnd"
    told: dict[str, str] = {}
    for yarn, numbers in worked.items():
        if numbers:
            name = f"{look.yarn_names[yarn]}, " if look.yarn_names.get(yarn) else ""
            told[yarn] = f"{name}{unit}{'s' if len(numbers) > 1 else ''} {_ranges(numbers)}"
    return told


def _ranges(numbers: Sequence[int]) -> str:
    parts: list[list[int]] = []
    for number in sorted(numbers):
        if parts and number == parts[-1][-1] + 1:
            parts[-1].append(number)
        else:
            parts.append([number])
    return ", ".join(str(p[0]) if len(p) == 1 else f"{p[0]}–{p[-1]}" for p in parts)
