"""The structure tree of a booklet, written into the finished file: what each piece of marked content is, and the order to read it in.

Tagged after ISO 14289-1 (PDF/UA-1) on ISO 32000-1, 14.7 and 14.8. No claim of conformance is written.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import field
from html import escape
from io import BytesIO
from typing import TYPE_CHECKING, Any

from motifold.render.booklet.annotations import Touched, write_destinations
from motifold.render.booklet.boxes import Tag, Tags
from motifold.render.booklet.links import Link
from motifold.render.booklet.paint import Marked, Painted
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import pikepdf


@dataclass(slots=True)
class _Element:
    """A structure element while the tree is grown; ``kids`` in reading order."""

    tag: Tag
    kids: list[_Element | Marked] = field(default_factory=list)
    by_tag: dict[Tag, _Element] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Metadata:
    title: str
    author: str
    subject: str
    language: str
    version: str = ""
    date: str = ""           # of the edition, as ISO 8601 has it
    copyright: str = ""
    licence: str = ""
    web: str = ""


def _grow(marked: Sequence[Marked]) -> _Element:
    """The tree that the tags' paths span; an element stands where its first content stands."""
    root = _Element(Tag("StructTreeRoot", ""))
    for content in marked:
        element = root
        for tag in content.tags:
            child = element.by_tag.get(tag)
            if child is None:
                child = element.by_tag[tag] = _Element(tag)
                element.kids.append(child)
            element = child
        element.kids.append(content)
    return root


def tagged(pdf_bytes: bytes, painted: Painted, metadata: Metadata) -> bytes:
    """The file with its structure tree, links, XMP metadata and page labels; the same input gives the same bytes."""
    import pikepdf

    with pikepdf.open(BytesIO(pdf_bytes)) as pdf:
        _write_tree(pdf, _grow(painted.marked), painted.links)
        write_destinations(pdf, painted.destinations)
        _write_dates(pdf, metadata)
        _unwrap_images(pdf)
        _write_catalog(pdf, metadata)
        out = BytesIO()
        pdf.save(out, static_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate, min_version="1.7")
    return out.getvalue()


def _write_tree(pdf: pikepdf.Pdf, root: _Element, links: Sequence[Link]) -> None:
    import pikepdf
    from pikepdf import Array, Dictionary, Name

    pages = [page.obj for page in pdf.pages]
    parents: list[list[Any]] = [[] for _ in pages]
    tree = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
    touched = Touched(pdf, pages, links)

    def write(element: _Element, parent: Any, above: Tags) -> Any:
        tag = element.tag
        path = (*above, tag)
        written = pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name("/" + tag.name), P=parent))
        first = next((kid.page for kid in element.kids if isinstance(kid, Marked)), None)
        if first is not None:
            written.Pg = pages[first]
        if tag.alt:
            written.Alt = pikepdf.String(tag.alt)
        if tag.scope:
            written.A = Dictionary(O=Name.Table, Scope=Name("/" + tag.scope))
        if tag.numbering:
            written.A = Dictionary(O=Name.List, ListNumbering=Name("/" + tag.numbering))
        kids: list[Any] = []
        for kid in element.kids:
            if isinstance(kid, _Element):
                kids.append(write(kid, written, path))
            else:
                kids.append(kid.mcid if kid.page == first else Dictionary(Type=Name.MCR, Pg=pages[kid.page], MCID=kid.mcid))
                parents[kid.page].append((kid.mcid, written))
        kids += touched.references(path, written)
        written.K = Array(kids) if len(kids) != 1 else kids[0]
        return written

    tree.K = Array([write(kid, tree, ()) for kid in root.kids if isinstance(kid, _Element)])
    numbers: list[Any] = []
    for index, page in enumerate(pages):
        page.StructParents = index
        page.Tabs = Name.S
        numbers += [index, pdf.make_indirect(Array([element for _, element in sorted(parents[index], key=lambda entry: int(entry[0]))]))]
    numbers += touched.numbers()
    tree.ParentTree = pdf.make_indirect(Dictionary(Nums=Array(numbers)))
    tree.ParentTreeNextKey = len(numbers) // 2
    pdf.Root.StructTreeRoot = tree
    pdf.Root.MarkInfo = Dictionary(Marked=True)


def _unwrap_images(pdf: pikepdf.Pdf) -> None:
    """JPEG as it is: reportlab writes its bytes as ASCII, which takes a quarter more room."""
    import base64

    from pikepdf import Name, Stream

    for image in pdf.objects:
        if isinstance(image, Stream) and image.get("/Subtype") == Name.Image:
            filters = image.get("/Filter")
            if not isinstance(filters, Name) and [str(name) for name in filters or ()] == ["/ASCII85Decode", "/DCTDecode"]:
                image.write(base64.a85decode(b"<~" + image.read_raw_bytes().strip(), adobe=True), filter=Name.DCTDecode)


def _write_dates(pdf: pikepdf.Pdf, metadata: Metadata) -> None:
    """The edition's own date, where the pattern has one; else that of the canvas (fixed, or SOURCE_DATE_EPOCH's)."""
    if not metadata.date:
        return
    import pikepdf

    date = pikepdf.String(f"D:{metadata.date.replace('-', '')}000000Z")
    pdf.docinfo["/CreationDate"] = date
    pdf.docinfo["/ModDate"] = date


def _write_catalog(pdf: pikepdf.Pdf, metadata: Metadata) -> None:
    import pikepdf
    from pikepdf import Array, Dictionary, Name

    pdf.Root.Lang = pikepdf.String(metadata.language)
    pdf.Root.PageLabels = Dictionary(Nums=Array([0, Dictionary(S=Name.D)]))
    pdf.Root.PageLayout = Name.TwoPageRight  # the cover alone, then left and right pages facing
    stream = pikepdf.Stream(pdf, _xmp(metadata, str(pdf.docinfo.get("/CreationDate", ""))).encode())
    stream.Type, stream.Subtype = Name.Metadata, Name.XML
    pdf.Root.Metadata = pdf.make_indirect(stream)


def _text(text: str) -> str:
    """Text within XML."""
    return escape(text, quote=False)


def _xmp(metadata: Metadata, date: str) -> str:
    """XMP (ISO 16684-1) that says the same as the information dictionary; ``date`` as in PDF, D:YYYYMMDDHHmmSS."""
    digits = date.removeprefix("D:")
    iso = f"{digits[:4]}-{digits[4:6]}-{digits[6:8]}T{digits[8:10]}:{digits[10:12]}:{digits[12:14]}Z"

    def words(text: str) -> str:
        return f'<rdf:Alt><rdf:li xml:lang="x-default">{_text(text)}</rdf:li></rdf:Alt>'

    rights = f"<dc:rights>{words(metadata.copyright)}</dc:rights>" if metadata.copyright else ""
    rights += f"<xmpRights:UsageTerms>{words(metadata.licence)}</xmpRights:UsageTerms>" if metadata.licence else ""
    rights += f"<xmpRights:WebStatement>{_text(metadata.web)}</xmpRights:WebStatement>" if metadata.web else ""
    edition = f"<xmpMM:VersionID>{_text(metadata.version)}</xmpMM:VersionID>" if metadata.version else ""
    author = f"<dc:creator><rdf:Seq><rdf:li>{_text(metadata.author)}</rdf:li></rdf:Seq></dc:creator>" if metadata.author else ""
    return (
        '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>\n'
        '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
        '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" '
        'xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/" xmlns:xmpRights="http://ns.adobe.com/xap/1.0/rights/">'
        f"<dc:title>{words(metadata.title)}</dc:title>{author}<dc:description>{words(metadata.subject)}</dc:description>"
        f"<dc:language><rdf:Bag><rdf:li>{_text(metadata.language)}</rdf:li></rdf:Bag></dc:language><dc:format>application/pdf</dc:format>"
        f"{rights}{edition}"
        f"<xmp:CreatorTool>Motifold</xmp:CreatorTool><xmp:CreateDate>{iso}</xmp:CreateDate><xmp:ModifyDate>{iso}</xmp:ModifyDate>"
        '</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end="r"?>'
    )
