"""Pictures made of dots, made fit to print: turned upright, without what a camera adds, no finer than print shows, in grey where asked."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING, Any

from motifold.render.drawing.display import Image

if TYPE_CHECKING:
    from PIL.Image import Image as Dots

MOST_DOTS = 50_000_000        # a camera's largest; more is refused before it is unpacked
_LONGEST = 2400               # dots: 300 an inch over the width of a page, rounded up
_QUALITY = 88                 # of JPEG: no trace to be seen on paper


class UnreadableImage(ValueError):
    """The bytes are no picture that can be printed; its words say why."""


def printable(data: bytes) -> tuple[bytes, str, int, int]:
    """A PNG or JPEG file as (bytes, kind, width, height): upright, at most 2400 dots long, with nothing of its own but its dots.

    What a camera writes beside them (the place, the owner) is left out. Raises ``UnreadableImage``.
    """
    from PIL import Image as Pillow
    from PIL import ImageOps

    try:
        with Pillow.open(BytesIO(data), formats=("PNG", "JPEG")) as opened:
            kind = "jpeg" if opened.format == "JPEG" else "png"
            if opened.width * opened.height > MOST_DOTS:
                raise UnreadableImage(f"it has {opened.width} by {opened.height} dots, which is more than any printer needs")
            dots: Dots = ImageOps.exif_transpose(opened)
            dots = _plain(dots)
    except UnreadableImage:
        raise
    except (OSError, ValueError, SyntaxError, Pillow.DecompressionBombError, Pillow.DecompressionBombWarning) as error:
        raise UnreadableImage("it cannot be read as a PNG or JPEG picture") from error
    if max(dots.size) > _LONGEST:
        dots.thumbnail((_LONGEST, _LONGEST), Pillow.Resampling.LANCZOS)
    return _written(dots, kind), kind, dots.width, dots.height


def _plain(dots: Any) -> Dots:
    """RGB or grey, on white where it was transparent."""
    from PIL import Image as Pillow

    if dots.mode in ("RGBA", "LA", "PA") or "transparency" in dots.info:
        seen = dots.convert("RGBA")
        ground = Pillow.new("RGB", seen.size, "white")
        ground.paste(seen, mask=seen.getchannel("A"))
        return ground
    plain: Dots = dots.convert("L" if dots.mode in ("1", "L", "I", "I;16") else "RGB")
    plain.info = {}
    return plain


def _written(dots: Dots, kind: str) -> bytes:
    out = BytesIO()
    if kind == "jpeg":
        dots.save(out, "JPEG", quality=_QUALITY, optimize=True)
    else:
        dots.save(out, "PNG", optimize=True)
    return out.getvalue()


def grey_image(image: Image) -> Image:
    """The same without colour."""
    from PIL import Image as Pillow

    with Pillow.open(BytesIO(image.data)) as opened:
        grey = opened.convert("L")
    return replace(image, data=_written(grey, image.kind))
