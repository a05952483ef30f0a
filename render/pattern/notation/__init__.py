"""Reads written crochet instructions, in US or UK terms, into a tree of instructions.

``parse_instructions(text, context)`` reads the text of a motif or an edging; ``parse_definition(key, text, context)`` the
``means`` of a special stitch. Both return what could be read together with every problem; neither raises.
"""

from motifold.render.pattern.notation.context import NotationContext
from motifold.render.pattern.notation.definitions import parse_definition
from motifold.render.pattern.notation.parser import parse_instructions

__all__ = ["NotationContext", "parse_definition", "parse_instructions"]
