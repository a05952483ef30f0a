"""The written pattern: from instructions to text, in a set of terms, for one size or several."""

from motifold.render.words.document import write_document
from motifold.render.words.formats import to_html_fragment, to_markdown, to_text
from motifold.render.words.voice import WordsLook

__all__ = ["WordsLook", "to_html_fragment", "to_markdown", "to_text", "write_document"]
