"""The whole symbol set as a printed sheet: how to read a symbol, then every symbol with its names, set for a page of paper."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from motifold.render.drawing.display import Drawing, Group, Operation, StrokePath, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.motif.chart.ink import operations, path_of
from motifold.render.motif.chart.key import INKS, TERMS, Inks, broken, draw_symbol, entry_height, entry_width
from motifold.symbols.ink import bounds, moved
from motifold.symbols.key import KeyEntry, KeySection, in_terms, whole_key
from motifold.symbols.lesson import Lesson, lessons
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import U_MM
from motifold.symbols.terms import Terms

TITLE = "The stitches, and how they are drawn"
_ROOM = 14.0
"""The least width that a symbol stands in the middle of, in mm."""
_CELL, _MARK_CELL = 58.0, 44.0
"""The least width of a cell of the grid: stitches with their names, working marks with theirs, in mm."""
_LESSON_PITCH = 5.0
_LESSON_CELL = 36.0
_NOTE, _LABEL = 8.5, 6.0
_PITCHES = (5.0, 4.5, 4.2, 3.9, 3.6, 3.3, U_MM)
"""How large a sheet's symbols may be, where its pages have room: u in mm."""
_SPARE = 6.0
"""The most white added between sections of a page that has room."""
_FOOT = 7.0
"""What the line at the foot of a page takes, in mm."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page of paper in mm with its margin; ``terms``: the sets of terms whose names are printed; ``inks`` of the page; ``pitch``: u."""

    width: float
    height: float
    margin: float
    terms: tuple[Terms, ...]
    inks: Inks
    pitch: float = U_MM

    @property
    def text(self) -> float:
        """The width that is printed on."""
        return self.width - 2 * self.margin

    @property
    def size(self) -> float:
        """The size of names in points."""
        return 7.8 if self.width > 180 else 7.5

    @property
    def step(self) -> float:
        """From one line of names to the next, in mm."""
        return 0.453 * self.size

    @property
    def room(self) -> float:
        """The height that is printed on, without the line at the foot."""
        return self.height - 2 * self.margin - _FOOT


@dataclass(frozen=True, slots=True)
class _Block:
    """What stands together on a page: how high it is, and its operations with its top left corner at the point given."""

    height: float
    draw: Callable[[float, float], list[Operation]]


def draw_key_sheet(
    width_mm: float = 210.0, height_mm: float = 297.0, terms: Terms | None = None, mono: bool = False
) -> tuple[Drawing, ...]:
    """The whole set on pages of that size: names in one set of terms, or (None) in both; ``mono`` for a black-and-white printer.

    On as few pages as charts' own size asks, and then as large as fills them; no section is broken.
    """
    plain = Sheet(width_mm, height_mm, 14.0 if width_mm > 180 else 10.0, (terms,) if terms else TERMS, INKS[mono])
    count = len(_pages(_blocks(plain), plain.room))
    sheet = next(s for s in (replace(plain, pitch=p) for p in _PITCHES) if s.pitch == U_MM or len(_pages(_blocks(s), s.room)) <= count)
    blocks = _blocks(sheet)
    least = next(room for room in range(1, int(sheet.room) + 2) if len(_pages(blocks, min(room, sheet.room))) <= count)
    pages = _pages(blocks, min(least, sheet.room))
    return tuple(_page(page, i, len(pages), sheet) for i, page in enumerate(pages))


def _blocks(sheet: Sheet) -> list[_Block]:
    """How to read a symbol, and then the sections."""
    return [_over((_title(sheet), _lessons(sheet))), *(_over(_section(section, sheet)) for section in whole_key())]


def _over(parts: Sequence[_Block]) -> _Block:
    """Blocks that stay together, one below the other."""

    def draw(x: float, y: float) -> list[Operation]:
        out: list[Operation] = []
        for part in parts:
            out += part.draw(x, y)
            y -= part.height
        return out

    return _Block(sum(part.height for part in parts), draw)


def _pages(blocks: Sequence[_Block], room: float) -> list[list[_Block]]:
    """The blocks in order on pages with so much room, each page as full as it may be."""
    pages: list[list[_Block]] = [[]]
    used = 0.0
    for block in blocks:
        if used + block.height > room and pages[-1]:
            pages.append([])
            used = 0.0
        pages[-1].append(block)
        used += block.height
    return pages


def _page(blocks: Sequence[_Block], index: int, count: int, sheet: Sheet) -> Drawing:
    out: list[Operation] = []
    y, spare = -sheet.margin, sheet.room - sum(block.height for block in blocks)
    for block in blocks:
        out += block.draw(sheet.margin, y)
        y -= block.height + min(spare / len(blocks), _SPARE)
    base = sheet.margin - sheet.height
    size = f"{sheet.pitch / U_MM:.1f} times the size of" if sheet.pitch > U_MM else "in the size of"
    out.append(Text(sheet.margin, base, f"Drawn {size} a chart whose chains are {U_MM:g} mm apart.", "sans", _LABEL, sheet.inks.soft))
    out.append(Text(sheet.width - sheet.margin, base, f"{index + 1} of {count}", "sans", _LABEL, sheet.inks.soft, "end"))
    entries = [entry for section in whole_key() for entry in section.entries]
    words = "; ".join(" / ".join(dict.fromkeys(entry.full(terms) for terms in sheet.terms)) for entry in entries)
    title = "Key to the symbols" if count == 1 else f"Key to the symbols, page {index + 1} of {count}"
    about = f"How to read a symbol, and every symbol of the set: {words}." if index == 0 else "The key goes on."
    return Drawing((0.0, -sheet.height, sheet.width, 0.0), tuple(out), title, about)


def _title(sheet: Sheet) -> _Block:
    size = 19.0 if sheet.width > 180 else 15.0
    high = cap_height_mm("serif-bold", size)
    return _Block(high + 4.5, lambda x, y: [Text(x, y - high, TITLE, "serif-bold", size, sheet.inks.ink)])


def _lessons(sheet: Sheet) -> _Block:
    """The five parts side by side, or in as many rows as the page asks; the part that is spoken of is dark."""
    told = lessons()
    columns = max(1, min(len(told), int(sheet.text // _LESSON_CELL)))
    cell = sheet.text / columns
    tall = max(bounds((*one.pale, *one.dark))[3] for one in told) * _LESSON_PITCH + 2.5
    wordings = [broken(in_terms(one.words, sheet.terms), cell - 4.0, sheet.size) for one in told]
    rows = [range(i, min(i + columns, len(told))) for i in range(0, len(told), columns)]
    heights = [tall + 5.0 + sheet.step * max(len(wordings[i]) for i in row) + 3.0 for row in rows]

    def draw(x: float, y: float) -> list[Operation]:
        out: list[Operation] = []
        for row, high in zip(rows, heights, strict=True):
            for place, i in enumerate(row):
                left = x + place * cell
                out.append(_example(told[i], left, y - tall, cell - 4.0, sheet))
                out.append(Text(left, y - tall - 4.4, told[i].part, "serif-bold", 11, sheet.inks.ink))
                out += _lines_of(wordings[i], left, y - tall - 8.4, sheet)
            y -= high
        return out

    return _Block(sum(heights), draw)


def _lines_of(lines: Sequence[str], x: float, y: float, sheet: Sheet) -> list[Operation]:
    return [Text(x, y - i * sheet.step, line, "sans", sheet.size, sheet.inks.ink) for i, line in enumerate(lines)]


def _example(lesson: Lesson, x: float, y: float, room: float, sheet: Sheet) -> Group:
    """The example standing on ``y`` at the left of its cell."""
    marks = (*lesson.pale, *lesson.dark)
    x0, _, x1, _ = bounds(marks)
    pitch = min(_LESSON_PITCH, room / (x1 - x0))
    inks = [sheet.inks.pale] * len(lesson.pale) + [sheet.inks.point] * len(lesson.dark)
    children = [
        op
        for mark, ink in zip(marks, inks, strict=True)
        for op in operations([moved(mark, 1, 0, 0, 1, x / pitch - x0, y / pitch + 0.35)], ink, pitch)
    ]
    return Group(tuple(children), css_class="lesson", title=f"{lesson.part}: an example")


def _section(section: KeySection, sheet: Sheet) -> list[_Block]:
    """A heading over a hairline, its note beside or below it, and rows of entries on the sheet's grid."""
    blocks = [_heading(section, sheet)]
    marks = all(entry.stitch is None for entry in section.entries)
    columns = max(1, int(sheet.text // (_MARK_CELL if marks else _CELL)))
    cell = sheet.text / columns
    widest = max(entry_width(entry) for entry in section.entries) * sheet.pitch
    room = min(max(widest + 3.0, _ROOM), 0.42 * cell)
    for i in range(0, len(section.entries), columns):
        blocks.append(_row(section.entries[i : i + columns], cell, room, sheet))
    return blocks


def _heading(section: KeySection, sheet: Sheet) -> _Block:
    beside = text_width_mm(section.title, "serif-bold", 11) + 3.0
    fits = beside + text_width_mm(section.note, "serif-italic", _NOTE) <= sheet.text
    lines = [section.note] if fits else broken(section.note, sheet.text, _NOTE, face="serif-italic")

    def draw(x: float, y: float) -> list[Operation]:
        out: list[Operation] = [StrokePath(path_of(((x, y - 1.6), (x + sheet.text, y - 1.6)), False, False, 1.0), sheet.inks.rule, 0.2)]
        out.append(Text(x, y - 6.4, section.title, "serif-bold", 11, sheet.inks.ink))
        at = (x + beside, y - 6.4) if fits else (x, y - 10.4)
        out += [Text(at[0], at[1] - 3.8 * i, line, "serif-italic", _NOTE, sheet.inks.soft) for i, line in enumerate(lines)]
        return out

    return _Block(8.4 if fits else 8.4 + 3.8 * len(lines), draw)


def _row(entries: Sequence[KeyEntry], cell: float, room: float, sheet: Sheet) -> _Block:
    names = [_lines(entry, cell - room - 3.5, sheet) for entry in entries]
    high = max(*(entry_height(entry) * sheet.pitch for entry in entries), *(sheet.step * len(lines) for lines in names), 5.0) + 2.6

    def draw(x: float, y: float) -> list[Operation]:
        out: list[Operation] = []
        for i, (entry, lines) in enumerate(zip(entries, names, strict=True)):
            out.append(draw_symbol(entry, x + i * cell + room / 2, y - high / 2, room - 1.0, sheet.pitch, sheet.inks))
            out += _names(lines, x + i * cell + room + 1.5, y - high / 2, sheet)
        return out

    return _Block(high, draw)


_Line = tuple[str, str, str]
"""Label of the terms, abbreviation, and (a part of) the name."""


def _lines(entry: KeyEntry, width: float, sheet: Sheet) -> list[_Line]:
    """What stands beside a symbol: the terms where they differ, the abbreviation, the name, broken where the cell is too narrow."""
    said: dict[tuple[str, str], list[Terms]] = {}
    for one in sheet.terms:
        short, full = entry.short(one), entry.full(one)
        name = full.split(": ")[0].removeprefix(f"{short} ") if entry.words and entry.stitch else full
        said.setdefault((short, "" if name == short else name), []).append(one)
    lines: list[_Line] = []
    for (short, name), who in said.items():
        label, indent = (who[0], 4.2) if len(said) > 1 else ("", 0.0)
        taken = indent + (text_width_mm(short, "sans-bold", sheet.size) + 1.2 if short else 0.0)
        parts = broken(name, width - indent, sheet.size, first=width - taken) if name else [""]
        lines += [(label, short, parts[0]), *((" " if label else "", "", part) for part in parts[1:])]
    return lines + [("", "", part) for part in broken(entry.made(sheet.terms), width, sheet.size)]


def _names(lines: Sequence[_Line], x: float, y: float, sheet: Sheet) -> list[Operation]:
    out: list[Operation] = []
    base = y - cap_height_mm("sans", sheet.size) / 2 + sheet.step * (len(lines) - 1) / 2
    for label, short, name in lines:
        at = x
        if label:
            if label.strip():
                out.append(Text(at, base, label, "sans", 5.5, sheet.inks.soft))
            at += 4.2
        if short:
            out.append(Text(at, base, short, "sans-bold", sheet.size, sheet.inks.ink))
            at += text_width_mm(short, "sans-bold", sheet.size) + 1.2
        if name:
            out.append(Text(at, base, name, "sans", sheet.size, sheet.inks.soft))
        base -= sheet.step
    return out
