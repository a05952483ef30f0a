"""Sheets for a class and for testers: step by step with room for notes, rounds with their counts left blank, a form to measure by."""

from motifold.render.handouts.forms import make_class_sheet, make_tester_sheet
from motifold.render.handouts.handout import make_handout

__all__ = ["make_class_sheet", "make_handout", "make_tester_sheet"]
