"""Every form of the notation in a small whole piece: how it is written, in which terms, and the counts that hand arithmetic gives.

``FORMS``: (text after a base, base, {round: counts}); ``WHOLE``: (name, text, shape, own stitches, {round: counts}).
"""

# ruff: noqa: E501
# Each line of a pattern is one line here, as a designer writes it.

from __future__ import annotations

Counts = dict[int, dict[str, int]]

BASES: dict[str, tuple[str, str, str]] = {
    "ring": ("US", "rounds", "Ring: Make a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)\n"),
    "anneau": ("UK", "rounds", "Ring: Make a magic ring.\nRnd 1: Ch 3 (counts as tr), 11 tr in ring; join with ss in top of beg 3-ch. (12 tr)\n"),
    "block": ("US", "rows", "Row 1: Ch 6, dc in 4th ch from hook, dc in each of next 2 ch; turn. (3 dc, 1 ch-3 sp)\n"),
    "spiral": ("US", "rounds", "Ring: Make a magic ring.\nRnd 1: 6 sc in ring. (6 sc)\n"),
    "loops": ("US", "rounds", "Ring: Ch 6; join with sl st in first ch to form a ring.\nRnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)\nRnd 2: Ch 1, sc in same st, [ch 5, sk next sc, sc in next sc] 5 times, ch 5, sk next sc; join with sl st in first sc. (6 sc, 6 ch-5 sps)\n"),
    "sc rows": ("US", "rows", "Chain: Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (20 sc)\n"),
    "dc rows": ("US", "rows", "Chain: Ch 21.\nRow 1: Dc in 4th ch from hook (missed 3 ch count as dc) and in each ch across; turn. (19 dc)\n"),
    "mesh": ("US", "rows", "Chain: Ch 21.\nRow 1: Dc in 4th ch from hook (missed 3 ch count as dc) and in each ch across; turn. (19 dc)\nRow 2: Ch 5 (counts as dc and ch 2), sk first 3 dc, dc in next dc, [ch 2, sk 2 dc, dc in next dc] across; turn. (7 dc, 6 ch-2 sps)\n"),
}  # fmt: skip
"""Name -> terms, rounds or rows, text."""

FORMS: list[tuple[str, str, Counts]] = [
    # terse, as for toys
    ("Rnd 2: inc x 6 (12)\nR3: (sc 1, inc) * 6 [18]\nR4: (sc, sc, inc) *6 [24]\nRnd 5: [sc 3, inc]x6 = 30\nRnd 6: 6x (4 sc, inc) (36)\n", "spiral", {3: {"sc": 18}, 4: {"sc": 24}, 5: {"sc": 30}, 6: {"sc": 36}}),
    ("R2: 6 inc (12)\nR3: 6x[1sc, inc] (18)\nR4. *2 sc, inc* x 6 (24)\nR5 - *inc, 3sc* repeat 6 times - 30\n", "spiral", {3: {"sc": 18}, 4: {"sc": 24}, 5: {"sc": 30}}),
    ("R2: inc in all 6 sts (12)\nR3: (sc in next st, inc in next st) repeat 6 times (18)\nR4: sc in all 18 sts around (18)\nR5: sc in next 5, inc in next 3, sc in next 10 (21)\n", "spiral", {2: {"sc": 12}, 4: {"sc": 18}, 5: {"sc": 21}}),
    ("Rnd 2: inc six times (12)\nRnd 3: 6 times: (sc, inc) (18)\nRnd 4: (sc in each of the next two stitches, increase) six times. (24)\nRnds 5 – 6: sc around (24)\nRnd 7: (2 sc, invdec) x 6 (18)\nBegin stuffing.\nRnd 8: (1 sc, inv dec) x 6 (12)\nStuff firmly.\nRnd 9: 6 invisible decreases (6)\nFasten off, leaving a long tail. Thread the tail through the front loops of the last round and pull tight.\n", "spiral", {4: {"sc": 24}, 6: {"sc": 24}, 7: {"sc": 12, "inv dec": 6}, 9: {"inv dec": 6}}),
    ("2nd round. 2 sc in each st around. 12 sc\n3rd round: * 1 sc in next st, 2 sc in next st, repeat from * to end of round. 18 sc.\n4th rnd – (1 sc in each of next 2 sts, 2 sc in next st) 6 times – 24 sc\n", "spiral", {2: {"sc": 12}, 3: {"sc": 18}, 4: {"sc": 24}}),
    ("R2: inc in each st (12)\nR3: sc in next st, inc in next st, rep around (18)\nR4: *sc in each of next 2 sc, 2 sc in next sc. Repeat from * around. (24 sc)\n", "spiral", {3: {"sc": 18}, 4: {"sc": 24}}),
    ("Round 2: Work two single crochet stitches into each stitch around. (12 stitches)\nRound 3: Work one single crochet into the next stitch, then work two single crochets into the following stitch; repeat from the beginning to the end of the round. (18)\n", "spiral", {2: {"sc": 12}, 3: {"sc": 18}}),
    ("Rnd 2: Sc in next 2 sts, 3-in-1 inc, sc in next 2 sts, sc 3-in-1 inc. (10 sc)\n", "spiral", {2: {"sc": 10}}),
    # in full words
    ("Rnd 2: Chain three, one double crochet in the same stitch, two double crochet in each of the next eleven stitches; join with a slip stitch to the top of the beginning chain three. (twenty four double crochet)\n", "ring", {2: {"dc": 24}}),
    ("Rnd 2: Chain 3, work 3 double crochet into the same stitch, work 1 double crochet into each stitch around. Join. (15 dc)\n", "ring", {2: {"dc": 15}}),
    ("Rnd 2: Ch 3 (counts as dc), dc in same stitch, dc in each of the next 5 stitches, 2 dc in next stitch, dc in each of the last 5 stitches, join to top of ch 3. (14 dc)\n", "ring", {2: {"dc": 14}}),
    ("Rnd 2: Ch 3, 1 dc into every st of previous round; join. (12 dc)\n", "ring", {2: {"dc": 12}}),
    ("Rnd 2: Ch 1, sc around, join. (12 sc)\n", "ring", {2: {"sc": 12}}),
    ("Rnd 2: Ch 4 (counts as 1 dc, 1 ch), *dc in next dc, ch 1; repeat from * to end of round; slip stitch into third chain of beginning chain 4 to join. (12 dc, 12 ch-1 sps)\nRnd 3: Slip stitch into first ch-1 space, ch 3, dc in same space, 2 dc into each ch-1 space around; join. (24 dc)\n", "ring", {2: {"dc": 12, "ch-1 sp": 12}, 3: {"dc": 24}}),
    # UK, as in a magazine
    ("Rnd 2: Ch 3 (counts as tr), tr in same st, 2 tr in each st around, ss to top of 3-ch. (24 tr)\nRnd 3: 1 ch, *1 dc into next tr, 3 ch, miss 1 tr; rep from * to end, ss into first dc. (12 dc, 12 3-ch sps)\nRnd 4: Ss into 3-ch sp, 3 ch, (1 tr, 2 ch, 2 tr) into same 3-ch sp, *1 dc into next 3-ch sp, (2 tr, 2 ch, 2 tr) into next 3-ch sp; rep from * 4 more times, 1 dc into last sp, ss into 3rd of 3 ch. (24 tr, 6 dc, 6 2-ch sps)\n", "anneau", {2: {"dc": 24}, 3: {"sc": 12, "ch-3 sp": 12}, 4: {"dc": 24, "sc": 6, "ch-2 sp": 6}}),
    ("Round 2: 3 chain, 1 treble into the same place, 2 treble into every stitch to end, slip stitch to the top of 3 chain. 24 treble.\nRound 3: 1 chain, 1 double crochet in each stitch, join with a slip stitch.\n", "anneau", {2: {"dc": 24}, 3: {"sc": 24}}),
    ("Rnd 2: Ch 2 (counts as htr), htr in same st, 2 htr in each st to end, ss in 2nd ch of beg 2-ch. Break yarn. (24 htr)\nRnd 3: Join B in any st with ss, ch 4 (counts as dtr), dtr in each st to end, ss in top of 4-ch. (24 dtr)\n", "anneau", {2: {"hdc": 24}, 3: {"tr": 24}}),
    # repeats and their ends
    ("Rnd 2: Ch 1, *sc in next dc, 2 sc in next dc*, repeat between * and * 6 times; join. (18 sc)\n", "ring", {2: {"sc": 18}}),
    ("Rnd 2: Ch 1, *sc in next dc, 2 sc in next dc*, rep between * and * 5 more times; join. (18 sc)\n", "ring", {2: {"sc": 18}}),
    ("Rnd 2: Ch 1, *sc in next 3 dc, 2 sc in each of next 3 dc*, rep between * and * once; join. (18 sc)\n", "ring", {2: {"sc": 18}}),
    ("Rnd 2: Ch 1, *sc in next dc, 2 sc in next dc; rep from * 5 times; join. (18 sc)\n", "ring", {2: {"sc": 18}}),
    ("Rnd 2: Ch 1, *sc in next dc, 2 sc in next dc; rep from * for a total of 6 times; join. (18 sc)\n", "ring", {2: {"sc": 18}}),
    ("Rnd 2: Ch 1, *sc in next dc, ch 3, sk next dc, sc in next dc**, ch 5; rep from * around, ending third rep at **; join. (8 sc, 4 ch-3 sps, 3 ch-5 sps)\n", "ring", {2: {"sc": 8, "ch-3 sp": 4, "ch-5 sp": 3}}),
    ("Rnd 2: Ch 1, sc in same st, *ch\u20113, sk next dc, sc in next dc; rep from * around, ch\u20113, sk last dc; join. (6 sc, 6 ch\u20113 sps)\n", "ring", {2: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 2: Ch 1, sc in same st, *ch 3, sk next dc, sc in next dc; rep from * around, ending with ch 3; join. (6 sc, 6 ch-3 sps)\n", "ring", {2: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 2: Ch 1, sc in same st, *ch 3, sk next dc, sc in next dc; rep from * around, omitting last sc; join. (6 sc, 6 ch-3 sps)\n", "ring", {2: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 2: Ch 1, sc in same st, [ch 3, sk next dc, sc in next dc] 5 times, ch 1, sk next dc, hdc in first sc to join. (6 sc, 6 ch-3 sps)\n", "ring", {2: {"sc": 6, "ch-3 sp": 6}}),
    # places
    ("Rnd 3: Sl st in next ch, sl st in next ch, ch 1, sc in center ch of ch-5 lp, [ch 3, sc in center ch of next ch-5 lp] 5 times, ch 3; join. (6 sc, 6 ch-3 sps)\n", "loops", {3: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 3: Sl st in next 2 ch, ch 1, sc in 3rd ch of ch-5, [ch 3, sc in 3rd ch of next ch-5 loop] 5 times, ch 3; join. (6 sc, 6 ch-3 sps)\n", "loops", {3: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 3: Slip stitch to middle chain of first loop, ch 1, sc in same place, *ch 3, sc in the middle chain of the next loop; rep from * around, ch 3, join. (6 sc, 6 ch-3 sps)\n", "loops", {3: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 3: Ch 1, [sc in next sc, (hdc, 3 dc, hdc) in next ch-5 loop] around; join. (6 sc, 12 hdc, 18 dc)\n", "loops", {3: {"sc": 6, "hdc": 12, "dc": 18}}),
    ("Rnd 3: Ch 1, petal in each ch-5 sp around; join with sl st in first sc.\nRnd 4: Sl st in next 3 sts, ch 1, sc in center dc of first petal, [ch 6, sc in center dc of next petal] 5 times, ch 6; join. (6 sc, 6 ch-6 sps)\n", "loops", {3: {"petal": 6}, 4: {"sc": 6, "ch-6 sp": 6}}),
    ("Rnd 3: Ch 1, petal in each ch-5 sp around; join with sl st in first sc.\nRnd 4: Working behind petals, ch 1, sc around first sc of Rnd 2, [ch 7, sc around next sc of Rnd 2] 5 times, ch 7; join. (6 sc, 6 ch-7 sps)\n", "loops", {4: {"sc": 6, "ch-7 sp": 6}}),
    ("Rnd 3: Ch 1, petal in each ch-5 sp around; join with sl st in first sc.\nRnd 4: *Ch 7, working behind next petal, sl st in next sc of Rnd 2; rep from * around. (6 ch-7 sps)\n", "loops", {4: {"sl st": 6, "ch-7 sp": 6}}),
    ("Rnd 2: Ch 1, sc in FLO of each st around; join. (12 sc)\nRnd 3: Ch 1, sc in next unused back loop of Round 1, [ch 3, sc in next unused back loop of Round 1] 11 times, ch 3; join. (12 sc, 12 ch-3 sps)\n", "ring", {3: {"sc": 12, "ch-3 sp": 12}}),
    ("Rnd 2: Ch 1, [V-st in next st, sk next st] 6 times; join.\nRnd 3: Ch 1, [sc around next V-st, ch 3] 6 times; join. (6 sc, 6 ch-3 sps)\n", "ring", {3: {"sc": 6, "ch-3 sp": 6}}),
    ("Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, sk next st, [V-st in next st, sk next st] 5 times; join with sl st in 3rd ch of beg ch-4.\nRnd 3: Sl st in next ch-1 sp, ch 4, dc in same sp, [V-st in next V-st] around; join.\nRnd 4: Sl st in ch-1 sp, ch 3, 4 dc in same sp, [5 dc in sp of next V-st] 5 times; join. (30 dc)\n", "ring", {4: {"dc": 30}}),
    ("Row 2: Ch 3 (counts as dc), sk first dc, dc in each dc across to tch, dc in top of tch; turn. (19 dc)\nRow 3: Ch 3, sk first st, dc in next 17 sts, dc in 3rd ch of turning ch; turn. (19 dc)\n", "dc rows", {2: {"dc": 19}, 3: {"dc": 19}}),
    ("Row 2: Ch 1, sc in each st across; turn. (19 sc)\nRow 3: Ch 1, sc in first st, dc in tch 2 rows below, sc in next 17 sts; turn. (18 sc, 1 dc)\n", "dc rows", {3: {"sc": 18, "dc": 1}}),
    ("Row 2: Ch 1, sc in each st across; turn. (19 sc)\nRow 3: Ch 1, sc in first st, [FPdc around next dc 2 rows below, sk st behind FPdc, sc in next st] across; turn. (10 sc, 9 FPdc)\n", "dc rows", {3: {"sc": 10, "FPdc": 9}}),
    ("Row 2: Ch 1, sc in first 3 sts, sk next 2 sts, FPtr around each of next 2 sts, working in front of FPtr just made, FPtr around each of 2 skipped sts, sc in each st to end; turn. (15 sc, 4 FPtr)\n", "dc rows", {2: {"sc": 15, "FPtr": 4}}),
    ("Row 2: Ch 1, sc in first 3 sts, *sk next 2 sts, FPtr in each of next 2 sts, FPtr in first skipped st, FPtr in second skipped st, sc in next 2 sts; rep from * to last 4 sts, sc in last 4 sts; turn. (11 sc, 8 FPtr)\n", "dc rows", {2: {"sc": 11, "FPtr": 8}}),
    ("Row 2: Ch 3, sk first st, [sk next st, dc in next st, dc in skipped st] across; turn. (19 dc)\n", "dc rows", {2: {"dc": 19}}),
    ("Row 3: Ch 3 (counts as dc), [2 dc in next ch-2 sp, dc in next dc] 6 times, working last dc in 3rd ch of tch; turn. (19 dc)\nRow 4: Ch 3, sk first st, dc in next 18 sts, working last dc in top of tch; turn. (19 dc)\nRow 5: Ch 3, sk first dc, dc in each dc across, with last dc in tch; turn. (19 dc)\n", "mesh", {3: {"dc": 19}, 4: {"dc": 19}, 5: {"dc": 19}}),
    ("Row 3: Ch 5 (counts as dc and ch 2), sk first dc, dc in next dc, *ch 2, dc in next dc; rep from * across, ending last dc in 3rd ch of tch; turn. (7 dc, 6 ch-2 sps)\n", "mesh", {3: {"dc": 7, "ch-2 sp": 6}}),
    # cables, and rows from corner to corner
    ("Row 2: Ch 1, sc in first 3 sts, sk next 2 sts, FPtr around each of next 2 sts, working in front FPtr around each of 2 skipped sts, sk next 2 sts, FPtr around next 2 sts, crossing behind these, FPtr around each of 2 skipped sts, sc in each st to end; turn. (11 sc, 8 FPtr)\n", "dc rows", {2: {"sc": 11, "FPtr": 8}}),
    ("Row 2: Ch 6, dc in 4th ch from hook and in each of last 2 ch, (sl st, ch 3, 3 dc) in ch-3 sp of next block; turn. (2 blocks)\nRow 3: Sl st in next 3 dc, (sl st, ch 3, 3 dc) in next ch-3 sp, sl st in last ch-3 sp; turn. (3 dc)\n", "block", {2: {"dc": 6, "sl st": 1, "ch-3 sp": 2}, 3: {"dc": 3, "sl st": 1, "ch-3 sp": 1}}),
    # markers and the middle
    ("Row 2: Ch 1, sc in next 10 sts, pm in st just made, sc in each st to end; turn. (20 sc)\nRow 3: Ch 1, sc in each st to marked st, 3 sc in marked st, sc in each st across; turn. (22 sc)\nRow 4: Ch 1, sc to marker, 3 sc in marked st, sc to end; turn. (24 sc)\nRow 5: Ch 1, sc to 2 sts before marker, sc2tog, sc in marked st, sc2tog, sc to end. (22 sts)\n", "sc rows", {3: {"sc": 22}, 4: {"sc": 24}, 5: {"sc": 20, "sc2tog": 2}}),
    ("Row 2: Ch 1, sc in next 10 sts, place marker, sc in each st to end; turn.\nRow 3: Ch 1, sc to marker, sm, ch 1, sc to end; turn. (20 sc, 1 ch-1 sp)\n", "sc rows", {3: {"sc": 20, "ch-1 sp": 1}}),
    ("Row 2: Ch 1, sc in first 8 sts, sc3tog, sc in last 8 sts; turn. (17 sts)\nRow 3: Ch 1, sc to 1 st before center st, sc3tog, sc to end; turn. (15 sts)\nRow 4: Ch 1, sc to center st, (sc, ch 2, sc) in center st, sc in each st across. (16 sc, 1 ch-2 sp)\n", "dc rows", {3: {"sc": 14, "sc3tog": 1}, 4: {"sc": 16, "ch-2 sp": 1}}),
    # rows
    ("Row 2 – Ch 1 turn, sc in each st across.\nRow 3 – ch1, turn. 1 sc in each stitch to the end. (20 sc)\nRow 4: Turn; ch 1. Sc across.\n", "sc rows", {2: {"sc": 20}, 3: {"sc": 20}, 4: {"sc": 20}}),
    ("Row 2: Ch 3 (counts as first dc), turn, skip first st, 1 dc in each of the next 5 stitches, dc in each remaining st across. (20 dc)\n", "sc rows", {2: {"dc": 20}}),
    ("Row 2: Ch 1, sc in first st, *skip one, 5 dc in next st, skip one, sc in next st; repeat from * to last 3 sts, skip one, sc in last 2 sts; turn. (7 sc, 20 dc)\n", "sc rows", {2: {"sc": 7, "dc": 20}}),
    ("Row 2: Ch 1, sc across; turn. (20 sc)\nRow 3: Ch 2 (does not count as a st), hdc across. (20 hdc)\nRep Rows 2 and 3 twice. Finish: Fasten off, leaving a long tail for sewing.\n", "sc rows", {3: {"hdc": 20}, 6: {"sc": 20}, 7: {"hdc": 20}}),
    ("Row 2: Ch 1, sc across; turn. (20 sc)\nRow 3: Ch 2, hdc across, turn. (20 hdc)\nRows 4-7: Repeat last 2 rows 2 more times.\nRow 8: As Row 2.\nRow 9: Same as Row 3.\n", "sc rows", {7: {"hdc": 20}, 8: {"sc": 20}, 9: {"hdc": 20}}),
    ("Row 2: Ch 1, sc across; turn.\nRows 3-6: Rep Row 2, changing colour every row.\n", "sc rows", {6: {"sc": 20}}),
    ("Row 2: Ch 1, sc across; turn.\nRow 3: With B, rep Row 2.\nRow 4: Rep Row 2; change to A.\nRow 5: Ch 1, sc across.\n", "sc rows", {5: {"sc": 20}}),
    # special stitches
    ("Rnd 2: Beg pc in same st, ch 2, [pc in next st, ch 2] around; join with sl st in top of beg pc. (12 pc, 12 ch-2 sps)\nRnd 3: Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, [3 dc in next ch-2 sp, ch 1] around; join. (36 dc, 12 ch-1 sps)\n", "ring", {2: {"pc": 12, "ch-2 sp": 12}, 3: {"dc": 36, "ch-1 sp": 12}}),
    ("Rnd 2: Ch 1, [sc in next st, 5-dc bobble in next st] around; join. (6 sc, 6 bobbles)\nRnd 3: Ch 1, [sc in next sc, 3 sc in next bobble] around; join. (24 sc)\n", "ring", {3: {"sc": 24}}),
    ("Rnd 2: Ch 1, [puff st in next st, ch 1] around; join in top of first puff. (12 puff sts, 12 ch-1 sps)\n", "ring", {2: {"puff": 12, "ch-1 sp": 12}}),
    ("Rnd 2: Sl st in same st, beg cl in same st, ch 3, [cl in next st, ch 3] 11 times; join with sl st in top of beg cl. (12 cl, 12 ch-3 sps)\n", "ring", {2: {"cl": 12, "ch-3 sp": 12}}),
]  # fmt: skip

TRIANGLE = """Ring: Magic ring.
Rnd 1: Ch 3, 3 dc in ring, ch 3, [4 dc in ring, ch 3] twice; join with sl st in top of beg ch 3. (12 dc, 3 ch-3 sps)
Rnd 2: Sl st in next 3 dc and ch-3 sp, ch 3, (3 dc, ch 3, 4 dc) in same sp, ch 1, *(4 dc, ch 3, 4 dc) in next ch-3 corner sp, ch 1; rep from * once more; join. (24 dc, 3 ch-3 sps, 3 ch-1 sps)
"""

WHOLE: list[tuple[str, str, str, dict[str, str], Counts]] = [
    ("bunting", TRIANGLE + "Rnd 3: Ch 1, sc in each dc, 2 sc in each ch-1 sp and 5 sc in each ch-3 corner around; join. (45 sc)\n", "triangle", {}, {2: {"dc": 24, "ch-3 sp": 3, "ch-1 sp": 3}, 3: {"sc": 45}}),
    ("bunting, every stitch", TRIANGLE + "Rnd 3: Ch 1, sc in each st around, working 2 sc in each ch-1 sp and 5 sc in each corner sp; join. (45 sc)\n", "triangle", {}, {3: {"sc": 45}}),
    ("bunting, pointed", TRIANGLE + "Rnd 3: Ch 1, sc in each dc, 2 sc in each ch-1 sp and (sc, ch 2, sc) in each ch-3 corner around; join. (36 sc, 3 ch-2 sps)\n", "triangle", {}, {3: {"sc": 36, "ch-2 sp": 3}}),
    ("octagon", """Ring: Ch 5, join with sl st to form ring.
Rnd 1: Ch 3, dc in ring, *ch 1, 2 dc in ring; repeat from * 6 times, ch 1, join with sl st in 3rd ch of starting ch 3. (16 dc, 8 ch-1 sps)
Rnd 2: Sl st to first ch-1 sp. Ch 3, (dc, ch 2, 2 dc) in same space, *(2 dc, ch 2, 2 dc) in next ch-1 sp; rep from * around. Join. (32 dc, 8 ch-2 sps)
Rnd 3: Sl st to ch-2 sp. Ch 3, (dc, ch 2, 2 dc) in same space, *dc in sp between groups, (2 dc, ch 2, 2 dc) in next ch-2 space; rep from * around, dc in last space between groups. Join and fasten off. (40 dc, 8 ch-2 sps)
""", "octagon", {}, {2: {"dc": 32, "ch-2 sp": 8}, 3: {"dc": 40, "ch-2 sp": 8}}),
    ("hexagon", """Ring: Magic ring.
Rnd 1: Ch 3 (counts as dc), dc in ring, ch 1, *2 dc in ring, ch 1; rep from * 4 more times, join with sl st to top of ch-3. (12 dc, 6 ch-1 sps)
Rnd 2: Ch 3, dc in next dc, (dc, ch 1, dc) in next ch-1 sp, *dc in next 2 dc, (dc, ch 1, dc) in next ch-1 sp; rep from * around, join. (24 dc, 6 ch-1 sps)
Rnd 3: Ch 3, dc in next 2 dc, *(dc, ch 1, dc) in ch-1 corner sp, dc in next 4 dc; repeat from * four more times, (dc, ch 1, dc) in last corner sp, dc in last dc; join. (36 dc, 6 ch-1 sps)
""", "hexagon", {}, {3: {"dc": 36, "ch-1 sp": 6}}),
    ("sunburst", """Ring: Ch 4, sl st in first ch to form ring.
Rnd 1: Ch 3 (counts as first dc), 15 dc in ring, sl st in top of beg ch-3 to join. Fasten off A. (16 dc)
Rnd 2: Join B with sl st in any sp between dc, beg pc in same sp, ch 1, *pc in next sp between dc, ch 1; rep from * around; join. Fasten off. (16 pc)
Rnd 3: Join A with sl st in any ch-1 sp, ch 3, 2 dc in same sp, ch 1, *3 dc in next ch-1 sp, ch 1; rep from * around; join with sl st to top of beg ch-3. (16 clusters)
Rnd 4: Sl st in next 2 dc and in ch-1 sp, ch 4 (counts as tr), (2 tr, ch 2, 3 tr) in same sp, *[3 dc in next ch-1 sp] 3 times, (3 tr, ch 2, 3 tr) in next ch-1 sp; rep from * 2 more times, [3 dc in next ch-1 sp] 3 times; join. (24 tr, 36 dc, 4 corner ch-2 sps)
""", "square", {}, {3: {"dc": 48, "ch-1 sp": 16}, 4: {"tr": 24, "dc": 36, "ch-2 sp": 4}}),
    ("pineapples", """Ring: Ch 8; join with sl st to form a ring.
Rnd 1: Ch 3, 23 dc in ring; join. (24 dc)
Rnd 2: Ch 5 (counts as dc and ch-2 sp), *sk next dc, dc in next dc, ch 2; rep from * around, omitting last dc and ch 2; join with sl st in 3rd ch of beg ch-5. (12 dc, 12 ch-2 sps)
Rnd 3: Sl st in next ch-2 sp, shell in same sp, *ch 2, 7 tr in next ch-2 sp, ch 2, shell in next ch-2 sp; rep from * around, ending with ch 2, 7 tr in last ch-2 sp, ch 2; join. (6 shells, 42 tr, 12 ch-2 sps)
Rnd 4: Sl st to ch-2 sp of shell, shell in same sp, *ch 2, (tr, ch 1) in each of next 6 tr, tr in next tr, ch 2, shell in next shell; rep from * around, omitting last shell; join. (6 shells, 42 tr, 36 ch-1 sps, 12 ch-2 sps)
Rnd 5: Sl st in next dc and ch-2 sp, shell in same sp, *ch 3, sk next ch-2 sp, sc in next ch-1 sp, [ch 3, sc in next ch-1 sp] 5 times, ch 3, shell in next shell; rep from * around, omitting last shell; join. (6 shells, 36 sc, 42 ch-3 sps)
""", "circle", {"shell": "(2 dc, ch 2, 2 dc) in same sp"}, {3: {"shell": 6, "tr": 42, "ch-2 sp": 12}, 4: {"shell": 6, "tr": 42, "ch-1 sp": 36, "ch-2 sp": 12}, 5: {"shell": 6, "sc": 36, "ch-3 sp": 42}}),
    ("sock toe", """Chain: Ch 11.
Rnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch; working on other side of foundation ch, sc in next 8 ch, 2 sc in last ch; do not join. (22 sc)
Rnd 2: 2 sc in next st, sc in next 8 sts, 2 sc in each of next 3 sts, sc in next 8 sts, 2 sc in each of next 2 sts. (28 sc)
""", "circle", {}, {1: {"sc": 22}, 2: {"sc": 28}}),
    ("tube", """Chain: Ch 30; being careful not to twist, join with sl st in first ch to form a ring.
Rnd 1: Ch 1, sc in each ch around; join with sl st in first sc. (30 sc)
Rnd 2: Ch 1, turn, sc in each sc around, join with sl st in first sc. (30 sc)
Rnds 3-10: Rep Rnd 2.
""", "circle", {}, {1: {"sc": 30}, 10: {"sc": 30}}),
    ("hat", """Ring: Make a magic ring.
Rnd 1: Ch 2 (does not count as a stitch here and throughout), 10 hdc in ring; join with sl st to first hdc. (10)
Rnd 2: Ch 2, 2 hdc in each hdc around; join. (20)
Rnd 3: Ch 2, *hdc in next hdc, 2 hdc in next hdc; rep from * around; join. (30)
Rnds 4-5: Ch 2, hdc in each st around; join. (30 hdc)
Rnd 6: Ch 1, working in BLO, sc in each st around; join. (30 sc)
Rnd 7: Ch 2, FPdc around first st, *BPdc around next st, FPdc around next st; rep from * to last st, BPdc around last st; join to top of first FPdc. (15 FPdc, 15 BPdc)
""", "circle", {}, {3: {"hdc": 30}, 7: {"FPdc": 15, "BPdc": 15}}),
]  # fmt: skip
