"""What the sorting cards and their key must say."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.answers import answer_text
from typeset.arithmetic.lessons import SolvedLesson, SolvedProblem, SolvedSort, SolvedWeek
from typeset.documents.layout import Layout
from typeset.proofing.expected import Expected, Part, Passage, called, passage, said
from typeset.proofing.promises import Promise
from typeset.proofing.story_values import story_passage
from typeset.quantities.inline import plain, words
from typeset.reading.content import Space

_GROUPS = ("multiply", "add", "both", "neither")
_BACK_LINES = 2
_ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def sorted_problems(lesson: SolvedLesson) -> list[tuple[str, SolvedProblem]]:
    """The problems that a lesson sorts, with their letters."""
    problems = [
        problem
        for stage in lesson.stages
        if isinstance(stage, SolvedSort)
        for problem in stage.problems
    ]
    return [(_letter(index), problem) for index, problem in enumerate(problems)]


def _letter(index: int) -> str:
    again = index // len(_ALPHABET)
    return _ALPHABET[index % len(_ALPHABET)] + (str(again + 1) if again else "")


def expect_cards(lesson: SolvedLesson, layout: Layout, a_paper: int) -> Expected:
    """Fronts and backs, paper by paper with so many cards each, in the order of the letters."""
    cards = sorted_problems(lesson)
    fronts: list[list[Passage]] = [_front(layout, *card) for card in cards]
    backs = [_back(layout, *card) for card in cards]
    if len(_GROUPS) > -len(cards) % a_paper:
        # The groups' cards stay together, on a paper of their own.
        fronts += [[]] * (-len(cards) % a_paper)
    fronts += [_group(layout, lesson, group) for group in _GROUPS]
    passages: list[Passage] = []
    for start in range(0, len(fronts), a_paper):
        for side in (fronts[start : start + a_paper], backs[start : start + a_paper]):
            passages.extend(each for card in side for each in card)
    return Expected(tuple(passages), None, tuple(_secrets(cards)))


def promised_backs(lesson: SolvedLesson, layout: Layout) -> Iterator[Promise]:
    """Lines for the reason on the back of every card."""
    height = _BACK_LINES * layout.answer_spaces.ruled_mm
    for letter, _problem in sorted_problems(lesson):
        yield Promise(f"the back of card {letter}", Space.LINES, _BACK_LINES, height)


def _secrets(cards: Sequence[tuple[str, SolvedProblem]]) -> Iterator[tuple[str, str]]:
    for letter, problem in cards:
        for answer in problem.solution.answers.values():
            yield f"card {letter}", plain(answer_text(answer))


def _front(layout: Layout, letter: str, problem: SolvedProblem) -> list[Passage]:
    about, place = f"card {letter}", problem.content.place
    number = said(layout, "cards", "number", number=str(problem.number))
    return [
        passage(about, Part.TITLE, letter, place, keeps=about),
        passage(about, Part.TEXT, number, place, keeps=about),
        story_passage(problem, about),
    ]


def _back(layout: Layout, letter: str, problem: SolvedProblem) -> list[Passage]:
    about, place = f"the back of card {letter}", problem.content.place
    return [
        passage(about, Part.TITLE, letter, place, keeps=about),
        passage(about, Part.TEXT, said(layout, "sheet", "because"), place, keeps=about),
    ]


def _group(layout: Layout, lesson: SolvedLesson, group: str) -> list[Passage]:
    name, place = said(layout, "choices", group), lesson.lesson.place
    about = f"the card '{name}'"
    return [
        passage(about, Part.HEADING, name, place, keeps=about),
        passage(about, Part.TEXT, said(layout, "cards", "group"), place, keeps=about),
    ]


def expect_key(solved: SolvedWeek, layout: Layout) -> Expected:
    """The key: lesson by lesson, each letter with its group and the reason."""
    title = said(layout, "cards", "key")
    passages = [passage("the title", Part.TITLE, title)]
    for lesson in solved.lessons:
        cards = sorted_problems(lesson)
        if cards:
            own = lesson.lesson
            heading = said(layout, "strip", "lesson", day=own.day, lesson=own.title)
            passages.append(
                passage(f"the heading of {called(own)}", Part.HEADING, heading, own.place)
            )
        for letter, problem in cards:
            passages.extend(_key_line(layout, lesson, letter, problem))
    return Expected(tuple(passages), f"{title} · {solved.week.title}")


def _key_line(
    layout: Layout, lesson: SolvedLesson, letter: str, problem: SolvedProblem
) -> Iterator[Passage]:
    about, place = f"{called(lesson.lesson)}, card {letter}", problem.content.place
    yield passage(about, Part.NUMBER, letter, place, keeps=about)
    decision = said(layout, "choices", problem.solution.kind.decision.name.lower())
    number = said(layout, "cards", "number", number=str(problem.number))
    told = (*words(f"{decision} ({number}). "), *problem.solution.kind.reason)
    yield passage(about, Part.ANSWER, told, place, keeps=about)
