"""The designer's own pictures, looked at: whether they are there, and how finely they will print."""

from __future__ import annotations

import struct

from motifold.render.pattern.beside import NotBeside, read_beside
from motifold.render.pattern.model import Pattern, PictureSource
from motifold.render.pattern.problem import Problem

MOST_BYTES = 40_000_000       # a camera's largest JPEG is a third of this
MOST_PICTURES = 100
LEAST_DPI = 150               # dots an inch: fewer are seen as dots
CM_PER_INCH = 2.54
_LEAST_WIDTH_CM = 4.0         # smaller, nobody sees what a picture shows


def picture_bytes(pattern: Pattern, picture: PictureSource) -> bytes:
    """The picture's file. Raises ``NotBeside``."""
    return read_beside(pattern.path, picture.file, MOST_BYTES)


def picture_problems(pattern: Pattern) -> tuple[Problem, ...]:
    """For each picture: an error where it cannot be printed, a warning where it would print under 150 dots an inch."""
    found: list[Problem] = []
    for place, picture in enumerate(pattern.pictures):
        span = pattern.place("picture", picture.name, "file")
        if place >= MOST_PICTURES:
            found.append(Problem("picture", "error", span, f"there are more than {MOST_PICTURES} pictures", "print fewer"))
            break
        try:
            size = dots_of(picture_bytes(pattern, picture))
        except NotBeside as error:
            found.append(Problem("picture", "error", span, str(error), error.hint))
            continue
        if size is None:
            message = f"{picture.file[:60]} cannot be read as a PNG or JPEG picture"
            found.append(Problem("picture", "error", span, message, "open it in a picture program and save it anew as .png or .jpg"))
            continue
        found += _coarse(pattern, picture, size)
    return tuple(found)


def _coarse(pattern: Pattern, picture: PictureSource, size: tuple[int, int]) -> list[Problem]:
    asked = picture.width_cm
    width = asked if asked is not None else _LEAST_WIDTH_CM
    if size[0] >= LEAST_DPI * width / CM_PER_INCH:
        return []
    finest = size[0] / LEAST_DPI * CM_PER_INCH
    span = pattern.place("picture", picture.name, "width" if asked is not None else "file")
    message = f"{picture.file[:60]} is {size[0]} dots wide: at {width:g} cm it prints with {size[0] / width * CM_PER_INCH:.0f} dots an inch"
    hint = f"{LEAST_DPI} look well: use a larger picture, or print it {finest:.1f} cm wide"
    return [Problem("coarse-picture", "warning", span, message, hint)]


def dots_of(data: bytes) -> tuple[int, int] | None:
    """Width and height as they are seen, in dots, from a file's header; None where it is neither PNG nor JPEG.

    PNG: Portable Network Graphics, 11.2.2. JPEG: ITU-T T.81, B.2.2; a camera's picture may lie on its side (Exif 2.3, 4.6.4).
    """
    if data[:8] == b"\x89PNG\r\n\x1a\n" and data[12:16] == b"IHDR" and len(data) >= 24:
        width, height = struct.unpack(">II", data[16:24])
        return (width, height) if width and height else None
    return _jpeg_dots(data) if data[:2] == b"\xff\xd8" else None


def _jpeg_dots(data: bytes) -> tuple[int, int] | None:
    at, lies = 2, False
    while at + 9 < len(data) and data[at] == 0xFF:
        marker, length = data[at + 1], int.from_bytes(data[at + 2 : at + 4], "big")
        if 0xC0 <= marker <= 0xCF and marker not in (0xC4, 0xC8, 0xCC):
            height, width = struct.unpack(">HH", data[at + 5 : at + 9])
            if not width or not height:
                return None
            return (height, width) if lies else (width, height)
        if marker == 0xE1 and data[at + 4 : at + 10] == b"Exif\0\0":
            lies = _lies_on_its_side(data[at + 10 : at + 2 + length])
        at += 1 if marker == 0xFF else 2 + max(length, 2)
    return None


def _lies_on_its_side(tiff: bytes) -> bool:
    """Whether the orientation (tag 0x0112 of the first directory) turns the picture by a quarter."""
    order = {b"II": "<", b"MM": ">"}.get(tiff[:2])
    if order is None or len(tiff) < 10:
        return False
    [first] = struct.unpack(order + "I", tiff[4:8])
    if first + 2 > len(tiff):
        return False
    [entries] = struct.unpack(order + "H", tiff[first : first + 2])
    for place in range(min(entries, 200)):
        entry = tiff[first + 2 + 12 * place : first + 14 + 12 * place]
        if len(entry) < 12:
            return False
        tag, _, _, value = struct.unpack(order + "HHIH", entry[:10])
        if tag == 0x0112:
            return bool(5 <= value <= 8)
    return False
