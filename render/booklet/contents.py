"""A list of contents for a booklet that is long enough to leaf through."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from motifold.render.booklet.model import BookletContent
from motifold.render.booklet.plan import Plan, best_plan
from motifold.render.words.model import Block, Paragraph, Section, Table

LONG = 8          # pages, from which on a booklet has a list of its contents
_TRIES = 3
_TITLE = "Contents"

Entry = tuple[str, int]


def planned(content: BookletContent) -> Plan:
    """The best plan; with a list of contents behind the cover where it has more than eight pages.

    Where a list in lines would cost paper, it is set as a paragraph.
    """
    plain = best_plan(content)
    if len(plain.pages) <= LONG:
        return plain
    listed = _listed(content, plain, _in_lines)
    if listed is not None and len(listed.pages) <= len(plain.pages):
        return listed
    run_in = _listed(content, plain, _run_in)
    found = [plan for plan in (listed, run_in) if plan is not None]
    return min(found, key=lambda plan: plan.cost, default=plain)


def _listed(content: BookletContent, plan: Plan, blocks: Callable[[Sequence[Entry]], Block]) -> Plan | None:
    """The plan with a list in it. The list moves what it names, so it is set until its numbers hold; None if they do not."""
    entries = _entries(plan)
    for _ in range(_TRIES):
        section = Section("about", _TITLE, (blocks(entries),))
        document = replace(content.document, sections=(section, *content.document.sections))
        plan = best_plan(replace(content, document=document))
        found = [entry for entry in _entries(plan) if entry[0] != _TITLE]
        if found == entries:
            return plan
        entries = found
    return None


def _in_lines(entries: Sequence[Entry]) -> Table:
    return Table("", ("Part", "Page"), tuple((title, str(number)) for title, number in entries))


def _run_in(entries: Sequence[Entry]) -> Paragraph:
    return Paragraph("; ".join(f"{title},\u00a0{number}" for title, number in entries) + ".")


def _entries(plan: Plan) -> list[Entry]:
    """The booklet's parts with the pages that they begin on."""
    return [
        (placed.box.destination.title, page.number)
        for page in plan.pages[1:]
        for placed in page.placed
        if placed.box.destination is not None and placed.box.destination.level == 0
    ]
