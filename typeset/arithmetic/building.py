"""From content to solved lessons: every complaint of a whole week in one run."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from pydantic import ConfigDict, TypeAdapter, ValidationError

from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.family import AnyFamily
from typeset.arithmetic.fields import AnyAmount
from typeset.arithmetic.lessons import (
    SolvedExtension,
    SolvedLesson,
    SolvedPractise,
    SolvedProblem,
    SolvedRecap,
    SolvedSet,
    SolvedSort,
    SolvedSpot,
    SolvedStage,
    SolvedWeek,
    ToldOwnProblems,
)
from typeset.arithmetic.misconceptions import MISCONCEPTIONS
from typeset.arithmetic.names import listed
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.solving import Solution, solve, solve_answers
from typeset.arithmetic.stories import tell, unmentioned
from typeset.arithmetic.support import supported
from typeset.arithmetic.variation.found import trial_of
from typeset.arithmetic.variation.numbers_typed import no_choices
from typeset.arithmetic.variation.pupils import Class, vary_for_pupil
from typeset.arithmetic.variation.weeks import vary_lesson, vary_week
from typeset.arithmetic.variation.wishes import Version
from typeset.arithmetic.workings import MistakenWorking
from typeset.errors import AmountError, Complaint, ContentError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.reading.complaints import complaints_of, likely, nearest
from typeset.reading.content import (
    Extension,
    Lesson,
    OwnProblems,
    Practise,
    ProblemContent,
    Recap,
    Sort,
    SpotTheMistake,
    Stage,
    Story,
    Week,
)
from typeset.reading.tree import Keyed, bare

_AMOUNTS: TypeAdapter[dict[str, Amount]] = TypeAdapter(
    dict[str, AnyAmount], config=ConfigDict(defer_build=True)
)


@cache
def _open_steps() -> AnyFamily:
    """The family of open tasks, loaded like every other where a week has a problem of it."""
    from typeset.arithmetic.families.steps import OpenSteps

    return OpenSteps()


def solve_week(week: Week, version: Version = Version.CORE, only: str | None = None) -> SolvedWeek:
    """The week with its numbers drawn and every problem solved, in one of its versions.

    Every version has the same questions under the same numbers, about the same things. With the
    name of a lesson `only` that one is solved; there is none of a name that the week lacks.
    Raises ContentError with every complaint of the lessons, SolvingError for a fault of ours.
    """
    varied = vary_week(week, version, only)
    complaints = list(varied.complaints)
    titles = {lesson.name: lesson.title for lesson in (*week.background, *week.lessons)}
    wanted = (lesson for lesson in varied.lessons if only in (None, lesson.name))
    lessons = tuple(_solve(lesson, titles, complaints, varied.unfit) for lesson in wanted)
    if complaints:
        raise ContentError(complaints)
    if version is Version.SUPPORT:
        lessons = tuple(supported(lesson) for lesson in lessons)
    return SolvedWeek(replace(week, lessons=varied.lessons), lessons, version)


def solve_for_pupil(
    given: Class, titles: Mapping[str, str], lesson: str, number: int
) -> SolvedLesson:
    """The lesson with the numbers of the pupil at this place of the class list.

    `titles` are those of lessons looked back at, by name. Raises ContentError, SolvingError.
    """
    complaints: list[Complaint] = []
    varied = vary_for_pupil(given, lesson, number)
    solved = _solve(varied, titles, complaints, frozenset())
    if complaints:
        raise ContentError(complaints)
    return supported(solved) if given.version is Version.SUPPORT else solved


def solve_lesson(lesson: Lesson) -> SolvedLesson:
    """One lesson alone; see `solve_week`."""
    varied = vary_lesson(lesson)
    complaints = list(varied.complaints)
    solved = _solve(varied.lessons[0], {}, complaints, varied.unfit)
    if complaints:
        raise ContentError(complaints)
    return solved


def _solve(
    lesson: Lesson, titles: Mapping[str, str], complaints: list[Complaint], unfit: frozenset[str]
) -> SolvedLesson:
    builder = _Builder(titles, complaints, unfit)
    stages = (builder.stage(stage) for stage in lesson.stages)
    solved = tuple(stage for stage in stages if stage is not None)
    own = builder.own(lesson.own_problems) if lesson.own_problems else None
    return SolvedLesson(lesson, solved, own)


@dataclass(slots=True)
class _Builder:
    """Solves the stages of one lesson in order, numbering questions and gathering complaints."""

    titles: Mapping[str, str]
    complaints: list[Complaint]
    # Problems without numbers that fit, which are complained of already.
    unfit: frozenset[str]
    last_number: int = field(default=0)

    def stage(self, stage: Stage) -> SolvedStage | None:
        """The stage solved; None where it has complaints."""
        match stage:
            case Recap():
                titles = tuple(self.titles.get(name, name) for name in stage.looks_back_at)
                return SolvedRecap(titles, self.problems(stage.problems))
            case SpotTheMistake():
                return self.spot(stage)
            case Sort():
                return self.sort(stage)
            case Practise():
                return SolvedPractise(
                    tuple(SolvedSet(each.name, self.problems(each.problems)) for each in stage.sets)
                )
            case Extension():
                return self.extension(stage)

    def problems(self, contents: tuple[ProblemContent, ...]) -> tuple[SolvedProblem, ...]:
        """Those of the problems that have no complaint."""
        solved = (self.problem(content) for content in contents)
        return tuple(each for each in solved if each is not None)

    def problem(self, content: ProblemContent) -> SolvedProblem | None:
        """One problem; its number is used up even where it has complaints."""
        number = self.next_number()
        if content.id in self.unfit:
            return None
        before = len(self.complaints)
        known = trial_of(content)
        problem = known.problem if known is not None else self.build(content)
        if problem is None:
            return None
        story = self.story(content, problem)
        amounts = self.tellable(content, problem)
        hint = tell(content.hint, amounts, self.complaints) if content.hint else None
        if known is not None:
            solution: Solution | None = known.solution
        else:
            solution = self.solve(FAMILIES[content.structure], problem, content)
        if solution is None or len(self.complaints) > before:
            return None
        return SolvedProblem(number, content, story, hint.text if hint else None, solution)

    def next_number(self) -> int:
        """The next running question number."""
        self.last_number += 1
        return self.last_number

    def build(self, content: ProblemContent) -> Problem[Any] | None:
        """The problem of the content's fields."""
        family = FAMILIES.get(content.structure)
        if family is None:
            near = likely(content.structure, FAMILIES)
            remedy = f"did you mean '{near}'?" if near else "the README lists the structures"
            problem = f"unknown structure '{content.structure}'"
            place = content.structure_place or content.place
            self.complaints.append(Complaint(place, problem, remedy))
            return None
        return self.built(family, content.fields, content.nouns)

    def built(
        self, family: AnyFamily, fields: Keyed, nouns: Mapping[str, str]
    ) -> Problem[Any] | None:
        """The family's problem of these fields, or complaints."""
        model = family.fields_model
        try:
            checked = model.model_validate(bare(fields), context={"nouns": nouns})
            return family.build(checked)
        except ValidationError as error:
            self.complaints.extend(complaints_of(error, fields, model.keys()))
        except AmountError as error:
            self.complaints.append(Complaint(fields.place, error.problem, error.remedy))
        return None

    def story(self, content: ProblemContent, problem: Problem[Any]) -> Rich:
        """The story as set; what it leaves out or makes up is complained of."""
        before = len(self.complaints)
        told = tell(content.story, self.tellable(content, problem), self.complaints)
        if len(self.complaints) > before:
            # A misspelt name would be complained of twice.
            return told.text
        quotes = FAMILIES[content.structure].quotes(problem)
        to_tell = [name for name in problem.givens if name not in problem.fields.facts]
        self.complaints.extend(unmentioned(content.story, told, to_tell, quotes))
        return told.text

    @staticmethod
    def tellable(content: ProblemContent, problem: Problem[Any]) -> dict[str, Amount | Rich]:
        """What a story or hint may mention: the givens, and the family's own texts."""
        quotes = FAMILIES[content.structure].quotes(problem)
        return {**problem.givens, **{name: each.text for name, each in quotes.items()}}

    def solve(
        self, family: AnyFamily, problem: Problem[Any], content: ProblemContent
    ) -> Solution | None:
        """The solution, or a complaint where the numbers have none that makes sense."""
        try:
            return solve(family, problem)
        except AmountError as error:
            self.complaints.append(Complaint(content.place, error.problem, error.remedy))
        except ZeroDivisionError:
            self.complaints.append(
                Complaint(content.place, "solving it divides by 0", "choose other numbers")
            )
        return None

    def spot(self, stage: SpotTheMistake) -> SolvedSpot | None:
        """The worked solution with the mistake that the author names."""
        problem = self.problem(stage.problem)
        if problem is None:
            return None
        mistake = self.mistake(stage, problem.solution)
        if mistake is None:
            return None
        return SolvedSpot(problem, stage.pupil, mistake, MISCONCEPTIONS[mistake.misconception])

    def mistake(self, stage: SpotTheMistake, solution: Solution) -> MistakenWorking | None:
        """The wrong working of this name, or a complaint that says which would do."""
        usable = {each.misconception: each for each in solution.mistakes}
        if stage.mistake in usable:
            return usable[stage.mistake]
        refused = {each.misconception: each.why for each in solution.refused}
        place = stage.mistake_place
        if stage.mistake in refused:
            problem = (
                f"'{stage.mistake}' cannot be shown with these numbers: {refused[stage.mistake]}"
            )
            remedy = f"change the numbers, or write {listed(tuple(usable))}"
        else:
            problem = f"this problem has no mistake called '{stage.mistake}'"
            remedy = nearest(stage.mistake, (*usable, *refused))
        self.complaints.append(Complaint(place, problem, remedy))
        return None

    def sort(self, stage: Sort) -> SolvedSort:
        """The problems to sort; sorting needs at least two groups."""
        problems = self.problems(stage.problems)
        decisions = {each.solution.kind.decision for each in problems}
        if len(problems) == len(stage.problems) and len(decisions) == 1:
            self.complaints.append(
                Complaint(
                    stage.place,
                    f"every problem here would be sorted as '{decisions.pop().value}'",
                    "add one that looks alike but is solved in another way",
                )
            )
        return SolvedSort(problems)

    def extension(self, stage: Extension) -> SolvedExtension | None:
        """The open task; its texts for adults may use the results of its steps."""
        number = self.next_number()
        before = len(self.complaints)
        if ranges := no_choices(stage.fields):
            self.complaints.extend(ranges)
            return None
        givens, results = self.extension_amounts(stage)
        story = self.told(stage.story, givens)
        hints = tuple(self.told(hint, {**givens, **results}) for hint in stage.hints)
        look_for = tuple(self.told(text, {**givens, **results}) for text in stage.look_for)
        if len(self.complaints) > before:
            return None
        return SolvedExtension(number, stage, story, hints, look_for)

    def own(self, own: OwnProblems) -> ToldOwnProblems | None:
        """What pupils make up problems from; None where it has complaints."""
        before = len(self.complaints)
        if ranges := no_choices(own.fields):
            self.complaints.extend(ranges)
            return None
        amounts = self.amounts(own)
        told = tell(own.story, amounts, self.complaints)
        if len(self.complaints) == before:
            self.complaints.extend(unmentioned(own.story, told, amounts, {}))
        if len(self.complaints) > before:
            return None
        return ToldOwnProblems(own, told.text, amounts)

    def told(self, story: Story, amounts: Mapping[str, Amount | Rich]) -> Rich:
        """A text with its amounts put in."""
        return tell(story, amounts, self.complaints).text

    def extension_amounts(self, stage: Extension) -> tuple[dict[str, Amount], dict[str, Amount]]:
        """The quantities of the open task, and the results of its steps."""
        if stage.fields.get("steps") is None:
            return self.amounts(stage), {}
        problem = self.built(_open_steps(), stage.fields, stage.nouns)
        if problem is None:
            return {}, {}
        try:
            answers = solve_answers(_open_steps(), problem)
        except AmountError as error:
            self.complaints.append(Complaint(stage.place, error.problem, error.remedy))
            return dict(problem.givens), {}
        results = {name: each for name, each in answers.items() if isinstance(each, Amount)}
        return dict(problem.givens), results

    def amounts(self, stage: Extension | OwnProblems) -> dict[str, Amount]:
        """The quantities alone, where nothing is worked out."""
        node = stage.fields.get("quantities")
        if not isinstance(node, Keyed):
            return {}
        try:
            return _AMOUNTS.validate_python(bare(node), context={"nouns": stage.nouns})
        except ValidationError as error:
            self.complaints.extend(complaints_of(error, node, ()))
            return {}
