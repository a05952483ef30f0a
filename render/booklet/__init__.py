"""Pages: typography, layout, PDF structure."""

from motifold.render.booklet.compose import make_booklet
from motifold.render.booklet.content import booklet_content
from motifold.render.booklet.model import BookletContent, Cover, Figure, Look, PageStyle

__all__ = ["BookletContent", "Cover", "Figure", "Look", "PageStyle", "booklet_content", "make_booklet"]
