"""The plan of a booklet: cover, what to have at hand, each motif with its chart, assembly step by step, and the rest."""

from __future__ import annotations

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Page, Tag, Tags
from motifold.render.booklet.cover import cover_box
from motifold.render.booklet.figures import figure_grid
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.model import BookletContent, Figure
from motifold.render.booklet.motif_pages import motif_pages
from motifold.render.booklet.paper import grid_for
from motifold.render.booklet.sections import flow_sections
from motifold.render.booklet.steps import steps_part
from motifold.render.booklet.styles import styles_for
from motifold.render.words.model import Section

DOCUMENT = Tag("Document", "document")
_HARDLY_ANYTHING = 0.25    # of a page


def pages_of(content: BookletContent) -> tuple[Page, ...]:
    """Every page, marks placed. Where the last one would hold a few lines alone, charts give way a little, if that saves it."""
    pages = _pages(content, 0.0)
    grid = grid_for(content.style.paper)
    used = max((placed.y + placed.box.height - grid.top for placed in pages[-1].placed), default=0.0)
    if len(pages) > 2 and used < _HARDLY_ANYTHING * grid.text_height:
        tighter = _pages(content, used + 2 * grid.leading)
        if len(tighter) < len(pages):
            return tighter
    return pages


def _pages(content: BookletContent, reserve: float) -> tuple[Page, ...]:
    """``reserve``: room that is left free below every motif, in points."""
    grid, styles = grid_for(content.style.paper), styles_for(grid_for(content.style.paper), content.style)
    composer = Composer(grid, styles, content.document.title)
    composer.place(cover_box(content.cover, grid, styles, (DOCUMENT, Tag("Sect", "cover"))), 0.0, 0.0)
    composer.leave()
    setting = Setting(grid, styles, grid.column_width, dict(content.swatches))
    waiting: list[tuple[Section, Tags, str]] = []
    placed: set[int] = set()
    for index, section in enumerate(content.document.sections):
        if not section.blocks:
            continue
        key = f"{section.key}/{index}"
        tags = (DOCUMENT, Tag("Sect", key))
        mine = [place for place, figure in enumerate(content.figures) if place not in placed and _belongs(figure, section)]
        if not mine:
            waiting.append((section, tags, key))
            continue
        composer.running(content.document.title)
        flow_sections(waiting, composer, setting)
        waiting = []
        placed.update(mine)
        figures = [content.figures[place] for place in mine]
        composer.running(section.title)
        if any(figure.role == "chart" for figure in figures):
            motif_pages(section, figures, composer, setting, tags, key, reserve)
        else:
            steps_part(section, figures, composer, setting, tags, key)
    composer.running(content.document.title)
    flow_sections(waiting, composer, setting)
    rest = [figure for place, figure in enumerate(content.figures) if place not in placed]
    figure_grid(rest, composer, setting, (DOCUMENT, Tag("Sect", "pictures")), "pictures")
    return composer.pages()


def _belongs(figure: Figure, section: Section) -> bool:
    if figure.role in ("chart", "key", "growth"):
        return section.key in ("motif", "edging") and figure.subject == section.subject
    return section.key == "assembly"
