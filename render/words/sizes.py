"""About the piece, and its finished sizes."""

from __future__ import annotations

from motifold.render.pattern.model import MotifSource
from motifold.render.sizing.model import BodyFit, Fit
from motifold.render.sizing.naming import measured_as
from motifold.render.sizing.own import pattern_of_size, reckoned_by_hook
from motifold.render.sizing.reading import in_inches, sized_motif
from motifold.render.sizing.ruler import motifs_across
from motifold.render.sizing.units import number_text, one_length, percent_text
from motifold.render.sizing.width import motif_line
from motifold.render.words.counts import last_round
from motifold.render.words.model import Block, Paragraph, Section, Table
from motifold.render.words.printed import Printed, titled
from motifold.render.words.voice import NBSP, listed
from motifold.render.words.whole import area_text, whole_blocks
from motifold.render.worked import WorkedSize

_LEVELS = {
    "basic": "basic stitches, with simple increases and decreases at most",
    "easy": "simple stitch patterns, colour work or shaping",
    "intermediate": "involved stitch patterns, colour work or shaping",
    "complex": "complex stitch patterns, colour work or shaping, several techniques at once",
}
"""What the trade's four levels say (Craft Yarn Council project levels, 2018, as quoted second-hand)."""


def about_section(printed: Printed) -> Section:
    """Summary, level, and the terms that everything is written in."""
    pattern, voice = printed.pattern, printed.voice
    blocks: list[Block] = [Paragraph(_ended(voice.said(pattern.summary)))] if pattern.summary else []
    if pattern.level:
        meaning = _LEVELS.get(pattern.level.lower())
        meaning = meaning.replace("colour", voice.term("color")) if meaning else None
        blocks.append(Paragraph(f"Level: {pattern.level}" + (f" ({meaning})." if meaning else ".")))
    hand = " and for left-handed crocheters" if voice.left_handed else ""
    blocks.append(Paragraph(f"Written in {voice.terms} terms{hand}."))
    return Section("about", "About", tuple(blocks))


def _ended(text: str) -> str:
    """With a full stop where the designer left it out."""
    return text if text.rstrip().endswith((".", "!", "?", "…", ":")) else f"{text.rstrip()}."


def sizes_section(printed: Printed) -> Section | None:
    """A table of what each size measures and whom it fits; None where nothing is measured and there is one size."""
    table = _fit_table(printed) if printed.worked.table is not None else _width_table(printed)
    blocks: list[Block] = []
    if printed.several:
        first, *rest = printed.names
        blocks.append(
            Paragraph(f"Sizes: {first} ({', '.join(rest)}). Where only one number is given, it is for all sizes.")
        )
    if table is not None:
        blocks.append(table)
    blocks += whole_blocks(printed)
    blocks += [Paragraph(text, "note") for text in _sources(printed)]
    return Section("sizes", "Finished sizes" if printed.several else "Finished size", tuple(blocks)) if blocks else None


def _fit_table(printed: Printed) -> Table | None:
    table = printed.worked.table
    motif = sized_motif(printed.pattern)
    if table is None or motif is None:
        return None
    bodies = {body.name: body for body in table.bodies}
    counted = "Rows" if motif.worked == "rows" else "Rounds"
    finished = _finished(printed, motif, table.measure)
    measure = table.measure[:1].upper() + table.measure[1:]
    header: tuple[str, ...] = ("Size", "To fit", counted, f"{titled(motif.name)}, across", finished, "Ease")
    rows = tuple(_fit_row(printed, size, bodies.get(size.choice.name), motif.name) for size in printed.sizes)
    numbers = [motifs_across(pattern_of_size(printed.pattern, name), motif) for name in printed.names]
    if len(set(numbers)) > 1:  # sizes made by another number across say so
        header = (*header[:3], "Around", *header[3:])
        rows = tuple((*row[:3], number_text(number), *row[3:]) for row, number in zip(rows, numbers, strict=True))
        return Table(f"{measure}{_estimated(printed)}", header, rows)
    narrow = all(row[3] == row[4] for row in rows)
    if narrow:  # one motif is the whole measure: its width need not be said twice
        header, rows = (*header[:3], *header[4:]), tuple((*row[:3], *row[4:]) for row in rows)
    return Table(f"{measure}{_estimated(printed)}", header, rows)


def _finished(printed: Printed, motif: MotifSource, measure: str) -> str:
    """What is measured, as the heading of its column."""
    opens = any(size.assembly is not None and size.assembly.openings for size in printed.sizes)
    return f"Finished {measured_as(printed.pattern, motif, measure, opens)}"


def _fit_row(printed: Printed, size: WorkedSize, body: BodyFit | None, motif: str) -> tuple[str, ...]:
    rounds = _rounds(size, motif)
    if body is None:
        return (size.choice.name, "–", str(rounds), "–", "–", "–")
    fit = fit_worked(body, rounds)
    if fit is None:
        return (size.choice.name, printed.both_units(body.body_cm), str(rounds), "–", "–", "–")
    measured = (printed.both_units(fit.width_cm), printed.both_units(fit.girth_cm), _ease(printed, fit))
    return (size.choice.name, printed.both_units(body.body_cm), str(rounds), *measured)


def fit_worked(body: BodyFit, rounds: int) -> Fit | None:
    """How a body is fitted by so many rounds; None where that was not reckoned."""
    return body.fits[0] if len(body.fits) == 1 else next((fit for fit in body.fits if fit.rounds == rounds), None)


def _rounds(size: WorkedSize, motif: str) -> int:
    return last_round(size.fabrics.get(motif)) or size.choice.rounds.get(motif) or 0


def _ease(printed: Printed, fit: Fit) -> str:
    sign = "+" if round(fit.ease_cm, 1) > 0 else ""
    return f"{sign}{one_length(fit.ease_cm, in_inches(printed.pattern))} ({percent_text(fit.ease_pct)})"


def _width_table(printed: Printed) -> Table | None:
    """Width of every motif in every size, where the pattern measures no bodies."""
    rows = []
    for motif in printed.pattern.motifs:
        cells = [_flat(printed, size, motif) for size in printed.sizes]
        if any(cell != "–" for cell in cells):
            rows.append((titled(motif.name), *cells))
    header = ("Motif", *printed.names) if printed.several else ("Motif", "Across" if all("×" not in row[1] for row in rows) else "Size")
    return Table(f"Measured flat{_estimated(printed)}", header, tuple(rows)) if rows else None


def _flat(printed: Printed, size: WorkedSize, motif: MotifSource) -> str:
    """"12.8 cm (5 in)"; for rows width by height, "25 × 40 cm (9⅞ × 15¾ in)"."""
    width = size.widths_cm.get(motif.name)
    line = motif_line(printed.pattern, motif) if motif.worked == "rows" else None
    if not width:
        return "–"
    rows = _rounds(size, motif.name)
    if line is None or not rows:
        return printed.both_units(width)
    height = line.at(rows)
    return area_text(width, height, in_inches(printed.pattern))


def _estimated(printed: Printed) -> str:
    gauge = printed.pattern.gauge
    if gauge is not None and gauge.estimate:
        return " (estimated, no swatch was measured)"
    names = [name for name in printed.names if reckoned_by_hook(printed.pattern, name)]
    return f" ({listed(names)} estimated, no swatch with its hook was measured)" if names else ""


def _sources(printed: Printed) -> list[str]:
    """Where body sizes come from, each source once, with the sizes that it gives."""
    table = printed.worked.table
    found: dict[str, list[str]] = {}
    for body in table.bodies if table else ():
        if body.source and body.name in printed.names:
            found.setdefault(body.source, []).append(body.name)
    lines = [f"Body size of {', '.join(names)}: {source}." for source, names in found.items()]
    bands = [
        f"{body.name} {_band(printed, body.band_cm)}"
        for body in (table.bodies if table else ())
        if body.band_cm is not None and body.name in printed.names
    ]
    if bands:
        lines.append(f"Between these centiles lie {', '.join(bands)}: measure whom it is for.")
    cautions = dict.fromkeys(body.caution for body in (table.bodies if table else ()) if body.caution and body.name in printed.names)
    return [*lines, *(f"Caution: {caution}." for caution in cautions)]


def _band(printed: Printed, band_cm: tuple[float, float]) -> str:
    """"44.6 to 50.8 cm", in the unit that the pattern is written in."""
    low, high = (one_length(cm, in_inches(printed.pattern)) for cm in band_cm)
    unit = low.rpartition(NBSP)[2]
    return f"{low.removesuffix(f'{NBSP}{unit}')} to {high}"
