"""Unchanging: the one amount becomes another, and the other stays as it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.pair_mistakes import as_inverse, as_proportion, same_change
from typeset.arithmetic.families.pairs import (
    WANTED,
    Pair,
    PairFields,
    build_pair,
    pair_of,
    working_of,
)
from typeset.arithmetic.family import Family
from typeset.arithmetic.linear import Linear, solve_linear
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Step, Working, step
from typeset.errors import AmountError

_DEFAULT = "the one has nothing to do with the other"


class UnchangingFields(PairFields):
    """As every pair, with the reason in the author's words: `because: they all dry at once`."""

    because: str = _DEFAULT


class Unchanging(Family[UnchangingFields]):
    """The other amount does not depend on the one that changes."""

    name = "unchanging"
    fields_model = UnchangingFields

    def build(self, fields: UnchangingFields) -> Problem[UnchangingFields]:
        """The problem; `because` completes a sentence and holds no numbers."""
        if any(character.isdigit() for character in fields.because):
            raise AmountError("'because' holds a number", "tell the reason in words")
        if not fields.because.strip(" ."):
            raise AmountError("'because' is empty", "leave it out, or tell the reason")
        return build_pair(self.name, fields)

    def relation(self, problem: Problem[UnchangingFields]) -> Mapping[str, AnswerValue]:
        """other = other as wanted, whatever the one is."""
        answers: dict[str, AnswerValue] = {}
        for name in problem.finds:
            same = [Linear({"before": 1}, problem.given(name).base)]
            same.append(Linear({"before": 1, "after": -1}))
            found = solve_linear(same)["after"]
            answers[name] = problem.answer(name, found / problem.units[name].per_base)
        return answers

    def strategies(self, problem: Problem[UnchangingFields]) -> Iterator[Working]:
        """Ask what the change does; or try with one more."""
        pair = pair_of(problem)
        yield _nothing_changes(pair, _reason(problem))
        yield _one_more(pair, _reason(problem))

    def mistakes(self, problem: Problem[UnchangingFields]) -> Iterator[MistakenWorking]:
        """Scaling although nothing grows, in step or against it, or adding."""
        pair = pair_of(problem)
        yield as_proportion(pair)
        yield as_inverse(pair, "over-use of inverse proportion")
        yield same_change(pair, "same change to both")

    def probed(self, problem: Problem[UnchangingFields]) -> tuple[str, ...]:
        """What is wanted tells most; then the amounts that go together."""
        return (WANTED, *problem.fields.wanted, problem.finds[0])


def _reason(problem: Problem[UnchangingFields]) -> str:
    return problem.fields.because.strip().rstrip(".")


def _nothing_changes(pair: Pair, because: str) -> Working:
    steps = [
        step(
            f"{title(pair.base)}: {{known}} before, {{wanted}} now.",
            known=pair.known,
            wanted=pair.wanted,
        )
    ]
    for name, amount in pair.others.items():
        steps.append(
            step(
                f"{title(name)}: nothing changes, because {because}. So it is still {{amount}}.",
                amount=amount,
            )
        )
    return working_of(pair, "Asking what changes", steps, pair.others)


def _one_more(pair: Pair, because: str) -> Working:
    grows = pair.change > 0 or pair.known.value <= 1
    nearby = pair.known.like(pair.known.value + (1 if grows else -1))
    steps: list[Step] = []
    for name, amount in pair.others.items():
        steps.append(
            step(
                f"Try {{nearby}} instead of {{known}}: would {the(name)} be different? "
                f"No, because {because}.",
                nearby=nearby,
                known=pair.known,
            )
        )
        steps.append(
            step(
                "The same is true every time it changes by one, so with {wanted} "
                "it is still {amount}.",
                wanted=pair.wanted,
                amount=amount,
            )
        )
    return working_of(pair, "Trying one at a time", steps, pair.others)
