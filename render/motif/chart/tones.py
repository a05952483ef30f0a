"""Which ink a round is drawn with: its yarn's colour, dark enough to read, and a second cue that needs no colour."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from motifold.render.drawing.inks import INK, PAPER
from motifold.render.drawing.measure import contrast
from motifold.render.fabric.model import Round
from motifold.render.motif.chart.look import ChartLook
from motifold.symbols.record import dataclass

LEAST_CONTRAST = 3.6
"""WCAG 2.1, 1.4.11 asks 3:1 for graphics; more here, as thin lines print lighter."""
TEXT_CONTRAST = 4.5
"""WCAG 2.1, 1.4.3, for numbers and letters."""
PALE = 2.0
"""A yarn that stands out less than this against paper is drawn in its own colour between dark edges: darkened, nobody would know it."""
_EDGE_CONTRAST, _PALE_WEIGHT = 10.0, 1.15
"""Its edges, and its lines a little wider than others: seen from afar, edges and core together stand out 3:1."""
OUTLINED_U_MM = 2.4
"""Where u is smaller, lines are too thin for edges, and a pale yarn is only darkened."""
GREY = "#b9c0c7"
"""Rounds that only lead up to the one that is meant."""


@dataclass(frozen=True, slots=True)
class Tone:
    """``weight`` multiplies every stroke width of the round.

    ``core``: a pale yarn's own colour, for the inside of lines that have ``color`` for their edges.
    """

    color: str
    weight: float = 1.0
    core: str | None = None


def tone_of(round_index: int, rounds: Sequence[Round], look: ChartLook, yarn: str) -> Tone:
    """The tone of a round's stitches in one yarn.

    Every second round is lighter or darker than the one below, whatever its yarn: without colour black and full beside grey and fine.
    """
    number = number_of(round_index, rounds)
    if look.emphasise is not None and number != look.emphasise:
        return Tone(GREY, 0.85)
    even = number % 2 == 0 and number > 0
    if look.mono:
        return Tone("#4a4a4a", 0.80) if even else Tone("#000000", 1.0)
    color = look.yarn_colors.get(yarn, INK)
    if _stands_out(color) < PALE and look.pitch_mm >= OUTLINED_U_MM:
        return Tone(readable(color, shade=even, least=_EDGE_CONTRAST), _PALE_WEIGHT, color)
    return Tone(readable(color, shade=even))


@lru_cache(maxsize=512)
def _stands_out(color: str) -> float:
    return contrast(color, PAPER)


def number_of(round_index: int, rounds: Sequence[Round]) -> int:
    """The number that a round goes by: its own, 0 for what is made before round 1, that of the round before for a finish."""
    for i in range(round_index, -1, -1):
        number = rounds[i].number
        if number is not None:
            return number
    return 0


@lru_cache(maxsize=512)
def readable(color: str, shade: bool = False, least: float = LEAST_CONTRAST) -> str:
    """``color`` darkened, hue kept, until its contrast with white is ``least``; ``shade`` gives the second tone of the same yarn.

    The second tone is darker where there is room below, else lighter. Done in Oklab (B. Ottosson, 2020), where steps look even.
    """
    light, a, b = _to_oklab(color)
    while contrast(_to_hex(light, a, b), PAPER) < least and light > 0:
        light -= 0.01
    if shade:
        light, keep = (light - 0.13, 0.95) if light > 0.42 else (light + 0.15, 1.0)
        a, b = a * keep, b * keep
    return _to_hex(light, a, b)


def _to_oklab(color: str) -> tuple[float, float, float]:
    channels = [int(color[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in channels)
    long = (0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue) ** (1 / 3)
    middle = (0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue) ** (1 / 3)
    short = (0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue) ** (1 / 3)
    return (
        0.2104542553 * long + 0.7936177850 * middle - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * middle + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * middle - 0.8086757660 * short,
    )


def _to_hex(light: float, a: float, b: float) -> str:
    long = (light + 0.3963377774 * a + 0.2158037573 * b) ** 3
    middle = (light - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (light - 0.0894841775 * a - 1.2914855480 * b) ** 3
    linear = (
        4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * middle + 1.7076147010 * short,
    )
    out = "#"
    for value in linear:
        clipped = min(max(value, 0.0), 1.0)
        level = 12.92 * clipped if clipped <= 0.0031308 else 1.055 * clipped ** (1 / 2.4) - 0.055
        out += f"{round(level * 255):02x}"
    return out
