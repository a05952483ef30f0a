"""Pages: typography, layout, PDF structure."""

from motifold.render.booklet.compose import make_booklet, make_sheet
from motifold.render.booklet.content import booklet_content
from motifold.render.booklet.model import BookletContent, Cover, Figure, Look, PageStyle
from motifold.render.booklet.sheet import errata_of

__all__ = ["BookletContent", "Cover", "Figure", "Look", "PageStyle", "booklet_content", "errata_of", "make_booklet", "make_sheet"]
