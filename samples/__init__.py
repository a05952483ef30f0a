"""Whole patterns of our own, one for each construction: what a new pattern starts from. Each builds with ``motifold booklet NAME.toml``.

The first line of each is a comment that says what it is; ``CONSTRUCTIONS`` names them as a designer asks for them.
"""

from __future__ import annotations

CONSTRUCTIONS: dict[str, str] = {
    "coaster": "tidepool-coaster",
    "basket": "lighthouse-basket",
    "hat": "ferry-hat",
    "bag": "cargo-bag",
    "jacket": "harbour-jacket",
    "blanket": "pier-blanket",
    "ball": "buoy-ball",
    "mitts": "deckhand-mitts",
    "doily": "spindrift-doily",
    "bunting": "signal-bunting",
    "headband": "watch-headband",
    "mat": "quarterdeck-mat",
    "flower blanket": "sea-pink-blanket",
}
