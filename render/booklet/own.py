"""What a designer adds of her own: photographs, and the address of her pattern as a code to scan."""

from __future__ import annotations

from motifold.render.booklet.model import Figure, Look
from motifold.render.booklet.paper import grid_of
from motifold.render.drawing.display import Drawing, FillPath, Image, Path
from motifold.render.drawing.images import UnreadableImage, printable
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.pattern.beside import NotBeside
from motifold.render.pattern.model import Pattern, PictureSource
from motifold.render.pattern.pictures import LEAST_DPI, MOST_PICTURES, picture_bytes

_MM_PER_INCH = 25.4
_MODULE_MM = 0.8       # of a code: phones read half of it
_QUIET_MODULES = 4     # white around a code (ISO/IEC 18004, 6.3.8)


def photographs(pattern: Pattern, look: Look) -> tuple[Figure, ...]:
    """The designer's pictures as figures, each with where it stands as its subject; what cannot be read was told and is left out."""
    found = (photograph(pattern, picture, look) for picture in pattern.pictures[:MOST_PICTURES])
    return tuple(figure for figure in found if figure is not None)


def photograph(pattern: Pattern, picture: PictureSource, look: Look) -> Figure | None:
    """As wide as asked for, or as a column; without a wish never so large that its dots show."""
    try:
        data, kind, across, down = printable(picture_bytes(pattern, picture))
    except (NotBeside, UnreadableImage):
        return None
    grid = grid_of(look)
    finest = across / LEAST_DPI * _MM_PER_INCH
    if picture.width_cm is not None:
        width, largest = min(picture.width_cm * 10, grid.text_width * MM_PER_PT), 1.0
    else:
        width = min(grid.column_width * MM_PER_PT, finest)
        largest = finest / width if picture.at == "cover" else 1.0
    height = width * down / across
    words = picture.alt or picture.caption or f"A picture: {picture.name}"
    image = Image(0.0, 0.0, width, height, data, "jpeg" if kind == "jpeg" else "png")
    drawing = Drawing((0.0, 0.0, width, height), (image,), picture.caption or picture.name, words)
    return Figure("photograph", drawing, picture.caption, picture.at, smallest=0.3, largest=largest, comfortable=0.6)


def web_code(address: str) -> Figure:
    """The address as a QR code (ISO/IEC 18004, made by the library segno), medium correction; its words are the address itself."""
    import segno

    rows = [bytes(row) for row in segno.make(address, error="m", micro=False).matrix]
    side = (len(rows) + 2 * _QUIET_MODULES) * _MODULE_MM
    commands: list[tuple[str | float, ...]] = []
    for place, row in enumerate(rows):
        top = side - (_QUIET_MODULES + place) * _MODULE_MM
        for start, length in _dark_runs(row):
            left, right = ((_QUIET_MODULES + column) * _MODULE_MM for column in (start, start + length))
            commands += [("M", left, top), ("L", right, top), ("L", right, top - _MODULE_MM), ("L", left, top - _MODULE_MM), ("Z",)]
    described = f"A code to scan: {address}"
    drawing = Drawing((0.0, 0.0, side, side), (FillPath(Path(tuple(commands)), "#000000"),), "A code to scan", described)
    return Figure("code", drawing, "", smallest=0.8, largest=1.0)


def _dark_runs(row: bytes) -> list[tuple[int, int]]:
    """(first column, how many) of each run of dark modules: one rectangle for each leaves no seams."""
    runs: list[tuple[int, int]] = []
    for column, dark in enumerate(row):
        if dark and runs and sum(runs[-1]) == column:
            runs[-1] = (runs[-1][0], runs[-1][1] + 1)
        elif dark:
            runs.append((column, 1))
    return runs
