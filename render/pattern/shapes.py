"""The shapes that a motif may have, and how many corners each has."""

from __future__ import annotations

import re

from motifold.render.pattern.spelling import nearest

_CORNERS = {
    "circle": 0, "round": 0, "doily": 0, "flower": 0, "wheel": 0, "mandala": 0, "spiral": 0, "oval": 0, "tube": 0,
    "triangle": 3, "square": 4, "diamond": 4, "rectangle": 4, "strip": 4, "swatch": 4, "band": 4,
    "pentagon": 5, "hexagon": 6, "heptagon": 7, "octagon": 8, "nonagon": 9, "decagon": 10, "dodecagon": 12,
}  # fmt: skip
SHAPE_NAMES = tuple(_CORNERS)
MOST_CORNERS = 24
INSTEAD = {
    "star": 'say what its rounds make without the points: "circle", or "pentagon" where the points are its corners',
    "ball": 'a ball is worked in rounds like a circle: shape = "circle"',
    "sphere": 'a sphere is worked in rounds like a circle: shape = "circle"',
}
"""Shapes that people name and that are worked as another one."""
_POLYGON = re.compile(r"polygon(?::| of)?\s*(\d{1,2})(?: sides| corners)?|(\d{1,2})[- ](?:gon|sided polygon|sided)")


def nearest_shape(written: str) -> str | None:
    """The shape that a misspelt one is meant for, with the half that it may be of: "half square" for "half-sqare"."""
    words = written.lower().replace("-", " ").split()
    if words and words[-1] in INSTEAD:
        return "circle"
    if len(words) > 1 and (words[0] == "half" or nearest(words[0], ("half",))):
        whole = words[-1] if words[-1] in _CORNERS else nearest(words[-1], SHAPE_NAMES)
        return f"half {whole}" if whole else None
    return nearest(words[-1], SHAPE_NAMES) if words else None


def corners(shape: str) -> int | None:
    """How many corners a shape has (0: a circle); None for what is no shape that we know.

    Words before the shape describe it and change nothing ("solid square"), except "half". A half is cut from corner to corner, or
    from a corner to the middle of the side across from it where the whole has an odd number.

    >>> corners("hexagon"), corners("half hexagon"), corners("polygon: 7"), corners("half square"), corners("blob")
    (6, 4, 7, 3, None)
    """
    words = " ".join(shape.lower().split())
    numbered = _POLYGON.fullmatch(words.removeprefix("half "))
    if numbered:
        whole: int | None = int(numbered[1] or numbered[2])
        if whole is not None and not 3 <= whole <= MOST_CORNERS:
            return None
    elif words in ("semicircle", "half circle"):
        return 2
    else:
        whole = _CORNERS.get(words.split(" ")[-1]) if re.fullmatch(r"[a-z -]+", words) else None
    if whole is None or "half" not in words.split(" ")[:-1]:
        return whole
    return 2 if whole == 0 else (whole + 1) // 2 + 1
