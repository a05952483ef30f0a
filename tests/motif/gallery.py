"""The gallery: motifs in the trade's notation, and the Fabrics that they work out to. Every one of them is measured, and was looked at."""

from __future__ import annotations

from dataclasses import dataclass

from motifold.render.fabric import Workshop, motif_edge, work_edging, work_motif
from motifold.render.fabric.model import Fabric
from motifold.render.pattern import read_pattern

_HEAD = 'Ch 3 (counts as dc here and throughout)'
_JOIN = "join with sl st in top of beg ch-3."


@dataclass(frozen=True, slots=True)
class Piece:
    """One entry: its shape, its rounds (or rows), and how many of them are worked."""

    name: str
    shape: str
    text: str
    last: int | None = None
    special: tuple[tuple[str, str], ...] = ()
    rows: bool = False
    lace: bool = False


def _open(sides: str, count: int, cluster: int, corner: int, last: int) -> Piece:
    more = count - 1
    first = f"Ch 3 (counts as dc here and throughout), {cluster - 1} dc in"
    place = f"next ch-{corner} sp"
    middle = f"({cluster} dc, ch {corner}, {cluster} dc) in {place}, ch 1, [{cluster} dc in next ch-1 sp, ch 1] to {place}"
    middle = f"[{middle}] {more - 1} times" if more > 2 else middle
    text = f"""
Ring: Ch {max(count, 4)}; join with sl st in first ch to form a ring.
Rnd 1: {first} ring, ch {corner}, [{cluster} dc in ring, ch {corner}] {more} times; {_JOIN}
Rnd 2: Sl st in next ch-{corner} sp, ch 3, {cluster - 1} dc in same sp, ch {corner}, {cluster} dc in same sp, ch 1, [({cluster}
  dc, ch {corner}, {cluster} dc) in next ch-{corner} sp, ch 1] {more} times; {_JOIN}
Rnd 3 and following: Sl st in next ch-{corner} sp, ch 3, {cluster - 1} dc in same sp, ch {corner}, {cluster} dc in same sp, ch 1,
  [{cluster} dc in next ch-1 sp, ch 1] to next ch-{corner} sp, {middle}, ({cluster} dc, ch {corner}, {cluster} dc) in next
  ch-{corner} sp, ch 1, [{cluster} dc in next ch-1 sp, ch 1] to end; {_JOIN}
"""
    return Piece(f"open {sides} of {cluster}s, {last}", sides, text, last)


_CIRCLE = """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
Rnd 3: Ch 3, 2 dc in next st, [dc in next st, 2 dc in next st] around; join with sl st in top of beg ch-3.
Rnd 4: Ch 3, dc in next st, 2 dc in next st, [dc in next 2 sts, 2 dc in next st] around; join with sl st in top of beg ch-3.
Rnd 5: Ch 3, dc in next 2 sts, 2 dc in next st, [dc in next 3 sts, 2 dc in next st] around; join with sl st in top of beg ch-3.
Rnd 6: Ch 3, dc in next 3 sts, 2 dc in next st, [dc in next 4 sts, 2 dc in next st] around; join with sl st in top of beg ch-3.
"""


def _rounds_of_sc(last: int, spiral: bool) -> str:
    lines = ["Ring: Make a magic ring."]
    begin, end = ("", "do not join.") if spiral else ("Ch 1 (does not count as a st), ", "join with sl st in first sc.")
    lines.append(f"Rnd 1: {begin}6 sc in ring; {end}")
    for number in range(2, last + 1):
        plain = f"sc in next {number - 2} sts, " if number > 3 else "sc in next st, " if number == 3 else ""
        lines.append(f"Rnd {number}: {begin}[{plain}2 sc in next st] 6 times; {end}")
    return "\n".join(lines)


def _solid(sides: str, count: int, first: int, group: str, last: int) -> Piece:
    """A solid polygon: ``first`` dc a side, then ``group`` in every corner space."""
    half = group.split(",")[0]
    number = int(half.split()[0])
    chains = group.split(",")[1].strip()
    sp = chains.replace(" ", "-") + " sp"
    begin = f"ch 3, {number - 1} dc in same sp, {chains}, {half} in same sp"
    text = f"""
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), {first - 1} dc in ring, {chains}, [{first} dc in ring, {chains}] {count - 1} times; {_JOIN}
Rnd 2 and following: Sl st in each st to next {sp}, sl st in next {sp}, {begin}, *dc in each st to next {sp}, ({group}) in next
  {sp}; rep from * {count - 2} more times, dc in each st to end; {_JOIN}
"""
    return Piece(f"solid {sides}, {last}", sides, text, last)


_FLOWER = """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 5 times; join with sl st
  in first sc.
Rnd 3: [(sc, hdc, 3 dc, hdc, sc) in next ch-3 sp] 6 times; join with sl st in first sc.
Rnd 4: Ch 1 (does not count as a st), BPsc around first sc of Rnd 2, ch 5, [BPsc around next sc of Rnd 2, ch 5] 5 times; join with
  sl st in first BPsc.
Rnd 5: [(sc, hdc, 5 dc, hdc, sc) in next ch-5 sp] 6 times; join with sl st in first sc.
"""

_FLOWER_SQUARE = """
Ring: Ch 6; join with sl st in first ch to form a ring.
Rnd 1: Ch 1 (does not count as a st), 12 sc in ring; join with sl st in first sc.
Rnd 2: Ch 1 (does not count as a st), sc in same st, ch 3, sk next st, [sc in next st, ch 3, sk next st] 5 times; join with sl st
  in first sc.
Rnd 3: [petal in next ch-3 sp] 6 times; join with sl st in first sc.
Rnd 4: [Sc in center dc of next petal, ch 6] 6 times; join with sl st in first sc.
Rnd 5: Sl st in next ch-6 sp, ch 3 (counts as dc), 7 dc in same sp, [8 dc in next ch-6 sp] 5 times; join with sl st in top of beg ch-3.
Rnd 6: Ch 4 (counts as tr), (2 tr, ch 2, 3 tr) in same st, dc in next 2 sts, hdc in next 2 sts, sc in next 3 sts, hdc in next 2
  sts, dc in next 2 sts, [(3 tr, ch 2, 3 tr) in next st, dc in next 2 sts, hdc in next 2 sts, sc in next 3 sts, hdc in next 2 sts,
  dc in next 2 sts] 3 times; join with sl st in top of beg ch-4.
"""

_LACE = """
Ring: Ch 8; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 5 (counts as dc and ch 2), [sk next st, dc in next st, ch 2] 11 times, sk next st; join with sl st in 3rd ch of beg ch-5.
Rnd 3: Sl st in next ch-2 sp, ch 3 (counts as dc), 3 dc in same sp, [4 dc in next ch-2 sp] 11 times; join with sl st in top of beg ch-3.
Rnd 4: Ch 1 (does not count as a st), sc in same st, ch 5, sk next 3 sts, [sc in next st, ch 5, sk next 3 sts] 11 times; join with
  sl st in first sc.
Rnd 5: Sl st in next 2 ch, sl st in ch-5 sp, ch 1 (does not count as a st), sc in same sp, ch 6, [sc in next ch-5 sp, ch 6] 11
  times; join with sl st in first sc.
Rnd 6: Sl st in next ch-6 sp, ch 3 (counts as dc), 6 dc in same sp, [7 dc in next ch-6 sp] 11 times; join with sl st in top of beg ch-3.
Rnd 7: Ch 4 (counts as dc and ch 1), [sk next st, dc in next st, ch 1] 41 times, sk next st; join with sl st in 3rd ch of beg ch-4.
Rnd 8: Ch 1 (does not count as a st), sc in same st, [sc in next ch-1 sp, sc in next dc] 41 times, sc in next ch-1 sp; join with
  sl st in first sc.
Rnd 9: Ch 1 (does not count as a st), sc in same st, ch 5, sk next 3 sts, [sc in next st, ch 5, sk next 3 sts] 20 times; join with
  sl st in first sc.
Rnd 10: Sl st in next ch-5 sp, ch 1 (does not count as a st), sc in same sp, ch 7, [sc in next ch-5 sp, ch 7] 20 times; join with
  sl st in first sc.
Rnd 11: Ch 1 (does not count as a st), [(4 sc, ch-3 picot, 4 sc) in next ch-7 sp] 21 times; join with sl st in first sc.
"""

_TEXTURE = """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3.
Rnd 3: Ch 1 (does not count as a st), [FPdc around next dc, BPdc around next dc] 12 times; join with sl st in first FPdc.
Rnd 4: Ch 3, dc in same st, [dc in next st, 2 dc in next st] 11 times, dc in next st; join with sl st in top of beg ch-3.
Rnd 5: Ch 3, bump in next st, dc in next st, [dc in next st, bump in next st, dc in next st] 11 times; join with sl st in top of beg ch-3.
Rnd 6: Ch 1 (does not count as a st), [sc in next st, sc2tog] 12 times; join with sl st in first sc.
"""

_OCTAGON = """
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 15 dc in ring; join with sl st in top of beg ch-3.
Rnd 2: Ch 3, 3 dc in next st, [dc in next st, 3 dc in next st] 7 times; join with sl st in top of beg ch-3.
Rnd 3: Ch 3, dc in next st, 3 dc in next st, [dc in next 3 sts, 3 dc in next st] 7 times, dc in next st; join with sl st in top of beg ch-3.
Rnd 4: Ch 3, dc in next 2 sts, 3 dc in next st, [dc in next 5 sts, 3 dc in next st] 7 times, dc in next 2 sts; join with sl st in
  top of beg ch-3.
Rnd 5: Ch 3, dc in next 3 sts, 3 dc in next st, [dc in next 7 sts, 3 dc in next st] 7 times, dc in next 3 sts; join with sl st in
  top of beg ch-3.
"""

PIECES: tuple[Piece, ...] = (
    _open("square", 4, 3, 2, 3),
    _open("square", 4, 3, 2, 5),
    _open("square", 4, 3, 2, 12),
    _solid("square", 4, 3, "2 dc, ch 2, 2 dc", 5),
    _solid("square", 4, 3, "2 dc, ch 2, 2 dc", 10),
    Piece("dc circle, 6", "circle", _CIRCLE),
    Piece("sc circle, 12", "circle", _rounds_of_sc(12, False)),
    Piece("sc spiral, 12", "circle", _rounds_of_sc(12, True)),
    _open("hexagon", 6, 2, 2, 5),
    _open("hexagon", 6, 3, 2, 5),
    Piece("solid octagon, 5", "octagon", _OCTAGON),
    _open("triangle", 3, 3, 3, 5),
    _solid("triangle", 3, 4, "2 dc, ch 3, 2 dc", 4),
    Piece("flower, loops behind", "flower", _FLOWER),
    Piece("flower to square", "square", _FLOWER_SQUARE, special=(("petal", "(sc, hdc, 3 dc, hdc, sc) in same sp"),)),
    Piece("lace wheel, 11", "circle", _LACE, lace=True),
    Piece("posts, popcorns, decreases", "circle", _TEXTURE, special=(("bump", "4 dc in same st, gathered"),)),
    Piece(
        "half hexagon", "half hexagon", """
Ring: Make a magic ring.
Row 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, 3 dc in ring, ch 2, 3 dc in ring, turn.
Row 2: Ch 3, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc)
  in next ch-2 sp, dc in each st to end, turn.
Row 3: Ch 3, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc)
  in next ch-2 sp, dc in each st to end, turn.
""", rows=True),
    Piece(
        "swatch 20 x 8", "swatch", """
Chain: Ch 22.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch to end, turn.
Row 2 and following: Ch 3 (counts as dc), sk first st, dc in each st to end, turn.
""", last=8, rows=True),
)  # fmt: skip


def fabric_of(piece: Piece) -> Fabric:
    """Work a piece; AssertionError where its text does not prove."""
    rows = "rows" if piece.rows else "rounds"
    special = "".join(f'[stitch.{key}]\nmeans = "{means}"\n' for key, means in piece.special)
    motif_text = f'[motif.m]\nshape = "{piece.shape}"\n{rows} = """{piece.text}"""\n'
    source = f'[pattern]\ntitle = "T"\nterms = "US"\n[yarn.A]\nname = "Grey"\n{special}{motif_text}'
    reading = read_pattern("gallery.toml", source.encode())
    assert reading.pattern is not None, reading.problems
    motif = reading.pattern.motifs[0]
    definitions = {s.key: s.definition for s in reading.pattern.stitches if s.definition}
    fabric, problems = work_motif(motif, Workshop(definitions, ("A",), piece.last, 0, None, "US", None))
    wrong = [p for p in (*reading.problems, *problems) if p.severity == "error"]
    assert not wrong, [(p.span.line if p.span else None, p.message, p.hint) for p in wrong]
    return fabric


__all__ = ["PIECES", "Piece", "fabric_of", "motif_edge", "work_edging"]
