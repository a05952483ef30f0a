"""Tables: columns as wide as their words need, numbers to the right, hairlines between rows, the head repeated after a break."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import Setting, baseline, set_words, swatch
from motifold.render.booklet.boxes import Box, BoxMark, LineOfWords, Rectangle, Tag, Tags, beside, stacked
from motifold.render.booklet.inline import Type, typeset, width_of
from motifold.render.booklet.linebreak import broken, line_width
from motifold.render.booklet.styles import HAIR
from motifold.render.words.model import Table

GAP = 14.0
_BETWEEN_ROWS = 4.0  # lines of the grid that may be left free so as not to tear a table,
_SHORT, _IN_SHORT = 16, 10.0  # more for one of so few rows
_LONG_LIST = 6   # rows of a table of two columns that is worth folding
_LONG = 8        # rows of a longer table stand close
_CROWDED = 1.12   # a table this much wider than its column, on single lines, is better set across the page
_NUMBER = re.compile(r"^[-–−+]?[\d.,½¼¾⅓⅔⅛⅜⅝⅞⁰-⁹₀-₉⁄\s\u00a0%]*\d?\S{0,4}$")


def _is_number(cell: str) -> bool:
    return bool(cell) and any(character.isdigit() for character in cell) and bool(_NUMBER.match(cell))


def _natural(table: Table, setting: Setting) -> tuple[list[float], list[float]]:
    """For each column: the width of its longest cell on one line, and of its longest word."""
    wide, narrow = [], []
    for column in range(len(table.header)):
        cells = [(table.header[column], setting.styles.table_head), *((row[column], setting.styles.table) for row in table.rows)]
        extra = setting.grid.leading if column == 0 and any(swatch(row[0], setting) for row in table.rows) else 0.0
        wide.append(max(width_of(typeset(cell), kind) for cell, kind in cells) + extra)
        narrow.append(max(width_of(word, kind) for cell, kind in cells for word in typeset(cell).split(" ")) + extra)
    return wide, narrow


def fits(table: Table, setting: Setting) -> bool:
    """Whether the table can be set in this width without cutting a word or breaking many cells."""
    wide, narrow = _natural(table, setting)
    gaps = GAP * (len(narrow) - 1)
    return sum(narrow) + gaps <= setting.width and sum(wide) + gaps <= _CROWDED * setting.width


def _on_its_side(table: Table, setting: Setting) -> Table:
    """The table itself, or its columns as rows where that alone fits the width."""
    narrow = _natural(table, setting)[1]
    if sum(narrow) + GAP * (len(narrow) - 1) <= setting.width or len(table.rows) + 1 >= len(table.header):
        return table
    columns = list(zip(table.header, *table.rows, strict=True))
    return Table(table.caption, ("–", *columns[0][1:]), tuple(columns[1:]))


def _spare(widths: Sequence[float], to_right: Sequence[bool], wide: Sequence[float]) -> list[float]:
    """How far a column of numbers keeps from its right edge, where words follow: what it is wider than it needs to be."""
    following = [*to_right[1:], True]
    return [max(0.0, width - need) if right and not after else 0.0
            for width, need, right, after in zip(widths, wide, to_right, following, strict=True)]


def _column_widths(table: Table, setting: Setting) -> list[float]:
    """Natural widths if there is room (the rest is left free), else what each column's words need and a share of what is left."""
    wide, narrow = _natural(table, setting)
    room = max(setting.width - GAP * (len(wide) - 1), len(wide) * setting.grid.body)
    if sum(wide) <= room:
        spare = min((room - sum(wide)) / max(len(wide), 1), 26.0)
        return [width + spare for width in wide]
    if sum(narrow) >= room:
        return [width * room / sum(narrow) for width in narrow]
    wanted = sum(w - n for w, n in zip(wide, narrow, strict=True))
    return [n + (w - n) * (room - sum(narrow)) / wanted for w, n in zip(wide, narrow, strict=True)]


Cell = tuple[str, Type, Tags]


def row_of_cells(
    cells: Sequence[Cell], widths: Sequence[float], to_right: Sequence[bool], spare: Sequence[float], setting: Setting
) -> tuple[float, list[BoxMark]]:
    """Height and marks of one row, cell after cell."""
    leading = setting.grid.leading * 0.92
    marks: list[BoxMark] = []
    x, height = 0.0, leading
    for index, (text, kind, tags) in enumerate(cells):
        spot = swatch(text, setting) if index == 0 else ()
        indent = setting.grid.leading if spot else 0.0
        marks += spot
        lines = broken(((typeset(text), kind),), widths[index] - indent)
        for number, line in enumerate(lines):
            start = x + widths[index] - spare[index] - line_width(line) if to_right[index] else x + indent
            marks.append(LineOfWords(start, baseline(setting.grid.leading) + number * leading, line, tags, line is lines[-1]))
        height = max(height, len(lines) * leading)
        x += widths[index] + GAP
    return height, marks


def _in_groups(table: Table, setting: Setting) -> list[Table]:
    """The table, or several of it with some of the columns each, the first column in all: none needs more than the width."""
    narrow = _natural(table, setting)[1]
    groups: list[list[int]] = [[]]
    used = narrow[0]
    for column in range(1, len(narrow)):
        if groups[-1] and used + GAP + narrow[column] > setting.width:
            groups.append([])
            used = narrow[0]
        groups[-1].append(column)
        used += GAP + narrow[column]
    each = -(-(len(narrow) - 1) // len(groups))
    even = [list(range(start, min(start + each, len(narrow)))) for start in range(1, len(narrow), each)] if len(groups) > 1 else groups
    if all(sum(narrow[column] + GAP for column in group) + narrow[0] <= setting.width for group in even):
        groups = even  # as many columns in each, if that is no wider
    return [
        Table(
            table.caption if number == 0 else "",
            (table.header[0], *(table.header[column] for column in group)),
            tuple((row[0], *(row[column] for column in group)) for row in table.rows),
        )
        for number, group in enumerate(groups)
    ]


def table_boxes(table: Table, setting: Setting, tags: Tags, key: str) -> list[Box]:
    """Caption, head and rows; each row one box. The head stays with the first rows.

    A table with more columns than the sheet is wide is turned on its side, if it fits so: many sizes of few yarns. Else it is printed as
    several tables, one below the other.
    """
    boxes: list[Box] = []
    folded = _folded(table, setting, tags, key)
    if folded is not None:
        return [folded]
    for number, part in enumerate(_in_groups(_on_its_side(table, setting), setting)):
        new = _one_table(part, setting, tags, f"{key}/columns{number}" if number else key)
        boxes += [replace(new[0], before=setting.grid.leading), *new[1:]] if number else new
    return boxes


def _folded(table: Table, setting: Setting, tags: Tags, key: str) -> Box | None:
    """A long table of two short columns, as a list of abbreviations, in stretches side by side where it stands across the page."""
    grid = setting.grid
    across_the_page = grid.columns > 1 and setting.width > grid.text_width - 1
    if not across_the_page or len(table.header) != 2 or not _LONG_LIST <= len(table.rows) <= 3 * _SHORT:
        return None
    wide = sum(_natural(table, setting)[0]) + GAP
    count = next((count for count in (3, 2) if wide <= grid.width_of(count)), 0)
    if not count:
        return None
    width = grid.width_of(count)
    narrow = setting.narrowed(width)
    boxes = _one_table(table, narrow, tags, key)
    captioned = len(boxes) - len(table.rows) - 1
    head, *body = boxes[captioned:]
    again = body[1].continued or head
    each = -(-len(body) // count)
    starts = range(0, len(body), each)
    parts = [
        (place * (width + grid.gutter), stacked([again if place else head, *body[start : start + each]]))
        for place, start in enumerate(starts)
    ]
    whole = stacked([*boxes[:captioned], beside(parts)])
    return replace(whole, height=grid.snapped(whole.height))


def _one_table(table: Table, setting: Setting, tags: Tags, key: str) -> list[Box]:
    table_tag = Tag("Table", key)
    widths = _column_widths(table, setting)
    used = min(setting.width, sum(widths) + GAP * (len(widths) - 1))
    to_right = [column > 0 and all(_is_number(typeset(row[column])) for row in table.rows if row[column]) for column in range(len(widths))]
    spare = _spare(widths, to_right, _natural(table, setting)[0])
    inside = (*tags, table_tag)
    boxes, again = head_boxes(table, widths, to_right, spare, used, setting, inside, key)
    dense = len(table.rows) > _LONG
    for number, row in enumerate(table.rows):
        height, marks = row_of_cells(cells_of(row, setting, inside, f"{key}/{number}"), widths, to_right, spare, setting)
        rule = Rectangle(0.0, height + (0.4 if dense else 2.6), used, 0.35, HAIR)
        last = len(table.rows) - 1
        keep = number != last and (number < 2 or number >= last - 2)  # three rows stay together at either end
        reluctance = 0.0 if number == last else _IN_SHORT if last < _SHORT else _BETWEEN_ROWS
        boxes.append(
            Box(height + (1.1 if dense else 4.2), (*marks, rule), keep=keep, reluctance=reluctance, continued=again if number else None)
        )
    return on_grid(boxes, setting)


def head_boxes(
    table: Table, widths: Sequence[float], to_right: Sequence[bool], spare: Sequence[float], used: float, setting: Setting, inside: Tags,
    key: str,
) -> tuple[list[Box], Box]:
    """Caption and head over a rule of the width ``used``, kept with what follows; and the head as it is printed again after a break."""
    caption: list[Box] = []
    if table.caption:
        caption = set_words([(typeset(table.caption), setting.styles.caption)], setting, (*inside, Tag("Caption", key)))
    row_tags = (*inside, Tag("TR", f"{key}/head"))
    head = [
        (text, setting.styles.table_head, (*row_tags, Tag("TH", f"{key}/head/{column}", scope="Column")))
        for column, text in enumerate(table.header)
    ]
    height, marks = row_of_cells(head, widths, to_right, spare, setting)
    rule = Rectangle(0.0, height + 2.4, used, 0.8, setting.styles.accent)
    again = Box(height + 4.6, (*(replace(mark, tags=()) for mark in marks if isinstance(mark, LineOfWords)), rule))
    return [*(replace(box, keep=True) for box in caption), Box(height + 4.6, (*marks, rule), keep=True)], again


def cells_of(row: Sequence[str], setting: Setting, inside: Tags, key: str) -> list[Cell]:
    """The cells of a row, the first one its heading."""
    row_tags = (*inside, Tag("TR", key))
    kinds = [Tag("TD" if column else "TH", f"{key}/{column}", scope="" if column else "Row") for column in range(len(row))]
    return [(text, setting.styles.table, (*row_tags, kind)) for text, kind in zip(row, kinds, strict=True)]


def on_grid(boxes: list[Box], setting: Setting) -> list[Box]:
    """The last row takes up what is missing to whole lines of the grid."""
    total = sum(box.height for box in boxes)
    return [*boxes[:-1], replace(boxes[-1], height=boxes[-1].height + setting.grid.snapped(total) - total)]
