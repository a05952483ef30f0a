"""Drawings as SVG 1.1: one group for each group, words as outlines of the packaged font with the words as their label.

A viewer's own fonts would move the words; outlines stand where they were measured. Size in mm; the picture's units are mm, y down.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from motifold.render.drawing.display import Drawing, FillPath, Group, Image, Path, StrokePath, Text, Transform
from motifold.render.drawing.measure import text_outline
from motifold.render.drawing.numbers import clean_words, number
from motifold.render.drawing.writer import merge_strokes, play

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element


def path_data(path: Path) -> str:
    """The commands as SVG path data, mm to three decimals."""
    parts: list[str] = []
    for name, *values in path.commands:
        parts.append(str(name) + " ".join([number(float(value)) for value in values]))
    return "".join(parts)


def _matrix(transform: Transform) -> str:
    factors = [number(value, 6) for value in (transform.a, transform.b, transform.c, transform.d)]
    return f"matrix({' '.join(factors)} {number(transform.e)} {number(transform.f)})"


class _SvgWriter:
    """Builds svgwrite elements; ``stack`` holds the open groups."""

    def __init__(self, root: Any, id_prefix: str) -> None:
        from svgwrite import container, image, masking, path

        class LabelledGroup(container.Group):  # type: ignore[misc]
            """A group whose ``aria-*`` and ``data-*`` attributes, unknown to SVG 1.1, are set past svgwrite's check."""

            labels: dict[str, str]

            def get_xml(self) -> Element:
                xml: Element = super().get_xml()
                for key, value in self.labels.items():
                    xml.set(key, value)
                return xml

        self._group_type, self._path_type, self._clip_type = LabelledGroup, path.Path, masking.ClipPath
        self._image_type = image.Image
        self._root = root
        self._prefix = id_prefix
        self._clips = 0
        self.stack: list[Any] = [root]

    def _path(self, path: Path, attributes: dict[str, str]) -> Any:
        element = self._path_type(path_data(path), factory=self._root)
        element.attribs.update(attributes)  # checked when the tree is written, if at all
        return element

    def stroke(self, operation: StrokePath) -> None:
        attributes = {"fill": "none", "stroke": operation.color, "stroke-width": number(operation.width_mm)}
        if operation.dash_mm:
            attributes["stroke-dasharray"] = ",".join(number(length) for length in operation.dash_mm)
        if operation.cap != "butt":
            attributes["stroke-linecap"] = operation.cap
        if operation.join != "miter":
            attributes["stroke-linejoin"] = operation.join
        else:
            attributes["stroke-miterlimit"] = "10"  # PDF's default, so that both writers cut the same miters
        self.stack[-1].add(self._path(operation.path, attributes))

    def fill(self, operation: FillPath) -> None:
        attributes = {"fill": operation.color}
        if operation.rule != "nonzero":
            attributes["fill-rule"] = operation.rule
        self.stack[-1].add(self._path(operation.path, attributes))

    def text(self, operation: Text) -> None:
        group = self._new_group("words", None, {"role": "img", "aria-label": clean_words(operation.words)})
        outline = text_outline(operation)
        if outline.commands:
            group.add(self._path(outline, {"fill": operation.color}))
        self.stack[-1].add(group)

    def image(self, operation: Image) -> None:
        """Its bytes in the file itself (RFC 2397): nothing is fetched. Its rows run down the page, so it is turned over."""
        from base64 import b64encode

        address = f"data:image/{operation.kind};base64,{b64encode(operation.data).decode()}"
        size = (number(operation.width_mm), number(operation.height_mm))
        element = self._image_type(address, insert=(0, 0), size=size, factory=self._root)
        element["preserveAspectRatio"] = "none"
        element["transform"] = _matrix(Transform(1.0, 0.0, 0.0, -1.0, operation.x_mm, operation.y_mm + operation.height_mm))
        self.stack[-1].add(element)

    def begin(self, group: Group) -> None:
        labels = {f"data-{key}": clean_words(value) for key, value in group.data}
        element = self._new_group(group.css_class, group.title, labels)
        if group.transform:
            element["transform"] = _matrix(group.transform)
        if group.clip:
            self._clips += 1
            name = f"{self._prefix}clip{self._clips}"
            clip = self._clip_type(factory=self._root)
            clip["id"] = name
            clip.add(self._path(group.clip, {}))
            element["clip-path"] = f"url(#{name})"
            element.add(clip)  # beside what it clips, so that it stands in the same coordinates
        self.stack[-1].add(element)
        self.stack.append(element)

    def end(self, group: Group) -> None:
        self.stack.pop()

    def _new_group(self, css_class: str | None, title: str | None, labels: dict[str, str]) -> Any:
        element = self._group_type(factory=self._root)
        element.labels = labels
        if css_class:
            element.attribs["class"] = css_class
        if title:
            element.set_desc(title=clean_words(title))
        return element


def to_svg(drawing: Drawing, *, language: str = "en", id_prefix: str = "", validate: bool = False) -> str:
    """The drawing as one SVG document.

    ``id_prefix`` keeps the ids of several drawings apart in one page. ``validate`` lets svgwrite check every attribute and child against
    SVG 1.1, at ten times the time.
    """
    from svgwrite import Drawing as Document

    width, height = number(drawing.width_mm), number(drawing.height_mm)
    root = Document(size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", debug=validate)
    writer = _SvgWriter(root, id_prefix)
    page = writer._new_group(None, None, {})
    page["transform"] = _matrix(Transform(1.0, 0.0, 0.0, -1.0, -drawing.box[0], drawing.box[3]))
    root.add(page)
    writer.stack.append(page)
    play(merge_strokes(drawing.operations), writer)
    return _document(root, drawing, language, id_prefix)


def _document(root: Any, drawing: Drawing, language: str, id_prefix: str) -> str:
    """The tree as text, with what svgwrite does not know of: language, role, and the drawing's meaning."""
    from xml.etree import ElementTree

    xml = root.get_xml()
    title_id, description_id = f"{id_prefix}title", f"{id_prefix}description"
    for key, value in (("lang", language), ("xml:lang", language), ("role", "img"), ("aria-labelledby", f"{title_id} {description_id}")):
        xml.set(key, value)
    for position, (tag, name, words) in enumerate((("title", title_id, drawing.title), ("desc", description_id, drawing.description))):
        element = ElementTree.Element(tag, {"id": name})
        element.text = clean_words(words)
        xml.insert(position, element)
    for empty in [child for child in xml if child.tag == "defs" and len(child) == 0]:
        xml.remove(empty)
    return '<?xml version="1.0" encoding="utf-8"?>\n' + ElementTree.tostring(xml, encoding="unicode") + "\n"
