"""A list of contents for a booklet that is long enough to leaf through. It stands on the cover, where it moves nothing that it names."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.booklet.boxes import PlacedBox
from motifold.render.booklet.cover import cover_box
from motifold.render.booklet.model import BookletContent
from motifold.render.booklet.plan import COVER_TAGS, Plan, best_plan, leaf_plan
from motifold.render.booklet.styles import styles_for

LONG = 8          # pages, from which on a booklet has a list of its contents


def planned(content: BookletContent) -> Plan:
    """The best plan: one leaf without a cover where that holds it; a list of contents on the cover where it has more than eight pages."""
    plan = best_plan(content)
    if len(plan.pages) <= LONG:
        return leaf_plan(content, plan) or plan
    cover, inner = plan.pages[0], plan.pages[1:]
    box = cover_box(replace(content.cover, contents=_entries(plan)), plan.grid, styles_for(plan.grid, content.style), COVER_TAGS)
    [placed] = cover.placed
    return replace(plan, pages=(replace(cover, placed=(PlacedBox(placed.x, placed.y, box),)), *inner))


def _entries(plan: Plan) -> tuple[tuple[str, int, str], ...]:
    """The booklet's parts with the pages that they begin on, and their destinations."""
    return tuple(
        (placed.box.destination.title, page.number, placed.box.destination.key)
        for page in plan.pages[1:]
        for placed in page.placed
        if placed.box.destination is not None and placed.box.destination.level == 0
    )
