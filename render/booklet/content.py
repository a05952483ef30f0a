"""From the worked pattern to a booklet's content: the words, the charts and keys, the drawings of the assembly, the cover."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.booklet.drawings import assembly_figures, colourway_figures, cover_pictures, joining_figures, motif_figures
from motifold.render.booklet.model import BookletContent, Cover, Figure, Look, PageStyle
from motifold.render.booklet.numbers import number_figures
from motifold.render.booklet.own import photographs, web_code
from motifold.render.pattern.model import Pattern, Terms
from motifold.render.words import WordsLook, write_document
from motifold.render.words.model import Document
from motifold.render.worked import Worked, WorkedSize, needs_by_size

DEFAULT_ACCENT = "#20506b"
_NAMED_YARNS = 6         # more are counted on the cover, not named
_LEAST_SATURATION = 0.25  # a yarn greyer than this gives no accent: darkened until it reads, it would be mud


def booklet_content(worked: Worked, look: Look) -> BookletContent:
    """Everything that the booklet prints, for one size (``look.size``) or for all of them.

    Charts and drawings are those of the size that has the most rounds: it shows all of the others.
    """
    pattern = worked.pattern
    content = words_content(worked, look)
    size = _drawn_size(worked, look)
    figures: tuple[Figure, ...] = ()
    if size is not None:
        around = (*colourway_figures(worked, size, look), *joining_figures(worked, size, look))
        figures = (*motif_figures(worked, size, look), *around, *assembly_figures(size, look))
    if look.numbers:
        figures = (*figures, *number_figures(worked, look))
    own = photographs(pattern, look)
    front = [photo for photo in own if photo.subject == "cover"]
    codes = (web_code(pattern.edition.web),) if pattern.edition.web else ()
    cover = replace(_with_pictures(content.cover, figures, front), facts=cover_facts(worked, look, look.terms or pattern.terms))
    inside = (*figures, *front[2:], *(photo for photo in own if photo.subject != "cover"), *codes)
    return replace(content, cover=cover, figures=inside)


def words_content(worked: Worked, look: Look) -> BookletContent:
    """The words of the booklet without its cover and its figures."""
    return content_of(write_document(worked, needs_by_size(worked), words_look(worked.pattern, look)), worked.pattern, look)


def words_look(pattern: Pattern, look: Look) -> WordsLook:
    """How the words of a booklet are wanted."""
    return WordsLook(look.terms or pattern.terms, look.plain, look.size, look.left_handed)


def content_of(document: Document, pattern: Pattern, look: Look) -> BookletContent:
    """A document that belongs to a pattern, with what its pages need besides: sheet, colours and edition."""
    style = PageStyle(look.paper, accent_of_yarns(pattern), look.mono, look.large_print)
    cover = Cover(pattern.title, pattern.summary, pattern.author or "", (), None)
    return BookletContent(document, cover, (), style, pattern.author or "", _swatches(pattern), pattern.edition)


def _with_pictures(cover: Cover, figures: Sequence[Figure], front: Sequence[Figure]) -> Cover:
    """The cover with its pictures: the designer's own before any drawing."""
    if not front:
        hero, second = cover_pictures(figures)
        return replace(cover, hero=hero, second=second)
    other = front[1].drawing if len(front) > 1 else None
    return replace(cover, hero=front[0].drawing, second=other, finest=front[0].largest)


def _drawn_size(worked: Worked, look: Look) -> WorkedSize | None:
    sizes = [size for size in worked.sizes if look.size is None or size.choice.name == look.size]
    return max(sizes, key=lambda size: sum(len(fabric.rounds) for fabric in size.fabrics.values()), default=None)


def accent_of_yarns(pattern: Pattern) -> str:
    """The most colourful yarn's colour, or a blue of our own where all yarns are grey or none has a colour."""
    colours = [yarn.hex for yarn in pattern.yarns if yarn.hex]
    best = max(colours, key=_chroma, default=DEFAULT_ACCENT)
    return best if _saturation(best) >= _LEAST_SATURATION else DEFAULT_ACCENT


def _channels(color: str) -> list[float]:
    return [int(color[i : i + 2], 16) / 255 for i in (1, 3, 5)]


def _chroma(color: str) -> float:
    return max(_channels(color)) - min(_channels(color))


def _saturation(color: str) -> float:
    """As in HSV: chroma over the brightest channel."""
    return _chroma(color) / max(*_channels(color), 1e-9)


def _swatches(pattern: Pattern) -> tuple[tuple[str, str], ...]:
    """The words that the text begins a yarn's line with."""
    coloured = [yarn for yarn in pattern.yarns if yarn.hex]
    return tuple((words, yarn.hex or "") for yarn in coloured for words in (f"Yarn {yarn.key}", f"{yarn.key} ({yarn.name})"))


def cover_facts(worked: Worked, look: Look, terms: Terms) -> tuple[tuple[str, str], ...]:
    """What a buyer looks for: sizes, yarn, hook, level, terms; what the pattern does not say is left out."""
    from motifold.render.words.edition import edition_words
    from motifold.render.words.voice import Voice

    pattern = worked.pattern
    names = [size.choice.name for size in worked.sizes if look.size is None or size.choice.name == look.size]
    facts: list[tuple[str, str]] = []
    if worked.table is not None and names:
        facts.append(("Sizes" if len(names) > 1 else "Size", _several(names)))
    weights = sorted({yarn.weight for yarn in pattern.yarns if yarn.weight is not None})
    if pattern.yarns:
        weight = f", weight {' and '.join(str(w) for w in weights)}" if weights else ""
        shades = [yarn.name for yarn in pattern.yarns]
        said = _listed(shades) if len(shades) <= _NAMED_YARNS else f"{len(shades)} yarns"
        facts.append(("Yarn", said + weight))
    hook = pattern.materials.hook
    if hook is not None and hook.kind == "length":
        from motifold.render.sizing.hooks import hook_text

        facts.append(("Hook", hook_text(float(hook.cm) * 10)))
    if pattern.level:
        facts.append(("Level", pattern.level[:1].upper() + pattern.level[1:]))
    said = edition_words(pattern.edition, Voice(terms=terms))
    if said:
        facts.append(("Edition", said))
    facts.append(("Terms", f"{terms}{', in full words' if look.plain else ''}{', left-handed' if look.left_handed else ''}"))
    return tuple(facts)


def _several(names: list[str]) -> str:
    """The trade's way: the first, the others in parentheses."""
    return names[0] + (f" ({', '.join(names[1:])})" if len(names) > 1 else "")


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


