"""The wrong ways that a proportion invites: adding, building up wrongly, doubling, stopping."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import floor

from typeset.arithmetic.equations import equation, over, plus, times
from typeset.arithmetic.families.pair_mistakes import opposite_change, same_change
from typeset.arithmetic.families.pair_rows import RowWriter, in_step
from typeset.arithmetic.families.pairs import WANTED, Pair, mistaken
from typeset.arithmetic.phrases import bare, title
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.quantities.amount import Amount


def proportion_mistakes(pair: Pair) -> Iterator[MistakenWorking]:
    """Adding, building up wrongly, doubling what is not double, and the like."""
    yield same_change(pair, "additive strategy")
    yield from _incorrect_build_up(pair)
    yield _magical_doubling(pair)
    yield opposite_change(pair, "constant sum")
    yield from _stopped_at_one(pair)
    yield from _unit_not_converted(pair)


def _incorrect_build_up(pair: Pair) -> Iterator[MistakenWorking]:
    """Whole rows first, then the rest added to both (Misailidou & Williams 2003)."""
    whole_times = floor(pair.factor)
    if whole_times < 2:
        return
    writer = RowWriter(pair)
    row = writer.multiply(writer.start(), whole_times)
    rest = pair.wanted.value - row.base.value
    steps = list(writer.steps)
    if rest:
        more = pair.wanted.like(rest)
        steps.append(
            step(
                f"{title(pair.base)}: {{more}} more to reach {{wanted}}.",
                equation(plus(row.base, more), pair.wanted),
                more=Amount(rest) if more.unit.is_noun else more,
                wanted=pair.wanted,
            )
        )
    reached = {name: amount.like(amount.value + rest) for name, amount in row.others.items()}
    for name, amount in row.others.items():
        steps.append(
            step(
                f"{title(name)}: {{rest}} more as well.",
                equation(plus(amount, amount.like(rest)), reached[name]),
                rest=Amount(rest),
            )
        )
    yield mistaken(pair, "incorrect build-up", steps, reached)


def _magical_doubling(pair: Pair) -> MistakenWorking:
    """Doubles, or halves, because doubling is what one knows (same source)."""
    grows = pair.factor > 1
    way, advice = ("up", "so double") if grows else ("down", "so halve")
    text = f"{title(pair.base)}: {way} from {{known}} to {{wanted}}, {advice}."
    steps = [step(text, wanted=pair.wanted, known=pair.known)]
    reached: dict[str, Amount] = {}
    for name, amount in pair.others.items():
        reached[name] = amount.like(amount.value * 2 if grows else amount.value / 2)
        sign = times if grows else over
        result = equation(sign(amount, Amount(Fraction(2))), reached[name])
        steps.append(step(f"{title(name)}: {'double' if grows else 'halve'} it.", result))
    return mistaken(pair, "magical doubling", steps, reached)


def _stopped_at_one(pair: Pair) -> Iterator[MistakenWorking]:
    """Finds what goes with one, and forgets what was asked; told already where one is known."""
    if pair.known.value == 1:
        return
    writer = RowWriter(pair)
    yield writer.mistake("step left out", writer.divide(writer.start(), pair.known.value))


def _unit_not_converted(pair: Pair) -> Iterator[MistakenWorking]:
    """Reckons with the written numbers although their units differ."""
    known, wanted = pair.problem.given(pair.base), pair.problem.given(WANTED)
    if not pair.conversions:
        return
    alike = Pair(pair.problem, pair.base, bare(known), bare(wanted), pair.others)
    writer = RowWriter(alike)
    yield writer.mistake("unit not converted", in_step(writer))
