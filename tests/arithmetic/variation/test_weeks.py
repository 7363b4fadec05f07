"""Whole weeks: seeds, look-backs, versions."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.arithmetic.variation.conftest import as_item, lesson_of
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedProblem, SolvedRecap, SolvedWeek
from typeset.arithmetic.variation.conditions import number_set
from typeset.arithmetic.variation.trial import Trial
from typeset.arithmetic.variation.weeks import vary_week
from typeset.arithmetic.variation.wishes import Version
from typeset.errors import ContentError
from typeset.quantities.inline import plain
from typeset.reading.content import Recap, Week
from typeset.reading.week import read_lesson_alone

CRATES = """\
structure: equal groups
groups: 3..9 crates
each: 12..48 step 6 floats
{more}story: Leila packs {{groups}} with {{each}} each. How many floats?
"""
LAMPS = """\
structure: sharing
total: 72 lamps
groups: 6 rows
story: "Kofi hangs {total} in {groups}. How many in each?"
"""
ROPE = """\
structure: proportion
together: {rope: 4 m, cost: £6}
wanted: {rope: 14 m}
find: cost
story: "{rope} of rope cost {cost}. How much do {wanted} cost?"
"""
KITES = """\
structure: sharing
total: 60..96 step 12 kites
groups: 4 boats
story: "{total} on {groups}. How many on each?"
"""
RECAP = "  - recap:\n      from: {names}\n      count: {count}\n"
WeekOf = Callable[..., Week]


def plain_crates() -> str:
    return CRATES.format(more="")


def drawn(solved: SolvedWeek, story: str) -> dict[str, str]:
    """The numbers of the only problem whose story begins so."""
    (found,) = (p for p in problems(solved) if p.content.story.template.startswith(story))
    return dict(found.content.drawn)


def problems(solved: SolvedWeek) -> list[SolvedProblem]:
    return [problem for lesson in solved.lessons for problem in lesson.problems()]


def recap_of(solved: SolvedWeek, lesson: int) -> tuple[SolvedProblem, ...]:
    stage = solved.lessons[lesson].stages[0]
    assert isinstance(stage, SolvedRecap)
    return stage.problems


def test_other_problems_change_nothing(week_of: WeekOf) -> None:
    alone = drawn(solve_week(week_of(monday=lesson_of(plain_crates()))), "Leila")
    before = lesson_of(LAMPS, KITES, plain_crates(), ROPE)
    assert drawn(solve_week(week_of(monday=before)), "Leila") == alone
    after = {"sunday": lesson_of(KITES), "monday": lesson_of(plain_crates())}
    assert drawn(solve_week(week_of(**after)), "Leila") == alone


def test_seed_lesson_and_id_change_the_numbers(week_of: WeekOf) -> None:
    weeks = [week_of(seed, monday=lesson_of(plain_crates())) for seed in (1, 2, 3)]
    weeks.append(week_of(tuesday=lesson_of(plain_crates())))
    weeks.append(week_of(monday=lesson_of(CRATES.format(more="id: own\n"))))
    found = [tuple(drawn(solve_week(week), "Leila").items()) for week in weeks]
    assert len(set(found)) >= 4


def test_the_same_problem_twice_is_drawn_twice(week_of: WeekOf) -> None:
    solved = solve_week(week_of(monday=lesson_of(*[plain_crates()] * 4)))
    assert len({each.content.drawn for each in problems(solved)}) >= 3


def test_an_id_holds_the_numbers_when_the_story_is_mended(week_of: WeekOf) -> None:
    own = CRATES.format(more="id: own\n")
    mended = own.replace("How many floats?", "How many floats is that?")
    before, after = (solve_week(week_of(monday=lesson_of(each))) for each in (own, mended))
    assert drawn(before, "Leila") == drawn(after, "Leila")


def test_different_from_monday(week_of: WeekOf) -> None:
    """With two sets to choose from, Tuesday always has the other one."""
    two = CRATES.replace("3..9", "3 or 4").replace("12..48 step 6", "12")
    for seed in range(6):
        monday = lesson_of(two.format(more=""))
        tuesday = lesson_of(two.format(more="such that: different from monday\n"))
        first, second = problems(solve_week(week_of(seed, monday=monday, tuesday=tuesday)))
        assert first.content.drawn != second.content.drawn


def test_a_recap_by_count(week_of: WeekOf) -> None:
    monday = lesson_of(plain_crates(), LAMPS, ROPE, KITES)
    tuesday = lesson_of(LAMPS.replace("Kofi", "Nell"), before=RECAP.format(names="monday", count=3))
    solved = solve_week(week_of(monday=monday, tuesday=tuesday))
    recap = recap_of(solved, 1)
    # Different structures before a second one of any; in the order of Monday's page.
    assert [each.content.structure for each in recap] in (
        ["equal groups", "sharing", "proportion"],
        ["equal groups", "proportion", "sharing"],
    )
    assert [each.number for each in recap] == [1, 2, 3]
    assert [each.content.id for each in recap] == [f"tuesday-recap-{n}" for n in (1, 2, 3)]
    sources = {each.content.story.template: each for each in solved.lessons[0].problems()}
    for each in recap:
        source = sources[each.content.story.template]
        assert number_set(Trial(each.content)) != number_set(Trial(source.content))
        assert plain(each.story) != plain(source.story)


def test_a_recap_has_other_numbers_than_its_own_day(week_of: WeekOf) -> None:
    """With two sets to choose from, the look-back always has the other one."""
    two = KITES.replace("60..96 step 12", "60 or 72")
    two = two.replace("story:", "support: {total: 12 kites}\nstory:")
    for seed in range(6):
        tuesday = lesson_of(LAMPS, before=RECAP.format(names="monday", count=1))
        solved = solve_week(week_of(seed, monday=lesson_of(two), tuesday=tuesday))
        (again,), (source,) = recap_of(solved, 1), solved.lessons[0].problems()
        assert again.content.drawn != source.content.drawn
        # Support numbers of Monday would be Monday's numbers again.
        assert (again.content.support, again.content.stretch) == (None, None)
        assert source.content.support is not None


def test_practised_problems_come_again_before_sorted_ones(week_of: WeekOf) -> None:
    sort = "  - sort:\n      problems:\n" + as_item(ROPE).replace("            ", "          ")
    monday = lesson_of(LAMPS, before=sort.replace("          - ", "        - ", 1))
    for seed in range(4):
        tuesday = lesson_of(LAMPS, before=RECAP.format(names="monday", count=1))
        week = week_of(seed, monday=monday, tuesday=tuesday)
        found = vary_week(week).lessons[1].stages[0]
        assert isinstance(found, Recap)
        assert [each.structure for each in found.problems] == ["sharing"]


def test_own_problems_of_a_recap_come_first(week_of: WeekOf) -> None:
    typed_one = "      problems:\n        - {structure: sharing, total: 12 nets, groups: 3 men, "
    typed_one += 'story: "{total}, {groups}"}\n'
    before = RECAP.format(names="[monday, last week]", count=2) + typed_one
    monday = lesson_of(LAMPS, ROPE)
    tuesday = lesson_of(LAMPS.replace("Kofi", "Nell"), before=before)
    recap = recap_of(solve_week(week_of(monday=monday, tuesday=tuesday)), 1)
    assert [each.content.structure for each in recap] == ["sharing", "sharing", "proportion"]
    assert plain(recap[0].story).replace("\u00a0", " ") == "12 nets, 3 men"


def test_a_lesson_alone_has_the_numbers_that_it_has_in_its_week(week_of: WeekOf) -> None:
    more = "such that: different from monday\n"
    week = week_of(
        5,
        monday=lesson_of(plain_crates(), KITES, LAMPS),
        tuesday=lesson_of(CRATES.format(more=more), before=RECAP.format(names="monday", count=3)),
    )
    whole = solve_week(week).lessons[1]
    alone = solve_week(read_lesson_alone(week.folder / "tuesday.yaml")).lessons[0]
    assert [plain(p.story) for p in alone.problems()] == [plain(p.story) for p in whole.problems()]


@pytest.mark.parametrize("version", [Version.SUPPORT, Version.STRETCH])
def test_versions_of_a_week(version: Version, week_of: WeekOf) -> None:
    more = "support: {each: 2..5 floats}\nstretch: {each: 103..199 floats}\n"
    monday = lesson_of(CRATES.format(more=more), LAMPS, ROPE, KITES)
    tuesday = lesson_of(LAMPS.replace("Kofi", "Nell"), before=RECAP.format(names="monday", count=2))
    week = week_of(monday=monday, tuesday=tuesday)
    core, other = problems(solve_week(week)), problems(solve_week(week, version))
    assert [(p.number, p.content.id, p.content.structure) for p in core] == [
        (p.number, p.content.id, p.content.structure) for p in other
    ]
    assert [p.content.story for p in core] == [p.content.story for p in other]
    harder = version is Version.STRETCH
    for one, two in zip(core, other, strict=True):
        assert (two.solution.demand > one.solution.demand) is harder or not harder
        assert (two.solution.demand <= one.solution.demand) is not harder
    floats = int(dict(other[0].content.drawn)["each"].split()[0])
    assert (103 <= floats <= 199) if harder else (2 <= floats <= 5)


def test_own_numbers_of_a_version_are_checked_with_the_core(week_of: WeekOf) -> None:
    more = "support: {each: 2..5 floats, such that: the answer is at least 900}\n"
    with pytest.raises(ContentError, match="fail 'the answer is at least 900'"):
        solve_week(week_of(monday=lesson_of(CRATES.format(more=more))))


def test_solving_what_was_drawn_gives_the_same_again(week_of: WeekOf) -> None:
    monday = lesson_of(plain_crates(), LAMPS, KITES)
    tuesday = lesson_of(ROPE, before=RECAP.format(names="monday", count=2))
    first = solve_week(week_of(monday=monday, tuesday=tuesday))
    again = solve_week(first.week)
    assert [p.story for p in problems(again)] == [p.story for p in problems(first)]


def test_a_week_without_ranges_stays_as_it_is(demonstration_week: Path) -> None:
    from typeset.reading.week import read_week

    week = read_week(demonstration_week)
    if not any(problem for problem in _with_ranges(week)):
        assert vary_week(week).lessons == week.lessons


def _with_ranges(week: Week) -> list[object]:
    from typeset.arithmetic.variation.vary import varies
    from typeset.reading.stages import problems_of

    stages = [stage for lesson in week.lessons for stage in lesson.stages]
    counted = [stage for stage in stages if isinstance(stage, Recap) and stage.count]
    return [*counted, *(p for stage in stages for p in problems_of(stage) if varies(p))]
