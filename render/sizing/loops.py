"""How much yarn one stitch takes: a geometric model of its loops. Our own; no published formula for crochet was found.

Lengths are in w, the width of one stitch; d is the yarn's diameter in the same unit. A stitch is made of
  the loop left on top, lying over the width of the stitch and back, round one strand:   2 w + pi d
  each loop drawn up from below: two strands, as high as it is drawn:                     2 s
  each yarn over, wound once round the strands that it holds:                             pi d
A stitch with n yarn overs has n + 1 draws of h / (n + 1) after the loop that is drawn up through the base, so n + 2 such loops.
Where all come off at once (half double), there is one loop of the whole height, and the yarn over runs its height once.
Loop-length models of knitted loops (F.T. Peirce, Textile Research Journal 17, 1947) have the same form, a w + b h + c d; their
constants don't hold for crochet.

Heights over widths come from published gauge lines (stitches over rows on the same length, leaflets of yarn makers, 2020 to 2023): sc 0.80
to 0.93, hdc 1.30, dc 1.60. Taller ones add for each yarn over what the rule for flat circles gives: 15.5 against 12 stitches more in every
round for tr against dc (common practice), which is 3.5 / (2 pi).
The absolute scale is uncertain by about a quarter; weighing a swatch removes that, for only the proportions between stitches are left.
"""

from __future__ import annotations

from functools import lru_cache
from math import pi, sqrt

from motifold.symbols.stitches import Kind, kind

UNCALIBRATED_ERROR = 0.25
"""Expected error of a length that no weighed swatch backs: a quarter either way (our own judgement)."""

_HEIGHTS = {"sc": 0.88, "hdc": 1.30, "dc": 1.60}
_EACH_MORE = (15.5 - 12) / (2 * pi)
_EXTENDED = 0.35
"""What one more chain below the head adds to an extended stitch (our own)."""
DEFAULT_DIAMETER = 0.2
"""Yarn diameter in stitch widths where the label says nothing: a medium yarn of 1.2 mm worked 16 stitches to 10 cm."""
_PACKING = 0.5
"""Grams of yarn per cubic centimetre of its cylinder: wool fibre is 1.3, well under half of a relaxed yarn is fibre (our own)."""


@lru_cache(maxsize=512)
def height_in_widths(name: str) -> float:
    """Height of a stitch in stitch widths: 0.88 for sc, 1.6 for dc.

    0 for chains, slip stitches and names of a pattern's own.
    """
    try:
        found = kind(name)
    except KeyError:
        return 0.0
    if found.family in ("chain", "slip") or found.stem == "ch":
        return 0.0
    return _height(found) + (_EXTENDED if found.family == "extended" else 0.0)


def _height(found: Kind) -> float:
    if found.half:
        return _HEIGHTS["hdc"] + _EACH_MORE * (found.yarn_overs - 1)
    return _HEIGHTS["sc"] if found.yarn_overs == 0 else _HEIGHTS["dc"] + _EACH_MORE * (found.yarn_overs - 1)


def top_loop(diameter: float) -> float:
    """The loop that lies on top of any stitch; also most of a chain."""
    return 2 + pi * diameter


def stem_length(name: str, diameter: float) -> float:
    """Yarn of one leg of a stitch below its top loop, in stitch widths; the leg of a post stitch goes round the post too."""
    try:
        found = kind(name)
    except KeyError:
        found = kind("dc")
    if found.family == "chain":
        return 1.0  # the strand that runs behind a chain to the next
    if found.family == "slip":
        return 1.0 + 2 * diameter
    post = pi * diameter if found.post else 0.0
    if found.family == "extended":
        post += top_loop(diameter)
    if found.family == "foundation":
        post += top_loop(diameter) + 1.0
    height = _height(found)
    if found.half:
        return 2 * height + found.yarn_overs * (height + pi * diameter) + post
    return 2 * (found.yarn_overs + 2) * height / (found.yarn_overs + 1) + found.yarn_overs * pi * diameter + post


def stitch_length(name: str, diameter: float = DEFAULT_DIAMETER) -> float:
    """Yarn of one whole plain stitch, in stitch widths: about 3.6 for a chain, 6.1 for sc, 8.1 for dc."""
    return top_loop(diameter) + stem_length(name, diameter)


def yarn_diameter_cm(grams_per_metre: float) -> float:
    """Diameter in cm of a round yarn of this weight, from tex and packing: 4 m / (pi d2 density), solved for d."""
    return sqrt(4 * (grams_per_metre / 100) / (pi * _PACKING))
