"""Filling pages: columns of boxes, balanced where a part ends, and what stands across the whole page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import inf

from motifold.render.booklet.blocks import BETWEEN_BLOCKS
from motifold.render.booklet.boxes import Box, BoxMark, Page, Picture, PlacedBox, Rectangle, height_of, words_line
from motifold.render.booklet.inline import width_of
from motifold.render.booklet.paper import Grid
from motifold.render.booklet.styles import HAIR, Styles
from motifold.render.booklet.worth import Inks, cost_of_break, cost_of_white

_WHOLE = 24.0  # lines of room that may be left free so as not to tear a table, where none is to be torn


def _choices(boxes: Sequence[Box], start: int, height: float) -> list[tuple[int, float]]:
    """Every break allowed within ``height`` for a column from ``start`` on, with the height up to it."""
    again = boxes[start].continued if start else None
    used = again.height if again else 0.0
    found = []
    for index in range(start, len(boxes)):
        used += boxes[index].height + (boxes[index].before if index > start else 0.0)
        if used > height + 0.01:
            break
        if not boxes[index].keep or index == len(boxes) - 1:
            found.append((index + 1, used))
    return found


def column(boxes: Sequence[Box], start: int, height: float, leading: float) -> int:
    """Where the column that begins with ``boxes[start]`` ends: the break within ``height`` that leaves least room or tears least apart.

    Where no break is allowed (a list of boxes all kept together that is higher than a page), it breaks where the height ends; at least one
    box is always taken.
    """
    choices = _choices(boxes, start, height)
    if not choices:
        end, used = start, 0.0
        while end < len(boxes) and used + boxes[end].height <= height + 0.01:
            used += boxes[end].height + (boxes[end].before if end > start else 0.0)
            end += 1
        return max(end, start + 1)
    if choices[-1][0] == len(boxes):
        return len(boxes)
    return min(choices, key=lambda choice: height - choice[1] + boxes[choice[0] - 1].reluctance * leading)[0]


def columns(boxes: Sequence[Box], count: int, height: float, leading: float) -> tuple[list[list[Box]], int]:
    """The boxes in ``count`` columns of ``height``, and how many of them found room."""
    filled: list[list[Box]] = []
    start = 0
    while start < len(boxes) and len(filled) < count:
        end = column(boxes, start, height, leading)
        head = boxes[start].continued if start else None
        filled.append([*([head] if head else []), *boxes[start:end]])
        start = end
    return filled, start


def balanced(boxes: Sequence[Box], count: int, height: float, leading: float) -> tuple[list[list[Box]], int]:
    """Columns as even as can be if all boxes fit into ``height``, else full ones."""
    filled, taken = columns(boxes, count, height, leading)
    if taken < len(boxes):
        return filled, taken
    if count == 1:
        return filled, taken
    whole = height_of(boxes)
    first, _ = min(
        _choices(boxes, 0, height),
        key=lambda choice: _unevenness(boxes, choice, whole - choice[1], count, height, leading),
        default=(len(filled[0]), 0.0),
    )
    again = boxes[first].continued if first < len(boxes) else None
    others = [*([replace(again, keep=True)] if again else []), *boxes[first:]]
    rest, taken = columns(others, count - 1, height, leading)
    if taken < len(others):
        return filled, len(boxes)
    return [list(boxes[:first]), *rest], len(boxes)


def _unevenness(
    boxes: Sequence[Box], choice: tuple[int, float], beyond: float, count: int, height: float, leading: float
) -> float:
    """How high the columns stand if the first ends there, and what is torn apart; infinite where the others do not hold the rest."""
    end, used = choice
    rest = max(0.0, beyond - (boxes[end].before if end < len(boxes) else 0.0)) / (count - 1)
    if rest > height:
        return inf
    torn = boxes[end - 1].reluctance * leading if end < len(boxes) else 0.0
    return max(used, rest) + torn


def stacked_at(boxes: Sequence[Box], x: float, y: float) -> list[tuple[float, float, Box]]:
    """The boxes one below the other, with their places."""
    placed = []
    for index, box in enumerate(boxes):
        y += box.before if index else 0.0
        placed.append((x, y, box))
        y += box.height
    return placed


def _inside_table(box: Box) -> bool:
    """Whether a break after the box would tear a table."""
    return box.continued is not None and box.reluctance > BETWEEN_BLOCKS


class Composer:
    """Pages as they fill. ``y`` is how far the page in hand is filled, from the head of its text."""

    def __init__(self, grid: Grid, styles: Styles, title: str) -> None:
        self.grid = grid
        self.styles = styles
        self._title = title
        self._pages: list[Page] = []
        self._white: list[float] = []
        self._placed: list[PlacedBox] = []
        self._inks: Inks = {}
        self._running: str | None = None
        self._running_here: str | None = None
        self.y = 0.0
        self.depth = grid.text_height  # how far down pages may be filled
        self.tears = True  # whether a table may be torn to fill a column
        self.torn = 0  # tables that were
        self.cost = 0.0  # of what was decided so far, in pages; the pages themselves not counted

    def copy(self) -> Composer:
        """The same pages so far, to go on differently."""
        other = Composer(self.grid, self.styles, self._title)
        other._pages, other._placed, other._white = list(self._pages), list(self._placed), list(self._white)
        other._running, other._running_here, other._inks = self._running, self._running_here, self._inks
        other.y, other.cost, other.depth = self.y, self.cost, self.depth
        other.tears, other.torn = self.tears, self.torn
        return other

    def stands_alone(self, box: Box) -> bool:
        """Whether this box is all that a page holds, or the lowest on it."""
        for placed in (self._placed, *(page.placed for page in self._pages)):
            mine = [one for one in placed if one.box is box]
            if mine:
                return all(one.y <= mine[0].y for one in placed)
        return False

    @property
    def spent(self) -> float:
        """All that was used up: what was decided, pages with their white, and the part of the page in hand."""
        return self.cost + len(self._pages) + sum(self._white) + self.y / self.grid.text_height

    @property
    def least(self) -> float:
        """What the finished pages cost at least, whatever follows: the last page's white is not counted, and this page may be the last."""
        white = sum(self._white) if self._placed else sum(self._white[:-1])
        return self.cost + len(self._pages) - 1 + white + (1 if self._placed else 0)

    @property
    def number(self) -> int:
        """The page in hand, from 1."""
        return len(self._pages) + 1

    @property
    def room(self) -> float:
        return self.depth - self.y

    @property
    def fresh(self) -> bool:
        return not self._placed

    def shows(self, description: str) -> bool:
        """Whether a picture of that description is in sight: on the page in hand, or on the left page that it faces."""
        before = self._pages[-1].placed if self._pages and self.number % 2 == 1 and self.number > 1 else ()
        marks = (mark for placed in (*self._placed, *before) for mark in placed.box.marks)
        return any(isinstance(mark, Picture) and mark.drawing.description == description for mark in marks)

    def running(self, words: str | None) -> None:
        """What the heads say from the next page that is begun."""
        self._running = words

    def place(self, box: Box, x: float, y: float) -> None:
        """At (x, y) from the upper left corner of the text."""
        if not self._placed:
            self._running_here = self._running
        self._placed.append(PlacedBox(self.grid.left(self.number) + x, self.grid.top + y, box))

    def turn(self) -> None:
        """To a new page, unless this one is still empty."""
        if self._placed:
            self.leave()

    def leave(self) -> None:
        """To a new page, even from an empty one."""
        page = Page(self.number, tuple(self._placed), self._running_here)
        self._white.append(cost_of_white(page, self.grid, self._inks) if self._pages else 0.0)
        self._pages.append(page)
        self._placed = []
        self.y = 0.0

    def leave_for_notes(self) -> None:
        """A page of ruled lines for the reader's own notes, where a spread must begin on the next one."""
        grid, styles = self.grid, self.styles
        leading = grid.leading * 2
        rules = tuple(Rectangle(0.0, leading * line, grid.text_width, 0.4, HAIR) for line in range(2, int(grid.text_height // leading)))
        title = words_line("Your notes", styles.section, 0.0, grid.leading)
        self.place(Box(grid.text_height, (title, *rules)), 0.0, 0.0)
        self._running_here = self._title
        self.leave()

    def whole(self, box: Box) -> None:
        """A box across the page, on this page if there is room."""
        above = box.before if not self.fresh else 0.0
        if box.height + above > self.room + 0.01:
            self.turn()
            above = 0.0
        self.place(box, 0.0, self.y + above)
        self.y = self.grid.snapped(self.y + above + box.height)

    def flow(self, boxes: Sequence[Box], count: int | None = None, least_lines: int = 6) -> None:
        """Boxes in ``count`` columns (None: the grid's), over as many pages as they need; balanced on the last."""
        count = count or self.grid.columns
        rest = list(boxes) if self.tears else [replace(box, reluctance=_WHOLE) if _inside_table(box) else box for box in boxes]
        while rest:
            if not self.fresh and self.room < least_lines * self.grid.leading:
                self.turn()
            filled, taken = balanced(rest, count, self.room, self.grid.leading)
            if not self.fresh and any(height_of(part) > self.room + 0.01 for part in filled):
                self.turn()
                continue
            for index, part in enumerate(filled):
                self.stack(part, index * (self.grid.column_width + self.grid.gutter), self.y)
            self.y = self.grid.snapped(self.y + max(height_of(part) for part in filled))
            self.torn += any(_inside_table(part[-1]) for part in filled)
            rest = rest[taken:]
            if rest:
                self.cost += cost_of_break(rest, self.grid.leading)
                again = rest[0].continued
                rest = [*([replace(again, keep=True)] if again else []), *rest]
                self.turn()

    def stack(self, boxes: Sequence[Box], x: float, y: float) -> None:
        """Boxes one below the other, the first at (x, y) from the upper left corner of the text."""
        self.place_all(stacked_at(boxes, x, y))

    def place_all(self, placed: Sequence[tuple[float, float, Box]], down: float = 0.0) -> None:
        """Boxes with their places from the upper left corner of the text, all of them moved ``down``."""
        if placed and not self._placed:
            self._running_here = self._running
        left, top = self.grid.left(self.number), self.grid.top + down
        self._placed += [PlacedBox(left + x, top + y, box) for x, y, box in placed]

    def space(self, lines: float = 1.0) -> None:
        if not self.fresh:
            self.y = min(self.grid.text_height, self.y + lines * self.grid.leading)

    def _furniture(self, page: Page) -> tuple[BoxMark, ...]:
        """Running head, hairline and page number: the outer edge says where one is."""
        if page.running is None:
            return ()
        grid, styles = self.grid, self.styles
        left, right = grid.left(page.number), grid.left(page.number) + grid.text_width
        odd = page.number % 2 == 1
        words = page.running if odd else self._title
        head_y, foot_y = grid.top - grid.leading * 1.9, grid.top + grid.text_height + grid.leading * 1.9
        folio = str(page.number)
        return (
            words_line(words, styles.head, right - width_of(words, styles.head) if odd else left, head_y),
            Rectangle(left, head_y + grid.leading * 0.45, grid.text_width, 0.4, HAIR),
            words_line(folio, styles.folio, right - width_of(folio, styles.folio) if odd else left, foot_y),
        )

    def pages(self) -> tuple[Page, ...]:
        self.turn()
        return tuple(replace(page, furniture=self._furniture(page)) for page in self._pages)


