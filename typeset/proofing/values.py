"""The values of numbers as they are printed, read independently of what wrote them.

The account compares texts; this check reads the printed text of each number back with the
reader of the teacher's own amounts, and compares exact values with the solved ones. So a fault in
the writing of numbers, which text and expectation would share, is found as well.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from typeset.arithmetic.answers import AnswerValue, NameAnswer, RatioAnswer, WithRemainder
from typeset.errors import AmountError
from typeset.proofing.account import Account
from typeset.proofing.expected import Passage, Value
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Word
from typeset.proofing.places import around
from typeset.quantities.amount import Amount, Form
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import Dimension
from typeset.quantities.writing import MINUS, write_plain

_LEFT_OVER = " left over"


def check_values(account: Account, document: str, nouns: Mapping[str, str]) -> Iterator[Finding]:
    """A finding for every printed number whose value is not the solved one."""
    for index, passage in enumerate(account.passages):
        for value in passage.values:
            words = account.found[index][value.first : value.last + 1]
            if all(words):
                yield from _check(passage, value, [w for w in words if w], document, nouns)


def _check(
    passage: Passage, value: Value, words: list[Word], document: str, nouns: Mapping[str, str]
) -> Iterator[Finding]:
    text = " ".join(word.text for word in words)
    text = text[value.lead : len(text) - value.trail]
    if says(text, value.answer, nouns):
        return
    place = around(word.box for word in words).place_mm
    what = f"{passage.about} prints '{text}'"
    yield Finding(
        document, words[0].page, place, what, _told(value.answer), passage.source, "number"
    )


def says(text: str, answer: AnswerValue, nouns: Mapping[str, str]) -> bool:
    """True where the printed text has exactly this value."""
    match answer:
        case Amount():
            return _says_amount(text, answer, nouns)
        case RatioAnswer(parts=parts):
            return _ratio(text) == parts
        case WithRemainder(groups=groups, rest=rest):
            first, _, second = text.partition(", ")
            second = second.removesuffix(_LEFT_OVER)
            return _says_amount(first, groups, nouns) and _says_amount(second, rest, nouns)
        case NameAnswer(name=name):
            return text == name


def _says_amount(text: str, amount: Amount, nouns: Mapping[str, str]) -> bool:
    negative = text.startswith(MINUS)
    text = text.removeprefix(MINUS)
    if amount.unit.dimension is Dimension.COUNT:
        # The account has compared the nouns; here only the number is read.
        for noun in sorted((amount.unit.singular, amount.unit.plural), key=len, reverse=True):
            text = text.removesuffix(noun).strip()
    try:
        read = parse_amount(text, nouns)
    except AmountError:
        return False
    if negative:
        read = read.like(-read.value)
    return read.same_as(amount)


def _ratio(text: str) -> tuple[Fraction, ...] | None:
    try:
        return tuple(parse_amount(part).value for part in text.split(" : "))
    except AmountError:
        return None


def _told(answer: AnswerValue) -> str:
    match answer:
        case Amount():
            return f"'{write_plain(answer.written_as(Form.AUTO))}'"
        case _:
            return "the solved answer"
