"""The symbol set as SVG sprites: one ``<symbol>`` each, with title and description, for web pages that teach."""

from __future__ import annotations

import re
from html import escape

from motifold.symbols.ink import Fill, Mark, bounds
from motifold.symbols.key import KeyEntry, whole_key

_SCALE = 100.0
"""Units of a sprite to one u, so that whole numbers are fine enough."""


def key_sprites() -> str:
    """One SVG document that draws nothing by itself; ``<use href="#dc">`` draws a symbol in the current text colour, foot at (0, 0).

    The ids are those of the key with hyphens for spaces. The foot point is the origin; the symbol stands above it.
    """
    sprites = "\n".join(_sprite(entry, section.title) for section in whole_key() for entry in section.entries)
    return f'<svg xmlns="http://www.w3.org/2000/svg" width="0" height="0">\n{sprites}\n</svg>\n'


def _sprite(entry: KeyEntry, group: str) -> str:
    x0, y0, x1, y1 = (value * _SCALE for value in bounds(entry.marks))
    box = f"{x0:.0f} {-y1:.0f} {x1 - x0:.0f} {y1 - y0:.0f}"
    title = f"{entry.short('US')} {entry.full('US')}".strip() if entry.words is None else entry.full("US")
    about = f"{group}. UK: {entry.short('UK')} {entry.full('UK')}" if entry.stitch and entry.words is None else group
    name = re.sub(r"[^A-Za-z0-9-]+", "-", entry.id)
    paths = "".join(_path(mark) for mark in entry.marks)
    return (
        f"<symbol id=\"{name}\" viewBox=\"{box}\" overflow=\"visible\">"
        f"<title>{escape(title, quote=False)}</title><desc>{escape(about, quote=False)}</desc>{paths}</symbol>"
    )


def _path(mark: Mark) -> str:
    points = [f"{x * _SCALE:.1f} {-y * _SCALE:.1f}" for x, y in mark.points]
    if mark.smooth:
        data = f"M{points[0]}" + "".join(f"C{points[i]} {points[i + 1]} {points[i + 2]}" for i in range(1, len(points) - 2, 3))
    else:
        data = "M" + "L".join(points)
    if isinstance(mark, Fill):
        return f'<path d="{data}Z" fill="currentColor"/>'
    end = "Z" if mark.closed else ""
    width = f"{mark.width * _SCALE:.1f}"
    ends = 'stroke-linecap="round" stroke-linejoin="round"'
    return f'<path d="{data}{end}" fill="none" stroke="currentColor" stroke-width="{width}" {ends}/>'
