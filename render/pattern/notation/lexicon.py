"""Groups tokens into the words of the trade: the longest phrase that is known, stitch names in the file's terms, yarns, numbers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from motifold.render.pattern.notation.context import NotationContext
from motifold.render.pattern.notation.phrases import (
    ARTICLES,
    NUMBER_WORDS,
    ORDINAL_WORDS,
    PHRASES,
    TENS,
    UK_WORDS,
    UNWORKED,
    US_WORDS,
)
from motifold.render.pattern.notation.tokens import Token, tokenize
from motifold.symbols.terms import Terms, canonical, plural_of

LexemeKind = Literal[
    "word",
    "stitch",
    "yarn",
    "num",
    "ord",
    "measure",
    "sep",
    "colon",
    "equals",
    "dash",
    "mark",
    "open",
    "close",
    "brace",
    "unworked",
    "odd",
    "end",
]


class Lexeme(NamedTuple):
    """One word or phrase. ``value``: its meaning (a key of the phrases, a canonical stitch, a yarn's key, a mark). ``raw`` as
    written, in lower case. ``foreign``: a stitch named in the other terms.
    """

    kind: LexemeKind
    value: str
    raw: str
    start: int
    end: int
    number: int = 0
    first: bool = False
    tight: bool = False
    foreign: bool = False


END = Lexeme("end", "", "", 0, 0)

_LONGEST_STITCH = 6
_STARTS_A_LONG_NAME = frozenset({
    "single", "double", "half", "treble", "triple", "quadruple", "quintuple", "sextuple", "quad", "slip", "sl", "front",
    "back", "fp", "bp", "extended", "ext", "ex", "linked", "lk", "foundation", "found", "fnd", "invisible", "inv", "crossed",
    "cross", "v", "popcorn", "pop", "puff", "bobble", "cluster", "shell", "reverse", "rev", "crab", "raised", "relief", "long",
    "dbl", "chainless"
})  # fmt: skip
_GOES_ON_WITH = frozenset({"fp", "bp", "dec", "decrease", "foundation", "picot", "crochet", "st", "stitch", "raised"})
_TAKES_A_YARN = frozenset(
    {"with", "using", "to", "join", "attach", "drop", "carry", "up", "off", "yarn", "color", "colour", "in", "break", "cut"}
)
_BEFORE_A_PLACE = frozenset(
    {"next", "each", "same", "in", "of", "last", "any", "corner", "center", "first", "two", "between", "beg", "all", "every", "to", "and"}
)


def read_words(text: str, context: NotationContext) -> list[Lexeme]:
    """The lexemes of a text in order; articles are left out."""
    tokens = [token for token in tokenize(text) if token.kind != "word" or token.text not in ARTICLES or _may_be_yarn(token, text, context)]
    lexemes = _lexemes(tokens, text, _Vocabulary(context))
    return [lexeme for lexeme in lexemes if lexeme.kind != "word" or lexeme.value not in ARTICLES]


def _may_be_yarn(token: Token, text: str, context: NotationContext) -> bool:
    return text[token.start : token.end] in context.yarns


class _Vocabulary:
    """What the words of one file can mean: the trade's phrases, and the file's own yarns and stitches by their first word."""

    def __init__(self, context: NotationContext) -> None:
        self.terms: Terms = context.terms
        self.other: Terms = "UK" if context.terms == "US" else "US"
        self.yarns = context.yarns
        self.own: dict[str, list[tuple[tuple[str, ...], LexemeKind, str]]] = {}
        for key, name in context.defined.items():
            for spelling in {key, name}:
                self._add(spelling, "stitch", key)
        for key in context.yarns:
            self._add(key, "yarn", key)
        for rows in self.own.values():
            rows.sort(key=lambda row: (-len(row[0]), row))
        self._stitches: dict[str, tuple[str, bool] | None] = {}
        self._plain: dict[str, tuple[LexemeKind, str, bool]] = {}
        self._closer = {*self.own, *_STARTS_A_LONG_NAME, "w"}

    def _add(self, spelling: str, kind: LexemeKind, key: str) -> None:
        words = tuple(token.text for token in tokenize(spelling) if token.kind in ("word", "num", "ord"))
        if words:
            self.own.setdefault(words[0], []).append((words, kind, key))
            if kind == "stitch":
                for last in dict.fromkeys((words[-1] + "s", words[-1] + "es", plural_of(words[-1]))):
                    plural = (*words[:-1], last)
                    self.own.setdefault(plural[0], []).append((plural, kind, key))

    def plain(self, word: str, follows: str) -> tuple[LexemeKind, str, bool] | None:
        """What a word means that begins no longer phrase here: most words, most of the time. None: look closer."""
        if word in self._closer or follows in _GOES_ON_WITH or follows in _SECOND_WORDS.get(word, ()):
            return None
        known = self._plain.get(word)
        if known is not None:
            return known
        phrase = next((row for row in _PHRASES.get(word, ()) if len(row[0]) == 1), None)
        stitch = self.stitch(word) if phrase is None else None
        if phrase is not None:
            self._plain[word] = (phrase[1], phrase[2], False)
        elif stitch is not None:
            self._plain[word] = ("stitch", stitch[0], stitch[1])
        else:
            self._closer.add(word)
        return self._plain.get(word)

    def stitch(self, words: str) -> tuple[str, bool] | None:
        """The canonical stitch and whether only the other terms know it."""
        if words not in self._stitches:
            here = canonical(words, self.terms)
            there = canonical(words, self.other) if here is None else None
            self._stitches[words] = (here, False) if here is not None else (there, True) if there is not None else None
        return self._stitches[words]


def _lexemes(tokens: list[Token], text: str, vocabulary: _Vocabulary) -> Iterator[Lexeme]:
    index, last = 0, len(tokens) - 1
    while index <= last:
        token = tokens[index]
        kind, word, start, end, number, first, tight = token
        if kind != "word":
            if kind == "ord" or (kind == "num" and word in vocabulary.own):
                lexeme, used = _word(tokens, index, text, vocabulary)
                yield lexeme
                index += used
                continue
            yield Lexeme(kind, word, word, start, end, number, first, tight)
            index += 1
            continue
        plain = vocabulary.plain(word, tokens[index + 1].text if index < last else "")
        if plain is not None:
            yield Lexeme(plain[0], plain[1], word, start, end, 0, first, tight, plain[2])
            index += 1
            continue
        lexeme, used = _word(tokens, index, text, vocabulary)
        yield lexeme
        index += used


def _word(tokens: list[Token], index: int, text: str, vocabulary: _Vocabulary) -> tuple[Lexeme, int]:
    """The lexeme that begins here and how many tokens it takes: the file's own words, the trade's phrases, stitches, numbers."""
    token = tokens[index]
    best: tuple[int, LexemeKind, str, bool] | None = None
    own = _own(tokens, index, text, vocabulary)
    if own is not None:
        best = own
    if token.kind in ("word", "ord"):
        phrase = _phrase(tokens, index)
        if phrase is not None and (best is None or phrase[0] > best[0]):
            best = phrase
        stitch = None if token.kind == "ord" else _stitch(tokens, index, vocabulary)
        if stitch is not None and (best is None or stitch[0] > best[0]):
            best = stitch
    if best is not None:
        used, kind, value, foreign = best
        last = tokens[index + used - 1]
        raw = " ".join(t.text for t in tokens[index : index + used])
        if kind == "word" and raw == "w" and not _slash_after(tokens, index):
            return Lexeme("word", raw, raw, token.start, last.end, 0, token.first, token.tight), used
        used += 1 if raw == "w" else 0
        return Lexeme(kind, value, raw, token.start, last.end, 0, token.first, token.tight, foreign), used
    return _number(tokens, index)


def _slash_after(tokens: list[Token], index: int) -> bool:
    return index + 1 < len(tokens) and tokens[index + 1].text == "/"


def _own(tokens: list[Token], index: int, text: str, vocabulary: _Vocabulary) -> tuple[int, LexemeKind, str, bool] | None:
    for words, kind, key in vocabulary.own.get(tokens[index].text, ()):
        if not _matches(tokens, index, words):
            continue
        if kind == "yarn" and len(key) < 3 and text[tokens[index].start : tokens[index + len(words) - 1].end] != key:
            continue
        if kind == "yarn" and key.lower() in ("a", "i") and not _yarn_may_stand_here(tokens, index):
            continue
        return len(words), kind, key, False
    return None


def _yarn_may_stand_here(tokens: list[Token], index: int) -> bool:
    """Such as "A" is also an article: at the head of a phrase ("A dc in next st") it is no yarn."""
    before = tokens[index - 1].text if index else ""
    after = tokens[index + 1] if index + 1 < len(tokens) else None
    return before in _TAKES_A_YARN or after is None or after.kind != "word" or after.text in ("in", "with", "along", "on", "and", "at")


def _matches(tokens: list[Token], index: int, words: tuple[str, ...]) -> bool:
    return index + len(words) <= len(tokens) and all(
        tokens[index + k].text == word and tokens[index + k].kind in ("word", "num", "ord") for k, word in enumerate(words)
    )


def _phrase_table() -> dict[str, tuple[tuple[tuple[str, ...], LexemeKind, str], ...]]:
    table: dict[str, list[tuple[tuple[str, ...], LexemeKind, str]]] = {}
    for spelling, meaning in PHRASES.items():
        words = tuple(spelling.replace("-", " ").split())
        table.setdefault(words[0], []).append((words, "word", meaning))
    for spelling in UNWORKED:
        words = tuple(spelling.split())
        table.setdefault(words[0], []).append((words, "unworked", spelling))
    return {first: tuple(sorted(rows, key=lambda row: (-len(row[0]), row))) for first, rows in table.items()}


_PHRASES = _phrase_table()
_SECOND_WORDS = {first: frozenset(row[0][1] for row in rows if len(row[0]) > 1) for first, rows in _PHRASES.items()}


def _phrase(tokens: list[Token], index: int) -> tuple[int, LexemeKind, str, bool] | None:
    for words, kind, meaning in _PHRASES.get(tokens[index].text, ()):
        if len(words) == 1 or _matches(tokens, index, words):
            return len(words), kind, meaning, False
    return None


def _stitch(tokens: list[Token], index: int, vocabulary: _Vocabulary) -> tuple[int, LexemeKind, str, bool] | None:
    """The longest stitch name that begins here. Numbers in names ("dc3tog", "5-dc cl") are read later, as numbers."""
    longest = 1
    follows = tokens[index + 1].text if index + 1 < len(tokens) and tokens[index + 1].kind == "word" else ""
    if tokens[index].text in _STARTS_A_LONG_NAME or follows in _GOES_ON_WITH:
        while longest < _LONGEST_STITCH and index + longest < len(tokens) and tokens[index + longest].kind == "word":
            longest += 1
    for used in range(longest, 0, -1):
        found = vocabulary.stitch(" ".join(token.text for token in tokens[index : index + used]))
        if found is not None:
            return used, "stitch", found[0], found[1]
    return None


def _number(tokens: list[Token], index: int) -> tuple[Lexeme, int]:
    token = tokens[index]
    if token.kind == "num":
        return Lexeme("num", token.text, token.text, token.start, token.end, token.number, token.first, token.tight), 1
    if token.kind == "ord":
        return Lexeme("ord", token.text, token.text, token.start, token.end, token.number, token.first, token.tight), 1
    word, number, used, end = token.text, None, 1, token.end
    if word in NUMBER_WORDS:
        number = NUMBER_WORDS[word]
    elif word in TENS:
        number = TENS[word]
        follows = tokens[index + 1] if index + 1 < len(tokens) else None
        if follows is not None and 0 < NUMBER_WORDS.get(follows.text, 0) < 10:
            number, used, end = number + NUMBER_WORDS[follows.text], 2, follows.end
    if number is not None:
        return Lexeme("num", str(number), word, token.start, end, number, token.first, token.tight), used
    if word in ORDINAL_WORDS:
        return Lexeme("ord", word, word, token.start, token.end, ORDINAL_WORDS[word], token.first, token.tight), 1
    return Lexeme("word", word, word, token.start, token.end, 0, token.first, token.tight), 1


def foreign_word(lexemes: list[Lexeme], terms: Terms) -> Lexeme | None:
    """The first word that belongs to the other terms: a stitch if there is one, else another such word."""
    mild = US_WORDS if terms == "UK" else UK_WORDS
    return next((lexeme for lexeme in lexemes if lexeme.foreign), None) or next((lexeme for lexeme in lexemes if lexeme.raw in mild), None)


MAY_BE_GROUPS = frozenset({"cl", "shell", "V-st"})
"""What people also call a group of plain stitches in one place: the 3-dc clusters of a square, a shell of 7 dc."""


def worked_names(lexemes: list[Lexeme]) -> frozenset[str]:
    """Which of these stitches the text works by name; one that is only ever a place or a count means a group of stitches."""
    found: set[str] = set()
    for index, lexeme in enumerate(lexemes):
        name = lexeme.value.removeprefix("beg ")
        if lexeme.kind == "stitch" and name in MAY_BE_GROUPS and name not in found:
            before = next((other for other in reversed(lexemes[max(0, index - 4) : index]) if other.kind not in ("num", "stitch")), None)
            if (
                before is None
                or _counted_as(lexemes, index)
                or (before.value not in _BEFORE_A_PLACE and before.kind != "ord" and not _counted(lexemes, index))
            ):
                found.add(name)
    return frozenset(found)


def _counted_as(lexemes: list[Lexeme], index: int) -> bool:
    """Whether something counts as this: "(counts as first cl)"."""
    return any(lexeme.value == "counts as" and lexeme.kind == "word" for lexeme in lexemes[max(0, index - 2) : index])


def _counted(lexemes: list[Lexeme], index: int) -> bool:
    """Whether a name stands in a list of counts: "(8 shells)", "(24 dc, 8 clusters)"."""
    after = lexemes[index + 1] if index + 1 < len(lexemes) else END
    if lexemes[index - 1].kind != "num" or after.kind not in ("close", "sep", "end"):
        return False
    at = index - 1
    while at >= 0 and lexemes[at].kind not in ("open", "colon", "dash", "equals") and not lexemes[at].first:
        if lexemes[at].kind == "word" and lexemes[at].value in ("in", "ch", "skip") and lexemes[at + 1].kind != "num":
            return False
        at -= 1
    return at >= 0 and lexemes[at].kind in ("open", "dash", "equals") and lexemes[at + 1].kind == "num"
