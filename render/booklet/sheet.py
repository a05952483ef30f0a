"""A sheet of words without a cover: its title at the head, what follows in columns."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Page, Tag
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.model import BookletContent
from motifold.render.booklet.paper import grid_of
from motifold.render.booklet.plan import DOCUMENT
from motifold.render.booklet.sections import flow_sections, part_heading
from motifold.render.booklet.styles import styles_for

_ERRATA = ("changes", "edition")


def errata_of(content: BookletContent) -> BookletContent:
    """The same with nothing but what has changed and which edition this is; no sections where nothing has."""
    told = any(section.key == "changes" for section in content.document.sections)
    kept = tuple(section for section in content.document.sections if told and section.key in _ERRATA)
    return replace(content, document=replace(content.document, sections=kept), figures=())


def opened_sheet(content: BookletContent, numbered: bool = False) -> tuple[Composer, Setting]:
    """The first page of a sheet with its title, and how its columns are set; ``numbered``: that page has its number too."""
    grid = grid_of(content.style)
    styles = styles_for(grid, content.style)
    composer = Composer(grid, styles, content.document.title)
    setting = Setting(grid, styles, grid.column_width, dict(content.swatches))
    composer.running("" if numbered else None)
    composer.whole(part_heading(content.document.title, setting, (DOCUMENT,), "title", level=1))
    composer.running(content.document.title)
    return composer, setting


def sheet_pages(content: BookletContent) -> tuple[Page, ...]:
    """The pages of a sheet."""
    composer, setting = opened_sheet(content)
    keys = [f"{section.key}/{place}" for place, section in enumerate(content.document.sections)]
    said = [(section, (DOCUMENT, Tag("Sect", key)), key) for key, section in zip(keys, content.document.sections, strict=True)]
    flow_sections(said, composer, setting)
    return composer.pages()
