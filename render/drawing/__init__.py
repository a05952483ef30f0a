"""The display list, in millimetres, and its writers: SVG, PDF, PNG and exact text."""

from motifold.render.drawing.display import Drawing, UnsupportedOperation
from motifold.render.drawing.pdf import draw_on_canvas, to_pdf
from motifold.render.drawing.png import to_png
from motifold.render.drawing.recorder import record
from motifold.render.drawing.svg import to_svg

__all__ = ["Drawing", "UnsupportedOperation", "draw_on_canvas", "record", "to_pdf", "to_png", "to_svg"]
