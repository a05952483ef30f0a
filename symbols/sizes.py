"""The one table of sizes: every chart, key and schematic draws its symbols from these. Lengths in u, the pitch of chains in a straight run.

A chart is made to fit a page by choosing the millimetres of u, never by drawing a symbol smaller against its neighbours. Strokes are heavy
enough that a double crochet printed 3 mm tall (u = 1.36 mm) has no line under 0.1 mm.
"""

from __future__ import annotations

U_MM = 3.0
"""u on paper where nothing else is asked: a five-round square is then about 75 mm across."""
U_MM_LEAST = 1.3
"""Below this a chart is not printed but split over pages: a double crochet would be under 3 mm tall."""

STEM_WIDTH = 0.10
HEAD_WIDTH = 0.14
BAR_WIDTH = 0.10
OVAL_WIDTH = 0.10
RING_WIDTH = 0.085
OUTLINE_WIDTH = 0.095
"""Stroke widths: stems, heads and crosses, yarn-over bars, chain ovals, foot rings and loops, outlines of gathered stitches."""
HAIR_WIDTH = 0.06
"""Hairlines: the thread between ovals that a lace keeps apart."""

HEAD_SPAN = 0.62
"""Length of a head's crossbar between the centres of its round ends; with them 0.76."""
HEAD_DROOP = 0.07
"""How far the ends of a head hang below its middle, like the two loops of a stitch seen from above."""
CROSS_SPAN = 0.60
"""The arm of a single crochet's cross."""
CROSS_AT = 0.54
"""How far up a single crochet's stem its arm sits."""
BAR_SPAN = 0.46
BAR_SLANT = 0.50
"""A yarn-over bar: its length, and its slant against square in radians (it rises to the right, seen from foot to head)."""
BAR_SLANT_GATHERED = 0.35
BAR_OVER = 0.10
"""Bars across a gathered stitch: their slant, and how far they reach over its outline."""
BAR_PITCH = 0.30
BAR_AT = 0.60
BAR_AT_GATHERED = 0.40
"""Distance between bars, and where on the stem their middle sits; lower on legs that lean together."""

OVAL_LENGTH = 0.80
OVAL_BREADTH = 0.36
"""A chain, stroke included. In a chart its tips are given; this is its length where nothing is."""
DOT_RADIUS = 0.17
"""A slip stitch."""

RING_RADIUS = 0.14
LOOP_HALF = 0.31
LOOP_DEPTH = 0.24
LOOP_WIDTH = 0.10
HOOK_RADIUS = 0.19
"""Feet: the ring of a space, the half ring of a single loop (half its breadth, and its depth), the curl round a post; to the middle of
the stroke."""

BEAD_LENGTH = 0.42
BEAD_BREADTH = 0.28
BEAD_AT = 0.2
"""The chain of an extended stitch, and how far up its stem: at the very foot it would look like the ring of a space."""
LINK_SPAN = 0.36
LINK_RADIUS = 0.09
"""The side loop of a linked stitch."""

LEG_PITCH = 0.29
"""Between the legs of a gathered stitch where they are widest apart: a fifth of u stays white between two of them."""
CAP_BREADTH = 0.34
"""The oval that closes a popcorn; as long as its legs are fanned."""

CLEARANCE = 0.03
"""Least white between symbols that do not belong together."""
HEAD_GAP = 0.08
"""White between a head and the foot that stands on it: the stems of two rounds must not run together."""
