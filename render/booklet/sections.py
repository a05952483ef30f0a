"""A section of the written pattern as boxes of one column."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import BETWEEN_BLOCKS, Setting, heading, items, paragraph, rounds
from motifold.render.booklet.boxes import Box, Destination, LineOfWords, Rectangle, Tag, Tags, beside, height_of, stacked
from motifold.render.booklet.flow import Composer, balanced
from motifold.render.booklet.inline import typeset, width_of
from motifold.render.booklet.linebreak import broken
from motifold.render.booklet.tables import fits, table_boxes
from motifold.render.words.model import Block, Items, Paragraph, RoundText, Section, Table

_FEW_LINES = 11
_TOGETHER = 6.0    # lines that may be left free so as not to tear so short a section
_SHORT_LIST = 16   # lines: a list that stands abreast is not torn
_MEASURE = 1.45    # columns: lines of eighty characters are as long as an eye follows


def section_boxes(section: Section, setting: Setting, tags: Tags, key: str, titled: bool = True) -> list[Box]:
    """The section, its heading first. Set once for each width: ``key`` names it."""
    known = (key, round(setting.width, 3), titled)
    if known not in setting.done:
        setting.done[known] = _set_section(section, setting, tags, key, titled)
    return list(setting.done[known])


def _set_section(section: Section, setting: Setting, tags: Tags, key: str, titled: bool) -> list[Box]:
    boxes: list[Box] = []
    if titled:
        boxes += heading(section.title, 2, setting, (*tags, Tag("H2", key)), Destination(key, section.title, 0))
    for place, group in enumerate(_groups(section.blocks)):
        if isinstance(group[0], Table) and titled and group[0].caption == section.title:
            group = (replace(group[0], caption=""),)  # the heading has just said it
        if place and boxes:
            boxes[-1] = replace(boxes[-1], reluctance=max(boxes[-1].reluctance, BETWEEN_BLOCKS))
        boxes += _spaced(_block_boxes(group, setting, tags, f"{key}/{place}"), boxes, setting)
    if titled and height_of(boxes) <= _FEW_LINES * setting.grid.leading:  # a few lines look lost where a column ends among them
        return [*(replace(box, reluctance=max(box.reluctance, _TOGETHER)) for box in boxes[:-1]), *boxes[-1:]]
    return boxes


def _groups(blocks: Sequence[Block]) -> list[tuple[Block, ...]]:
    """Neighbouring rounds together: they are one list."""
    groups: list[tuple[Block, ...]] = []
    for block in blocks:
        if groups and isinstance(block, RoundText) and isinstance(groups[-1][0], RoundText):
            groups[-1] = (*groups[-1], block)
        else:
            groups.append((block,))
    return groups


def _block_boxes(group: Sequence[Block], setting: Setting, tags: Tags, key: str) -> list[Box]:
    block = group[0]
    match block:
        case RoundText():
            return rounds([one for one in group if isinstance(one, RoundText)], setting, tags, key)
        case Items():
            abreast = _abreast(items(block, setting.narrowed(setting.grid.column_width), tags, key), setting)
            return items(block, setting, tags, key) if abreast is None else [abreast]
        case Paragraph():
            return paragraph(block, _readable(block, setting), (*tags, Tag("P", key)))
        case Table():
            return table_boxes(block, setting, tags, key)


def _readable(block: Paragraph, setting: Setting) -> Setting:
    """No wider than an eye follows from line to line; words of one line are as long as they are."""
    measure = _MEASURE * setting.grid.column_width
    one_line = width_of(typeset(block.text), setting.styles.body) <= setting.width
    return setting if one_line or measure >= setting.width else setting.narrowed(measure)


def _abreast(boxes: list[Box], setting: Setting) -> Box | None:
    """A short list in columns where it stands across the page; None where it does not, or is too long to stay whole."""
    grid = setting.grid
    if grid.columns == 1 or setting.width < grid.text_width - 1 or not 2 < len(boxes) <= _SHORT_LIST:
        return None
    filled, _ = balanced([replace(box, reluctance=0.0) for box in boxes], grid.columns, grid.text_height, grid.leading)
    return beside([(place * (grid.column_width + grid.gutter), stacked(column)) for place, column in enumerate(filled)])


def _spaced(new: list[Box], before: Sequence[Box], setting: Setting) -> list[Box]:
    """Half a line between blocks; none after a heading."""
    if not new or not before or before[-1].destination:
        return new
    return [replace(new[0], before=max(new[0].before, setting.grid.leading / 2)), *new[1:]]


def part_heading(title: str, setting: Setting, tags: Tags, key: str, level: int = 2) -> Box:
    """The heading of a part that opens a page, across its columns; ``level`` 1 for that of a whole sheet."""
    grid, kind = setting.grid, setting.styles.part
    lines = broken(((typeset(title), kind),), grid.text_width)
    leading = grid.snapped(kind.size * 1.15)
    tags = (*tags, Tag(f"H{level}", key))
    marks = tuple(LineOfWords(0.0, kind.size * 0.8 + place * leading, line, tags, line is lines[-1]) for place, line in enumerate(lines))
    height = grid.snapped(len(lines) * leading + grid.leading * 0.6)
    rule = Rectangle(0.0, height - grid.leading * 0.55, 42.0 * grid.scale, 2.4, setting.styles.accent)
    return Box(height, (*marks, rule), before=grid.leading * 2, destination=Destination(key, title, 0))


def too_wide(section: Section, setting: Setting) -> bool:
    """Whether one of its tables needs more than a column."""
    return any(isinstance(block, Table) and not fits(block, setting) for block in section.blocks)


def flow_sections(
    sections: Sequence[tuple[Section, Tags, str]], composer: Composer, setting: Setting, across: Collection[str] = ()
) -> None:
    """Sections one after the other in the columns; one with a wide table, or whose key is in ``across``, is set across the page.

    A few lines before it are not torn into columns.
    """
    boxes: list[Box] = []
    few: list[tuple[Section, Tags, str]] = []
    for section, tags, key in sections:
        if setting.grid.columns > 1 and (section.key in across or too_wide(section, setting)):
            if height_of(boxes) < _FEW_LINES * setting.grid.leading:
                boxes = [box for one in few for box in section_boxes(one[0], setting.narrowed(_MEASURE * setting.width), one[1], one[2])]
                _flow_spaced(boxes, composer, 1)
            else:
                _flow_spaced(boxes, composer, None)
            boxes, few = [], []
            _flow_spaced(section_boxes(section, setting.narrowed(setting.grid.text_width), tags, key), composer, 1)
        else:
            boxes += section_boxes(section, setting, tags, key)
            few.append((section, tags, key))
    _flow_spaced(boxes, composer, None)


def _flow_spaced(boxes: Sequence[Box], composer: Composer, count: int | None) -> None:
    if boxes:
        composer.space()
        composer.flow(boxes, count)
