"""What the measure of a pattern's sizes is: a girth, a width, a length ..."""

from __future__ import annotations

import re

from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.sizing.reading import varies
from motifold.render.sizing.ruler import motifs_across

_AROUND = re.compile(
    r"girth|circumference|round|head|neck|chest|bust|waist|hips?\b|wrist|hand\b|palm|arm\b|thigh|calf|ankle|foot\b|feet|opening|rim|brim"
)
_LIES_FLAT = ("width", "wide", "across", "side", "diameter", "length", "long", "height", "high", "tall", "depth", "span")


def measured_as(pattern: Pattern, motif: MotifSource, measure: str, opens: bool) -> str:
    """"girth", "length", "depth", "height" or "width" where the measure's words or its making say so, else "measure".

    ``opens``: what is made has an opening.
    """
    words = measure.lower()
    if _AROUND.search(words) and not any(word in words for word in _LIES_FLAT):
        return "girth"
    for noun, said in (("length", ("length", "long")), ("depth", ("depth", "deep")), ("height", ("height", "high", "tall"))):
        if any(word in words for word in said):
            return noun
    across = motifs_across(pattern, motif)
    if any(word in words for word in _LIES_FLAT) or (motif.worked == "rounds" and not varies(motif) and across == 1):
        return "width"
    return "girth" if opens and across > 1 else "measure"
