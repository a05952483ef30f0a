"""How schematics look: one table of weights, inks and letter sizes.

Line widths are of the ISO 128-2 row, thick to thin 2 : 1 at each step. Inks are of Okabe and Ito's palette ("Color Universal
Design", 2008); that of folds is its vermillion, darkened until white figures reach a contrast of 4.5 : 1 (WCAG 2, 1.4.3). Nothing is
told by colour alone: passes are numbered, folds are dashed and lettered.
"""

from __future__ import annotations

THIN_MM = 0.25  # dimensions, what is not sewn yet, hints
THICK_MM = 0.5  # open edges, passes
BOLD_MM = 1.0  # what is sewn now

INK = "#1a1a1a"
QUIET = "#595959"  # second words: 7 : 1 on white
HAIR = "#8c8c8c"  # panel edges that a seam lies on
DONE = "#9a9a9a"  # sewn before
PANEL = "#f3f1ec"
PALE = "#faf9f6"
PANEL_BACK = "#e2ded5"
EDGING = "#e9e3d4"
PAPER = "#ffffff"
FLAT = "#0072b2"
FOLD = "#b04a00"

LETTER_PT = 9.0  # the smallest, as printed at A5
NAME_PT = 10.0
MM_PER_PT = 25.4 / 72
CAP_EM = 0.66  # height of capitals

DOT_MM = 0.95  # radius of a start
BAR_MM = 2.4  # length of an end
ARROW_MM = 2.2
TAG_MM = 2.35  # radius of a number or letter
DASH_MM = (1.9, 1.1)
FOLD_DASH_MM = (2.4, 0.9, 0.5, 0.9)  # a fold in what is finished
FOLD_OFF_MM = 2.6  # how far a fold's line lies outside its side
A5_TEXT_WIDTH_MM = 124.0
A5_TEXT_HEIGHT_MM = 170.0
