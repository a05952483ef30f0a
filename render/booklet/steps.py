"""Assembly: the plan drawings first, then every step's words beside its own drawing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import Setting, baseline, set_words
from motifold.render.booklet.boxes import Box, Tag, Tags, beside, stacked, words_line
from motifold.render.booklet.figures import figure_box, figure_grid
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.inline import Type, typeset
from motifold.render.booklet.model import Figure
from motifold.render.booklet.sections import part_heading, section_boxes
from motifold.render.words.model import Block, Items, Section

_STEP_SHARE = 0.44       # of the width, for a step's drawing
_STEP_HEIGHT = 0.30      # of a page's height, at most


def steps_part(section: Section, figures: Sequence[Figure], composer: Composer, setting: Setting, tags: Tags, key: str) -> None:
    """Sets the assembly with its figures, from the page in hand on."""
    steps = {figure.step: figure for figure in figures if figure.role == "step" and figure.step is not None}
    overview = [figure for figure in figures if figure.role in ("net", "seams")]
    finished = [figure for figure in figures if figure.role == "finished"]
    head = part_heading(section.title, setting, tags, key)
    if composer.room < head.height + head.before + composer.grid.text_height * 0.45:
        composer.turn()
    composer.whole(head)
    before, numbered, after = _split(section, steps)
    composer.flow(section_boxes(replace(section, blocks=before), setting, tags, f"{key}/before", titled=False))
    figure_grid(overview, composer, setting, tags, f"{key}/overview")
    if numbered is not None:
        composer.space()
        for box in _step_rows(numbered, steps, setting.narrowed(composer.grid.text_width), tags, f"{key}/steps"):
            composer.whole(box)
    unspoken = [figure for number, figure in sorted(steps.items()) if numbered is None or number > len(numbered.items)]
    figure_grid(unspoken, composer, setting, tags, f"{key}/unspoken")
    composer.space()
    composer.flow(section_boxes(replace(section, blocks=after), setting, tags, f"{key}/after", titled=False))
    figure_grid(finished, composer, setting, tags, f"{key}/finished")


def _split(section: Section, steps: dict[int, Figure]) -> tuple[tuple[Block, ...], Items | None, tuple[Block, ...]]:
    """The blocks before the numbered steps, the steps (if there are drawings for them), and what follows."""
    for place, block in enumerate(section.blocks):
        if steps and isinstance(block, Items) and block.numbered:
            return section.blocks[:place], block, section.blocks[place + 1 :]
    return section.blocks, None, ()


def _step_rows(block: Items, steps: dict[int, Figure], setting: Setting, tags: Tags, key: str) -> list[Box]:
    """One row a step: its number and words, its drawing beside them."""
    grid, styles = setting.grid, setting.styles
    drawing_width = setting.width * _STEP_SHARE
    text_x = drawing_width + grid.gutter if steps else 0.0
    number_kind = Type("sans-bold", grid.body * 1.9, styles.accent)
    indent = grid.leading * 2
    list_tag = Tag("L", key, numbering="Decimal")
    rows: list[Box] = []
    for index, text in enumerate(block.items):
        item = (*tags, list_tag, Tag("LI", f"{key}/{index}"))
        body = (*item, Tag("LBody", f"{key}/{index}"))
        label_tags = (*item, Tag("Lbl", f"{key}/{index}"))
        label = words_line(str(index + 1), number_kind, 0.0, baseline(grid.leading) + grid.leading * 0.35, label_tags)
        width = setting.width - text_x - indent
        words = stacked(set_words([(typeset(text), styles.body)], setting.narrowed(width), (*body, Tag("P", f"{key}/{index}"))))
        parts = [(text_x, Box(grid.leading * 1.5, (label,))), (text_x + indent, words)]
        figure = steps.get(index + 1)
        if figure is not None:
            drawing = figure_box(figure, setting.narrowed(drawing_width), body, f"{key}/{index}", grid.text_height * _STEP_HEIGHT)
            parts.append((0.0, drawing))
        row = beside(parts)
        rows.append(replace(row, height=grid.snapped(row.height), before=grid.leading))
    return rows


