"""A list of contents for a booklet that is long enough to leaf through."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.booklet.model import BookletContent
from motifold.render.booklet.plan import Plan, best_plan
from motifold.render.words.model import Section, Table

LONG = 8          # pages, from which on a booklet has a list of its contents
_TRIES = 3


def planned(content: BookletContent) -> Plan:
    """The best plan; with a list of contents behind the cover where it has more than eight pages.

    The list itself moves what it names, so it is set until its numbers hold, thrice at most; one that would still be wrong is left out.
    """
    plain = best_plan(content)
    if len(plain.pages) <= LONG:
        return plain
    entries = _entries(plain)
    for _ in range(_TRIES):
        plan = best_plan(_with_list(content, entries))
        found = [entry for entry in _entries(plan) if entry[0] != _TITLE]
        if found == entries:
            return plan
        entries = found
    return plain


_TITLE = "Contents"


def _entries(plan: Plan) -> list[tuple[str, int]]:
    """The booklet's parts with the pages that they begin on."""
    return [
        (placed.box.destination.title, page.number)
        for page in plan.pages[1:]
        for placed in page.placed
        if placed.box.destination is not None and placed.box.destination.level == 0
    ]


def _with_list(content: BookletContent, entries: list[tuple[str, int]]) -> BookletContent:
    table = Table("", ("Part", "Page"), tuple((title, str(number)) for title, number in entries))
    section = Section("about", _TITLE, (table,))
    return replace(content, document=replace(content.document, sections=(section, *content.document.sections)))
