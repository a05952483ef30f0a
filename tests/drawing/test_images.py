"""Pictures made of dots, made fit to print."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from motifold.render.drawing.images import UnreadableImage, printable


def file(picture: Image.Image, kind: str, **more: object) -> bytes:
    out = BytesIO()
    picture.save(out, kind, **more)
    return out.getvalue()


def test_a_camera_s_picture_is_turned_upright_and_loses_what_the_camera_says_of_the_place() -> None:
    picture = Image.new("RGB", (60, 40), "red")
    exif = Image.Exif()
    exif[0x0112] = 6  # lies on its side (Exif 2.3, 4.6.4)
    exif[0x8298] = "somebody"
    exif.get_ifd(0x8825)[1] = "N"
    data, kind, width, height = printable(file(picture, "JPEG", exif=exif))
    assert (kind, width, height) == ("jpeg", 40, 60)
    assert b"somebody" not in data
    assert not Image.open(BytesIO(data)).getexif()


def test_a_picture_far_finer_than_print_is_made_smaller() -> None:
    data, _, width, height = printable(file(Image.new("L", (4800, 1200), 128), "PNG"))
    assert (width, height) == (2400, 600)
    assert Image.open(BytesIO(data)).mode == "L"


def test_what_is_transparent_becomes_white() -> None:
    data, _, _, _ = printable(file(Image.new("RGBA", (4, 4), (10, 20, 30, 0)), "PNG"))
    assert Image.open(BytesIO(data)).convert("RGB").getpixel((1, 1)) == (255, 255, 255)


@pytest.mark.parametrize("data", [b"", b"GIF89a" + b"x" * 50, b"\x89PNG\r\n\x1a\n" + b"\0" * 40, b"<svg/>"])
def test_what_is_no_picture_is_said_to_be_none(data: bytes) -> None:
    with pytest.raises(UnreadableImage, match="cannot be read"):
        printable(data)


def test_a_file_cut_short_is_no_picture() -> None:
    whole = file(Image.effect_noise((200, 200), 60), "JPEG")
    with pytest.raises(UnreadableImage):
        printable(whole[: len(whole) // 2])


def test_a_picture_that_would_unpack_to_more_than_memory_holds_is_refused_before_it_is_unpacked() -> None:
    import struct
    import zlib

    header = struct.pack(">IIBBBBB", 60_000, 60_000, 8, 2, 0, 0, 0)
    chunk = struct.pack(">I", 13) + b"IHDR" + header + struct.pack(">I", zlib.crc32(b"IHDR" + header))
    body = struct.pack(">I", 4) + b"IDAT" + b"1234" + struct.pack(">I", zlib.crc32(b"IDAT1234"))
    with pytest.raises(UnreadableImage):
        printable(b"\x89PNG\r\n\x1a\n" + chunk + body)
