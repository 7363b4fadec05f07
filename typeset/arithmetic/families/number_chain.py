"""A chain of operations as typed ('halve', 'add 6', 'divide by ?') and as told."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from typeset.arithmetic.equations import PLUS, Expression, Operation, Unknown
from typeset.arithmetic.methods import is_counted
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import MissingBox, Rich, Solid
from typeset.quantities.parsing import parse_amount
from typeset.quantities.writing import DIVIDE, MINUS, TIMES, say, write_plain

# As a teacher may type it; '?' can neither begin a text nor end an item in [brackets].
UNKNOWN_MARK = re.compile(r"\?|\u25a1|_+")
_ORDINALS = ("", "second ", "third ", "fourth ", "fifth ", "sixth ", "seventh ")
_FIXED = {
    "halve": (DIVIDE, 2),
    "half": (DIVIDE, 2),
    "double": (TIMES, 2),
    "treble": (TIMES, 3),
    "triple": (TIMES, 3),
}
_FIXED_NAMES = {(DIVIDE, 2): "halve", (TIMES, 2): "double", (TIMES, 3): "treble"}
_VERBS = {
    "add": PLUS,
    "plus": PLUS,
    "subtract": MINUS,
    "take away": MINUS,
    "take off": MINUS,
    "minus": MINUS,
    "multiply by": TIMES,
    "times": TIMES,
    "divide by": DIVIDE,
    "share by": DIVIDE,
}
_TYPED = re.compile(rf"({'|'.join(_VERBS)}) (.+)")
NAMES = {PLUS: "add", MINUS: "subtract", TIMES: "multiply", DIVIDE: "divide"}
INVERSE = {PLUS: MINUS, MINUS: PLUS, TIMES: DIVIDE, DIVIDE: TIMES}
ADDITIVE = (PLUS, MINUS)
_HOW = "write such as halve, double, add 6, subtract 6, multiply by 3, divide by 3 or add _"


@dataclass(frozen=True, slots=True)
class Link:
    """One operation. `name` is what the story calls its number, empty for 'halve'; `by` is
    None where the number is asked for."""

    sign: str
    by: Amount | None
    name: str = ""

    @property
    def known(self) -> Amount:
        """The number of an operation that is not asked for."""
        assert self.by is not None
        return self.by

    @property
    def is_additive(self) -> bool:
        """True for + and −."""
        return self.sign in ADDITIVE

    @property
    def inverse(self) -> Link:
        """The operation that undoes this one."""
        return replace(self, sign=INVERSE[self.sign])

    def after(self, before: Expression) -> Operation:
        """`before sign by`."""
        return Operation(self.sign, before, Unknown() if self.by is None else self.by)


def read_link(text: str, nouns: Mapping[str, str]) -> Link:
    """The operation that the text says. Raises AmountError with what would be right."""
    tidy = " ".join(text.split())
    if tidy in _FIXED:
        sign, count = _FIXED[tidy]
        return Link(sign, Amount(Fraction(count)))
    typed = _TYPED.fullmatch(tidy)
    if typed is None:
        raise AmountError(f"'{tidy}' is no operation", _HOW)
    sign = _VERBS[typed[1]]
    if UNKNOWN_MARK.fullmatch(typed[2]):
        return Link(sign, None, NAMES[sign])
    by = parse_amount(typed[2], nouns)
    if by.value <= 0:
        raise AmountError(f"'{tidy}' does not take a number above 0", "choose another number")
    if sign not in ADDITIVE and (by.unit.plural or by.value == 1):
        raise AmountError(f"'{tidy}' needs a plain number other than 1", "leave out its unit")
    return Link(sign, by, NAMES[sign])


def named(links: Sequence[Link]) -> tuple[Link, ...]:
    """The links with names of their own: 'add', 'second add'."""
    seen: Counter[str] = Counter()
    result = []
    for link in links:
        if link.name:
            ordinal = _ORDINALS[seen[link.name]]
            seen[link.name] += 1
            link = replace(link, name=f"{ordinal}{link.name}")
        result.append(link)
    return tuple(result)


def told_operation(link: Link, is_first: bool) -> Rich:
    """'halve it', 'add 6', 'multiply the result by 3', as a story would say it."""
    what = "it" if is_first else "the result"
    by: Rich = (Solid((MissingBox(),)),) if link.by is None else say("{by}", by=link.by)
    if not link.name:
        return say(f"{_FIXED_NAMES[link.sign, int(link.known.value)]} {what}")
    texts = {
        PLUS: "add {by}",
        MINUS: "subtract {by}",
        TIMES: f"multiply {what} by {{by}}",
        DIVIDE: f"divide {what} by {{by}}",
    }
    return say(texts[link.sign], by=by)


def named_operation(link: Link) -> Rich:
    """'halving', 'adding 6'."""
    if not link.name:
        verbs = {"halve": "halving", "double": "doubling", "treble": "trebling"}
        return say(verbs[_FIXED_NAMES[link.sign, int(link.known.value)]])
    texts = {PLUS: "adding", MINUS: "subtracting", TIMES: "multiplying by", DIVIDE: "dividing by"}
    return say(f"{texts[link.sign]} {{by}}", by=link.known)


def undone(link: Link) -> Rich:
    """'adding 6 is undone by subtracting 6'."""
    opposites = {"halving": "doubling", "doubling": "halving"}
    name = named_operation(link)
    plain_name = "".join(getattr(item, "text", "") for item in name)
    if plain_name in opposites:
        return say(f"{plain_name} is undone by {opposites[plain_name]}")
    back = replace(link.inverse, name=link.name or "by")
    return say("{name} is undone by {back}", name=name, back=named_operation(back))


def before_text(link: Link) -> str:
    """The sentence of a step back, with `{now}` for what it was before."""
    if not link.name:
        texts = {
            "halve": "Before halving it was twice as much: {now}.",
            "double": "Before doubling it was half as much: {now}.",
            "treble": "Before trebling it was a third as much: {now}.",
        }
        return texts[_FIXED_NAMES[link.sign, int(link.known.value)]]
    return {
        PLUS: "Before adding {by}: {now}.",
        MINUS: "Before subtracting {by}: {now}.",
        TIMES: "Before multiplying by {by}: {now}.",
        DIVIDE: "Before dividing by {by}: {now}.",
    }[link.sign]


def after_text(link: Link) -> str:
    """The sentence of a step on, with `{now}` for what it is then."""
    if not link.name:
        return f"{_FIXED_NAMES[link.sign, int(link.known.value)].capitalize()} it: {{now}}."
    return {
        PLUS: "Add {by}: {now}.",
        MINUS: "Subtract {by}: {now}.",
        TIMES: "Multiply by {by}: {now}.",
        DIVIDE: "Divide by {by}: {now}.",
    }[link.sign]


def check_units(links: Sequence[Link], end: Amount) -> None:
    """Raises AmountError where what is added is not like the number it is added to."""
    for link in links:
        by = link.by
        if by is None or not link.is_additive:
            continue
        if is_counted(by) and is_counted(end) and (not by.unit.plural or end.unit.plural):
            continue
        if by.unit != end.unit:
            raise AmountError(
                f"'{NAMES[link.sign]} {write_plain(by)}' does not go with {write_plain(end)}",
                "give start, result and what is added in one unit",
            )
