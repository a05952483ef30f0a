"""A stitch's own symbol: path data in the pattern file, or the paths of a small SVG file beside it."""

from __future__ import annotations

from motifold.render.pattern.scan import Path
from motifold.render.pattern.values import Reader

_HINT = 'path data, as symbol = "M 0 0 L 0 2", or an SVG file beside the pattern: symbol = "leaf.svg"'


def own_symbol(reader: Reader, path: Path, value: str | None, file: str) -> str | None:
    """Path data that can be drawn; a problem at its place, and nothing, where it cannot. ``file``: where the pattern itself lies."""
    from motifold.render.pattern.beside import NotBeside, read_beside
    from motifold.symbols.own import read_symbol
    from motifold.symbols.svg_file import MAX_BYTES, svg_path_data

    if value is None:
        return None
    at = reader.locator.value((*path, "symbol"))
    try:
        data = svg_path_data(read_beside(file, value, MAX_BYTES)) if value.lower().endswith(".svg") else value
        read_symbol(data)
    except NotBeside as error:
        reader.add("value", at, str(error), error.hint)
        return None
    except ValueError as error:
        reader.add("value", at, str(error), _HINT)
        return None
    return data
