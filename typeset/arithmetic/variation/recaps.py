"""Which problems of earlier lessons come again in a look back."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from typeset.arithmetic.variation.dice import Dice
from typeset.reading.content import Lesson, Practise, ProblemContent, Sort
from typeset.reading.stages import problems_of


def may_come_again(lesson: Lesson) -> list[ProblemContent]:
    """The practised problems of the lesson, then the sorted ones, in the order of its page."""
    return [
        problem
        for kind in (Practise, Sort)
        for stage in lesson.stages
        if isinstance(stage, kind)
        for problem in problems_of(stage)
    ]


def again_in_order(lessons: Sequence[Lesson], dice: Dice) -> list[tuple[int, ProblemContent]]:
    """The problems that may come again, first to be taken first, each with its number among
    those of all the lessons.

    One of every structure comes before a second of any; practised problems come before
    sorted ones; the rest is left to the dice.
    """
    numbered = list(enumerate(each for lesson in lessons for each in may_come_again(lesson)))
    practised = {
        problem.id
        for lesson in lessons
        for stage in lesson.stages
        if isinstance(stage, Practise)
        for problem in problems_of(stage)
    }
    mixed = sorted(dice.shuffled(numbered), key=lambda each: each[1].id not in practised)
    taken: Counter[str] = Counter()
    ranked: list[tuple[int, tuple[int, ProblemContent]]] = []
    for each in mixed:
        structure = each[1].structure
        ranked.append((taken[structure], each))
        taken[structure] += 1
    return [each for _rank, each in sorted(ranked, key=lambda item: item[0])]
