"""Colourways in words: which yarns each is worked in, how many of each, and where they go."""

from __future__ import annotations

from motifold.render.pattern.model import MotifSource
from motifold.render.sizing.colourways import Made, batches_of, place_colourways
from motifold.render.words.model import Block, Items, Paragraph, Table
from motifold.render.words.printed import Printed, titled, yarn_words
from motifold.render.words.voice import NBSP, listed
from motifold.render.worked import WorkedSize

_WIDEST_ROW = 24
"""Longer rows of a net are not listed: the drawing shows them."""


def colourway_blocks(printed: Printed) -> list[Block]:
    """A table for each motif that has colourways, and the plan row by row; () where none has any."""
    blocks: list[Block] = []
    names = {yarn.key: yarn_words(yarn) for yarn in printed.pattern.yarns}
    made = [batches_of(printed.pattern, size.fabrics, size.assembly) for size in printed.sizes]
    several = [motif for motif in printed.pattern.motifs if motif.colourways and all(motif.name in found for found in made)]
    for motif in several:
        blocks.append(_table(printed, motif, [found[motif.name] for found in made], names, len(several) > 1))
    if several:
        keys = dict.fromkeys(key for found in made for motif in several for way in found[motif.name] for key in way.yarns)
        stand = "stands" if len(keys) == 1 else "stand"
        said = f"In the instructions {listed(list(keys))} {stand} for the yarns of the {printed.voice.term('color')}way."
        blocks.append(Paragraph(said))
        blocks += _plan(printed, printed.sizes[0])
    return blocks


def _table(printed: Printed, motif: MotifSource, made: list[tuple[Made, ...]], names: dict[str, str], several: bool) -> Table:
    """A row for each colourway: the yarn for each one of the text, and how many to make in each size."""
    first = made[0]
    keys = tuple(dict.fromkeys(key for way in first for key in way.yarns))
    rows = []
    for way in first:
        numbers = [next((w.made for w in size if w.name == way.name), 0) for size in made]
        counted = str(numbers[0]) if len(set(numbers)) == 1 else f"{numbers[0]}{NBSP}({', '.join(map(str, numbers[1:]))})"
        rows.append((titled(way.name), *(names.get(way.yarns.get(key, ""), "–") for key in keys), counted))
    word = f"{printed.voice.term('color').capitalize()}way"
    caption = f"{word}s of {motif.name.replace('_', ' ')}" if several else f"{word}s"
    return Table(caption, (word, *keys, "Make"), tuple(rows))


def _plan(printed: Printed, size: WorkedSize) -> list[Block]:
    """The net row by row from the top, each panel by its colourway."""
    assembly = printed.pattern.assembly
    placing = place_colourways(printed.pattern, size.assembly)
    if assembly is None or not assembly.net or not placing.ways:
        return []
    rows: dict[int, list[str]] = {}
    for cell in sorted(assembly.net, key=lambda cell: (cell.row, cell.column)):
        rows.setdefault(cell.row, []).append(placing.ways.get(cell.panel, "as written"))
    if len(rows) < 2 or max(len(row) for row in rows.values()) > _WIDEST_ROW:
        return []
    lead = "Lay them out as follows" if placing.given else "Lay them out as follows, so that no two alike share a side"
    if placing.alike:
        lead = "Lay them out as follows"
    return [
        Paragraph(f"{lead}, right side up, from the top row down and from the left:"),
        Items(tuple(f"{', '.join(row)}." for row in rows.values()), numbered=True),
    ]
