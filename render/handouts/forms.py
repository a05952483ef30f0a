"""Sheets that are filled in with a pencil: a class counts its rounds, a tester measures what she made."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Box, Rectangle, Tag, Tags, stacked
from motifold.render.booklet.compose import written
from motifold.render.booklet.content import content_of, words_content, words_look
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.model import Look
from motifold.render.booklet.plan import DOCUMENT
from motifold.render.booklet.sections import flow_sections, part_heading, section_boxes
from motifold.render.booklet.sheet import opened_sheet
from motifold.render.booklet.styles import HAIR
from motifold.render.booklet.tables import GAP, cells_of, head_boxes, on_grid, row_of_cells
from motifold.render.handouts.lines import fields, ruled
from motifold.render.words.classroom import ANSWERS, answers, questions
from motifold.render.words.model import Paragraph, Section, Table
from motifold.render.words.printed import printed
from motifold.render.words.tester import FIELDS, NOTES, PROBLEM_COLUMNS, PROBLEMS, tester_document
from motifold.render.worked import Worked, needs_by_size

_SHARES = (0.38, 0.35, 0.27)  # of the width, for what is measured, what the pattern says and what she writes
_PROBLEM_SHARES = (0.22, 0.42, 0.36)
_ROW = 1.75                   # lines of the grid, for a row to write in
_PROBLEMS = 6
_LEAST_NOTES = 4
_MANY_COLUMNS = 4  # more do not fit beside each other in a column


def make_class_sheet(worked: Worked, look: Look) -> bytes:
    """The rounds with their counts left blank, and the answers on a page of their own, as a tagged PDF."""
    content = words_content(worked, look)
    asked = replace(content, document=questions(content.document))
    composer, setting = opened_sheet(asked, numbered=True)
    _fields(FIELDS[:1], composer, setting)
    _set_questions(_keyed(asked.document.sections, "asked"), composer, setting)
    composer.turn()
    composer.whole(part_heading(ANSWERS, setting, (DOCUMENT,), "answers"))
    flow_sections(_keyed(answers(content.document).sections, "answers"), composer, setting)
    return written(asked, composer.pages())


def _set_questions(sections: Sequence[tuple[Section, Tags, str]], composer: Composer, setting: Setting) -> None:
    """The task across the page, the rounds in columns; tables with rows to write in, across the page where they have many columns."""
    wide = setting.narrowed(setting.grid.text_width)
    boxes: list[Box] = []
    for section, tags, key in sections:
        if not section.title:
            composer.flow(section_boxes(section, wide, tags, key, titled=False), 1)
            continue
        tables = [block for block in section.blocks if isinstance(block, Table)]
        rounds = replace(section, blocks=tuple(block for block in section.blocks if not isinstance(block, Table)))
        boxes += section_boxes(rounds, setting, tags, key)
        for place, table in enumerate(tables):
            broad = len(table.header) > _MANY_COLUMNS
            room = wide if broad else setting
            form = form_boxes(table, room, tags, f"{key}/table{place}", (1 / len(table.header),) * len(table.header))
            form[0] = replace(form[0], before=setting.grid.leading)
            if broad:
                _flowed(boxes, composer, None)
                _flowed(form, composer, 1)
                boxes = []
            else:
                boxes += form
    _flowed(boxes, composer, None)


def _flowed(boxes: Sequence[Box], composer: Composer, count: int | None) -> None:
    if boxes:
        composer.space()
        composer.flow(boxes, count)


def _keyed(sections: Sequence[Section], name: str) -> list[tuple[Section, Tags, str]]:
    keys = [f"{name}/{section.key}/{place}" for place, section in enumerate(sections)]
    return [(section, (DOCUMENT, Tag("Sect", key)), key) for section, key in zip(sections, keys, strict=True)]


def _fields(rows: Sequence[Sequence[str]], composer: Composer, setting: Setting) -> None:
    for place, labels in enumerate(rows):
        composer.whole(fields(labels, composer.grid.text_width, setting, (DOCUMENT,), f"fields/{place}"))
    composer.space()


def make_tester_sheet(worked: Worked, look: Look) -> bytes:
    """What the pattern says of each size beside room for what was measured, problems and notes, as a tagged PDF."""
    told = printed(worked, needs_by_size(worked), words_look(worked.pattern, look))
    content = content_of(tester_document(told), worked.pattern, look)
    composer, setting = opened_sheet(content, numbered=True)
    _fields(FIELDS, composer, setting)
    wide = setting.narrowed(setting.grid.text_width)
    for section, its, key in _keyed(content.document.sections, "size"):
        _set_form(section, composer, wide, its, key)
    blank = Table("", PROBLEM_COLUMNS, (("", "", ""),) * _PROBLEMS)
    tags: Tags = (DOCUMENT, Tag("Sect", "problems"))
    boxes = form_boxes(blank, wide, tags, "problems", _PROBLEM_SHARES)
    _kept_together(section_boxes(Section("notes", PROBLEMS, ()), wide, tags, "problems"), boxes, composer)
    _set_notes(composer, wide)
    return written(content, composer.pages())


def _set_form(section: Section, composer: Composer, setting: Setting, tags: Tags, key: str) -> None:
    head = section_boxes(replace(section, blocks=()), setting, tags, key)
    boxes: list[Box] = []
    for place, block in enumerate(section.blocks):
        if isinstance(block, Table):
            boxes += form_boxes(block, setting, tags, f"{key}/{place}", _SHARES)
        elif isinstance(block, Paragraph):
            note = replace(section, blocks=(block,))
            boxes += section_boxes(note, setting, tags, f"{key}/{place}", titled=False)
    _kept_together(head, boxes, composer)


def _kept_together(head: list[Box], boxes: list[Box], composer: Composer) -> None:
    """On the page in hand if all of it fits or most of a page would be left, else on a new one."""
    height = stacked([*head, *boxes]).height
    if composer.room < height + composer.grid.leading and (height <= composer.grid.text_height or composer.room < height / 2):
        composer.turn()
    composer.space()
    composer.flow([*(replace(box, keep=True) for box in head), *boxes], 1)


def form_boxes(table: Table, setting: Setting, tags: Tags, key: str, shares: Sequence[float]) -> list[Box]:
    """A table to write in: columns of those shares of the width, rows high enough for a pencil, lines between columns.

    What stands in a last cell is the unit that is written before, at the cell's right end. The head is printed again after a break.
    """
    grid = setting.grid
    widths = [share * setting.width - GAP for share in shares]
    last = len(widths) - 1
    spare, to_left, to_right = [0.0] * len(widths), [False] * len(widths), [False] * last + [any(row[last] for row in table.rows)]
    edges = [sum(shares[:place]) * setting.width - GAP / 2 for place in range(1, len(shares))]
    inside = (*tags, Tag("Table", key))
    boxes, again = head_boxes(table, widths, to_left, spare, setting.width, setting, inside, key)
    for number, row in enumerate(table.rows):
        cells = cells_of([text or "\u00a0" for text in row], setting, inside, f"{key}/{number}")
        height, marks = row_of_cells(cells, widths, to_right, spare, setting)
        height = max(height + 4.0, _ROW * grid.leading)
        down = (height - grid.leading) / 2 if height < 2 * grid.leading else 2.0
        placed = tuple(replace(mark, y=mark.y + down) for mark in marks)
        lines = (
            Rectangle(0.0, height, setting.width, 0.4, HAIR), *(Rectangle(edge, 0.0, 0.4, height, HAIR) for edge in edges),
        )
        boxes.append(Box(height, (*placed, *lines), keep=number in (0, len(table.rows) - 2), continued=again if number else None))
    return on_grid(boxes, setting)


def _set_notes(composer: Composer, setting: Setting) -> None:
    """Lines for everything else, to the foot of the page."""
    grid = composer.grid
    step = 1.6 * grid.leading
    head = section_boxes(Section("notes", NOTES, ()), setting, (DOCUMENT, Tag("Sect", "notes")), "notes")
    needed = stacked(head).height + _LEAST_NOTES * step + grid.leading
    if composer.room < needed + grid.leading:
        composer.turn()
    composer.space()
    composer.whole(stacked(head))
    room = composer.room // grid.leading * grid.leading
    composer.whole(Box(room, tuple(ruled(grid.text_width, step, room))))
