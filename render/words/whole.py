"""What the whole thing measures: a blanket's width and length, a tube's girth and depth, with its border where that can be reckoned."""

from __future__ import annotations

import re
from collections.abc import Mapping

from motifold.render.pattern.instructions import RepeatRounds
from motifold.render.pattern.model import EdgingSource, Pattern
from motifold.render.sizing.reading import in_inches, tallest
from motifold.render.sizing.units import cm_text, inches_text, length_text, number_text
from motifold.render.sizing.width import width_of_a_stitch
from motifold.render.words.model import Block, Paragraph, Table
from motifold.render.words.printed import Printed
from motifold.render.words.voice import NBSP, capitalised, listed
from motifold.render.worked import WorkedSize
from motifold.symbols.record import dataclass

_BORDERS = ("border", "brim", "rim", "frame", "edge", "edging", "trim", "hem", "cuff", "band", "collar", "lace", "ribbing")
"""Names of edgings that are nouns of what they make."""
_TITLE = "Finished, in each size"
_FEW_OPENINGS = 4  # so many girths are told in one sentence


@dataclass(frozen=True, slots=True)
class _Measured:
    """What one size measures: ``bare`` without its edgings and ``edged`` with them ("" where that is the same or unknown)."""

    bare: str
    edged: str = ""


def whole_blocks(printed: Printed) -> list[Block]:
    """A sentence where all sizes measure the same, else a table with a row for each; [] where nothing can be measured."""
    told = {size.choice.name: _whole(printed, size) for size in printed.sizes}
    found = {name: measured for name, measured in told.items() if measured.bare}
    without, edgings = _without(printed.pattern.edgings), printed.pattern.edgings
    if len(found) == len(told) and len(set(found.values())) == 1:
        (measured,) = set(found.values())
        plain = f"{measured.bare}{without.removeprefix(',') if measured.edged else without}"
        return [Paragraph(f"Finished, it measures {plain}{f' and about {measured.edged} {_with(edgings)}' if measured.edged else ''}.")]
    if not found:
        return []
    bare = capitalised(without.removeprefix(", ")) or "Measures"
    if any(measured.edged for measured in found.values()):
        rows = tuple((name, one.bare, f"about {one.edged}" if one.edged else "–") for name, one in found.items())
        return [Table(_TITLE, ("Size", bare, capitalised(_with(edgings))), rows)]
    return [Table(_TITLE, ("Size", bare), tuple((name, one.bare) for name, one in found.items()))]


def _with(edgings: tuple[EdgingSource, ...]) -> str:
    return f"with {'them' if len(edgings) > 1 else 'it'}"


def area_text(width: float, height: float, imperial: bool) -> str:
    """"25 × 40 cm (9⅞ × 15¾ in)", or inches first."""
    inches = f"{inches_text(width).removesuffix(f'{NBSP}in')} × {inches_text(height)}"
    metric = f"{number_text(width)} × {cm_text(height)}"
    return f"{inches} ({metric})" if imperial else f"{metric} ({inches})"


def _whole(printed: Printed, size: WorkedSize) -> _Measured:
    if size.assembly is None:
        return _one_motif(printed, size)
    from motifold.render.assembly.form import finished_measures
    from motifold.render.assembly.rims import worn_over

    imperial = in_inches(printed.pattern)
    bare = finished_measures(size.assembly)
    worn = worn_over(size.assembly)
    measures = _as_worn({measure.name: measure.cm for measure in bare}, worn)
    openings = [measure.cm for measure in bare if measure.name == "opening"]
    edged = measures
    if size.rims:
        edged = _as_worn({measure.name: measure.cm for measure in finished_measures(size.assembly, size.rims)}, worn)
    # Of several edgings of which one has no known depth, nothing is said with them.
    counted = edged if len(size.rims) == len(printed.pattern.edgings) else measures
    if set(measures) == {"width", "height"}:
        without = area_text(measures["width"], measures["height"], imperial)
        whole = area_text(counted["width"], counted["height"], imperial) if "width" in counted else _solid(counted, imperial, fitted=False)
        return _Measured(without, whole if counted != measures else "")
    text = _solid(measures, imperial, fitted=printed.worked.table is not None)
    if len(openings) == 1 and printed.worked.table is None and "round" not in measures:  # a girth that is fitted stands in its table
        text += f"{', and ' if text else ''}{length_text(openings[0], imperial)} around its opening"
    elif not text and 1 < len(openings) <= _FEW_OPENINGS and printed.worked.table is None:  # of a form that nothing tells
        girths = list(dict.fromkeys(length_text(cm, imperial) for cm in openings))
        text = f"{listed(girths)} around {'each of ' if len(girths) == 1 else ''}its openings"
    changed = {name: cm for name, cm in counted.items() if cm != measures[name] or "flat height" in measures}
    whole = _solid(changed, imperial, fitted=printed.worked.table is not None)
    return _Measured(text, whole if text and counted != measures else "")


def _as_worn(measures: Mapping[str, float], worn: bool) -> dict[str, float]:
    """A hat is no box to whoever wears it: so far round, and so deep."""
    if not worn or not {"height", "opening"} <= set(measures):
        return dict(measures)
    return {"round": measures["opening"], "depth": measures["height"]}


def _solid(measures: Mapping[str, float], imperial: bool, fitted: bool) -> str:
    """What has depth or is folded flat: "50.4 cm around and 20 cm deep", "30 cm wide, 20 cm deep and 12 cm high"."""
    said = {name: length_text(cm, imperial) for name, cm in measures.items()}
    if "round" in said:
        return f"{said['depth']} deep" if fitted else f"{said['round']} around and {said['depth']} deep"
    if "flat width" in said:
        return f"{area_text(measures['flat width'], measures['flat height'], imperial)} folded flat"
    if "across" in said:
        return f"{said['across']} across" + (f" and {said['depth']} deep" if "depth" in said else "")
    found = [(said[name], word) for name, word in (("width", "wide"), ("depth", "deep"), ("height", "high")) if name in said]
    if len({length for length, _ in found}) == 1:
        return f"{found[0][0]} {listed([word for _, word in found])}"
    return listed([f"{length} {word}" for length, word in found])


def _one_motif(printed: Printed, size: WorkedSize) -> _Measured:
    """A motif with a border of its own; without one its width stands in the table."""
    pattern = printed.pattern
    motif = next((m for m in pattern.motifs if any(e.motif in (m.name, None) for e in pattern.edgings)), None)
    wide = size.widths_cm.get(motif.name) if motif is not None else None
    if motif is None or motif.worked == "rows" or not wide or len(pattern.motifs) > 1:
        return _Measured("")
    depths = [border_depth_cm(pattern, edging) for edging in pattern.edgings]
    depth = depths[0] if len(depths) == 1 else None  # of several, each may lie along another side
    imperial = in_inches(pattern)
    edged = "" if depth is None else f"{length_text(wide + 2 * depth, imperial)} across"
    return _Measured(f"{length_text(wide, imperial)} across", edged)


def _without(edgings: tuple[EdgingSource, ...]) -> str:
    if not edgings:
        return ""
    last = re.split(r"[-_ ]", edgings[0].name.lower())[-1]
    return f", without its {'edgings' if len(edgings) > 1 else last if last in _BORDERS else 'edging'}"


def border_depth_cm(pattern: Pattern, edging: EdgingSource) -> float | None:
    """How far an edging stands out: each of its rounds as high as its tallest stitch, by the width of a stitch.

    None where nothing tells that width, where its rounds repeat others, or where its stitches have no known height.
    """
    width = width_of_a_stitch(pattern)
    depth = 0.0
    for line in edging.instructions.lines:
        if line.label.first is None:
            continue
        found = tallest(line)
        if found is None or any(isinstance(step, RepeatRounds) for step in line.steps):
            return None
        depth += found[1] * ((line.label.last or line.label.first) - line.label.first + 1)
    return depth * width if width is not None and depth else None
