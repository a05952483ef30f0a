"""Drawings as the frames of a film or the slides of a talk: all of a series at one scale, each in the middle of a picture of fixed size.

What differs between two frames is then only what the drawings differ in: a viewer who flips through them sees nothing jump.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from motifold.render.drawing.display import Drawing
from motifold.render.drawing.png import to_png

SAFE: Final = 0.05
"""What stays free along each edge, of the width and of the height: the graphics safe area of EBU R 95 (from memory)."""
LEAST_DOTS, MOST_DOTS = 64, 8192


@dataclass(frozen=True, slots=True)
class Frame:
    """A picture of ``width`` by ``height`` dots, on ``background`` (None: transparent)."""

    width: int
    height: int
    background: str | None = "#ffffff"


def read_frame(words: str) -> tuple[int, int]:
    """"1920x1080" -> (1920, 1080). Raises ValueError, in words for whoever typed it."""
    match = re.fullmatch(r"\s*(\d{1,5})\s*[xX×]\s*(\d{1,5})\s*", words)
    if match is None:
        raise ValueError(f"a frame is written as width x height in dots, such as 1920x1080, not '{words}'")
    width, height = int(match[1]), int(match[2])
    if not all(LEAST_DOTS <= side <= MOST_DOTS for side in (width, height)):
        raise ValueError(f"a frame has {LEAST_DOTS} to {MOST_DOTS} dots each way, not '{words}'")
    return width, height


def framed(drawings: Sequence[Drawing], frame: Frame) -> tuple[Drawing, ...]:
    """Each drawing with the box that the frame shows: the largest fills the safe area, the others are at its scale; boxes in mm."""
    wide = max(drawing.width_mm for drawing in drawings)
    high = max(drawing.height_mm for drawing in drawings)
    mm_per_dot = max(wide / (frame.width * (1 - 2 * SAFE)), high / (frame.height * (1 - 2 * SAFE)))
    half = frame.width * mm_per_dot / 2, frame.height * mm_per_dot / 2
    return tuple(replace(drawing, box=_around(drawing.box, *half)) for drawing in drawings)


def _around(box: tuple[float, float, float, float], half_wide: float, half_high: float) -> tuple[float, float, float, float]:
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    return x - half_wide, y - half_high, x + half_wide, y + half_high


def frame_png(drawing: Drawing, frame: Frame) -> bytes:
    """A drawing that ``framed`` gave, as a PNG of exactly the frame's dots."""
    return to_png(drawing, frame.width / drawing.width_mm * 25.4, background=frame.background)
