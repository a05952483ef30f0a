"""What a size has of its own: the pattern as that size works it."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.model import Gauge, GaugePoint, OwnOfSize, Pattern


def own_of(pattern: Pattern, size_name: str) -> OwnOfSize | None:
    return pattern.size.own.get(size_name) if pattern.size is not None else None


def reckoned_by_hook(pattern: Pattern, size_name: str) -> bool:
    """Whether a size has a hook of its own and no swatch made with it: all that it measures is an estimate."""
    gauge = pattern_of_size(pattern, size_name).gauge
    return gauge is not None and gauge.by_hook


def _own_gauge(pattern: Pattern, own: OwnOfSize) -> Gauge | None:
    """A size's own swatch; without one the common swatch, as much wider as the size's hook is thicker."""
    gauge, hook, common = pattern.gauge, own.hook, pattern.materials.hook
    if own.gauge is not None or gauge is None or hook is None or common is None or hook.kind != "length" or hook.kind != common.kind:
        return own.gauge or gauge
    ratio = float(hook.cm) / float(common.cm) if common.cm else 1.0
    if abs(ratio - 1) < 1e-9:
        return gauge
    return replace(
        gauge,
        points=tuple(GaugePoint(point.rounds, point.width_cm * ratio) for point in gauge.points),
        width_cm=gauge.width_cm * ratio if gauge.width_cm else gauge.width_cm,
        height_cm=gauge.height_cm * ratio if gauge.height_cm else gauge.height_cm,
        grams=None,
        by_hook=True,
    )


def pattern_of_size(pattern: Pattern, size_name: str) -> Pattern:
    """The pattern with the number across, the hook, the swatch and the net that this size has of its own; itself where it has none."""
    own = own_of(pattern, size_name)
    if own is None or pattern.size is None:
        return pattern
    return replace(
        pattern,
        size=replace(pattern.size, across=own.across if own.across is not None else pattern.size.across),
        gauge=_own_gauge(pattern, own),
        assembly=own.assembly or pattern.assembly,
        materials=replace(pattern.materials, hook=own.hook or pattern.materials.hook),
    )
