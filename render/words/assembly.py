"""How the panels are joined, step by step."""

from __future__ import annotations

from motifold.render.sizing.yarn import motif_copies
from motifold.render.words.model import Block, Items, Paragraph, Section
from motifold.render.words.printed import Printed, listed, titled
from motifold.render.words.voice import NBSP, plural_of


def assembly_section(told: Printed) -> Section | None:
    """What to make, and the steps of the assembly in their order; None where nothing is assembled."""
    size = next((size for size in told.sizes if size.assembly is not None), None)
    if size is None or size.assembly is None:
        return None
    assembly = size.assembly
    copies = motif_copies(size.fabrics, assembly)
    used = {panel.motif for panel in assembly.panels}
    made = [f"{copies[name]}{NBSP}{_noun(name, copies[name])}" for name in copies if name in used]
    blocks: list[Block] = [Paragraph(f"Make {listed(made)}.")] if made else []
    steps = _steps(told)
    if steps:
        blocks.append(Items(tuple(step for step in steps), numbered=True))
    return Section("assembly", "Assembly", tuple(blocks))


def _noun(name: str, number: int) -> str:
    noun = titled(name).lower()
    return noun if number == 1 else plural_of(noun)


def _steps(told: Printed) -> tuple[str, ...]:
    return ()
