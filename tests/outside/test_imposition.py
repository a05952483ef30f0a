"""The order of pages on folded sheets, against printers' published rules.

Sources: the printing-company pages vesterkopi.dk (4 pages: "4 1, 2 3") and magazine-printer.com (8 pages: "8+1, 6+3"), and the rule at
mindprod.com (pad to a multiple of four; the numbers of a pair add up to one more than there are pages; odd pages on the right), as noted
for this project; they were not read anew here. The orders for 12 and 16 pages follow from that rule.
"""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pypdf
import pytest

import motifold.samples
from motifold.render.booklet import Look, booklet_content
from motifold.render.booklet.contents import planned
from motifold.render.booklet.fold import imposed, make_folded
from motifold.render.pattern import read_pattern
from motifold.render.worked import work_pattern

PUBLISHED = {
    4: [(4, 1), (2, 3)],
    8: [(8, 1), (2, 7), (6, 3), (4, 5)],
    12: [(12, 1), (2, 11), (10, 3), (4, 9), (8, 5), (6, 7)],
    16: [(16, 1), (2, 15), (14, 3), (4, 13), (12, 5), (6, 11), (10, 7), (8, 9)],
}


@pytest.mark.parametrize("pages", PUBLISHED)
def test_the_pages_lie_as_printers_say(pages: int) -> None:
    assert imposed(pages) == PUBLISHED[pages]


@pytest.mark.parametrize("pages", range(1, 50))
def test_folded_and_leafed_through_the_pages_come_in_order(pages: int) -> None:
    sides = imposed(pages)
    fronts, backs = sides[::2], sides[1::2]
    leaves = [(front[1], back[0]) for front, back in zip(fronts, backs, strict=True)]  # the right half of each sheet, front then back
    leaves += [(back[1], front[0]) for front, back in reversed(list(zip(fronts, backs, strict=True)))]
    read = [page for leaf in leaves for page in leaf]
    assert read == [*range(1, pages + 1), *[None] * (-pages % 4)]


def test_the_sheets_hold_the_pages_that_the_order_says() -> None:
    path = Path(motifold.samples.__path__[0]) / "lighthouse-basket.toml"
    reading = read_pattern(str(path), path.read_bytes())
    assert reading.pattern is not None
    content = booklet_content(work_pattern(reading.pattern, None, None), Look(paper="A5"))
    pages = len(planned(content).pages)
    sheets = pypdf.PdfReader(BytesIO(make_folded(content)))
    assert len(sheets.pages) == 2 * -(-pages // 4)
    width = float(sheets.pages[0].mediabox.width)
    assert (round(width / 72 * 25.4), round(float(sheets.pages[0].mediabox.height) / 72 * 25.4)) == (296, 210)
    for side, sheet in zip(imposed(pages), sheets.pages, strict=True):
        for slot, number in enumerate(side):
            if number is None or number == 1:
                continue
            folios: list[str] = []

            def seen(
                text: str, cm: list[float], tm: list[float], *_: object, slot: int = slot, width: float = width, folios: list[str] = folios
            ) -> None:
                x, y = cm[4] + tm[4], cm[5] + tm[5]
                if text.strip() and y < 45 and slot * width / 2 <= x < (slot + 1) * width / 2:
                    folios.append(text.strip())

            sheet.extract_text(visitor_text=seen)
            assert folios == [str(number)]
    assert sheets.outline == []
    assert "/StructTreeRoot" not in sheets.trailer["/Root"]  # type: ignore[operator]
    assert "not" in (sheets.metadata.subject or "")  # type: ignore[union-attr]
