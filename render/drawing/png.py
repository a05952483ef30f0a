"""Drawings as PNG, through the SVG writer and cairosvg."""

from __future__ import annotations

import struct
import zlib
from dataclasses import replace

from motifold.render.drawing.display import Drawing, UnsupportedOperation
from motifold.render.drawing.svg import to_svg
from motifold.render.drawing.writer import dissolve

MAX_PIXELS = 100_000_000
NO_CAIRO = (
    "PNG pictures need the library cairo, which this machine does not have: apt-get install libcairo2 (Debian, Ubuntu), dnf install cairo "
    "(Fedora), brew install cairo (macOS), or the GTK runtime (Windows) brings it; SVG and PDF work without"
)


def to_png(drawing: Drawing, dpi: float = 300.0, *, background: str | None = "#ffffff") -> bytes:
    """The drawing at ``dpi`` dots per inch, on ``background`` (None: transparent), with its resolution noted in the file.

    Raises ``UnsupportedOperation`` where the picture would have more than 100 million dots, or where the machine has no cairo.
    """
    width, height = (max(1, round(length / 25.4 * dpi)) for length in (drawing.width_mm, drawing.height_mm))
    if width * height > MAX_PIXELS:
        raise UnsupportedOperation(f"{width} by {height} dots is too large a picture: choose fewer dots per inch")
    try:
        import cairosvg
    except OSError as missing:  # the Python package is there and the library that it calls is not
        raise UnsupportedOperation(NO_CAIRO) from missing

    plain = replace(drawing, operations=tuple(dissolve(drawing.operations)))  # a tenth of the elements for cairosvg to walk over
    picture = cairosvg.svg2png(bytestring=to_svg(plain).encode(), output_width=width, output_height=height, background_color=background)
    return _with_resolution(bytes(picture), dpi)


def _with_resolution(png: bytes, dpi: float) -> bytes:
    """Adds a pHYs chunk (PNG specification, 11.3.5.3) after the header: dots per metre, so that it prints at its true size."""
    per_metre = round(dpi / 0.0254)
    body = b"pHYs" + struct.pack(">IIB", per_metre, per_metre, 1)
    chunk = struct.pack(">I", len(body) - 4) + body + struct.pack(">I", zlib.crc32(body))
    after_header = 8 + 25  # signature, then IHDR: 4 length, 4 name, 13 data, 4 checksum
    return png[:after_header] + chunk + png[after_header:]
