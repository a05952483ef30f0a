"""The plan of a booklet: cover, what to have at hand, each motif with its chart, assembly step by step, and the rest.

Each part can be set in several ways, and what is best for one depends on those that follow. So the parts are set one after the other in all
their ways, and after each the few cheapest beginnings go on (a beam search: B. Lowerre, The Harpy
Speech Recognition System, Carnegie Mellon University 1976).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import inf

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Box, Page, Tag, Tags, beside, stacked
from motifold.render.booklet.cover import cover_box, title_box
from motifold.render.booklet.figures import figure_box, figure_grid, size_of
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.model import BookletContent, Figure
from motifold.render.booklet.motif_pages import motif_ways
from motifold.render.booklet.paper import CLOSEST, Grid, grid_of
from motifold.render.booklet.sections import flow_sections, section_boxes
from motifold.render.booklet.steps import steps_ways
from motifold.render.booklet.styles import Styles, styles_for
from motifold.render.booklet.worth import cost_of_pages, filled
from motifold.render.words.model import Section
from motifold.symbols.record import dataclass

DOCUMENT = Tag("Document", "document")
COVER_TAGS = (DOCUMENT, Tag("Sect", "cover"))
_BEAM = 3              # beginnings that go on, of those that stop on a left page and of those that stop on a right one
_CLOSER = 0.12         # what a line more on each page costs, in pages
_MOVED = 0.1           # what it costs to print the cautions before the instructions and not at the end
_LEAF = 2              # pages of a booklet that needs no cover
_PICTURES = (0.45, 0.36, 0.28)  # of its first page's height, for the picture on it
_ACROSS = frozenset({"abbreviations"})  # sections that may stand across the page, so as not to be torn
_SPREAD = 3            # pages of words that may be spread over one more
_GAIN = 0.045          # of every page is won by each line more


@dataclass(frozen=True, slots=True)
class Plan:
    """Pages, marks placed, the grid that they stand on, and what they cost."""

    pages: tuple[Page, ...]
    grid: Grid
    cost: float


_Said = tuple[Section, Tags, str]


@dataclass(frozen=True, slots=True)
class _Piece:
    """What is set at a time: neighbouring sections of words, one section with its figures, or the photographs below a section."""

    sections: tuple[_Said, ...]
    figures: tuple[Figure, ...] = ()


def pages_of(content: BookletContent) -> tuple[Page, ...]:
    """Every page, marks placed."""
    return best_plan(content).pages


def best_plan(content: BookletContent) -> Plan:
    """The plan that costs least: few pages, little white, large charts, lines not closer than they need be."""
    sections = content.document.sections
    best = _cheaper(_plans(content, sections, 0, 0.0))
    forward = _cautions_forward(sections)
    for closer in range(CLOSEST + 1):
        inner = best.pages[1:]
        last = filled(inner[-1], best.grid) if inner else 1.0
        if len(inner) < 2 or (last > _GAIN * CLOSEST * len(inner) + 0.2 and best.cost < _wanting(best)):
            break
        before = best
        if closer:
            best = _cheaper([best, *_plans(content, sections, closer, _CLOSER * closer, best.cost)])
        if forward is not None and (closer < CLOSEST or best is not before):
            best = _cheaper([best, *_plans(content, forward, closer, _CLOSER * closer + _MOVED, best.cost)])
    return best


def _cheaper(plans: Sequence[Plan]) -> Plan:
    return min(plans, key=lambda plan: plan.cost)


def _wanting(plan: Plan) -> float:
    """The cost above which a plan has more against it than its pages and some white."""
    return len(plan.pages) - 1 + 0.06 * len(plan.pages) + 0.5


def _cautions_forward(sections: Sequence[Section]) -> tuple[Section, ...] | None:
    """The sections with the cautions before the first motif, where they stand at the end."""
    first = next((place for place, section in enumerate(sections) if section.key == "motif"), None)
    cautions = [section for section in sections if section.key == "cautions"]
    if first is None or not cautions or sections.index(cautions[0]) < first:
        return None
    others = [section for section in sections if section.key != "cautions"]
    return (*others[:first], *cautions, *others[first:])


def leaf_plan(content: BookletContent, covered: Plan) -> Plan | None:
    """The same on the two sides of one leaf, its title at the head of the first page; None where that saves no page or loses a picture.

    A cover whose picture stands inside once more costs a small pattern a third of its paper.
    """
    inside = [figure.drawing for figure in content.figures]
    pictures = [picture for picture in (content.cover.hero, content.cover.second) if picture is not None]
    if len(covered.pages) > _LEAF + 1 or any(all(picture is not one for one in inside) for picture in pictures):
        return None
    for closer in range(CLOSEST + 1):
        leaf = _leaf(content, closer, 0.0, covered)
        if leaf is not None:
            larger = (_leaf(content, closer, share, covered) for share in _PICTURES if pictures and len(leaf.pages) == _LEAF)
            return next((plan for plan in larger if plan is not None and _turns_as(plan, leaf)), leaf)
    return None


def _turns_as(plan: Plan, other: Plan) -> bool:
    """Whether its second page is no worse and begins with the same part: what was added to the first has pushed nothing off it."""
    first, second = (one.pages[1].placed[0].box.destination if len(one.pages) > 1 else None for one in (plan, other))
    return plan.cost <= other.cost + 1e-6 and first is not None and second is not None and first.key == second.key


def _leaf(content: BookletContent, closer: int, picture: float, covered: Plan) -> Plan | None:
    """The best that has fewer pages than with a cover; ``picture``: how much of the first page's height the picture takes."""
    plans = _plans(content, content.document.sections, closer, 0.0, covered.cost, picture)
    return min((plan for plan in plans if len(plan.pages) < len(covered.pages)), key=lambda plan: plan.cost, default=None)


def _opened(content: BookletContent, grid: Grid, styles: Styles, picture: float | None) -> Composer:
    """The cover (``picture`` None), or the title at the head of the first page."""
    composer = Composer(grid, styles, content.document.title)
    if picture is None:
        composer.place(cover_box(content.cover, grid, styles, COVER_TAGS), 0.0, 0.0)
        composer.leave()
    else:
        composer.whole(title_box(content.cover, grid, styles, COVER_TAGS, picture * grid.text_height))
    return composer


def _plans(
    content: BookletContent, sections: Sequence[Section], closer: int, cost: float, bound: float = inf, picture: float | None = None
) -> list[Plan]:
    """The plans that are left at the end, with so many lines more on a page; those that cost less than ``bound``."""
    grid = grid_of(content.style, closer)
    styles = styles_for(grid, content.style)
    composer = _opened(content, grid, styles, picture)
    setting = Setting(grid, styles, grid.column_width, dict(content.swatches))
    pieces, rest = _pieces(content, sections)
    beginnings = [composer]
    for piece in pieces:
        ways = [way for start in beginnings for way in _ways(piece, start, setting, content.document.title)]
        beginnings = _cheapest([way for way in ways if cost + way.least < bound])
    plans = []
    for one in beginnings:
        figure_grid(rest, one, setting, (DOCUMENT, Tag("Sect", "pictures")), "pictures")
        pages = one.pages()
        plans.append(Plan(pages, grid, cost + one.cost + cost_of_pages(pages, grid)))
    return [plan for plan in plans if plan.cost < bound]


_BELOW = frozenset({"photograph", "numbers"})
"""Roles of figures that stand below all words of their part."""


def _pieces(content: BookletContent, sections: Sequence[Section]) -> tuple[list[_Piece], list[Figure]]:
    """The pieces in order, and the figures that belong to none of them."""
    pieces: list[_Piece] = []
    words: list[_Said] = []
    placed: set[int] = set()

    def spoken() -> None:
        if words:
            pieces.append(_Piece(tuple(words)))
            words.clear()

    for index, section in enumerate(sections):
        if not section.blocks:
            continue
        key = f"{section.key}/{index}"
        this = (section, (DOCUMENT, Tag("Sect", key)), key)
        here = [place for place, figure in enumerate(content.figures) if place not in placed and _belongs(figure, section)]
        placed.update(here)
        drawn = tuple(content.figures[place] for place in here if content.figures[place].role not in _BELOW)
        below = tuple(content.figures[place] for place in here if content.figures[place].role in _BELOW)
        if drawn:
            spoken()
            pieces.append(_Piece((this,), drawn))
        else:
            words.append(this)
        if below:
            spoken()
            pieces.append(_Piece((this,), below))
    spoken()
    return pieces, [figure for place, figure in enumerate(content.figures) if place not in placed]


def _ways(piece: _Piece, start: Composer, setting: Setting, title: str) -> Iterator[Composer]:
    composer = start.copy()
    roles = {figure.role for figure in piece.figures}
    if not roles:
        composer.running(title)
        yield from _words(piece, composer, setting)
        return
    section, tags, key = piece.sections[0]
    composer.running(title if "code" in roles else section.title)
    if roles <= _BELOW:
        across = 1 if "numbers" in roles else 0  # their letters would be too small side by side
        figure_grid(piece.figures, composer, setting, tags, f"{key}/photographs", across)
        yield composer
    elif "code" in roles:
        composer.whole(_beside_its_code(section, piece.figures[0], setting, tags, key))
        yield composer
    elif "chart" in roles:
        yield from motif_ways(section, piece.figures, composer, setting, tags, key)
    else:
        yield from steps_ways(section, piece.figures, composer, setting, tags, key)


def _beside_its_code(section: Section, code: Figure, setting: Setting, tags: Tags, key: str) -> Box:
    """A few words with a small picture to their right."""
    width = size_of(code)[0]
    words = stacked(section_boxes(section, setting.narrowed(setting.grid.text_width - width - setting.grid.gutter), tags, key))
    picture = figure_box(code, setting.narrowed(width), tags, f"{key}/code", setting.grid.text_height)
    return replace(beside([(0.0, words), (setting.grid.text_width - width, picture)]), before=setting.grid.leading)


def _words(piece: _Piece, start: Composer, setting: Setting) -> Iterator[Composer]:
    """Words on as many pages as they need, filled up or evenly, and spread over one more: what follows may need to begin on a left page."""
    composer = start.copy()
    flow_sections(piece.sections, composer, setting)
    yield composer
    if composer.torn > start.torn:
        for across in (frozenset[str](), _ACROSS):
            whole = start.copy()
            whole.tears = False
            flow_sections(piece.sections, whole, setting, across)
            whole.tears = True
            yield whole
    pages = composer.number - start.number + 1
    if not start.fresh or composer.fresh or pages > _SPREAD * start.grid.zoom:
        return
    yield from _parted(piece, start, setting, pages)
    height = (pages - 1) * start.grid.text_height + composer.y
    for spare in (2, 5, 12):  # lines: what is not torn may need more than its share
        airy = start.copy()
        airy.depth = min(start.grid.text_height, start.grid.snapped(height / pages) + spare * start.grid.leading)
        flow_sections(piece.sections, airy, setting)
        if airy.number == start.number + pages - 1:
            airy.depth = start.grid.text_height
            yield airy


def _parted(piece: _Piece, start: Composer, setting: Setting, pages: int) -> Iterator[Composer]:
    """A page begun with a section, on as many pages or one more; on either side of it at least a third of a page."""
    least = start.grid.text_height / 3
    for place in range(1, len(piece.sections)):
        parted = start.copy()
        flow_sections(piece.sections[:place], parted, setting)
        if parted.y < least:
            continue
        parted.turn()
        flow_sections(piece.sections[place:], parted, setting)
        if pages <= parted.number - start.number + 1 <= pages + 1 and parted.y >= least:
            yield parted


def _cheapest(ways: Sequence[Composer]) -> list[Composer]:
    """The few cheapest of those that stop on a left page and of those that stop on a right one, each place but once."""
    kept: dict[tuple[int, float], Composer] = {}
    for way in sorted(ways, key=lambda one: one.spent):
        kept.setdefault((way.number, round(way.y)), way)
    sides: dict[int, list[Composer]] = {0: [], 1: []}
    for way in kept.values():
        if len(sides[way.number % 2]) < _BEAM:
            sides[way.number % 2].append(way)
    return sorted([*sides[0], *sides[1]], key=lambda one: one.spent)


def _belongs(figure: Figure, section: Section) -> bool:
    match figure.role:
        case "chart" | "key" | "growth":
            return section.key in ("motif", "edging") and figure.subject == section.subject
        case "photograph" | "numbers":
            return figure.subject in (section.key, section.subject)
        case "code":
            return section.key == "edition"
        case _:
            return section.key == "assembly"
