"""Bodies while they are pushed: arrays of all their points and pieces of ink, and the steps that bring them back to what they keep to."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from motifold.render.motif.bodies import Bodies
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    ComplexArray = NDArray[np.complex128]
    FloatArray = NDArray[np.float64]
    IntArray = NDArray[np.int64]

_AFTER = 0.03
"""A head at least so far behind the one before it, round the centre."""
_HARD = 0.008
"""What moves less easily than this, together, is not pushed."""
_EAGER = 1.3
"""Pushes are averaged over all that a body meets, and made a little larger for it."""


@dataclass(slots=True)
class Ink:
    """Every stroke cut into straight pieces: their ends as drawn, half their width, their body (the last one stays where it is), where on
    it the ends are, and the symbol that they belong to. Of each symbol its first piece and how many it has.
    """

    start: ComplexArray
    end: ComplexArray
    half: FloatArray
    body: IntArray
    at_start: ComplexArray
    at_end: ComplexArray
    owner: IntArray
    first: IntArray
    count: IntArray


@dataclass(slots=True)
class State:
    """``move``: of both points of every class, two rows; ``ease``, ``most`` alike. ``cls``, ``turn``: of every body; the last body and the
    last class stay. ``rail``: see ``Kind``; ``held`` too, with the class that is.
    """

    given: Bodies
    ink: Ink
    cls: IntArray
    turn: ComplexArray
    points: ComplexArray
    move: ComplexArray
    ease: FloatArray
    most: FloatArray
    length: FloatArray
    rail: ComplexArray
    round: IntArray
    held: list[tuple[int, tuple[int, float]]]
    smoothing: tuple[IntArray, IntArray, ComplexArray, IntArray, ComplexArray]
    ties: tuple[IntArray, IntArray, FloatArray, FloatArray, ComplexArray, FloatArray, FloatArray]


def state_of(given: Bodies) -> State:
    """Bodies as arrays, nothing moved yet."""
    import numpy as np

    kinds, bodies = given.kinds, given.bodies
    count = len(kinds)
    points = np.zeros((2, count + 1), dtype=complex)
    ease, most, length = np.zeros((2, count + 1)), np.zeros((2, count + 1)), np.zeros((2, count + 1))
    rail = np.zeros(count + 1, dtype=complex)
    points[1, count] = 1.0
    for k, kind in enumerate(kinds):
        points[:, k] = kind.first, kind.second
        ease[:, k], most[:, k], length[:, k] = kind.ease, kind.most, kind.length
        rail[k] = kind.rail / (abs(kind.rail) or 1.0)
    cls = np.array([body.cls for body in bodies] + [count])
    turn = np.array([body.turn for body in bodies] + [1.0], dtype=complex)
    on_round = np.array([k for k, kind in enumerate(kinds) if kind.round], dtype=np.int64)
    held = [(k, kind.held) for k, kind in enumerate(kinds) if kind.held is not None]
    return State(
        given, _ink_of(given), cls, turn, points, np.zeros((2, count + 1), dtype=complex), ease, most, length, rail, on_round, held,
        _smoothing(given.runs), _ties(given),
    )  # fmt: skip


def _ink_of(given: Bodies) -> Ink:
    import numpy as np

    stays = len(given.bodies)
    counts = np.array([len(piece.segments) for piece in given.pieces], dtype=np.int64)
    segments = [segment for piece in given.pieces for segment in piece.segments]
    start = np.array([s[0] for s in segments], dtype=complex)
    end = np.array([s[1] for s in segments], dtype=complex)
    half = np.array([s[2] for s in segments], dtype=float)
    owner = np.repeat(np.arange(len(counts)), counts)
    body = np.array([stays if piece.body is None else piece.body for piece in given.pieces])[owner]
    first = np.array([b.first for b in given.bodies] + [0j])
    second = np.array([b.second for b in given.bodies] + [1 + 0j])
    span = second - first
    span = np.where(np.abs(span) < 1e-9, 1.0, span)
    tilts = np.array([b.tilts for b in given.bodies] + [False])[body]
    at_start, at_end = (start - first[body]) / span[body], (end - first[body]) / span[body]
    at_start, at_end = np.where(tilts, at_start, np.clip(at_start.real, 0.0, 1.0)), np.where(tilts, at_end, np.clip(at_end.real, 0.0, 1.0))
    return Ink(start, end, half, body, at_start, at_end, owner, np.cumsum(counts) - counts, counts)


def _smoothing(runs: Sequence[Sequence[tuple[int, int, complex]]]) -> tuple[IntArray, IntArray, ComplexArray, IntArray, ComplexArray]:
    """Of every inner point of a run (as row and class) the points before and behind it, each with the turn of its place."""
    import numpy as np

    rows = [
        (own[1], own[0], before[1], before[0], before[2], after[1], after[0], after[2])
        for run in runs
        for before, own, after in zip(run, run[1:], run[2:], strict=False)
    ]
    own = np.array([r[:2] for r in rows], dtype=np.int64).reshape(-1, 2)
    before = np.array([r[2:4] for r in rows], dtype=np.int64).reshape(-1, 2)
    after = np.array([r[5:7] for r in rows], dtype=np.int64).reshape(-1, 2)
    return own, before, np.array([r[4] for r in rows], dtype=complex), after, np.array([r[7] for r in rows], dtype=complex)


def _ties(given: Bodies) -> tuple[IntArray, IntArray, FloatArray, FloatArray, ComplexArray, FloatArray, FloatArray]:
    import numpy as np

    ties = given.ties
    return (
        np.array([t.one for t in ties], dtype=np.int64), np.array([t.other for t in ties], dtype=np.int64),
        np.array([t.parts[0] for t in ties], dtype=float), np.array([t.parts[1] for t in ties], dtype=float),
        np.array([t.turn for t in ties], dtype=complex),
        np.array([t.least for t in ties], dtype=float), np.array([t.most for t in ties], dtype=float),
    )  # fmt: skip


def body_moves(state: State) -> tuple[ComplexArray, ComplexArray]:
    """How far both points of every body are moved, each in its own place."""
    return state.turn * state.move[0][state.cls], state.turn * state.move[1][state.cls]


def ends(state: State) -> tuple[ComplexArray, ComplexArray]:
    """Where both ends of every piece of ink are now."""
    ink = state.ink
    first, second = body_moves(state)
    low, high = first[ink.body], second[ink.body]
    return ink.start + (1 - ink.at_start) * low + ink.at_start * high, ink.end + (1 - ink.at_end) * low + ink.at_end * high


def push(state: State, one: IntArray, here: ComplexArray, other: IntArray, there: ComplexArray, way: ComplexArray, gap: FloatArray) -> None:
    """Part pairs of pieces of ink: ``one`` along ``way``, ``other`` against it, together by ``gap``, as easily as each moves."""
    import numpy as np

    sides = [_side(state, one, here, way), _side(state, other, there, -way)]
    mass = sides[0][0] + sides[1][0]
    amount = np.where(mass > _HARD, gap / np.maximum(mass, _HARD), 0.0)
    total, count = np.zeros_like(state.move), np.zeros(state.move.shape)
    for _, cls, moves in sides:
        for row in (0, 1):
            np.add.at(total[row], cls, moves[row] * amount)
            np.add.at(count[row], cls, (np.abs(moves[row]) * amount > 1e-9).astype(float))
    state.move += _EAGER * total / np.maximum(count, 1.0)


def _side(
    state: State, piece: IntArray, at: ComplexArray, way: ComplexArray
) -> tuple[FloatArray, IntArray, tuple[ComplexArray, ComplexArray]]:
    """How easily one side of some contacts moves along ``way``, its classes, and both points' moves for a unit of push."""
    import numpy as np

    body = state.ink.body[piece]
    cls, turn = state.cls[body], state.turn[body]
    first, second = state.points[0][cls] + state.move[0][cls], state.points[1][cls] + state.move[1][cls]
    local = (at / turn - first) / np.where(np.abs(second - first) < 1e-9, 1.0, second - first)
    part = np.clip(local.real, 0.0, 1.0)
    own = way / turn
    rail = state.rail[cls]
    bound = np.abs(rail) > 0.5
    along = np.where(bound, rail * (own.real * rail.real + own.imag * rail.imag), own)
    low, high = (1 - part) * state.ease[0][cls], part * state.ease[1][cls]
    mass = (1 - part) * low + part * high * np.abs(along) ** 2
    return mass, cls, (low * own, high * along)


def smooth(state: State, much: float) -> None:
    """Points of a run follow their neighbours' moves, so that the run keeps its bow."""
    own, before, turn_before, after, turn_after = state.smoothing
    if not len(own):
        return
    move = state.move
    mean = (move[before[:, 0], before[:, 1]] * turn_before + move[after[:, 0], after[:, 1]] * turn_after) / 2
    here = move[own[:, 0], own[:, 1]]
    move[own[:, 0], own[:, 1]] = here + much * (mean - here)


def tie(state: State) -> None:
    """Neighbours of a run no nearer and no further than they may be."""
    import numpy as np

    one, other, part, part_other, turn, least, most = state.ties
    if not len(one):
        return
    now = state.points + state.move
    a = now[0][one] * (1 - part) + now[1][one] * part
    b = (now[0][other] * (1 - part_other) + now[1][other] * part_other) * turn
    way = b - a
    away = np.maximum(np.abs(way), 1e-9)
    lack = np.clip(away, least, most) - away
    mass = _ease_at(state, one, part) + _ease_at(state, other, part_other)
    shift = way / away * np.where(mass > 0.02, lack / np.maximum(mass, 0.02), 0.0)
    total, count = np.zeros_like(state.move), np.zeros(state.move.shape)
    for cls, share, moved in ((one, part, -shift), (other, part_other, shift / turn)):
        for row, weight in ((0, 1 - share), (1, share)):
            np.add.at(total[row], cls, weight * state.ease[row][cls] * moved)
            np.add.at(count[row], cls, ((np.abs(lack) > 1e-9) & (weight > 0)).astype(float))
    state.move += total / np.maximum(count, 1.0)


def in_order(state: State) -> None:
    """Heads of a round that stand on no common outline keep their order about its centre."""
    import numpy as np

    if state.given.level or not state.given.stems:
        return
    count = state.given.stems
    heads = state.points[1][:count] + state.move[1][:count]
    after = np.concatenate((heads[1:], heads[:1] * state.given.lap))
    before = np.concatenate((state.points[1][1:count], state.points[1][:1] * state.given.lap))
    least = np.minimum(np.angle(before / state.points[1][:count]), _AFTER / np.maximum(np.abs(heads), 1.0))
    lack = np.maximum(least - np.angle(after / heads), 0.0) / 2
    free = state.ease[1][:count] > 0
    back = np.where(free, lack, 0.0)
    ahead = np.where(np.roll(free, -1), lack, 0.0)
    state.move[1][:count] += heads * (np.exp(1j * (np.roll(ahead, 1) - back)) - 1)


def _ease_at(state: State, cls: IntArray, part: FloatArray) -> FloatArray:
    eased: FloatArray = (1 - part) ** 2 * state.ease[0][cls] + part**2 * state.ease[1][cls]
    return eased


def keep(state: State) -> None:
    """Every body within its length, every point within its reach and on its rail, every picot on what bears it."""
    import numpy as np

    now = state.points + state.move
    way = now[1] - now[0]
    away = np.maximum(np.abs(way), 1e-9)
    mass = state.ease.sum(axis=0)
    stretch = way / away * (np.clip(away, state.length[0], state.length[1]) - away) / np.maximum(mass, 0.02)
    free = (mass > 0.02) & (state.length[1] > 0)
    state.move[0] -= np.where(free, stretch * state.ease[0], 0.0)
    state.move[1] += np.where(free, stretch * state.ease[1], 0.0)
    bound = np.abs(state.rail) > 0.5
    on = state.rail * (state.move[1].real * state.rail.real + state.move[1].imag * state.rail.imag)
    state.move[1] = np.where(bound, on, state.move[1])
    # A foot slides along its base, never into it or off it.
    across = 1j * way / away
    slid = across * (state.move[0].real * across.real + state.move[0].imag * across.imag)
    state.move[0] = np.where((state.ease[0] > 0) & (state.ease[0] < 1.0), slid, state.move[0])
    far = np.abs(state.move)
    state.move *= np.where(far > state.most, state.most / np.maximum(far, 1e-9), 1.0)
    if len(state.round):
        ring = state.points[1][state.round]
        moved = ring + state.move[1][state.round]
        state.move[1][state.round] = moved / np.abs(moved) * np.abs(ring) - ring
    for k, (cls, part) in state.held:
        state.move[0][k] = (1 - part) * state.move[0][cls] + part * state.move[1][cls]
        way_k = state.points[1][k] + state.move[1][k] - state.points[0][k] - state.move[0][k]
        state.move[1][k] = state.move[0][k] + state.points[0][k] + way_k / abs(way_k) * state.length[0][k] - state.points[1][k]
