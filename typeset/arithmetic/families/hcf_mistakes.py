"""Wrong ways with the highest common factor."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from math import lcm, prod

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import Expression, equation, minus, plus, times
from typeset.arithmetic.families.hcf_view import EACH, PIECES, SETS, TILES, Hcf
from typeset.arithmetic.families.hcf_ways import primes_of
from typeset.arithmetic.families.shared_numbers import and_list, multiples_to, number
from typeset.arithmetic.methods import in_unit, without_noun
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount
from typeset.quantities.writing import whole


def hcf_mistakes(view: Hcf) -> Iterator[MistakenWorking]:
    """Every wrong way that these numbers let a pupil take."""
    yield from _not_the_greatest(view)
    yield from _multiple(view)
    yield from _smaller_number(view)
    yield from _difference(view)
    yield from _sum(view)
    yield from _sides_added(view)
    yield from _other_question(view)


def _key(view: Hcf) -> str:
    """What the factor itself answers."""
    return SETS if view.is_sets else EACH


def _said(view: Hcf, value: int) -> Amount:
    return view.groups(value) if view.is_sets else view.size(value)


def _alone(view: Hcf, value: int) -> Mapping[str, AnswerValue]:
    """The wrong factor as an answer, where the factor is asked for."""
    key = _key(view)
    if key not in view.problem.finds:
        return {}
    return {key: in_unit(_said(view, value), view.problem.units[key])}


def _not_the_greatest(view: Hcf) -> Iterator[MistakenWorking]:
    """Stops at the first large factor that all share: half of the greatest, or a third."""
    greatest = view.greatest()
    smaller = greatest // primes_of(greatest)[0]
    if smaller > 1:
        steps = [
            step(f"{whole(smaller)} goes into {and_list(view.counts)}."),
            *view.closing(smaller)[1:],
            step("So the answer is {it}.", it=_said(view, smaller)),
        ]
        if _key(view) not in view.problem.finds:
            steps.pop()
        yield MistakenWorking(
            "common factor, not the greatest",
            (*view.conversions, *steps),
            view.answers(smaller),
        )


def _multiple(view: Hcf) -> Iterator[MistakenWorking]:
    multiple = lcm(*view.counts)
    answers = _alone(view, multiple)
    if answers:
        name = _said(view, multiple)
        steps = [
            step(
                f"Multiples of {whole(count)}: {multiples_to(multiple, count)}.",
                equation(times(number(multiple // count), number(count)), number(multiple)),
            )
            for count in view.counts
        ]
        every = "both" if len(view.counts) == 2 else "all the"
        steps.append(step(f"{whole(multiple)} is in {every} lists, so {{it}}.", it=name))
        yield MistakenWorking("factor and multiple exchanged", (*view.conversions, *steps), answers)


def _smaller_number(view: Hcf) -> Iterator[MistakenWorking]:
    answers = _alone(view, min(view.counts))
    if answers:
        it = _said(view, min(view.counts))
        word = "smaller" if len(view.counts) == 2 else "smallest"
        text = f"{whole(min(view.counts))} is the {word} number, so {{it}}."
        yield MistakenWorking(
            "smallest number taken as the factor", (*view.conversions, step(text, it=it)), answers
        )


def _difference(view: Hcf) -> Iterator[MistakenWorking]:
    if len(view.counts) != 2:
        return
    large, small = sorted(view.counts, reverse=True)
    answers = _alone(view, large - small)
    if answers:
        only = step(
            f"Take {whole(small)} from {whole(large)}: {{it}}.",
            equation(minus(number(large), number(small)), number(large - small)),
            it=_said(view, large - small),
        )
        yield MistakenWorking("subtracting instead of dividing", (*view.conversions, only), answers)


def _sum(view: Hcf) -> Iterator[MistakenWorking]:
    total = sum(view.counts)
    answers = _alone(view, total)
    if answers:
        joined = equation(plus(*(number(count) for count in view.counts)), number(total))
        only = step("Put everything together: {it}.", joined, it=_said(view, total))
        yield MistakenWorking("adding instead of dividing", (*view.conversions, only), answers)


def _sides_added(view: Hcf) -> Iterator[MistakenWorking]:
    """Counts the tiles along two sides instead of all of them."""
    if TILES not in view.problem.finds:
        return
    factor = view.greatest()
    counts = [number(int(each)) for each in view.quotients(factor).values()]
    total = view.groups(sum(count.value for count in counts))
    steps = [*view.conversions, *view.closing(factor)[: 1 + len(counts)]]
    joined = equation(plus(*counts), without_noun(total))
    steps.append(step("Together: {total}.", joined, total=total))
    answers = {TILES: Amount(total.value, view.problem.units[TILES])}
    yield MistakenWorking("adding instead of multiplying", tuple(steps), answers)


def _other_question(view: Hcf) -> Iterator[MistakenWorking]:
    """How many in a set for how many sets, or the length of a piece for how many pieces."""
    problem, factor = view.problem, view.greatest()
    if len({amount.unit.dimension for amount in view.amounts.values()}) > 1:
        # Metres and hooks together are no number of anything.
        return
    quotients = view.quotients(factor)
    counts = [number(int(each)) for each in quotients.values()]
    total = sum(quotients.values(), Fraction(0))
    join: Callable[..., Expression] = plus
    if view.is_tiles:
        total, join = prod(quotients.values(), start=Fraction(1)), times
    steps: list[Step] = [*view.conversions, *view.closing(factor)[1 : 1 + len(counts)]]
    answers: dict[str, AnswerValue] = {}
    for asked in problem.finds:
        if asked == _key(view):
            answers[asked] = Amount(total, problem.units[asked])
            joined = equation(join(*counts), Amount(total))
            steps.append(step("That makes {n} together.", joined, n=Amount(total)))
        elif asked in (PIECES, TILES) or asked in quotients:
            answers[asked] = Amount(Fraction(factor), problem.units[asked])
        break
    if answers:
        said = next(iter(answers.values()))
        assert isinstance(said, Amount)
        steps.append(step("So the answer is {n}.", n=said))
        yield MistakenWorking(
            "number of groups and size of a group exchanged", tuple(steps), answers
        )
