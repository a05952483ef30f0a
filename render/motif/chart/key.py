"""The key as a drawing: what one pattern uses, as a compact list, or the whole set as a sheet."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.drawing.display import Drawing, Group, Operation, StrokePath, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.motif.chart.ink import operations, path_of
from motifold.render.motif.chart.look import INK, PAPER
from motifold.symbols.ink import bounds, moved
from motifold.symbols.key import FOOT_SHORT, MARK_LETTERS, KeyEntry, KeySection, whole_key
from motifold.symbols.terms import Terms

_SOFT = "#5b6673"
_RULE = "#c9cfd6"
_PT = 25.4 / 72
_BETWEEN_MM = 1.7
"""White between two lines of a compact key."""
TERMS: tuple[Terms, Terms] = ("US", "UK")


def draw_key(entries: Sequence[KeyEntry], terms: Terms, width_mm: float = 90.0, pitch_mm: float = 2.6, size_pt: float = 8.5) -> Drawing:
    """A compact key: symbol, abbreviation and full name in one set of terms, in as many columns as ``width_mm`` holds."""
    columns = max(1, int(width_mm // 58))
    cell = width_mm / columns
    room = max([min((b[2] - b[0]) * pitch_mm, 5.2 * pitch_mm) for b in (bounds(e.marks) for e in entries)], default=0.0) + 2.5
    tab = max([text_width_mm(_short(e, terms), "sans-bold", size_pt) for e in entries], default=0.0) + 2.2
    beside = cell - room - tab - 2.5
    rows = [entries[i : i + columns] for i in range(0, len(entries), columns)]
    children: list[Operation] = []
    y = 0.0
    for row in rows:
        tall = max((_height(e) * pitch_mm for e in row), default=0.0)
        lines = max(len(_broken(_name(e, terms), beside, size_pt)) for e in row)
        high = max(tall, (1.2 * lines + 0.2) * size_pt * _PT) + _BETWEEN_MM
        for i, entry in enumerate(row):
            children += _compact_cell(entry, terms, (i * cell, y - high / 2), (cell, room, tab), pitch_mm, size_pt)
        y -= high
    words = "; ".join(f"{_short(e, terms)} {e.full(terms)}".strip() for e in entries)
    return Drawing((0.0, y, width_mm, 0.0), tuple(children), "Key to the symbols", f"The symbols used and what they mean: {words}.")


def draw_key_sheet(width_mm: float = 190.0, pitch_mm: float = 2.6) -> Drawing:
    """The whole symbol set as a sheet: grouped by how the stitches are made, US and UK names beside each symbol."""
    children: list[Operation] = [Text(0, -7.5, "The stitches, and how they are drawn", "serif-bold", 19, INK)]
    y = -13.0
    for section in whole_key():
        drawn, y = _section(section, y, width_mm, pitch_mm)
        children += drawn
    names = [f"{e.full('US')} (UK {e.full('UK')})" if e.stitch else e.full("US") for s in whole_key() for e in s.entries]
    return Drawing((0.0, y, width_mm, 0.0), tuple(children), "Key to the symbols", "Every symbol of the set: " + "; ".join(names) + ".")


def _section(section: KeySection, y: float, width: float, pitch: float) -> tuple[list[Operation], float]:
    """A heading with its note over a hairline, and the entries on the sheet's grid: three columns, five for working marks."""
    out: list[Operation] = [StrokePath(path_of(((0.0, y), (width, y)), False, False, 1.0), _RULE, 0.2)]
    out.append(Text(0, y - 4.8, section.title, "serif-bold", 11, INK))
    out.append(Text(text_width_mm(section.title, "serif-bold", 11) + 3.0, y - 4.8, section.note, "serif-italic", 8.5, _SOFT))
    y -= 7.2
    columns = 5 if all(entry.stitch is None for entry in section.entries) else 3
    cell = width / columns
    for i in range(0, len(section.entries), columns):
        row = section.entries[i : i + columns]
        high = max(max(_height(entry) for entry in row) * pitch, 6.0) + 2.6
        for column, entry in enumerate(row):
            out += _sheet_cell(entry, column * cell, y - high / 2, 9.0 if columns == 5 else 15.0, pitch)
        y -= high
    return out, y - 1.6


def _sheet_lines(entry: KeyEntry) -> list[tuple[str, str, str]]:
    """Label, abbreviation and name of each line beside a symbol."""
    if entry.stitch is None:
        return [("", "", part) for part in _wrapped(entry.full("US"))]
    if entry.words is not None:
        lines = [(terms, entry.short(terms), entry.full(terms).split(": ")[0]) for terms in TERMS]
        return [(terms, short, what.removeprefix(short).strip()) for terms, short, what in lines]
    if entry.short("US") == entry.short("UK") and entry.full("US") == entry.full("UK"):
        return [("", entry.short("US"), entry.full("US") if entry.full("US") != entry.short("US") else "")]
    return [(terms, entry.short(terms), entry.full(terms)) for terms in TERMS]


def _wrapped(words: str) -> list[str]:
    head, comma, tail = words.partition(", ")
    return [head + comma.strip(), tail] if tail else [words]


def _sheet_cell(entry: KeyEntry, x: float, y: float, room: float, pitch: float) -> list[Operation]:
    """The symbol in the middle of its room, its names to the right, all about the height ``y``."""
    out: list[Operation] = [_symbol(entry, x + room / 2, y, room - 1.0, pitch)]
    lines = _sheet_lines(entry)
    size, step = 7.5, 3.4
    base = y - cap_height_mm("sans", size) / 2 + step * (len(lines) - 1) / 2
    for label, short, full in lines:
        at = x + room + 1.5
        if label:
            out.append(Text(at, base, label, "sans", 5.5, _SOFT))
            at += 4.2
        if short:
            out.append(Text(at, base, short, "sans-bold", size, INK))
            at += text_width_mm(short, "sans-bold", size) + 1.2
        if full:
            out.append(Text(at, base, full, "sans", size, _SOFT if short else INK))
        base -= step
    return out


def _symbol(entry: KeyEntry, x: float, y: float, room: float, pitch: float) -> Group:
    """The symbol with the middle of its ink at (x, y) mm; made smaller only where it is wider than ``room``."""
    x0, y0, x1, y1 = bounds(entry.marks)
    fit = min(1.0, room / ((x1 - x0) * pitch))
    marks = [moved(mark, fit, 0, 0, fit, x / pitch - fit * (x0 + x1) / 2, y / pitch - fit * (y0 + y1) / 2) for mark in entry.marks]
    children = list(operations(marks, INK, pitch))
    letter = MARK_LETTERS.get(entry.id)
    if letter:
        size = 4.5 if letter.left == 0 else 7.0
        base = y - cap_height_mm("sans-bold", size) / 2
        children.append(Text(x - letter.left * pitch, base, letter.words, "sans-bold", size, PAPER if letter.white else INK, "middle"))
    return Group(tuple(children), css_class="key", title=entry.full("US"))


def _compact_cell(
    entry: KeyEntry, terms: Terms, at: tuple[float, float], widths: tuple[float, float, float], pitch: float, size: float
) -> list[Operation]:
    """Symbol in its room, then abbreviation, then the name, broken over lines where it must be; ``widths``: cell, room, abbreviation."""
    (x, y), (wide, room, tab) = at, widths
    out: list[Operation] = [_symbol(entry, x + room / 2, y, room - 1.5, pitch)]
    short, full = _short(entry, terms), _name(entry, terms)
    left = x + room + 1.0
    base = y - cap_height_mm("sans", size) / 2
    if short:
        out.append(Text(left, base, short, "sans-bold", size, INK))
        left += tab
    if full == short:
        return out
    lines = _broken(full, x + wide - left - 1.5, size)
    step = 1.2 * size * _PT
    base += step * (len(lines) - 1) / 2
    for i, line in enumerate(lines):
        out.append(Text(left, base - i * step, line, "sans", size, INK))
    return out


def _broken(words: str, width: float, size: float) -> list[str]:
    lines: list[str] = []
    for word in words.split():
        if lines and text_width_mm(f"{lines[-1]} {word}", "sans", size) <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def _name(entry: KeyEntry, terms: Terms) -> str:
    return entry.full(terms).split(": ")[0]


def _short(entry: KeyEntry, terms: Terms) -> str:
    foot = next((word for key, word in FOOT_SHORT.items() if entry.id.endswith(f" in {key}")), None)
    return foot or entry.short(terms)


def _height(entry: KeyEntry) -> float:
    _, y0, _, y1 = bounds(entry.marks)
    return y1 - y0
