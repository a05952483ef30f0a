"""One drawing that holds every operation in every style, for the tests that all writers must pass."""

from __future__ import annotations

from io import BytesIO

import PIL.Image
import pytest

from motifold.render.drawing.display import Drawing, FillPath, Group, Image, Path, StrokePath, Text, Transform


def box_path(x: float, y: float, width: float, height: float) -> Path:
    return Path((("M", x, y), ("L", x + width, y), ("L", x + width, y + height), ("L", x, y + height), ("Z",)))


def symbol(x: float, y: float, number: int) -> Group:
    """A stem with a bar and a head, as a chart has thousands of."""
    lines = [((x, y), (x, y + 6)), ((x - 1.2, y + 6), (x + 1.2, y + 6)), ((x - 0.9, y + 3), (x + 0.9, y + 3.8))]
    strokes = tuple(StrokePath(Path((("M", *start), ("L", *end))), "#1d3557", 0.35) for start, end in lines)
    return Group(strokes, css_class="stitch", data=(("round", "1"), ("index", str(number))), title=f"stitch {number}")


def dots(kind: str) -> bytes:
    """A picture of eight by four dots: its left half red, its right half a grey that darkens downwards."""
    picture = PIL.Image.new("RGB", (8, 4), "#b3402e")
    for x in range(4, 8):
        for y in range(4):
            picture.putpixel((x, y), (160 - 45 * y,) * 3)
    out = BytesIO()
    picture.resize((80, 40), PIL.Image.Resampling.NEAREST).save(out, kind)
    return out.getvalue()


@pytest.fixture
def everything() -> Drawing:
    ring = Path((("M", 10, 30), ("C", 10, 35.5, 18, 35.5, 18, 30), ("C", 18, 24.5, 10, 24.5, 10, 30), ("Z",)))
    star = Path((("M", 30, 38), ("L", 34, 26), ("L", 24, 34), ("L", 36, 34), ("L", 26, 26), ("Z",)))
    return Drawing(
        (-5, -5, 75, 45),
        (
            FillPath(ring, "#e9c46a"),
            StrokePath(ring, "#b3402e", 0.5, dash_mm=(1.5, 0.8), cap="butt"),
            FillPath(star, "#2a9d8f", rule="evenodd"),
            StrokePath(star, "#000000", 0.3, join="miter"),
            Group((FillPath(box_path(40, 24, 14, 14), "#8c9aa5"), Text(47, 30, "clipped words", "sans-bold", 14, anchor="middle")),
                  clip=box_path(42, 26, 10, 10), title="A window"),
            Group((Text(0, 0, "turned", "serif", 12, "#b3402e"), symbol(10, -2, 1)), transform=Transform(0.8, 0.5, -0.5, 0.8, 55, 12)),
            *(symbol(2 + 6 * i, 2, i) for i in range(8)),
            Image(58, 30, 12, 6, dots("PNG"), "png"),
            Group((Image(0, 0, 8, 4, dots("JPEG"), "jpeg"),), transform=Transform(0.8, 0.6, -0.6, 0.8, 60, 38)),
            Text(0, 14, "AVATAR To ½ 24 × 36 “fiber”", "serif-italic", 13),
            Text(70, -2, "right", "sans-italic", 9, anchor="end"),
            Text(68, 20, "upright", "serif-bold", 10, anchor="middle", angle_deg=90),
        ),
        "Everything",
        "One of each operation.",
    )
