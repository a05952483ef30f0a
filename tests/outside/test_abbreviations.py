"""Every abbreviation of the Craft Yarn Council's list is read where it stands, or reported as known but not worked.

Source: Craft Yarn Council, Standards & Guidelines for Crochet and Knitting, yarnstandards.com, crochet abbreviations; the list as quoted by
several pattern sites (second-hand; those that none of them quotes are from memory).
"""

# ruff: noqa: E501 (a row keeps its line)

from __future__ import annotations

import pytest
from make import read

READ = {
    "alt": "sc in alt sts across", "beg": "sl st in top of beg ch-3", "bet": "dc bet next 2 dc", "BL": "sc in BL of next st",
    "BLO": "sc in BLO of next st", "bo": "bo in next st", "BPdc": "BPdc around next st", "BPsc": "BPsc around next st", "BPhdc": "BPhdc around next st",
    "BPtr": "BPtr around next st", "BPdtr": "BPdtr around next st", "ch": "ch 3", "ch-sp": "sc in next ch-sp", "CL": "CL in next st",
    "dc": "dc in next st", "dc2tog": "dc2tog over next 2 sts", "dec": "dec", "dtr": "dtr in next st", "edc": "edc in next st",
    "ehdc": "ehdc in next st", "esc": "esc in next st", "etr": "etr in next st", "FL": "sc in FL of next st", "FLO": "sc in FLO of next st",
    "foll": "sc in foll st", "FPdc": "FPdc around next st", "FPsc": "FPsc around next st", "FPtr": "FPtr around next st",
    "FPhdc": "FPhdc around next st", "FPdtr": "FPdtr around next st", "hdc": "hdc in next st", "hdc2tog": "hdc2tog over next 2 sts", "inc": "inc",
    "lp": "sc in next ch-3 lp", "m": "sc in each st to m", "pc": "pc in next st", "pm": "pm in first st", "prev": "sc in each st of prev rnd",
    "ps": "ps in next st", "puff": "puff in next st", "rem": "sc in each rem st", "rep": "*sc in next st, ch 1; rep from * around",
    "rnd": "sc to end of rnd", "RS": "with RS facing, sc in next st", "sc": "sc in next st", "sc2tog": "sc2tog", "sh": "sh in next st",
    "sk": "sk next st", "sl st": "sl st in next st", "sm": "sm, sc in next st", "sp": "sc in next sp", "st": "sc in next st",
    "tbl": "sc in tbl of next st", "tch": "dc in tch", "t-ch": "dc in t-ch", "tog": "dc 3 tog", "tr": "tr in next st",
    "tr2tog": "tr2tog over next 2 sts", "trtr": "trtr in next st", "WS": "with WS facing, sc in next st", "yo": "change to B in last yo",
    "yoh": "change to B in last yoh", "cm": "Rep Rnds 1 and 2 until piece measures 10 cm", "in": "Rep Rnds 1 and 2 until piece measures 4 in",
    "mm": "Rep Rnds 1 and 2 until piece measures 100 mm",
}  # fmt: skip
NOT_WORKED = {
    "approx": "approx 3 sc", "CC": "CC, sc in next st", "cont": "cont, sc in next st", "MC": "MC, sc in next st", "pat": "pat, sc in next st",
    "patt": "patt",
}  # fmt: skip
ELSEWHERE = ("BP", "FP", "g", "oz", "yd")
"""Said of a stitch with its name, or of the yarn, whose amounts stand in the file's own keys."""


@pytest.mark.parametrize(("short", "sentence"), READ.items(), ids=list(READ))
def test_an_abbreviation_is_read(short: str, sentence: str) -> None:
    line = 4 if short in ("cm", "in", "mm") else 2
    _, _, problems = read(f"Rnd 1: ch 3, 11 dc in ring; join.\nRnd {line}: {sentence}.")
    assert [problem.message for problem in problems] == []


@pytest.mark.parametrize(("short", "sentence"), NOT_WORKED.items(), ids=list(NOT_WORKED))
def test_an_abbreviation_that_is_not_worked_is_known(short: str, sentence: str) -> None:
    _, _, problems = read(f"Rnd 1: ch 3, 11 dc in ring; join.\nRnd 2: {sentence}.")
    assert [problem.code for problem in problems] == ["not-worked"]
    assert f'"{short.lower()}"' in problems[0].message.lower()


LIST = (
    "alt approx beg bet BL BLO bo BP BPdc BPsc BPhdc BPtr BPdtr CC ch ch-sp CL cont dc dc2tog dec dtr edc ehdc esc etr FL FLO foll FP FPdc FPsc "
    "FPtr FPhdc FPdtr hdc hdc2tog inc lp m MC pat patt pc pm prev ps puff rem rep rnd RS sc sc2tog sh sk sl_st sm sp st tbl tch t-ch tog tr "
    "tr2tog trtr WS yd yo yoh in cm mm g oz"
)


def test_the_list_is_whole() -> None:
    assert {*READ, *NOT_WORKED, *ELSEWHERE} == {entry.replace("_", " ") for entry in LIST.split()}
