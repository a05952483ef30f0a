"""Assembly: the plan drawings first, then every step's words beside its own drawing."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import Setting, baseline, set_words
from motifold.render.booklet.boxes import Box, Tag, Tags, beside, height_of, moved, stacked, words_line
from motifold.render.booklet.figures import box_scale, figure_box, figure_grid, scale_within, size_of
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.inline import Type, typeset, width_of
from motifold.render.booklet.model import Figure
from motifold.render.booklet.paper import Grid
from motifold.render.booklet.sections import part_heading, section_boxes
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.words.model import Block, Items, Section

OVERVIEW_SHARE = 0.62    # of the width, for the plan of the assembly beside the first words
_LEAST_ROOM = 0.25       # of a page, for an assembly to begin on what is left of it
_ABREAST = (2, 3)        # steps in a row, where each has room
_CROWDED = 0.2           # of a page: what narrow columns of words or small drawings cost
_MANY = 7                # steps, from which on smaller drawings are tried
_LEAST_ABREAST = 45.0 / MM_PER_PT


def step_room(grid: Grid) -> tuple[float, float]:
    """Width and height that a step's drawing has beside its words; on a small page a larger share of it."""
    if grid.zoom > 1:  # its words are above it: beside it they would break after every third
        return grid.text_width, 0.45 * grid.text_height
    share, height = (grid.column_width / grid.text_width, 0.30) if grid.columns > 1 else (0.55, 0.33)
    return share * grid.text_width, height * grid.text_height


def steps_ways(
    section: Section, figures: Sequence[Figure], composer: Composer, setting: Setting, tags: Tags, key: str
) -> Iterator[Composer]:
    """The pages so far with the assembly and its figures after them: on the page in hand or a new one, steps in rows or abreast."""
    fresh = composer.copy()
    fresh.turn()
    head = part_heading(section.title, setting, tags, key)
    starts = [fresh]
    if not composer.fresh and composer.room >= head.height + head.before + composer.grid.text_height * _LEAST_ROOM:
        starts.append(composer)
    for start in starts:
        for across, small in _rows(figures, composer.grid):
            way = start.copy()
            legible = _set_steps(section, figures, head, way, setting, tags, key, across, small)
            way.cost += _CROWDED if across > _ABREAST[0] or small else 0.0
            if start is fresh or (legible and not way.stands_alone(head)):
                yield way


def _set_steps(
    section: Section, figures: Sequence[Figure], head: Box, composer: Composer, setting: Setting, tags: Tags, key: str, across: int,
    small: bool,
) -> bool:
    """Sets the assembly from the page in hand on, so many steps abreast, ``small`` or not; whether all of it can be read."""
    steps = {figure.step: figure for figure in figures if figure.role == "step" and figure.step is not None}
    overview = [figure for figure in figures if figure.role in ("net", "seams")]
    finished = [figure for figure in figures if figure.role == "finished"]
    before, numbered, after = _split(section, steps)
    composer.whole(head)
    legible = _overview(replace(section, blocks=before), overview, composer, setting, tags, key)
    figure_grid([figure for figure in figures if figure.role in ("colourways", "join")], composer, setting, tags, f"{key}/joins")
    if numbered is not None:
        wide = setting.narrowed(composer.grid.text_width)
        known = (f"{key}/steps/{across}", round(wide.width, 3), small)
        shown = {number: _small(figure) for number, figure in steps.items()} if small else steps
        if across > 1 or composer.grid.zoom > 1:
            free = len(numbered.items) % across != 0 and all(_fits_abreast(one, composer.grid, across) for one in finished)
            if known not in setting.done:
                last = finished[0] if finished and free else None
                setting.done[known] = _abreast(numbered, shown, last, wide, tags, f"{key}/steps", across)
            finished = finished[1:] if free else finished
        elif known not in setting.done:
            every = range(1, len(numbered.items) + 1)
            setting.done[known] = [_step_beside(number, numbered, steps, wide, tags, f"{key}/steps") for number in every]
        for box in setting.done[known]:
            composer.whole(box)
    unspoken = [(number, figure) for number, figure in sorted(steps.items()) if numbered is None or number > len(numbered.items)]
    captioned = [replace(figure, caption=figure.caption or f"Step {number}.") for number, figure in unspoken]
    rest = section_boxes(replace(section, blocks=after), setting, tags, f"{key}/after", titled=False)
    if rest:
        composer.space()
        composer.flow(rest)
    figure_grid([*captioned, *finished], composer, setting, tags, f"{key}/more")
    return legible


def _overview(words: Section, figures: Sequence[Figure], composer: Composer, setting: Setting, tags: Tags, key: str) -> bool:
    """What is said first, and the plan of it all beside it where both have room; else one below the other. Whether the plan is legible."""
    grid = setting.grid
    if figures and grid.columns > 1:
        width = grid.text_width * OVERVIEW_SHARE
        narrow = section_boxes(words, setting.narrowed(grid.text_width - width - grid.gutter), tags, f"{key}/before", titled=False)
        plan = figure_box(figures[0], setting.narrowed(width), tags, f"{key}/overview", min(composer.room, grid.text_height * 0.6))
        if height_of(narrow) <= plan.height:
            composer.whole(beside([(0.0, stacked(narrow)), (grid.text_width - width, plan)]))
            figure_grid(figures[1:], composer, setting, tags, f"{key}/overview")
            return box_scale(plan) >= figures[0].smallest
    measure = min(grid.text_width, 1.45 * grid.column_width)  # a few lines: not worth two columns, too long for one
    composer.flow(section_boxes(words, setting.narrowed(measure), tags, f"{key}/before", titled=False), count=1)
    figure_grid(figures, composer, setting, tags, f"{key}/overview")
    return True


def _legible_abreast(figures: Sequence[Figure], grid: Grid, across: int) -> bool:
    """Whether so many steps in a row are large enough to read, or no smaller than one in a row."""
    steps = [figure for figure in figures if figure.role == "step"]
    return grid.width_of(across) >= _LEAST_ABREAST and all(_fits_abreast(figure, grid, across) for figure in steps)


def _rows(figures: Sequence[Figure], grid: Grid) -> list[tuple[int, bool]]:
    """How many steps may stand in a row, and whether they are drawn as small as reads well: of many steps more then share a page."""
    if grid.zoom > 1:
        return [(1, False)]
    abreast = [count for count in _ABREAST if _legible_abreast(figures, grid, count)]
    many = sum(figure.role == "step" for figure in figures) >= _MANY
    return [(1, False), *((count, False) for count in abreast), *((count, True) for count in abreast if many)]


def _small(figure: Figure) -> Figure:
    return replace(figure, largest=figure.smallest)


def _fits_abreast(figure: Figure, grid: Grid, across: int) -> bool:
    width, (row_width, height) = grid.width_of(across), step_room(grid)
    return scale_within(figure, width, height) >= min(figure.smallest, 0.999 * scale_within(figure, row_width, height))


def _split(section: Section, steps: Mapping[int, Figure]) -> tuple[tuple[Block, ...], Items | None, tuple[Block, ...]]:
    """The blocks before the numbered steps, the steps (if there are drawings for them), and what follows."""
    for place, block in enumerate(section.blocks):
        if steps and isinstance(block, Items) and block.numbered:
            return section.blocks[:place], block, section.blocks[place + 1 :]
    return section.blocks, None, ()


def _width_in_room(figure: Figure, grid: Grid) -> float:
    width, height = step_room(grid)
    return size_of(figure)[0] * scale_within(figure, width, height)


def _item_tags(number: int, tags: Tags, key: str) -> Tags:
    return (*tags, Tag("L", key, numbering="Decimal"), Tag("LI", f"{key}/{number}"))


def _words_of_step(number: int, block: Items, setting: Setting, tags: Tags, key: str) -> Box:
    """The step's number, large, and its words to the right of it."""
    grid, styles = setting.grid, setting.styles
    item = _item_tags(number, tags, key)
    number_kind = Type("sans-bold", grid.body * 1.9, styles.accent)
    indent = max(grid.leading * 1.6, width_of(str(number), number_kind) + grid.leading * 0.6)
    body = (*item, Tag("LBody", f"{key}/{number}"), Tag("P", f"{key}/{number}"))
    label = words_line(str(number), number_kind, 0.0, baseline(grid.leading) + grid.leading * 0.35, (*item, Tag("Lbl", f"{key}/{number}")))
    spans = _leading_to_the_plan(block.items[number - 1], styles.body, key)
    words = stacked(set_words(spans, setting.narrowed(setting.width - indent), body))
    return beside([(0.0, Box(grid.leading * 2, (label,))), (indent, words)])


_PASS = re.compile(r"^(Pass(?:es)?\s[\d-]+)")


def _leading_to_the_plan(text: str, kind: Type, key: str) -> list[tuple[str, Type]]:
    """The words of a step; the pass that it names leads to the plan, where the passes are numbered."""
    plan = f"#{key.removesuffix('/steps')}/overview"
    parts = [part for part in _PASS.split(text) if part]
    return [(typeset(part), replace(kind, leads_to=plan) if _PASS.fullmatch(part) else kind) for part in parts]


def _drawing_of_step(number: int, steps: Mapping[int, Figure], setting: Setting, tags: Tags, key: str) -> Box | None:
    figure = steps.get(number)
    if figure is None:
        return None
    body = (*_item_tags(number, tags, key), Tag("LBody", f"{key}/{number}"))
    return figure_box(figure, setting, body, f"{key}/{number}", step_room(setting.grid)[1])


def _step_beside(number: int, block: Items, steps: Mapping[int, Figure], setting: Setting, tags: Tags, key: str) -> Box:
    """The drawing on the left, the words on the right."""
    grid = setting.grid
    drawing_width = max((_width_in_room(figure, grid) for figure in steps.values()), default=0.0)
    words_x = drawing_width + grid.gutter
    words = _words_of_step(number, block, setting.narrowed(setting.width - words_x), tags, key)
    drawing = _drawing_of_step(number, steps, setting.narrowed(drawing_width), tags, key)
    row = beside([(words_x, words), *([(0.0, drawing)] if drawing else [])])
    return replace(row, height=grid.snapped(row.height), before=grid.leading)


def _abreast(
    block: Items, steps: Mapping[int, Figure], last: Figure | None, setting: Setting, tags: Tags, key: str, across: int
) -> list[Box]:
    """Steps side by side; their words level at the top, their drawings level below; ``last`` in the place after the last step."""
    grid = setting.grid
    width = grid.width_of(across)
    narrow = setting.narrowed(width)
    rows = []
    for start in range(1, len(block.items) + 1, across):
        numbers = range(start, min(start + across, len(block.items) + 1))
        words = [_words_of_step(number, block, narrow, tags, key) for number in numbers]
        words_height = grid.snapped(max(box.height for box in words) + grid.leading * 0.5)
        cells = []
        drawings = [_drawing_of_step(number, steps, narrow, tags, key) for number in numbers]
        tallest = max((drawing.height for drawing in drawings if drawing), default=0.0)
        for place, drawing in enumerate(drawings):
            drop = words_height + (tallest - drawing.height if drawing else 0.0)  # their panels stand level at the foot
            lowered = tuple(moved(mark, 0.0, drop) for mark in drawing.marks) if drawing else ()
            height = words_height + tallest
            cells.append((place * (width + grid.gutter), Box(height, (*words[place].marks, *lowered))))
        if last is not None and len(numbers) < across:
            room = max(height for height in (box.height for _, box in cells))
            figure = figure_box(last, narrow, tags, f"{key}/finished", max(room, step_room(grid)[1]))
            cells.append((len(numbers) * (width + grid.gutter), figure))
        rows.append(replace(beside(cells), before=grid.leading))
    return rows
