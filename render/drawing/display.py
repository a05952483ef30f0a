"""The display list: everything that is drawn passes through these few frozen operations.

Millimetres, y up. Nothing here knows of crochet. A transform or a restyle gives a new list. The writers (svg, pdf, png) and the recorder
play a ``Drawing``; what a writer cannot do it refuses with ``UnsupportedOperation``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Point = tuple[float, float]
Face = Literal["sans", "sans-bold", "sans-italic", "serif", "serif-bold", "serif-italic"]


@dataclass(frozen=True, slots=True)
class Path:
    """Subpaths as commands: ("M", x, y), ("L", x, y), ("C", x1, y1, x2, y2, x, y), ("Z",)."""

    commands: tuple[tuple[str | float, ...], ...]


@dataclass(frozen=True, slots=True)
class StrokePath:
    """A stroked path. ``color`` is #rrggbb; ``width_mm`` and ``dash_mm`` as they are printed."""

    path: Path
    color: str
    width_mm: float
    dash_mm: tuple[float, ...] = ()
    cap: Literal["butt", "round"] = "round"
    join: Literal["miter", "round"] = "round"


@dataclass(frozen=True, slots=True)
class FillPath:
    path: Path
    color: str
    rule: Literal["nonzero", "evenodd"] = "nonzero"


@dataclass(frozen=True, slots=True)
class Text:
    """Words measured with the packaged font. ``x_mm, y_mm`` is the baseline point that ``anchor`` names; ``angle_deg`` turns about it."""

    x_mm: float
    y_mm: float
    words: str
    face: Face = "sans"
    size_pt: float = 9.0
    color: str = "#000000"
    anchor: Literal["start", "middle", "end"] = "start"
    angle_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class Image:
    """A picture made of dots, its lower left corner at (x, y). ``data`` is a whole file of ``kind``, in RGB or grey."""

    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    data: bytes
    kind: Literal["png", "jpeg"]


@dataclass(frozen=True, slots=True)
class Transform:
    """x' = a x + c y + e, y' = b x + d y + f (as in SVG and PDF)."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0


@dataclass(frozen=True, slots=True)
class Group:
    """Operations together: ``css_class`` and ``data`` (("round", "3"), ...) become attributes in SVG; ``title`` its tooltip and label."""

    children: tuple[Operation, ...]
    transform: Transform | None = None
    clip: Path | None = None
    css_class: str | None = None
    data: tuple[tuple[str, str], ...] = ()
    title: str | None = None


Operation = StrokePath | FillPath | Text | Image | Group


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished drawing: its box (x0, y0, x1, y1) in mm, and its meaning in words (``title``, ``description``)."""

    box: tuple[float, float, float, float]
    operations: tuple[Operation, ...]
    title: str
    description: str

    @property
    def width_mm(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def height_mm(self) -> float:
        return self.box[3] - self.box[1]


class UnsupportedOperation(ValueError):
    """A writer was given an operation that it cannot draw: it says so instead of passing over it."""
