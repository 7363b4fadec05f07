"""Posts and gaps: how many posts, how long a gap, how long the row; also floors and flights."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.families.posts_mistakes import mistakes_of
from typeset.arithmetic.families.posts_view import GAP, GAPS, LENGTH, MORE, POSTS, WANTED, Row
from typeset.arithmetic.families.posts_ways import ways_of
from typeset.arithmetic.family import Family
from typeset.arithmetic.fields import FamilyFields, PositiveAmount, UnitField, WholeAmount
from typeset.arithmetic.figures import Mark, PostsAndGaps
from typeset.arithmetic.methods import check_alike, finest_unit, in_unit, is_counted
from typeset.arithmetic.problem import Problem
from typeset.arithmetic.workings import MistakenWorking, Working
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import Rich
from typeset.quantities.units import Unit, noun
from typeset.quantities.writing import decimal, say, write, write_plain

# Measures finer than thousandths are not met in these years (national curriculum, Year 6).
_FINEST = 1000
_MOST_DRAWN = 200


class PostsAndGapsFields(FamilyFields):
    """Two of `length: 60 m`, `gap: 5 m`, `posts: 13 lamps`, and `posts at: both ends` (or one
    end, neither end, round a loop).

    `wanted: 6` beside posts and length asks for the length of another row with the same gaps:
    from floor 1 to floor 3 takes 4 minutes, how long from floor 1 to floor 6? `posts called:
    floors` and `gaps called: flights` name them in the workings.
    """

    posts_at: Literal["both ends", "one end", "neither end", "round a loop"] | None = Field(
        default=None, alias="posts at"
    )
    length: PositiveAmount | None = None
    gap: PositiveAmount | None = None
    posts: WholeAmount | None = None
    wanted: WholeAmount | None = None
    posts_called: UnitField | None = Field(default=None, alias="posts called")
    gaps_called: UnitField | None = Field(default=None, alias="gaps called")
    find: Literal["posts", "gaps", "gap", "length"] | None = None


class PostsAndGapsFamily(Family[PostsAndGapsFields]):
    """length = gap × gaps; posts = gaps + 1, gaps, or gaps − 1."""

    name = "posts and gaps"
    fields_model = PostsAndGapsFields

    def build(self, fields: PostsAndGapsFields) -> Problem[PostsAndGapsFields]:
        """The problem; what is not given is asked for. Where posts stand is never guessed."""
        if fields.posts_at is None:
            raise AmountError(
                "it is not said where the first and the last post stand",
                "write 'posts at: both ends', 'one end', 'neither end' or 'round a loop'",
            )
        named = {LENGTH: fields.length, GAP: fields.gap, POSTS: fields.posts,
                 WANTED: fields.wanted}  # fmt: skip
        givens = {name: amount for name, amount in named.items() if amount is not None}
        asked = _asked(fields, givens)
        _check(fields, givens)
        unit = _unit(asked, fields, givens)
        return Problem(
            self.name, MappingProxyType(givens), (asked,), MappingProxyType({asked: unit}), fields
        )

    def relation(self, problem: Problem[PostsAndGapsFields]) -> Mapping[str, AnswerValue]:
        """length = gap × (posts − more), in base units; more is 1, 0 or −1."""
        asked = problem.finds[0]
        value = _solved(problem)
        if asked in (POSTS, GAPS):
            _check_whole(problem, value)
            return {asked: problem.answer(asked, value)}
        answer = problem.answer(asked, value / problem.units[asked].per_base)
        _check_measure(problem, answer)
        return {asked: answer}

    def strategies(self, problem: Problem[PostsAndGapsFields]) -> Iterator[Working]:
        """Gaps first, by every way to divide or multiply; post by post; and scaled."""
        yield from ways_of(Row(problem))

    def mistakes(self, problem: Problem[PostsAndGapsFields]) -> Iterator[MistakenWorking]:
        """One too few, one too many, posts counted as gaps, and all in proportion."""
        yield from mistakes_of(Row(problem))

    def smooth(self, problem: Problem[PostsAndGapsFields]) -> Mapping[str, AnswerValue]:
        """The answer also where it is not whole, so that the kind shows."""
        asked = problem.finds[0]
        per_base = 1 if asked in (POSTS, GAPS) else problem.units[asked].per_base
        return {asked: problem.answer(asked, _solved(problem) / Fraction(per_base))}

    def reason(self, problem: Problem[PostsAndGapsFields]) -> Rich | None:
        """Where posts and gaps differ, doubling the one does not double the other."""
        return _reason(problem, self)

    def figure(
        self, problem: Problem[PostsAndGapsFields], answers: Mapping[str, AnswerValue]
    ) -> PostsAndGaps | None:
        """The row with its posts; of a long one its start and end."""
        return _figure(problem, answers)


def _asked(fields: PostsAndGapsFields, givens: Mapping[str, Amount]) -> str:
    """What is asked for. Raises AmountError where that is too much, or nothing."""
    known = set(givens)
    fits = {
        frozenset((LENGTH, GAP)): (POSTS, GAPS),
        frozenset((LENGTH, POSTS)): (GAP,),
        frozenset((GAP, POSTS)): (LENGTH,),
        frozenset((LENGTH, POSTS, WANTED)): (LENGTH,),
    }.get(frozenset(known))
    if fits is None and WANTED in known:
        raise AmountError(
            "'wanted' goes with the length and the posts of a first row",
            "give length, posts and wanted, without a gap",
        )
    if fits is None:
        raise AmountError("two of length, gap and posts are known", "give exactly two of them")
    if fields.find is not None and fields.find not in fits:
        raise AmountError(f"'{fields.find}' cannot be asked for here", f"write find: {fits[0]}")
    return fields.find or fits[0]


def _check(fields: PostsAndGapsFields, givens: Mapping[str, Amount]) -> None:
    """Raises AmountError where the numbers cannot be a row of posts."""
    lengths = [givens[name] for name in (LENGTH, GAP) if name in givens]
    check_alike(*lengths)
    for name in (POSTS, WANTED):
        count = givens.get(name)
        if count is None:
            continue
        if not is_counted(count):
            raise AmountError(f"'{name}' is a number of things", "write it such as 13 posts")
        if count.value <= MORE[str(fields.posts_at)]:
            raise AmountError(
                f"{write_plain(count)} at {fields.posts_at} leave no gap", "give more of them"
            )


def _unit(asked: str, fields: PostsAndGapsFields, givens: Mapping[str, Amount]) -> Unit:
    if asked == POSTS:
        return fields.answer_in or fields.posts_called or noun("post", "posts")
    if asked == GAPS:
        return fields.answer_in or fields.gaps_called or noun("gap", "gaps")
    amounts = [givens[name] for name in (LENGTH, GAP) if name in givens]
    if fields.answer_in is not None:
        in_unit(amounts[0], fields.answer_in)
        return fields.answer_in
    return amounts[0].unit if is_counted(amounts[0]) else finest_unit(*amounts)


def _solved(problem: Problem[PostsAndGapsFields]) -> Fraction:
    """The unknown: a number of posts or gaps, or a length in the base unit."""
    asked, more = problem.finds[0], MORE[str(problem.fields.posts_at)]
    given = {name: amount.base for name, amount in problem.givens.items()}
    if WANTED in given:
        return given[LENGTH] / (given[POSTS] - more) * (given[WANTED] - more)
    if asked == GAPS:
        return given[LENGTH] / given[GAP]
    if asked == POSTS:
        return given[LENGTH] / given[GAP] + more
    gaps = given[POSTS] - more
    return given[LENGTH] / gaps if asked == GAP else given[GAP] * gaps


def _check_whole(problem: Problem[PostsAndGapsFields], count: Fraction) -> None:
    length, gap = (write_plain(problem.given(name)) for name in (LENGTH, GAP))
    if count.denominator != 1:
        raise AmountError(
            f"{length} is not a whole number of gaps of {gap}",
            "choose numbers that divide exactly",
        )
    if count <= 0:
        raise AmountError(
            f"{length} with gaps of {gap} has nothing to count", "choose a longer row"
        )


def _check_measure(problem: Problem[PostsAndGapsFields], answer: Amount) -> None:
    """Raises AmountError for a length that no pupil of these years would write."""
    if is_counted(answer) or problem.fields.round_to is not None:
        return
    if decimal(answer.value) is None or (answer.value * _FINEST).denominator != 1:
        raise AmountError(
            f"the {problem.finds[0]} would be {write_plain(answer)}",
            "choose numbers that divide exactly, or state a rounding such as "
            "'round to: 1 decimal place'",
        )


def _reason(problem: Problem[PostsAndGapsFields], family: PostsAndGapsFamily) -> Rich | None:
    row, asked = Row(problem), problem.finds[0]
    if not row.more or asked == GAPS:
        return None
    answer = family.relation(problem)[asked]
    assert isinstance(answer, Amount)
    posts, gaps = row.post.plural, row.gap_noun.plural
    if asked == POSTS:
        old = problem.given(LENGTH)
        after = answer.like(2 * (answer.value - row.more) + row.more)
        text = (
            f"With {{new}} instead of {{old}} there would be twice as many {gaps}, but not twice "
            f"as many {posts}: {{after}} instead of {{before}}."
        )
        return say(text, new=old.like(2 * old.value), old=old, before=answer, after=after)
    count = problem.given(WANTED if WANTED in problem.givens else POSTS).value
    ratio = "half as long"
    if asked == LENGTH:
        ratio = "twice as many" if answer.unit.is_noun else "twice as long"
    what = "it" if asked == LENGTH else f"each {row.gap_noun.singular}"
    word = "fewer" if row.more > 0 else "more"
    text = (
        f"There is one {word} {row.gap_noun.singular} than there are {posts}, so with {{new}} "
        f"instead of {{old}} {what} would not be {ratio}."
    )
    return say(text, new=row.so_many(2 * count), old=row.so_many(count))


def _figure(
    problem: Problem[PostsAndGapsFields], answers: Mapping[str, AnswerValue]
) -> PostsAndGaps | None:
    row, asked = Row(problem), problem.finds[0]
    answer = answers[asked]
    assert isinstance(answer, Amount)
    shown = WANTED if WANTED in problem.givens else POSTS
    count = problem.givens.get(shown)
    posts = count.value if count is not None else answer.value + (row.more if asked == GAPS else 0)
    gaps = posts - row.more
    if posts > _MOST_DRAWN or posts < 1:
        return None
    length = answer if asked == LENGTH else problem.given(LENGTH)
    gap = answer if asked == GAP else problem.givens.get(GAP) or length.like(length.value / gaps)
    return PostsAndGaps(
        int(posts),
        int(gaps),
        Mark((write(gap),), GAP in problem.givens),
        Mark((write(length),), asked != LENGTH),
        Mark((write(row.so_many(posts)),), count is not None, hidden=asked == GAPS),
    )
