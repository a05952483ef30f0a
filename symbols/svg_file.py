"""A pattern's own symbol as a small SVG file: its paths as one piece of path data. Only plain lines are read, and nothing is looked up.

Document type declarations are refused (they name other files, and a short one can stand for gigabytes); so is all that points elsewhere.
"""

from __future__ import annotations

from xml.etree import ElementTree

MAX_BYTES = 60_000
"""A symbol of a few strokes, with what a drawing program writes around it."""
_SPOKEN = frozenset({"title", "desc", "metadata", "defs", "namedview", "style"})
"""What draws nothing and may stand in the file. A style sheet only colours: a symbol has the chart's colour and line."""


def svg_path_data(data: bytes) -> str:
    """The path data of all paths and lines in the file, in its order. ValueError says in plain words why there is none."""
    try:
        text = data.decode("utf-8-sig")  # and parsed as text, so that no other encoding can hide a declaration
    except UnicodeDecodeError:
        raise ValueError("the SVG file is not saved as UTF-8") from None
    if "<!DOCTYPE" in text or "<!ENTITY" in text:
        raise ValueError("the SVG file has a document type declaration; save it as plain SVG")
    try:
        root = ElementTree.fromstring(text)
    except (ElementTree.ParseError, ValueError):
        raise ValueError("the SVG file cannot be read: it is no XML") from None
    if _name(root) != "svg":
        raise ValueError("the file is no SVG: it does not begin with <svg>")
    pieces = _pieces(root)
    if not pieces:
        raise ValueError("the SVG file has no path")
    return " ".join(f"M0 0 {piece}" if piece.lstrip().startswith("m") else piece for piece in pieces)


def _pieces(root: ElementTree.Element) -> list[str]:
    pieces: list[str] = []
    waiting = [root]
    while waiting:
        element = waiting.pop()
        name = _name(element)
        if "transform" in element.attrib:
            raise ValueError(f"the SVG file moves its <{name}> by a transform; draw it where it stands, or apply the transform")
        if any(key.endswith("href") for key in element.attrib):
            raise ValueError(f"the SVG file points elsewhere from its <{name}>; a symbol is drawn whole in its own file")
        if name in ("svg", "g"):
            waiting += [child for child in reversed(element) if not _is_silent(child)]
        else:
            pieces.append(_piece(element, name))
    return [piece for piece in pieces if piece.strip()]


def _piece(element: ElementTree.Element, name: str) -> str:
    if name == "path":
        return element.get("d", "")
    if name == "line":
        x1, y1, x2, y2 = (element.get(key, "0") for key in ("x1", "y1", "x2", "y2"))
        return f"M{x1} {y1} L{x2} {y2}"
    if name in ("polyline", "polygon"):
        return f"M{element.get('points', '')}{'Z' if name == 'polygon' else ''}"
    raise ValueError(f"the SVG file has a <{name[:20]}>; a symbol is made of paths and lines")


def _is_silent(element: ElementTree.Element) -> bool:
    """What draws nothing: comments, titles and descriptions, and what belongs to other languages than SVG."""
    if not isinstance(element.tag, str) or _name(element) in _SPOKEN:
        return True
    return element.tag.startswith("{") and not element.tag.startswith("{http://www.w3.org/2000/svg}")


def _name(element: ElementTree.Element) -> str:
    """The name of an element without its language ("" for a comment)."""
    return element.tag.rpartition("}")[2] if isinstance(element.tag, str) else ""
