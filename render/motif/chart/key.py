"""The key of one pattern as a compact drawing, and what every key is set with: its inks, its symbols, its lines of words."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.drawing.display import Drawing, Face, Group, Operation, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.drawing.inks import INK, PAPER, QUIET
from motifold.render.motif.chart.ink import operations
from motifold.symbols.ink import bounds, moved
from motifold.symbols.key import FOOT_SHORT, MARK_LETTERS, KeyEntry
from motifold.symbols.record import dataclass
from motifold.symbols.terms import Terms

TERMS: tuple[Terms, Terms] = ("US", "UK")
_PT = 25.4 / 72
_BETWEEN_MM = 1.7
"""White between two lines of a compact key."""


@dataclass(frozen=True, slots=True)
class Inks:
    """Symbols and names; second words; hairlines between sections; the part that is pointed out and what stands back behind it."""

    ink: str
    soft: str
    rule: str
    point: str
    pale: str


INKS = {
    False: Inks(INK, QUIET, "#c9cfd6", "#a8402c", "#b4bcc4"),
    True: Inks("#000000", "#000000", "#000000", "#000000", "#a6a6a6"),
}
"""In colour, and for a black-and-white printer, which makes dots of every grey: nothing that must be read is grey."""


def draw_key(
    entries: Sequence[KeyEntry], terms: Terms, width_mm: float = 90.0, pitch_mm: float = 2.6, size_pt: float = 8.5, mono: bool = False
) -> Drawing:
    """A compact key: symbol, abbreviation and full name in one set of terms, in as many columns as ``width_mm`` holds."""
    inks = INKS[mono]
    columns = max(1, int(width_mm // 58))
    cell = width_mm / columns
    room = max([min(entry_width(e) * pitch_mm, 5.2 * pitch_mm) for e in entries], default=0.0) + 2.5
    tab = max([text_width_mm(_short(e, terms), "sans-bold", size_pt) for e in entries], default=0.0) + 2.2
    rows = [entries[i : i + columns] for i in range(0, len(entries), columns)]
    children: list[Operation] = []
    y = 0.0
    for row in rows:
        tall = max((entry_height(e) * pitch_mm for e in row), default=0.0)
        lines = max(len(_worded(e, terms, cell - room, tab, size_pt)) for e in row)
        high = max(tall, (1.2 * lines + 0.2) * size_pt * _PT) + _BETWEEN_MM
        for i, entry in enumerate(row):
            children.append(draw_symbol(entry, i * cell + room / 2, y - high / 2, room - 1.5, pitch_mm, inks))
            children += _cell_words(entry, terms, (i * cell + room, y - high / 2), (cell - room, tab), size_pt, inks)
        y -= high
    words = "; ".join(f"{_short(e, terms)} {e.full(terms)}".strip() for e in entries)
    return Drawing((0.0, y, width_mm, 0.0), tuple(children), "Key to the symbols", f"The symbols used and what they mean: {words}.")


def draw_symbol(entry: KeyEntry, x: float, y: float, room: float, pitch: float, inks: Inks) -> Group:
    """The symbol with the middle of its ink at (x, y) mm; made smaller only where it is wider than ``room``."""
    x0, y0, x1, y1 = bounds(entry.marks)
    fit = min(1.0, room / ((x1 - x0) * pitch))
    letter = MARK_LETTERS.get(entry.id)
    x += letter.left * pitch / 2 if letter else 0.0
    marks = [moved(mark, fit, 0, 0, fit, x / pitch - fit * (x0 + x1) / 2, y / pitch - fit * (y0 + y1) / 2) for mark in entry.marks]
    children = list(operations(marks, inks.ink, pitch))
    if letter:
        size = (4.5 if letter.left == 0 else 7.0) * pitch / 2.6
        base = y - cap_height_mm("sans-bold", size) / 2
        color = PAPER if letter.white else inks.ink
        children.append(Text(x - letter.left * pitch, base, letter.words, "sans-bold", size, color, "middle"))
    return Group(tuple(children), css_class="key", title=entry.full("US"))


def entry_height(entry: KeyEntry) -> float:
    """How tall a symbol is, in u."""
    _, y0, _, y1 = bounds(entry.marks)
    return y1 - y0


def entry_width(entry: KeyEntry) -> float:
    """How wide a symbol is, in u."""
    x0, _, x1, _ = bounds(entry.marks)
    return x1 - x0


def broken(words: str, width: float, size: float, first: float | None = None, face: Face = "sans") -> list[str]:
    """The words in lines no wider than ``width`` mm (the first one no wider than ``first``); a word that is wider stands alone."""
    lines: list[str] = []
    room = width if first is None else first
    for word in words.split():
        if not lines and text_width_mm(word, face, size) > room:
            lines.append("")
        if lines and text_width_mm(f"{lines[-1]} {word}".strip(), face, size) <= (room if len(lines) == 1 else width):
            lines[-1] = f"{lines[-1]} {word}".strip()
        else:
            lines.append(word)
    return lines if first is not None or not lines or lines[0] else lines[1:]


def _cell_words(
    entry: KeyEntry, terms: Terms, at: tuple[float, float], widths: tuple[float, float], size: float, inks: Inks
) -> list[Operation]:
    """Abbreviation, then the name, broken over lines where it must be; ``widths``: beside the symbol, and of the abbreviations."""
    out: list[Operation] = []
    short, (x, y), (wide, tab) = _short(entry, terms), at, widths
    left = x + 1.0
    base = y - cap_height_mm("sans", size) / 2
    if short:
        out.append(Text(left, base, short, "sans-bold", size, inks.ink))
        left += tab
    lines = _worded(entry, terms, wide, tab, size)
    step = 1.2 * size * _PT
    base += step * (len(lines) - 1) / 2
    out += [Text(left, base - i * step, line, "sans", size, inks.ink) for i, line in enumerate(lines)]
    return out


def _worded(entry: KeyEntry, terms: Terms, wide: float, tab: float, size: float) -> list[str]:
    """The lines of a name beside its abbreviation; a name that only repeats it is left out. ``wide``: the cell without its symbol."""
    short, full = _short(entry, terms), entry.full(terms).split(": ")[0]
    # A name that says no more than its abbreviation makes room for how it is made.
    words = entry.made((terms,)) if full == short else full
    return broken(words, wide - 2.5 - (tab if short else 0.0), size) if words else []


def _short(entry: KeyEntry, terms: Terms) -> str:
    foot = next((word for key, word in FOOT_SHORT.items() if entry.id.endswith(f" in {key}")), None)
    return foot or entry.short(terms)
