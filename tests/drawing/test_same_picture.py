"""The SVG and the PDF are one drawing: both printed at 300 dpi, dot for dot."""

from __future__ import annotations

import shutil
import subprocess
from dataclasses import replace
from io import BytesIO
from pathlib import Path as FilePath

import numpy as np
import numpy.typing as npt
import pytest

from motifold.render.drawing import to_pdf, to_png
from motifold.render.drawing.display import Drawing, Group, Transform

Picture = npt.NDArray[np.float64]
needs_poppler = pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="pdftoppm (poppler-utils) draws the PDF")


def svg_picture(drawing: Drawing) -> Picture:
    from PIL import Image

    return np.asarray(Image.open(BytesIO(to_png(drawing, 300))).convert("L"), dtype=float) / 255


def pdf_picture(drawing: Drawing, folder: FilePath) -> Picture:
    from PIL import Image

    path = folder / "drawing.pdf"
    path.write_bytes(to_pdf(drawing))
    subprocess.run(["pdftoppm", "-r", "300", "-png", "-singlefile", str(path), str(folder / "drawing")], check=True)
    return np.asarray(Image.open(folder / "drawing.png").convert("L"), dtype=float) / 255


def differences(first: Picture, second: Picture) -> tuple[float, float]:
    """Mean difference, and the largest mean over any block of 5 by 5 dots; 0 to 1."""
    rows, columns = (min(a, b) for a, b in zip(first.shape, second.shape, strict=True))
    assert max(abs(a - b) for a, b in zip(first.shape, second.shape, strict=True)) <= 1
    apart = np.abs(first[:rows, :columns] - second[:rows, :columns])
    sums = np.pad(apart.cumsum(0).cumsum(1), ((1, 0), (1, 0)))
    blocks = (sums[5:, 5:] - sums[:-5, 5:] - sums[5:, :-5] + sums[:-5, :-5]) / 25
    return float(apart.mean()), float(blocks.max())


@needs_poppler
def test_svg_and_pdf_print_the_same_picture(everything: Drawing, tmp_path: FilePath) -> None:
    mean, worst = differences(svg_picture(everything), pdf_picture(everything, tmp_path))
    assert mean < 0.01
    assert worst < 0.5


@needs_poppler
def test_the_comparison_sees_one_symbol_moved_by_three_tenths_of_a_millimetre(everything: Drawing, tmp_path: FilePath) -> None:
    place = next(i for i, operation in enumerate(everything.operations) if isinstance(operation, Group) and operation.css_class == "stitch")
    moved = Group((everything.operations[place],), transform=Transform(e=0.3))
    other = replace(everything, operations=(*everything.operations[:place], moved, *everything.operations[place + 1 :]))
    _, worst = differences(svg_picture(everything), pdf_picture(other, tmp_path))
    assert worst >= 0.5
