"""The handout for a class: every round with its chart and its words, every step of the assembly with its drawing, and room for notes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Box, Picture, Tag, Tags, stacked
from motifold.render.booklet.compose import written
from motifold.render.booklet.content import words_content, words_look
from motifold.render.booklet.drawings import LEAST_PITCH_MM, look_of_charts, trimmed, zoomed
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.model import Look
from motifold.render.booklet.plan import DOCUMENT
from motifold.render.booklet.sections import part_heading, section_boxes
from motifold.render.booklet.sheet import opened_sheet
from motifold.render.charts import StepCharts, largest_size, step_charts
from motifold.render.drawing.display import Drawing, Group
from motifold.render.drawing.measure import around, place
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.fabric.model import Fabric, Round
from motifold.render.handouts.cells import MOST_ROWS, Cell, Fit, Line, Piece, Room, head_height, laid, notes, rows_of, word_boxes
from motifold.render.schematics import drawn_size
from motifold.render.words.counts import worked_text
from motifold.render.words.model import Items, Paragraph, RoundText, Section
from motifold.render.words.places import round_name
from motifold.render.words.printed import printed
from motifold.render.words.voice import Voice
from motifold.render.worked import Worked, WorkedSize

_LARGEST_PITCH_MM = 3.6   # a chain of a chart is printed no longer
_LEAST_SCALE = 0.8        # of an assembly drawing: its letters of 9 points come out at 7.2
_FIT = 0.99
_MEASURED_MM = (1.5, 3.0)  # pitches at which charts are measured
_LEAST_DRAWN_MM = 0.4
_ZOOM = 7 / 6              # a chart's smallest letters are of 6 points: so much larger they are of 7
_TRIES = 2
_LONG_RUN = 6              # rounds alike, from which on they share a cell
_TOO_LARGE = "From {} on the chart is too large for these pages; the booklet has it."


def make_handout(worked: Worked, look: Look) -> bytes:
    """A tagged PDF: four or six cells to a page as they can be read, fewer where they must be larger."""
    content = words_content(worked, look)
    document = replace(content.document, title=f"{content.document.title}, step by step")
    content = replace(content, document=document)
    composer, setting = opened_sheet(content, numbered=True)
    for piece in _pieces(worked, document.sections, look):
        _set_piece(piece, composer, setting)
    return written(content, composer.pages())


def _set_piece(piece: Piece, composer: Composer, setting: Setting) -> None:
    grid = composer.grid
    tags: Tags = (DOCUMENT, Tag("Sect", piece.key))
    intro = [Paragraph(text) for text in piece.intro]
    wide = setting.narrowed(grid.text_width)
    above = section_boxes(Section("notes", "", tuple(intro)), wide, tags, f"{piece.key}/intro", titled=False) if intro else []
    head = stacked([part_heading(piece.title, setting, tags, piece.key), *above])
    title = composer.y + head.before if composer.number == 1 and composer.y < grid.text_height / 3 else 0.0
    one = laid(piece, setting, grid.text_height - head.height - title, tags)
    if one is None:
        composer.whole(head)
        _loose(piece, composer, wide, tags)
        return
    rows = rows_of(one, piece, setting, tags)
    if composer.room < head.before + head.height + rows[0].least and not composer.fresh:
        composer.turn()
    composer.whole(head)
    most = one.parting.down or MOST_ROWS
    while rows:
        if composer.room + 0.01 < rows[0].least:
            composer.turn()
        here = [rows[0]]
        while len(here) < min(most, len(rows)) and sum(row.least for row in here) + rows[len(here)].least <= composer.room + 0.01:
            here.append(rows[len(here)])
        rows = rows[len(here) :]
        full = bool(rows) or len(here) == one.parting.down  # a page that is not full is not stretched
        spare = (composer.room - sum(row.least for row in here)) / len(here) // grid.leading * grid.leading if full else 0.0
        for row in here:
            composer.whole(row.made(row.least + max(spare, 0.0)))
    if piece.charted and one.left_out:
        note = Paragraph(_TOO_LARGE.format(piece.cells[-one.left_out].label), "note")
        composer.space()
        composer.flow(section_boxes(Section("notes", "", (note,)), wide, tags, f"{piece.key}/note", titled=False), 1)


def _loose(piece: Piece, composer: Composer, setting: Setting, tags: Tags) -> None:
    """Cells whose words want more than a page: one below the other, the drawing after its words."""
    grid = setting.grid
    height = 0.5 * grid.text_height
    drawings = piece.fit([(grid.text_width * MM_PER_PT, height * MM_PER_PT)] * len(piece.cells)).draw(len(piece.cells))
    for number, (cell, drawing) in enumerate(zip(piece.cells, drawings, strict=True)):
        key = f"{piece.key}/{number}"
        composer.space()
        composer.flow(word_boxes(cell, setting, tags, key), 1)
        if drawing is not None:
            figure = (*tags, Tag("Figure", key, alt=drawing.description or drawing.title))
            composer.whole(Box(drawing.height_mm / MM_PER_PT, (Picture(0.0, 0.0, drawing, 1.0, figure),)))
        room = 4 * 1.5 * grid.leading
        composer.whole(Box(room + head_height(grid), tuple(notes(grid.text_width, room, setting))))


def _pieces(worked: Worked, sections: Sequence[Section], look: Look) -> Iterator[Piece]:
    """Motifs, assembly and edgings in the order of the written pattern."""
    voice = printed(worked, {}, words_look(worked.pattern, look)).voice
    charts = {charts.name: charts for charts in step_charts(worked, look_of_charts(worked.pattern, look))}
    for place_, section in enumerate(sections):
        key = f"{section.key}/{place_}"
        if section.subject in charts and section.key in ("motif", "edging"):
            size = largest_size(worked)
            if size is not None:
                yield _chart_piece(section, key, charts[section.subject or ""], size, voice, len(worked.sizes) > 1)
        elif section.key == "assembly":
            size = drawn_size(worked)
            if size is not None:
                yield from _assembly_piece(section, key, size, len(worked.sizes) > 1)


def _chart_piece(section: Section, key: str, charts: StepCharts, size: WorkedSize, voice: Voice, several: bool) -> Piece:
    fabric = {**size.fabrics, **size.edgings}[charts.name]
    cells = _round_cells([block for block in section.blocks if isinstance(block, RoundText)], charts.numbers, fabric, voice)
    title = f"{section.title}, size {size.choice.name}" if several else section.title
    whole = charts.whole(_MEASURED_MM[1])
    wide = whole.width_mm > 1.5 * whole.height_mm
    return Piece(title, key, (), tuple(cells.values()), partial(_fitted_charts, charts, tuple(cells), {}), wide, True)


def _round_cells(blocks: Sequence[RoundText], numbers: Sequence[int], fabric: Fabric, voice: Voice) -> dict[int, Cell]:
    """A cell for each round that is charted, by its number; what has no number goes with the round before, at the start with the first.

    A line for several rounds is written out once; where it goes on for long and nothing changes, the rounds that follow share a cell.
    """
    rows = fabric.worked == "rows"
    rounds = {this.number: this for this in fabric.rounds}
    own: dict[int, list[Line]] = {number: [] for number in numbers}
    labels: dict[int, str] = {}
    before: list[Line] = []
    shared: set[int] = set()
    latest: int | None = None
    for block in blocks:
        if block.first is None or block.last is None:
            (own[latest] if latest is not None else before).append(Line(block.label, block.text, block.counts))
            continue
        covered = [n for n in numbers if block.first <= n <= block.last]
        for alike in _alike(covered, rounds):
            number, latest = alike[0], alike[0]
            this = rounds.get(number)
            counts = block.counts or (worked_text(voice, (this.counts,)) if this is not None else "")
            named = round_name(voice, f"{number}–{alike[-1]}" if len(alike) > 1 else str(number), len(alike) > 1, rows)
            labels[number] = block.label if block.first == block.last else named
            again = number != block.first and block.first in own
            text = f"As {round_name(voice, str(block.first), rows=rows)}." if again else block.text
            own[number].append(Line("", text, counts))
            shared.update(alike[1:])
    if before and numbers:
        first = numbers[0]
        own[first] = [*before, *(replace(line, label=line.label or labels.get(first, "")) for line in own[first])]
    return {
        number: Cell(labels.get(number) or round_name(voice, str(number), rows=rows), tuple(own[number]))
        for number in numbers
        if number not in shared or own[number]
    }


def _alike(numbers: Sequence[int], rounds: Mapping[int | None, Round]) -> list[list[int]]:
    """The rounds of one line: each by itself, but for a long run after its first two in which every round counts the same."""
    runs: list[list[int]] = []
    for index, number in enumerate(numbers):
        before, this = rounds.get(number - 1), rounds.get(number)
        same = before is not None and this is not None and before.counts == this.counts
        if index > 2 and same and runs:
            runs[-1].append(number)
        else:
            runs.append([number])
    return [part for run in runs for part in ([run] if len(run) > _LONG_RUN else [[number] for number in run])]


_Sizes = list[tuple[Room, ...]]


def _fitted_charts(charts: StepCharts, numbers: Sequence[int], known: dict[str, _Sizes], rooms: Sequence[Room]) -> Fit:
    """All charts at the one pitch at which each still fits its room.

    Letters keep their size, so that a drawing grows with the pitch by a straight line: found from two, once (``known``).
    """
    if "sizes" not in known:
        drawn = (_inked(charts.steps(pitch / _ZOOM, numbers)) for pitch in _MEASURED_MM)
        known["sizes"] = [tuple((one.width_mm, one.height_mm) for one in drawings) for drawings in drawn]
    low, high = _MEASURED_MM
    fitting = []
    for room, small, large in zip(rooms, *known["sizes"], strict=True):
        most = _LARGEST_PITCH_MM
        for side in (0, 1):
            grows = max((large[side] - small[side]) / (high - low), 1e-6)
            most = min(most, _FIT * (room[side] - small[side] + low * grows) / grows)
        fitting.append(most)
    legible = next((place for place, pitch in enumerate(fitting) if pitch < LEAST_PITCH_MM), len(fitting))
    return Fit(min(fitting, default=1.0) / LEAST_PITCH_MM, legible, lambda count: _drawn_at(charts, numbers[:count], fitting, rooms))


def _drawn_at(charts: StepCharts, numbers: Sequence[int], fitting: Sequence[float], rooms: Sequence[Room]) -> tuple[Drawing | None, ...]:
    """The first charts at the pitch that fits them all; smaller should furniture have come to stand elsewhere."""
    count = len(numbers)
    if not count:
        return (None,) * len(rooms)
    pitch = max(min(fitting[:count]), _LEAST_DRAWN_MM)
    for _ in range(_TRIES):
        drawings = _inked(charts.steps(pitch / _ZOOM, numbers))
        over = min(min(room[0] / one.width_mm, room[1] / one.height_mm) for room, one in zip(rooms, drawings, strict=False))
        if over >= 1:
            break
        pitch *= over
    return (*(_scaled(one, over) for one in drawings), *(None,) * (len(rooms) - count))


def _inked(drawings: Sequence[Drawing]) -> list[Drawing]:
    """Each without the white that later rounds will fill, and without the list of yarns: the words beside it name them."""
    found = []
    for drawing in drawings:
        kept = tuple(one for one in drawing.operations if not (isinstance(one, Group) and one.css_class == "yarn-list"))
        found.append(zoomed(around(kept, 0.3, drawing.title, drawing.description) if kept else drawing, _ZOOM))
    return found


def _scaled(drawing: Drawing, scale: float) -> Drawing:
    if scale >= 1.0:
        return drawing
    box = (0.0, 0.0, drawing.width_mm * scale, drawing.height_mm * scale)
    return Drawing(box, place(drawing, 0.0, 0.0, scale), drawing.title, drawing.description)


def _assembly_piece(section: Section, key: str, size: WorkedSize, several: bool) -> Iterator[Piece]:
    from motifold.render.assembly.steps import assembly_steps

    assembly = size.assembly
    if assembly is None:
        return
    steps = assembly_steps(assembly)
    lists = [block for block in section.blocks if isinstance(block, Items) and block.numbered]
    told = next((block for block in lists if len(block.items) == len(steps)), None)
    if told is None:
        return
    intro = tuple(block.text for block in section.blocks if isinstance(block, Paragraph))
    cells = tuple(Cell(f"Step {number}", (Line("", text),)) for number, text in enumerate(told.items, 1))
    shown = {step.number: index for index, step in enumerate(step for step in steps if step.kind != "fold flat")}
    title = f"{section.title}, size {size.choice.name}" if several else section.title
    yield Piece(title, key, intro, cells, partial(_fitted_steps, size, shown, len(cells)))


def _fitted_steps(size: WorkedSize, shown: Mapping[int, int], cells: int, rooms: Sequence[Room]) -> Fit:
    """The drawings of the assembly's steps, all alike, made for the smallest room."""
    from motifold.render.assembly.schematics import draw_steps

    width, height = (min(room[side] for room in rooms) for side in (0, 1))
    drawings = trimmed(draw_steps(size.assembly, width, height)) if size.assembly is not None else []
    scale = min((min(width / one.width_mm, height / one.height_mm, 1.0) for one in drawings), default=1.0)

    def draw(count: int) -> tuple[Drawing | None, ...]:
        scaled = [_scaled(one, scale) for one in drawings]
        return tuple(scaled[shown[number]] if number in shown else None for number in range(1, count + 1)) + (None,) * (cells - count)

    return Fit(scale / _LEAST_SCALE, cells if scale >= _LEAST_SCALE else 0, draw)
