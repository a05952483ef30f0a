"""Booklets: time, pages and size of every sample's, beside a bare canvas that draws the same primitives in the same run.

Prints, asserts nothing. ``python tests/bench/booklet_table.py [pattern.toml ...]``. Times are of one process, everything imported: what a
person waits for besides is in ``commands.py``. Wanted: at most 0.8 s and 60 ms a page, 400 kB without photographs, and 2.5 times the bare
canvas.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections.abc import Callable, Iterable
from io import BytesIO
from pathlib import Path

from reportlab.pdfgen.canvas import Canvas

import motifold.samples
from motifold.render.booklet import BookletContent, Look, booklet_content, make_booklet
from motifold.render.booklet.boxes import BoxMark, LineOfWords, Page, Picture, Rectangle, moved
from motifold.render.booklet.contents import planned
from motifold.render.booklet.paper import grid_for
from motifold.render.drawing.display import Drawing, FillPath, Group, Operation, StrokePath, Text
from motifold.render.drawing.measure import text_start
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.drawing.pdf import pdf_font
from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern

RUNS = 3


def median_time(job: Callable[[], object]) -> float:
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        job()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def drawn_out(pages: Iterable[Page]) -> list[list[tuple[BoxMark, Drawing | None]]]:
    """Every mark of every page, with its drawing as it is printed: making that anew is no part of the bare canvas's work."""
    return [
        [
            (mark, (mark.redrawn.draw(mark.scale) if mark.redrawn else mark.drawing) if isinstance(mark, Picture) else None)
            for mark in (*(moved(mark, placed.x, placed.y) for placed in page.placed for mark in placed.box.marks), *page.furniture)
        ]
        for page in pages
    ]


def bare(pages: Iterable[list[tuple[BoxMark, Drawing | None]]], content: BookletContent) -> bytes:
    """The same words, rules and drawings with reportlab's own calls, without tags, links or outline."""
    grid = grid_for(content.style.paper)
    buffer = BytesIO()
    canvas = Canvas(buffer, pagesize=(grid.width, grid.height), pageCompression=1, initialFontName=pdf_font("sans").fontName)
    for page in pages:
        for mark, drawing in page:
            match mark:
                case LineOfWords():
                    x = mark.x
                    for word in mark.words:
                        for text, kind in word.pieces:
                            canvas.setFont(pdf_font(kind.face).fontName, kind.size)
                            canvas.setFillColor(kind.color)
                            canvas.drawString(x, grid.height - mark.y, text)
                        x += word.width + word.space
                case Rectangle():
                    canvas.setFillColor(mark.color)
                    canvas.rect(mark.x, grid.height - mark.y - mark.height, mark.width, mark.height, stroke=0, fill=1)
                case Picture() if drawing is not None:
                    draw_bare(drawing, canvas, mark, grid.height)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def draw_bare(drawing: Drawing, canvas: Canvas, mark: Picture, page_height: float) -> None:
    canvas.saveState()
    scale = min(mark.scale, mark.width * MM_PER_PT / max(drawing.width_mm, 1e-6)) / MM_PER_PT
    canvas.translate(mark.x - drawing.box[0] * scale, page_height - mark.y - drawing.box[3] * scale)
    canvas.scale(scale, scale)
    play_bare(drawing.operations, canvas)
    canvas.restoreState()


def play_bare(operations: Iterable[Operation], canvas: Canvas) -> None:
    for operation in operations:
        match operation:
            case Group():
                by = operation.transform
                if by:
                    canvas.saveState()
                    canvas.transform(by.a, by.b, by.c, by.d, by.e, by.f)
                play_bare(operation.children, canvas)
                if by:
                    canvas.restoreState()
            case StrokePath() | FillPath():
                path = canvas.beginPath()
                for name, *values in operation.path.commands:
                    {"M": path.moveTo, "L": path.lineTo, "C": path.curveTo, "Z": path.close}[str(name)](*map(float, values))
                if isinstance(operation, StrokePath):
                    canvas.setStrokeColor(operation.color)
                    canvas.setLineWidth(operation.width_mm)
                    canvas.drawPath(path, stroke=1, fill=0)
                else:
                    canvas.setFillColor(operation.color)
                    canvas.drawPath(path, stroke=0, fill=1)
            case Text():
                canvas.saveState()
                canvas.translate(operation.x_mm, operation.y_mm)
                canvas.rotate(operation.angle_deg)
                canvas.setFont(pdf_font(operation.face).fontName, operation.size_pt * MM_PER_PT)
                canvas.setFillColor(operation.color)
                canvas.drawString(text_start(operation), 0, operation.words)
                canvas.restoreState()
            case _:
                pass


def main() -> None:
    named = [Path(name) for name in sys.argv[1:]]
    paths = named or sorted(Path(motifold.samples.__path__[0]).glob("*.toml"))
    print(f"{'pattern':28} {'pages':>5} {'read':>6} {'draw':>6} {'set':>6} {'all':>6} {'wanted':>6} {'kB':>5} {'bare':>6} {'ratio':>5}")
    for path in paths:
        data = path.read_bytes()
        reading = read_pattern(str(path), data)
        if reading.pattern is None:
            continue
        pattern = reading.pattern
        worked = work_pattern(pattern, None, None)
        content = booklet_content(worked, Look())
        made = make_booklet(content)  # fonts and libraries are in memory from here on
        read = median_time(lambda data=data, path=path: work_pattern(read_pattern(str(path), data).pattern, None, None))  # type: ignore[misc]
        drawn = median_time(lambda worked=worked: booklet_content(worked, Look()))  # type: ignore[misc]
        setting = median_time(lambda content=content: make_booklet(content))  # type: ignore[misc]
        pages = planned(content).pages
        marks = drawn_out(pages)
        floor = median_time(lambda marks=marks, content=content: bare(marks, content))  # type: ignore[misc]
        wanted = 0.8 + 0.06 * len(pages)
        whole = read + drawn + setting
        print(
            f"{path.stem:28} {len(pages):5} {read:6.2f} {drawn:6.2f} {setting:6.2f} {whole:6.2f} {wanted:6.2f} {len(made) / 1000:5.0f}"
            f" {floor:6.2f} {setting / floor:5.2f}"
        )


if __name__ == "__main__":
    main()
