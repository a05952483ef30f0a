"""What a size has of its own: the pattern as that size works it."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.model import OwnOfSize, Pattern


def own_of(pattern: Pattern, size_name: str) -> OwnOfSize | None:
    return pattern.size.own.get(size_name) if pattern.size is not None else None


def pattern_of_size(pattern: Pattern, size_name: str) -> Pattern:
    """The pattern with the number across, the hook, the swatch and the net that this size has of its own; itself where it has none."""
    own = own_of(pattern, size_name)
    if own is None or pattern.size is None:
        return pattern
    return replace(
        pattern,
        size=replace(pattern.size, across=own.across if own.across is not None else pattern.size.across),
        gauge=own.gauge or pattern.gauge,
        assembly=own.assembly or pattern.assembly,
        materials=replace(pattern.materials, hook=own.hook or pattern.materials.hook),
    )
