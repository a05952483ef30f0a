"""The whole written pattern, section by section in the order of the trade; only the sections that the pattern has."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import EdgingSource, MotifSource
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.yarn import ends_by_yarn, motif_copies
from motifold.render.words.assembly import assembly_section
from motifold.render.words.cautions import cautions_section
from motifold.render.words.counts import last_round
from motifold.render.words.edition import changes_section, edition_section
from motifold.render.words.glossary import abbreviations_section, special_stitches_section
from motifold.render.words.materials import gauge_section, materials_section
from motifold.render.words.model import Block, Document, Items, Paragraph, Section
from motifold.render.words.printed import Printed, printed, titled
from motifold.render.words.rounds import Piece, piece_blocks
from motifold.render.words.sizes import about_section, sizes_section
from motifold.render.words.voice import NBSP, WordsLook
from motifold.render.worked import Worked


def write_document(worked: Worked, needs: Mapping[str, tuple[YarnNeed, ...]], look: WordsLook) -> Document:
    """The written pattern in the terms and for the sizes that ``look`` asks for; ``needs`` is the yarn of each size by its name."""
    pattern = worked.pattern
    told = printed(worked, needs, look)
    motifs = [_motif(told, motif) for motif in pattern.motifs]
    assembly = assembly_section(told)
    edgings = [_edging(told, edging) for edging in pattern.edgings]
    special, notes, finishing = special_stitches_section(told), _notes(told), _finishing(told)
    worded = [s for s in (special, *motifs, assembly, *edgings) if s is not None]
    sections = (
        about_section(told),
        sizes_section(told),
        materials_section(told),
        gauge_section(told),
        abbreviations_section(told, worded, [section for section in (notes, finishing) if section is not None]),
        special,
        notes,
        *motifs,
        assembly,
        *edgings,
        finishing,
        cautions_section(pattern),
        changes_section(pattern.edition, told.voice),
        edition_section(pattern.edition, told.voice),
    )
    return Document(pattern.title, look.terms, pattern.language, tuple(section for section in sections if section is not None))


def _notes(told: Printed) -> Section | None:
    notes = told.pattern.notes_before
    return Section("notes", "Notes", tuple(Paragraph(told.voice.said(note), "note") for note in notes)) if notes else None


def _motif(told: Printed, motif: MotifSource) -> Section:
    """The motif's lines, headed by how many are made, and what it all comes to."""
    piece = Piece(motif.instructions, tuple(size.fabrics.get(motif.name) for size in told.sizes), told.names)
    blocks: list[Block] = list(piece_blocks(told.voice, piece))
    total = _totals(told, motif)
    if total:
        blocks.append(Paragraph(total, "note"))
    made = told.each_size(lambda size: motif_copies(size.fabrics, size.assembly).get(motif.name, 1))
    title = titled(motif.name) if made == "1" else f"{titled(motif.name)} (make{NBSP}{made})"
    return Section("motif", title, tuple(blocks), motif.name)


def _edging(told: Printed, edging: EdgingSource) -> Section:
    piece = Piece(edging.instructions, tuple(size.edgings.get(edging.name) for size in told.sizes), told.names)
    title = titled(edging.name)
    title = title if "edg" in title.lower() or "border" in title.lower() else f"Edging: {title[:1].lower()}{title[1:]}"
    return Section("edging", title, piece_blocks(told.voice, piece), edging.name)


def _totals(told: Printed, motif: MotifSource) -> str:
    """"8 rounds, 432 stitches, 4 ends to weave in": what a class wants to know before it starts."""
    if not all(size.fabrics.get(motif.name) for size in told.sizes):
        return ""

    def total(count: Callable[[Fabric], int], one: str, many: str) -> str:
        number = told.each_size(lambda size: count(size.fabrics[motif.name]))
        return f"{number}{NBSP}{one if number == '1' else many}"

    parts = (
        total(last_round, motif.worked.removesuffix("s"), motif.worked),
        total(_stitches, "stitch", "stitches"),
        total(lambda fabric: sum(ends_by_yarn(fabric).values()), "end to weave in", "ends to weave in"),
    )
    return f"In all: {', '.join(parts)}."


def _stitches(fabric: Fabric) -> int:
    """Stitches worked and chains that stand for one; chains, joins and walking slip stitches not counted."""
    return sum(stitch.role in ("stitch", "standing") for stitch in fabric.stitches)


_WEAVES = re.compile(r"\b(?:weav\w+|darn|sew)\s+(?:in\s+)?(?:(?:all|every|any|each|the|loose|yarn|remaining)\s+)*ends?\b", re.IGNORECASE)
"""A note that says what is said of the ends anyway."""


def _finishing(told: Printed) -> Section:
    """Weaving in, and what the designer says about washing and wearing."""
    notes = told.pattern.notes_after
    first = told.voice.term("weave in")
    said = any(_WEAVES.search(note) for note in notes)
    items = (*(() if said else (f"{first[:1].upper()}{first[1:]} all ends.",)), *(told.voice.said(note) for note in notes))
    return Section("finishing", "Finishing", (Items(items),) if len(items) > 1 else (Paragraph(items[0]),))
