"""The pictures of sizes and yarn, where they are asked for: the growth curve, yarn by colour and part, the plan of the colourways."""

from __future__ import annotations

from motifold.render.booklet.model import Figure, Look
from motifold.render.drawing.display import Drawing
from motifold.render.worked import Worked, needs_by_size


def number_figures(worked: Worked, look: Look) -> tuple[Figure, ...]:
    """Each below the words that it pictures: the curve below the sizes, yarn and colourways below the materials."""
    from motifold.render.sizing.bars import draw_yarn
    from motifold.render.sizing.curve import draw_growth
    from motifold.render.sizing.plan import draw_placing

    sizes = [size for size in worked.sizes if look.size is None or size.choice.name == look.size]
    needs = {name: found for name, found in needs_by_size(worked).items() if any(size.choice.name == name for size in sizes)}
    curve = draw_growth(worked.pattern, worked.table) if worked.table is not None else None
    plan = draw_placing(worked.pattern, sizes[0].assembly) if sizes else None
    drawn: tuple[tuple[Drawing | None, str, str], ...] = (
        (curve, "How the motif grows, and whom it fits.", "sizes"),
        (draw_yarn(worked.pattern, needs), "Yarn by colour and part.", "materials"),
        (plan, "Where each colourway goes.", "materials"),
    )
    found = [(drawing, caption, subject) for drawing, caption, subject in drawn if drawing is not None]
    return tuple(Figure("numbers", drawing, caption, subject, largest=1.0, comfortable=0.7) for drawing, caption, subject in found)
