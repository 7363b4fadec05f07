"""New, easier and harder numbers around fixed ones, and the author's own for each version."""

from __future__ import annotations

from textwrap import dedent

import pytest

from tests.arithmetic.variation.conftest import Typed
from typeset.arithmetic.variation.numbers_typed import numbers_in
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.vary import Setting, vary
from typeset.arithmetic.variation.wishes import Wish
from typeset.errors import ContentError
from typeset.reading.content import ProblemContent
from typeset.reading.tree import bare

PROBLEMS = {
    "corks": "structure: equal groups\ngroups: 6 nets\neach: 14 corks\nstory: A",
    "terns": """\
        structure: ratio
        parts: {gulls: 3, terns: 7}
        known: {difference: 60 more terns}
        find: terns
        story: A
        """,
    "pickle": "structure: grouping\ntotal: 200 jars\neach: 12\nremainder: round down\nstory: A",
    "pulleys": """\
        structure: proportion
        together: {pulleys: 5 pulleys, cost: £18}
        wanted: {pulleys: 7 pulleys}
        find: cost
        story: A
        """,
    "mackerel": "structure: change\nstart: 340 mackerel\ndecrease: 185 mackerel\nstory: A",
    "hire": """\
        structure: fixed charge
        fixed: £6.50
        rate: £4.50
        total: £29
        find: count
        answer in: hours
        story: A
        """,
    "lunch": """\
        structure: steps
        quantities: {bowls: 3 bowls, price: £1.50, paid: £20}
        steps: [cost = bowls × price, spent = days × cost, left = paid − spent]
        find: left
        facts: {days: 2}
        story: A
        """,
    "lanterns": """\
        structure: fraction of a quantity
        fraction: 3/8
        whole: 48 lanterns
        find: part
        story: A
        """,
}
WISHES = (Wish.NEW, Wish.EASIER, Wish.HARDER)


def values(content: ProblemContent) -> list[object]:
    return [each.amount.value for each in numbers_in(content)]


@pytest.mark.parametrize("name", PROBLEMS)
@pytest.mark.parametrize("seed", [1, 2])
def test_new_numbers_are_like_the_old_ones(name: str, seed: int, typed: Typed) -> None:
    content = typed(dedent(PROBLEMS[name]))
    before, now = Trial(content), Trial(vary(content, Wish.NEW, seed))
    assert now.why_no_sense() == ""
    assert values(now.content) != values(content)
    assert before.answers != now.answers
    assert now.solution.kind.decision is before.solution.kind.decision
    assert now.leaves_rest is before.leaves_rest
    ratio = now.solution.demand / before.solution.demand
    assert 0.75 <= ratio <= 1.25


@pytest.mark.parametrize("name", PROBLEMS)
def test_easier_and_harder_numbers(name: str, typed: Typed) -> None:
    content = typed(dedent(PROBLEMS[name]))
    before = Trial(content)
    easier, harder = (Trial(vary(content, wish, 3)) for wish in (Wish.EASIER, Wish.HARDER))
    assert easier.solution.demand <= before.solution.demand * 3 / 4
    assert harder.solution.demand >= before.solution.demand * 5 / 4
    for trial in (easier, harder):
        assert trial.why_no_sense() == ""
        assert trial.solution.kind.decision is before.solution.kind.decision
        assert tuple(trial.answers) == tuple(before.answers)
        assert trial.content.story == content.story
    pairs = zip(values(easier.content), values(content), strict=True)
    assert all(small <= value for small, value in pairs)  # type: ignore[operator]


@pytest.mark.parametrize("wish", WISHES)
def test_facts_and_the_ratio_of_a_story_stay(wish: Wish, typed: Typed) -> None:
    lunch = vary(typed(dedent(PROBLEMS["lunch"])), wish, 1)
    assert bare(lunch.fields)["facts"] == {"days": "2"}
    terns = vary(typed(dedent(PROBLEMS["terns"])), Wish.NEW, 1)
    assert bare(terns.fields)["parts"] == {"gulls": "3", "terns": "7"}


def test_whoever_has_more_still_has_more(typed: Typed) -> None:
    problem = """\
        structure: constant difference
        together: {Yuki: 8 boats, Kofi: 20 boats}
        wanted: {Yuki: 24 boats}
        find: Kofi
        story: A
        """
    for seed in range(6):
        new = bare(vary(typed(dedent(problem)), Wish.NEW, seed).fields)
        yuki, kofi, later = (
            int(text.split()[0]) for text in (*new["together"].values(), new["wanted"]["Yuki"])
        )
        assert yuki < kofi < later


def test_a_problem_that_cannot_be_easier_stays(typed: Typed) -> None:
    problem = """\
        structure: unchanging
        together: {lanterns: 3 lanterns, time: 6 hours}
        wanted: {lanterns: 48 lanterns}
        find: time
        story: A
        """
    content = typed(dedent(problem))
    assert vary(content, Wish.EASIER, 1) == content
    assert values(vary(content, Wish.NEW, 1)) != values(content)


def test_the_mistake_to_be_spotted_can_still_be_shown(typed: Typed) -> None:
    content = typed(dedent(PROBLEMS["terns"]))
    setting = Setting(mistake="difference taken as the whole")
    # The whole is 10 parts, so the difference of 4 parts must be a multiple of 10 too.
    for wish in (Wish.NEW, Wish.EASIER):
        trial = Trial(vary(content, wish, 1, setting))
        assert setting.mistake in {each.misconception for each in trial.solution.mistakes}


OWN = """\
structure: steps
quantities: {tickets: 6, price: £3.50, paid: £50}
steps: [cost = tickets × price, change = paid − cost]
find: change
such that: [the answer is at least £10, no carrying]
story: "{tickets}, {price}, {paid}"
support:
  tickets: 2..4
  price: £2 or £3
stretch:
  quantities: {price: £3.60..£4.80 step 10p}
  story: "More of {tickets}, {price}, {paid}"
  such that: the answer is between £20 and £25
"""


def test_the_authors_own_support_and_stretch(typed: Typed) -> None:
    content = typed(OWN.replace("no carrying", "demand 0 to 99"))
    support = vary(content, Wish.EASIER, 4)
    numbers = bare(support.fields)["quantities"]
    assert numbers["tickets"] in {"2", "3", "4"}
    assert numbers["price"] in {"£2", "£3"}
    assert numbers["paid"] == "£50"
    assert (support.story, support.place) == (content.story, content.place)
    stretch = vary(content, Wish.HARDER, 4)
    assert bare(stretch.fields)["quantities"]["tickets"] == "6"
    change = next(iter(Trial(stretch).answers.values()))
    assert 20 <= change.value <= 25  # type: ignore[union-attr]
    assert stretch.story.template == "More of {tickets}, {price}, {paid}"


def test_conditions_of_the_problem_count_for_versions_without_their_own(typed: Typed) -> None:
    content = typed(OWN.replace(", no carrying", ", each number different"))
    support = vary(content, Wish.EASIER, 1)
    # The bound is the core's own; that numbers differ is asked of every version.
    assert [each.text for each in support.such_that] == ["each number different"]
    for seed in range(12):
        numbers = bare(vary(content, Wish.EASIER, seed).fields)["quantities"]
        assert numbers["tickets"] != numbers["price"].removeprefix("£")


def test_ranges_of_the_core_are_drawn_before_a_version_is_made_of_them(typed: Typed) -> None:
    content = typed(OWN.replace("paid: £50", "paid: £50 or £100").replace(", no carrying", ""))
    core = vary(content, Wish.AS_TYPED, "a seed")
    support = vary(content, Wish.EASIER, "a seed")
    assert bare(core.fields)["quantities"]["paid"] == bare(support.fields)["quantities"]["paid"]
    assert vary(core, Wish.EASIER, "a seed") == support


def test_other_wishes_and_seeds_give_other_numbers(typed: Typed) -> None:
    content = typed(dedent(PROBLEMS["mackerel"]))
    found = {vary(content, wish, seed).drawn for wish in WISHES for seed in range(3)}
    assert len(found) > 6
    assert vary(content, Wish.NEW, 1) == vary(content, Wish.NEW, 1)


def test_nothing_new_is_complained_of(typed: Typed) -> None:
    content = typed("structure: sharing\ntotal: 1 m\ngroups: 1 piece\nstory: A")
    with pytest.raises(ContentError, match="no new numbers were found for 'monday-1'"):
        vary(content, Wish.NEW, 1)
