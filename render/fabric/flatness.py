"""Whether a plain round can lie flat: how much it grows against what its stitches need."""

from __future__ import annotations

import math
from itertools import pairwise

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.wording import key_of, label_span, round_word, stitch_word

_HEIGHT_OVER_WIDTH = {"sc": (0.8, 1.1), "hdc": (1.2, 1.6), "dc": (1.5, 2.2), "tr": (2.2, 2.9)}
"""Stitch height over width, from gauges and rules of thumb in print: 16 sc by 20 rows to 13 sc by 12 rows over 4 in; the rules of 6 sc,
8 hdc, 12 dc and 15 to 18 tr a round. Hands differ by as much again, so a fifth more is allowed on either side."""

_TOLERANCE = 0.2


def warn_of_shape(hook: Hook, lap: Lap) -> None:
    """Warns once where two plain joined rounds one after the other grow too much, or, in a piece with corners, too little to lie flat.

    A flat piece grows by 2 pi h/w stitches a round, one with n corners by 2 n tan(pi / n) h/w.
    """
    if lap.line is None or len(hook.laps) < 2 or lap is not hook.laps[-1]:
        return
    lap.bend = _bend(hook, lap, hook.laps[-2])
    before = hook.laps[-2]
    if not lap.bend or lap.bend != before.bend or (lap.bend < 0 and hook.polygon < 3):
        return
    kind = next(iter(lap.counts))
    if lap.bend > 0:
        verb, hint = "ruffle", "increase less in each round, or say so in the notes if it is meant"
    else:
        verb, hint = "cup", "increase more in each round, or say so in the notes if it is meant"
    grows = lap.met - before.met
    hook.complain(
        "flat",
        label_span(lap.line.span, lap.label),
        f"from {round_word(before)} on the work will {verb}: {grows} {stitch_word(kind, hook.shop.terms, 2)} more in a round",
        hint,
        severity="warning",
        key=key_of(hook.laps[0].line.span) if hook.laps[0].line is not None else 1,
        follows=True,
    )


def warn_of_cup(hook: Hook) -> None:
    """Warns where a circle that began flat goes on with too few increases.

    Silent where a cup is plainly meant: in a spiral, a cone from the start, or once a round no longer grows.
    """
    laps = [lap for lap in hook.laps if lap.kind == "round"]
    grows = [lap.met - before.met for before, lap in pairwise(laps)]
    if hook.polygon >= 3 or hook.tainted or len(grows) < 4 or min(grows) <= 0:
        return
    bends = [_bend(hook, lap, before) for before, lap in pairwise(laps)]
    flat = next((number for number, bend in enumerate(bends) if bend < 0), 0)
    lap = laps[flat + 1]
    if flat < 2 or any(bend >= 0 for bend in bends[flat:]) or len(bends) - flat < 2 or lap.line is None or len(lap.parts) != 1:
        return
    word = stitch_word(next(iter(lap.parts)), hook.shop.terms, 2)
    hook.complain(
        "flat",
        label_span(lap.line.span, lap.label),
        f"from {round_word(lap)} on the work will cup: {grows[flat]} {word} more in a round",
        "increase more in each round, or say so in the notes if it is meant",
        severity="warning",
        key=key_of(lap.line.span),
        follows=True,
    )


def _bend(hook: Hook, lap: Lap, before: Lap) -> int:
    """+1: grows too much to lie flat; -1: too little; 0: flat, or not a plain round of which it can be told."""
    if lap.kind != "round" or lap.end != "joined" or before.kind != "round" or before.end != "joined":
        return 0
    kinds = set(lap.parts) | set(before.parts)
    stitches = {kind for kind in kinds if not kind.endswith(" sp")}
    spaces = [atom for atom in (*lap.atoms, *before.atoms) if atom.space and not atom.corner]
    if len(stitches) != 1 or spaces or not stitches <= set(_HEIGHT_OVER_WIDTH):
        return 0
    low, high = _HEIGHT_OVER_WIDTH[next(iter(stitches))]
    corners = hook.polygon
    need = 2 * corners * math.tan(math.pi / corners) if corners >= 3 else 2 * math.pi
    grows = lap.met - before.met
    grows += sum(atom.chains for atom in lap.atoms if atom.space) - sum(atom.chains for atom in before.atoms if atom.space)
    if grows > need * high * (1 + _TOLERANCE):
        return 1
    if 0 < grows < need * low * (1 - _TOLERANCE):
        return -1
    return 0
