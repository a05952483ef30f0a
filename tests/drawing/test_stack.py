"""Several drawings on one sheet: a grid near a page's proportions, nothing over its neighbour."""

from __future__ import annotations

from itertools import combinations

import pytest

from motifold.render.drawing.display import Drawing, FillPath, Group, Path
from motifold.render.drawing.measure import bounds
from motifold.render.drawing.stack import stack


def tile(width: float, height: float, name: str) -> Drawing:
    box = Path((("M", -1, -1), ("L", width - 1, -1), ("L", width - 1, height - 1), ("L", -1, height - 1), ("Z",)))
    return Drawing((-1, -1, width - 1, height - 1), (FillPath(box, "#000000"),), name, f"{name}.")


@pytest.mark.parametrize("count", [2, 3, 7, 15])
def test_many_drawings_make_a_page_and_no_strip(count: int) -> None:
    sheet = stack([tile(60 + i % 3, 70, f"step {i}") for i in range(count)])
    assert 0.6 < sheet.height_mm / sheet.width_mm < 2.5
    boxes = [bounds([op]) for op in sheet.operations]
    assert len(boxes) == count
    for a, b in combinations(boxes, 2):
        assert a is not None and b is not None
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
    for box in boxes:
        assert box is not None
        assert sheet.box[0] - 1e-6 <= box[0] and box[2] <= sheet.box[2] + 1e-6
        assert sheet.box[1] - 1e-6 <= box[1] and box[3] <= sheet.box[3] + 1e-6


def test_each_keeps_its_title() -> None:
    sheet = stack([tile(10, 10, "a"), tile(10, 10, "b")])
    assert [op.title for op in sheet.operations if isinstance(op, Group)] == ["a", "b"]
    assert sheet.title == "a; b"


def test_one_drawing_is_itself_and_none_is_a_mistake() -> None:
    one = tile(10, 10, "a")
    assert stack([one]) is one
    with pytest.raises(ValueError, match="no drawings"):
        stack([])
