"""What a tester fills in: what the pattern says she should come to, for each size, and room for what she came to."""

from __future__ import annotations

from collections.abc import Iterator

from motifold.render.assembly.model import Assembly
from motifold.render.pattern.model import Gauge, Pattern
from motifold.render.sizing.hooks import hook_text
from motifold.render.sizing.naming import measured_as
from motifold.render.sizing.own import own_of, pattern_of_size
from motifold.render.sizing.reading import in_inches, sized_motif
from motifold.render.sizing.report import checkpoints
from motifold.render.sizing.units import number_text, swatch_text
from motifold.render.sizing.yarn import margin_of
from motifold.render.words.counts import last_round
from motifold.render.words.materials import amount_text, measured_points
from motifold.render.words.model import Document, Paragraph, Section, Table
from motifold.render.words.places import round_name
from motifold.render.words.printed import Printed, titled, yarn_words
from motifold.render.words.sizes import fit_worked
from motifold.render.words.voice import NBSP, capitalised
from motifold.render.worked import WorkedSize

TITLE = "tester's sheet"
FIELDS = (("Name", "Date"), ("Size made", "Yarn and hook used"))
NOTES, PROBLEMS = "Notes", "Problems found"
PROBLEM_COLUMNS = ("Page and line", "What is wrong, or not clear", "What would be right")
HEAD = ("Measure", "The pattern says", "Yours")
_WHOLE = {
    "width": "Finished width", "height": "Finished height", "depth": "Finished depth", "round": "Finished, around",
    "across": "Finished, across", "flat width": "Width, folded flat", "flat height": "Height, folded flat", "opening": "Opening, around",
}  # fmt: skip
_SAME_CM = 0.05

Row = tuple[str, str, str]


def tester_document(told: Printed) -> Document:
    """A table for the gauge and one for each printed size; three columns: what, what the pattern says, the unit to fill in."""
    word = told.voice.term("gauge")
    gauge = tuple(_gauge_rows(told, told.pattern, told.pattern.gauge))
    sections = []
    if gauge:
        sections.append(_table_section(capitalised(word), gauge, _estimate(told.pattern.gauge)))
    for size in told.sizes:
        title = f"Size {size.choice.name}" if told.several or told.worked.table is not None else "Measurements"
        rows = tuple(_size_rows(told, size))
        own = pattern_of_size(told.pattern, size.choice.name).gauge
        notes = " ".join(text for text in (_estimate(own), _spare(told, size)) if text)
        sections.append(_table_section(title, (*rows, ("Hours of work", "–", "h")), notes))
    return Document(f"{told.pattern.title}: {TITLE}", told.voice.terms, told.pattern.language, tuple(sections))


def _table_section(title: str, rows: tuple[Row, ...], note: str) -> Section:
    table = Table("", HEAD, rows)
    return Section("sizes", title, (table, *([Paragraph(note, "note")] if note else [])))


def _estimate(gauge: Gauge | None) -> str:
    return "These are estimates: no swatch was measured." if gauge is not None and gauge.estimate else ""


def _spare(told: Printed, size: WorkedSize) -> str:
    margin = margin_of(told.pattern)
    return f"The pattern's yarn has {number_text(100 * margin)}{NBSP}% to spare." if margin and told.needs.get(size.choice.name) else ""


def _unit(told: Printed) -> str:
    return "in" if in_inches(told.pattern) else "cm"


def _gauge_rows(told: Printed, pattern: Pattern, gauge: Gauge | None) -> Iterator[Row]:
    """The swatch: its rounds, its stitches and rows, its weight; the hook that ``pattern`` has."""
    inches, unit = in_inches(told.pattern), _unit(told)
    hook = pattern.materials.hook
    if gauge is not None:
        for what, width in measured_points(told, gauge):
            yield f"{what}, across", width, unit
        if gauge.stitches and gauge.width_cm:
            stitches = told.voice.craft("sts")
            yield f"{number_text(gauge.stitches)}{NBSP}{stitches}, across", swatch_text(gauge.width_cm, inches), unit
        if gauge.rows and gauge.height_cm:
            yield f"{number_text(gauge.rows)}{NBSP}rows, high", swatch_text(gauge.height_cm, inches), unit
        if gauge.grams:
            yield "Weight of that swatch", f"{number_text(gauge.grams)}{NBSP}g", "g"
    if hook is not None and hook.kind == "length":
        yield "Hook", hook_text(float(hook.cm) * 10), "mm"


def _size_rows(told: Printed, size: WorkedSize) -> Iterator[Row]:
    """All that can be measured of one size, in the order in which it is made; then the yarn."""
    pattern = pattern_of_size(told.pattern, size.choice.name)
    own = own_of(told.pattern, size.choice.name)
    if own is not None and (own.gauge is not None or own.hook is not None):
        yield from _gauge_rows(told, pattern, own.gauge)
    yield from _motif_rows(told, pattern, size)
    yield from _finished_rows(told, pattern, size)
    for yarn in pattern.yarns:
        need = told.need(size.choice.name, yarn)
        if need is not None:
            yield f"Yarn {yarn_words(yarn)}, used", amount_text(need, yarn), "g" if need.grams is not None else "m"


def _motif_rows(told: Printed, pattern: Pattern, size: WorkedSize) -> Iterator[Row]:
    """Each motif: on its way, where the gauge tells, and done."""
    unit = _unit(told)
    for motif in pattern.motifs:
        fabric = size.fabrics.get(motif.name)
        width, height = size.widths_cm.get(motif.name), size.heights_cm.get(motif.name)
        if fabric is None or not width:
            continue
        name = titled(motif.name)
        for point in checkpoints(pattern, motif, last_round(fabric)):
            yield f"{name} after {round_name(told.voice, str(point.round))}, off the hook", told.both_units(point.unblocked_cm), unit
        yield f"{name}, across", told.both_units(width), unit
        if height and motif.worked == "rows":
            yield f"{name}, high", told.both_units(height), unit


def _finished_rows(told: Printed, pattern: Pattern, size: WorkedSize) -> Iterator[Row]:
    """What the size is fitted by, and what the whole measures."""
    unit, fitted = _unit(told), 0.0
    table, motif = told.worked.table, sized_motif(pattern)
    body = next((one for one in table.bodies if one.name == size.choice.name), None) if table is not None else None
    if table is not None and body is not None and motif is not None:
        fit = fit_worked(body, last_round(size.fabrics.get(motif.name)))
        if fit is not None:
            opens = size.assembly is not None and bool(size.assembly.openings)
            fitted = fit.girth_cm
            if abs(fitted - (size.widths_cm.get(motif.name) or 0.0)) > _SAME_CM:
                yield f"Finished {measured_as(pattern, motif, table.measure, opens)}", told.both_units(fitted), unit
    if size.assembly is not None:
        yield from _whole_rows(told, pattern, size, size.assembly, fitted)


def _whole_rows(told: Printed, pattern: Pattern, size: WorkedSize, assembly: Assembly, fitted: float) -> Iterator[Row]:
    """The finished thing's lengths with its edgings; without them where the depth of one is not known."""
    from motifold.render.assembly.form import finished_measures

    whole = len(size.rims) == len(pattern.edgings)
    without = "" if whole else ", without edgings" if len(pattern.edgings) > 1 else ", without the edging"
    counts: dict[str, int] = {}
    measures = [one for one in finished_measures(assembly, size.rims if whole else ()) if abs(one.cm - fitted) > _SAME_CM]
    many = [one.name for one in measures]
    for one in measures:
        counts[one.name] = counts.get(one.name, 0) + 1
        number = f"{NBSP}{counts[one.name]}" if many.count(one.name) > 1 else ""
        label = _WHOLE.get(one.name, titled(one.name))
        first, comma, rest = label.partition(",")
        said = f"about {told.both_units(one.cm)}" if one.estimate else told.both_units(one.cm)
        yield f"{first}{number}{comma}{rest}{without}", said, _unit(told)

