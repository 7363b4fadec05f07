"""Why a problem is of its kind, told with its own numbers."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from typeset.arithmetic.family import AnyFamily
from typeset.arithmetic.kinds import Decision, Kind, Probe, Reaction, decide, probe_all
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.remembering import once_for_each
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich, join
from typeset.quantities.units import UNITS, Dimension
from typeset.quantities.writing import say

_VERDICTS = {
    Decision.MULTIPLY: "So this one multiplies or divides.",
    Decision.ADD: "So this one only adds or subtracts.",
    Decision.BOTH: "So this one needs both.",
    Decision.NEITHER: "So there is nothing to multiply and nothing to add.",
}

_COUNTED = "So this one counts the ways, and multiplies."
_SEARCHED = "So this one is searched for: no multiplying or adding leads straight to it."


@once_for_each
def kind_of(family: AnyFamily, problem: Problem[Any]) -> Kind:
    """The kind of the problem and the reason for it."""
    probes = probe_all(family, problem)
    own = family.reason(problem)
    if family.counts_choices(problem):
        reason = join([own, say(_COUNTED)], " ") if own else _choices_reason(probes)
        return Kind(Decision.MULTIPLY, True, probes, reason)
    if own and family.is_search(problem):
        return Kind(Decision.NEITHER, False, probes, join([own, say(_SEARCHED)], " "))
    decision = decide(probes)
    sentences = [own] if own else [_sentence(probe) for probe in _telling(decision, probes)]
    reason = join([*sentences, say(_VERDICTS[decision])], " ")
    return Kind(decision, False, probes, reason)


def _telling(decision: Decision, probes: tuple[Probe, ...]) -> list[Probe]:
    """The one probe that tells most; two of different reaction where the problem needs both."""
    ranked = sorted(probes, key=lambda probe: _rank(probe, decision))
    if decision is Decision.BOTH:
        second = [each for each in ranked[1:] if each.reaction is not ranked[0].reaction]
        return [ranked[0], *second[:1]]
    return ranked[:1]


def _rank(probe: Probe, decision: Decision) -> tuple[int, bool]:
    """Lower tells more: clear reactions first, and answers that stay whole."""
    order = [
        Reaction.RATIO_KEPT,
        Reaction.DIFFERENCE_KEPT,
        Reaction.UNCHANGED,
        Reaction.PRODUCT_KEPT,
        Reaction.SUM_KEPT,
        Reaction.FIXED_AND_RATE,
        Reaction.MIXED,
        Reaction.IS_ANSWER,
    ]
    if decision is Decision.BOTH:
        order = [Reaction.FIXED_AND_RATE, *order]
    watched = probe.one_more if probe.reaction is Reaction.DIFFERENCE_KEPT else probe.doubled
    return order.index(probe.reaction), watched is None or not watched.is_whole


def _sentence(probe: Probe) -> Rich:
    given, answer = probe.given, probe.answer
    doubled, more = _instead(given, 2 * given.value), _instead(given, given.value + 1)
    twice = {"old": given, "new": doubled, "before": answer, "after": probe.doubled or answer}
    shift = {
        "old": given,
        "new": more,
        "before": answer,
        "after": probe.one_more or answer,
        "by": _difference(given),
    }
    match probe.reaction:
        case Reaction.RATIO_KEPT:
            text = (
                "With {new} instead of {old} the answer would double too, from {before} to {after}."
            )
            return say(text, **twice)
        case Reaction.PRODUCT_KEPT:
            text = "With {new} instead of {old} the answer would halve, from {before} to {after}."
            return say(text, **twice)
        case Reaction.DIFFERENCE_KEPT:
            text = (
                "With {new} instead of {old} the answer would go up by {by} as well, "
                "from {before} to {after}: the difference stays the same."
            )
            return say(text, **shift)
        case Reaction.SUM_KEPT:
            text = (
                "With {new} instead of {old} the answer would go down by {by}, "
                "from {before} to {after}: the two together stay the same."
            )
            return say(text, **shift)
        case Reaction.UNCHANGED | Reaction.IS_ANSWER:
            return say("With {new} instead of {old} the answer would still be {before}.", **twice)
        case _:
            text = (
                "With {new} instead of {old} the answer would go from {before} to {after}, "
                "which is neither double nor {by} more."
            )
            return say(text, **twice, by=_difference(given))


def _instead(given: Amount, value: Fraction) -> Amount:
    """Another amount in the given's place, in several units where the given is."""
    return replace(given, value=value) if given.form is Form.COMPOUND else given.like(value)


def _difference(given: Amount) -> Amount:
    """One of the given's unit, as a length of time where the given is a time of day."""
    if given.unit.dimension is Dimension.CLOCK:
        return Amount(given.like(1).value, UNITS["min"])
    return given.like(1)


def _choices_reason(probes: tuple[Probe, ...]) -> Rich:
    """One more of the first choice brings a whole new round of the others."""
    first = probes[0]
    grown = first.one_more or first.answer
    round_size = grown.like(grown.value - first.answer.value)
    return say(
        "One more ({new} instead of {old}) would bring {round} more, one with each of the "
        "others, from {before} to {after}. So this one counts pairs, and multiplies.",
        new=first.given.like(first.given.value + 1),
        old=first.given,
        round=Amount(round_size.value),
        before=first.answer,
        after=grown,
    )
