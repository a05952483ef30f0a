"""What a file says of itself as a publication: its edition, whose it is, and the designer's own pictures."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date

from motifold.render.pattern.model import Edition, PictureSource
from motifold.render.pattern.values import Reader, Table, centimetres, text, texts

_WEB = re.compile(r"https?://[^\s/?#]+\.[^\s]+|https?://localhost\S*")
_LONGEST_WEB = 500
_DAY = re.compile(r"\d{4}-\d\d-\d\d")
_SECTIONS = ("cover", "assembly", "finishing")
_PICTURE_ENDINGS = (".png", ".jpg", ".jpeg")


def build_edition(reader: Reader, head: Table) -> Edition:
    """The edition, each unreadable part told at its place and left out."""
    changes = head.get("changes", {})
    return Edition(
        version=text(head, "version") or None,
        date=_date(reader, head),
        copyright=text(head, "copyright") or None,
        licence=text(head, "licence") or None,
        web=_web(reader, head),
        changes=tuple((version, texts(changes, version)) for version in changes),
    )


def _date(reader: Reader, head: Table) -> str | None:
    value = head.get("date")
    if isinstance(value, date):
        return value.isoformat()
    if value is None:
        return None
    written = str(value).strip()
    try:
        if _DAY.fullmatch(written):
            return date.fromisoformat(written).isoformat()
        message = f'"{written[:40]}" is no date'
    except ValueError:
        message = f"there is no day {written}"
    reader.add("value", reader.locator.value(("pattern", "date")), message, 'year, month, day: date = "2026-03-01"')
    return None


def _web(reader: Reader, head: Table) -> str | None:
    written = text(head, "web")
    if not written:
        return None
    if _WEB.fullmatch(written) and len(written) <= _LONGEST_WEB:
        return written
    fitted = f"https://{written}"
    hint = f'did you mean "{fitted}"?' if _WEB.fullmatch(fitted) and len(fitted) <= 80 else 'for example web = "https://example.org/basket"'
    reader.add("value", reader.locator.value(("pattern", "web")), "this is no address on the web", hint)
    return None


def build_pictures(reader: Reader, tables: Table, pieces: Sequence[str]) -> tuple[PictureSource, ...]:
    """``pieces``: the names of motifs and edgings, beside which a picture may stand."""
    found = (_picture(reader, name, table, pieces) for name, table in tables.items())
    return tuple(picture for picture in found if picture is not None)


def _picture(reader: Reader, name: str, table: Table, pieces: Sequence[str]) -> PictureSource | None:
    path = ("picture", name)
    file = text(table, "file")
    if not file:
        return None
    if not file.lower().endswith(_PICTURE_ENDINGS):
        reader.add("value", reader.locator.value((*path, "file")), f'"{file[:60]}" is neither PNG nor JPEG', "save it as .png or .jpg")
        return None
    at = text(table, "at") or "finishing"
    if at not in pieces and at not in _SECTIONS:
        known = (*_SECTIONS, *pieces)
        near = reader.nearest(at, known)
        hint = f"did you mean {near}?" if near else f"one of {', '.join(known[:12])}"
        reader.add("reference", reader.locator.value((*path, "at")), f'there is no place "{at[:40]}" for a picture', hint)
        at = "finishing"
    caption = text(table, "caption") or ""
    width = centimetres(reader, table, (*path, "width"))
    return PictureSource(name, file, caption, text(table, "alt") or caption, at, width)
