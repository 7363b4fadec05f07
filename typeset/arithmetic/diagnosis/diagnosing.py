"""What a pupil's answer tells: whether it is right, and otherwise what led to it.

The order of explanations, most telling first:

1. misconceptions whose answer it is, in the family's order (those that these numbers would
   refuse for a sheet count too: a pupil may well write 12.5 buses);
2. with several answers asked for: answers exchanged, or one right and the other mistaken;
3. a step on the way given as the answer;
4. slips (`slips.py`), each called a slip perhaps.

A later group is asked only where the earlier ones find nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import permutations
from typing import Any

from typeset.arithmetic.answers import AnswerValue, RatioAnswer
from typeset.arithmetic.diagnosis.marking import can_be_read, mark, number_meant
from typeset.arithmetic.diagnosis.miscopied import miscopied
from typeset.arithmetic.diagnosis.remainders import mark_with_parts
from typeset.arithmetic.diagnosis.slips import slips_to
from typeset.arithmetic.diagnosis.splitting import Written, split
from typeset.arithmetic.diagnosis.verdicts import Mark, Verdict
from typeset.arithmetic.diagnosis.written import Reading, WrittenRatio
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import Solution, solve
from typeset.arithmetic.workings import MistakenWorking, Step
from typeset.quantities.amount import Amount

_EXCHANGED = "answers exchanged"
_OTHER_WAY = "the other way round"
_STOPPED = "step left out"
# More answers than this are not tried in every order.
_MOST_EXCHANGED = 6


@dataclass(frozen=True, slots=True)
class Explanation:
    """One thing that leads to the answer. `shows` completes 'This pupil …'.

    `asked` is the answer it is about, where several are asked for and it explains only one.
    """

    name: str
    shows: str
    prompt: str = ""
    steps: tuple[Step, ...] = ()
    is_slip: bool = False
    asked: str = ""


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """The verdict on what was written, a marker's note, and what leads to it."""

    written: str
    verdict: Verdict
    note: str = ""
    explanations: tuple[Explanation, ...] = ()


def diagnose(subject: Solution | Problem[Any], text: str) -> Diagnosis:
    """The diagnosis of what a pupil wrote as the answer.

    Raises what `solve` raises, where the subject is a problem not yet solved.
    """
    solution = subject if isinstance(subject, Solution) else _solved(subject)
    written = split(text, solution.answers)
    marks = {
        name: _marked(solution, written[name], value) for name, value in _asked(solution, written)
    }
    given = Diagnosis(text, *_verdict(solution, written, marks))
    if given.verdict in (Verdict.RIGHT, Verdict.UNREADABLE):
        return given
    explanations = tuple(_misconceptions(solution, written))
    if not given.verdict.has_the_number:
        explanations = (
            explanations
            or tuple(_of_several(solution, written, marks))
            or tuple(_on_the_way(solution, written, marks))
            or tuple(_slips(solution, written, marks))
        )
    return Diagnosis(text, given.verdict, given.note, _once(explanations))


def _marked(solution: Solution, readings: tuple[Reading, ...], value: AnswerValue) -> Mark | None:
    return mark_with_parts(readings, value, solution.problem.givens.values())


def _solved(problem: Problem[Any]) -> Solution:
    return solve(FAMILIES[problem.family], problem)


def _asked(solution: Solution, written: Written) -> Iterator[tuple[str, AnswerValue]]:
    return ((name, value) for name, value in solution.answers.items() if name in written)


def _verdict(
    solution: Solution, written: Written, marks: Mapping[str, Mark | None]
) -> tuple[Verdict, str]:
    if not any(can_be_read(written[name], value) for name, value in _asked(solution, written)):
        return Verdict.UNREADABLE, ""
    right = [each for each in marks.values() if each is not None]
    missing = [name for name in solution.answers if name not in written]
    if len(right) == len(solution.answers):
        worst = max(right, key=lambda each: each.verdict.rank)
        return worst.verdict, worst.note
    if not right:
        return Verdict.WRONG, ""
    wrong = [name for name, each in marks.items() if each is None]
    note = "; ".join(
        [*(f"{name} is wrong" for name in wrong), *(f"{name} is missing" for name in missing)]
    )
    return Verdict.PART_RIGHT, note


def _misconceptions(solution: Solution, written: Written) -> Iterator[Explanation]:
    """Those that give all that was written: in its very form first, then by number alone."""
    found: list[tuple[int, MistakenWorking]] = []
    for mistake in _mistakes(solution):
        reached = {name: each for name, each in mistake.answers.items() if name in written}
        marks = [_marked(solution, written[name], value) for name, value in reached.items()]
        ranks = [each.verdict.rank for each in marks if each is not None]
        if len(reached) == len(written) == len(ranks) and max(ranks) < Verdict.PART_RIGHT.rank:
            found.append((max(ranks), mistake))
    if _has_the_number(solution, written):
        # Where the number is right, only what explains its very form or unit adds anything.
        found = [each for each in found if not each[0] and not _says_right(each[1], solution)]
    last = Verdict.UNIT_WRONG.rank
    for _rank, mistake in sorted(found, key=lambda each: each[0] == last):
        yield _explained(mistake)


def _mistakes(solution: Solution) -> Iterator[MistakenWorking]:
    """The usable ones, then those that these numbers refuse, both in the family's order."""
    yield from solution.mistakes
    problem = solution.problem
    refused = {each.misconception for each in solution.refused}
    every = FAMILIES[problem.family].mistakes(problem) if problem.family in FAMILIES else ()
    yield from (each for each in every if each.misconception in refused)


def _has_the_number(solution: Solution, written: Written) -> bool:
    asked = _asked(solution, written)
    return all(_marked(solution, written[name], value) is not None for name, value in asked)


def _says_right(mistake: MistakenWorking, solution: Solution) -> bool:
    """True where the mistake's own number is the right one, so that it explains nothing."""
    pairs = [(mistake.answers.get(name), value) for name, value in solution.answers.items()]
    return all(
        isinstance(mine, Amount) and isinstance(value, Amount) and mine.same_as(value)
        for mine, value in pairs
    )


def _explained(mistake: MistakenWorking, asked: str = "") -> Explanation:
    known = MISCONCEPTIONS[mistake.misconception]
    return Explanation(known.name, known.shows, known.prompt, mistake.steps, asked=asked)


def _of_several(
    solution: Solution, written: Written, marks: Mapping[str, Mark | None]
) -> Iterator[Explanation]:
    """Answers exchanged; else the mistakes behind each wrong one of several."""
    yield from _exchanged(solution, written)
    if len(solution.answers) < 2:
        return
    for name in (each for each, got in marks.items() if got is None):
        for mistake in _mistakes(solution):
            value = mistake.answers.get(name)
            if value is not None and _marked(solution, written[name], value) is not None:
                yield _explained(mistake, name)


def _exchanged(solution: Solution, written: Written) -> Iterator[Explanation]:
    prompt = "Which number belongs to which?"
    for name, value in _asked(solution, written):
        for reading in written[name]:
            if isinstance(value, RatioAnswer) and isinstance(reading, WrittenRatio):
                turned = WrittenRatio(tuple(reversed(reading.parts)))
                if mark((turned,), value) is not None:
                    shows = "gives the parts of the ratio in the other order"
                    yield Explanation(_OTHER_WAY, shows, prompt)
    names = list(written)
    if not 2 <= len(names) <= _MOST_EXCHANGED or len(names) != len(solution.answers):
        return
    for order in permutations(names):
        if order != tuple(names) and all(
            mark(written[mine], solution.answers[theirs]) is not None
            for mine, theirs in zip(names, order, strict=True)
        ):
            yield Explanation(_EXCHANGED, "has the right numbers, but for each other", prompt)
            return


def _on_the_way(
    solution: Solution, written: Written, marks: Mapping[str, Mark | None]
) -> Iterator[Explanation]:
    """A number that a right working reaches before its end."""
    known = MISCONCEPTIONS[_STOPPED]
    for name in (each for each, got in marks.items() if got is None):
        for working in solution.workings:
            for count, step in enumerate(working.steps[:-1], 1):
                value = step.equation.sides[-1] if step.equation is not None else None
                if isinstance(value, Amount) and _says(written[name], value):
                    yield Explanation(
                        known.name,
                        "gives a number that is only on the way to the answer",
                        known.prompt,
                        working.steps[:count],
                        asked=name if len(solution.answers) > 1 else "",
                    )
                    return


def _says(readings: tuple[Reading, ...], value: Amount) -> bool:
    found = mark(readings, value)
    return found is not None and found.verdict is not Verdict.PART_RIGHT


def _slips(
    solution: Solution, written: Written, marks: Mapping[str, Mark | None]
) -> Iterator[Explanation]:
    givens = tuple(solution.problem.givens.values())
    for name, value in _asked(solution, written):
        if marks[name] is not None or not isinstance(value, Amount):
            continue
        number = number_meant(written[name], value)
        if number is None:
            continue
        asked = name if len(solution.answers) > 1 else ""
        for slip in slips_to(number, value, solution.workings, givens):
            yield Explanation(slip.name, slip.shows, is_slip=True, asked=asked)
    for slip, answers in miscopied(solution):
        if all(_marked(solution, written[name], answers[name]) for name in written):
            yield Explanation(slip.name, slip.shows, is_slip=True)


def _once(explanations: tuple[Explanation, ...]) -> tuple[Explanation, ...]:
    """Each name once for each answer, the first of equals."""
    kept: dict[tuple[str, str], Explanation] = {}
    for each in explanations:
        kept.setdefault((each.name, each.asked), each)
    return tuple(kept.values())
