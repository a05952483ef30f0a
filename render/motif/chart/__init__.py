"""Charts drawn from positions: the drawing, its numbers as JSON, and the key of the symbols."""

from motifold.render.motif.chart.draw import Prepared, draw_chart, draw_prepared, prepare
from motifold.render.motif.chart.key import draw_key
from motifold.render.motif.chart.keyjson import key_json
from motifold.render.motif.chart.keysheet import draw_key_sheet
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.numbers import ChartOf, chart_json
from motifold.render.motif.chart.sprites import key_sprites
from motifold.render.motif.chart.used import entries_used

__all__ = [
    "ChartLook",
    "ChartOf",
    "Prepared",
    "chart_json",
    "draw_chart",
    "draw_key",
    "draw_key_sheet",
    "draw_prepared",
    "entries_used",
    "key_json",
    "key_sprites",
    "prepare",
]
