"""Random problems of time and measures against datetime, pint and plain counting."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from fractions import Fraction

import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.arithmetic.random_problems import PINT, hundredths, root, solved, tried, typed, value_of
from typeset.arithmetic.answers import answer_exact, answer_text
from typeset.arithmetic.solving import Solution
from typeset.errors import AmountError
from typeset.quantities.amount import Amount
from typeset.quantities.inline import plain

MIDNIGHT = datetime(2024, 2, 28)
times_of_day = st.integers(0, 24 * 60 - 1)
lengths = st.integers(1, 24 * 60 - 1)


def clock(minutes: int) -> str:
    at = MIDNIGHT + timedelta(minutes=minutes)
    return f"{at:%H:%M}"


def typed_length(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return " ".join(f"{n} {unit}" for n, unit in ((hours, "h"), (rest, "min")) if n)


def on_the_clock(solution: Solution, name: str) -> str:
    """The answer as datetime writes it."""
    return answer_exact(solution.answers[name]).rjust(5, "0")


def minutes_of(solution: Solution, name: str) -> Fraction:
    answer = solution.answers[name]
    assert isinstance(answer, Amount)
    return answer.base / 60


@tried
@given(start=times_of_day, lasts=lengths)
def test_elapsed_time_to_the_end(start: int, lasts: int) -> None:
    later = MIDNIGHT + timedelta(minutes=start + lasts)
    days = (later.date() - MIDNIGHT.date()).days
    fields = {"start": clock(start), "duration": typed_length(lasts)}
    for said in ({}, {"next_day": "yes" if days else "no"}):
        solution = solved("elapsed time", **fields, **said)
        assert on_the_clock(solution, "end") == f"{later:%H:%M}"
    with pytest.raises(AmountError):
        solved("elapsed time", **fields, next_day="no" if days else "yes")


@tried
@given(end=times_of_day, lasts=lengths)
def test_elapsed_time_back_to_the_start(end: int, lasts: int) -> None:
    earlier = MIDNIGHT + timedelta(minutes=end - lasts)
    solution = solved("elapsed time", end=clock(end), duration=typed_length(lasts))
    assert on_the_clock(solution, "start") == f"{earlier:%H:%M}"


@tried
@given(start=times_of_day, end=times_of_day, days=st.integers(0, 3))
def test_elapsed_time_between(start: int, end: int, days: int) -> None:
    between = timedelta(days=days, minutes=end) - timedelta(minutes=start)
    fields = {"start": clock(start), "end": clock(end)} | (
        {"days_later": str(days)} if days else {}
    )
    if between <= timedelta(0):
        with pytest.raises(AmountError):
            solved("elapsed time", **fields)
        return
    solution = solved("elapsed time", **fields)
    assert minutes_of(solution, "duration") == Fraction(between // timedelta(minutes=1))


@tried
@given(
    start=times_of_day,
    parts=st.lists(st.integers(1, 600), min_size=2, max_size=4),
    back=st.booleans(),
)
def test_elapsed_time_in_a_chain(start: int, parts: list[int], back: bool) -> None:
    named = dict(zip(("crossing", "waiting", "walk", "tour"), parts, strict=False))
    durations = {name: f"{minutes} min" for name, minutes in named.items()}
    whole = timedelta(minutes=sum(parts))
    at = MIDNIGHT + timedelta(minutes=start)
    if back:
        solution = solved("elapsed time", end=clock(start), durations=durations)
        assert on_the_clock(solution, "start") == f"{at - whole:%H:%M}"
        return
    solution = solved("elapsed time", start=clock(start), durations=durations)
    assert on_the_clock(solution, "end") == f"{at + whole:%H:%M}"
    assume(start + sum(parts) < 24 * 60)
    missing = durations.popitem()[0]
    rest = solved(
        "elapsed time",
        start=clock(start),
        end=clock(start + sum(parts)),
        durations=durations,
        find=missing,
    )
    assert minutes_of(rest, missing) == named[missing]


@tried
@given(start=times_of_day, days=st.integers(1, 9), lasts=st.integers(0, 1439))
def test_elapsed_time_over_days(start: int, days: int, lasts: int) -> None:
    later = MIDNIGHT + timedelta(days=days, minutes=start + lasts)
    duration = f"{days} day{'' if days == 1 else 's'} {typed_length(lasts)}".strip()
    solution = solved("elapsed time", start=clock(start), duration=duration)
    assert on_the_clock(solution, "end") == f"{later:%H:%M}"


# Where posts stand along a row of so many gaps, by plain counting of places.
PLACES: dict[str, Callable[[int], range]] = {
    "both ends": lambda gaps: range(gaps + 1),
    "one end": lambda gaps: range(gaps),
    "neither end": lambda gaps: range(1, gaps),
    "round a loop": lambda gaps: range(gaps),
}


@tried
@given(gaps=st.integers(2, 60), gap=hundredths, ends=st.sampled_from(sorted(PLACES)))
def test_posts_and_gaps(gaps: int, gap: Fraction, ends: str) -> None:
    posts = len(PLACES[ends](gaps))
    row = {"length": f"{typed(gaps * gap)} m", "gap": f"{typed(gap)} m", "posts": f"{posts} lamps"}
    for asked in row:
        fields = {name: each for name, each in row.items() if name != asked}
        solution = solved("posts and gaps", **fields, posts_at=ends)
        expected = {"length": gaps * gap, "gap": gap, "posts": Fraction(posts)}[asked]
        assert value_of(solution, asked) == expected
    only_gaps = solved("posts and gaps", length=row["length"], gap=row["gap"], posts_at=ends,
                       find="gaps")  # fmt: skip
    assert value_of(only_gaps, "gaps") == gaps


@tried
@given(
    gaps=st.integers(1, 12),
    others=st.integers(1, 30),
    each=st.integers(1, 20),
    ends=st.sampled_from(sorted(PLACES)),
)
def test_another_row_of_posts(gaps: int, others: int, each: int, ends: str) -> None:
    posts, wanted = (len(PLACES[ends](count)) for count in (gaps, others))
    assume(posts > 0 and wanted > 0)
    fields = {"posts": f"{posts} floors", "length": f"{gaps * each} min"}
    solution = solved("posts and gaps", **fields, wanted=f"{wanted} floors", posts_at=ends)
    assert value_of(solution, "length") == others * each


def cut_up(cuts: int, ring: bool) -> int:
    """The pieces after cutting the last piece again and again."""
    pieces = 0 if ring else 1
    for _ in range(cuts):
        pieces += 1
    return pieces


@tried
@given(cuts=st.integers(2, 40), piece=hundredths, each=st.integers(1, 15), ring=st.booleans())
def test_cuts_and_pieces(cuts: int, piece: Fraction, each: int, ring: bool) -> None:
    pieces = cut_up(cuts, ring)
    length = f"{typed(pieces * piece)} m"
    known = {"ring": "yes" if ring else "no"}
    part = f"{typed(piece)} m"
    asked: list[tuple[dict[str, str], str, Fraction | int]] = [
        ({"length": length, "piece": part}, "cuts", cuts),
        ({"length": length, "piece": part}, "pieces", pieces),
        ({"length": length, "piece": part, "each_cut": f"{each} min"}, "time", cuts * each),
        ({"length": length, "cuts": f"{cuts}"}, "piece", piece),
        ({"piece": part, "cuts": f"{cuts}"}, "length", pieces * piece),
        ({"pieces": f"{pieces}", "time": f"{cuts * each} min"}, "each cut", each),
        ({"time": f"{cuts * each} min", "each_cut": f"{each} min"}, "pieces", pieces),
    ]
    for fields, name, expected in asked:
        assert value_of(solved("cuts and pieces", **fields, **known, find=name), name) == expected


@tried
@given(first=st.integers(1, 12), second=st.integers(1, 30), each=st.integers(1, 20))
def test_cutting_again(first: int, second: int, each: int) -> None:
    solution = solved(
        "cuts and pieces",
        pieces=f"{cut_up(first, False)} pieces",
        time=f"{first * each} min",
        wanted=f"{cut_up(second, False)} pieces",
    )
    assert value_of(solution, "time") == second * each


# The total's unit, the smaller one, and both by pint's names.
EXCHANGED = [("m", "cm", "m", "cm"), ("kg", "g", "kg", "g"), ("h", "min", "hour", "minute"),
             ("weeks", "day", "week", "day"), ("litres", "ml", "litre", "ml")]  # fmt: skip


@tried
@given(count=st.integers(1, 60), shares=st.integers(2, 12), units=st.sampled_from(EXCHANGED))
def test_sharing_with_exchange(count: int, shares: int, units: tuple[str, str, str, str]) -> None:
    large, small, pint_large, pint_small = units
    each = PINT.Quantity(Fraction(count, shares), pint_large)
    fields = {"total": f"{count} {large if count > 1 else large.removesuffix('s')}",
              "groups": f"{shares} boats"}  # fmt: skip
    whole = each.to(pint_small).magnitude.denominator == 1
    if each.magnitude.denominator == 1 or not whole:
        with pytest.raises(AmountError):
            solved("sharing with exchange", **fields)
        return
    solution = solved("sharing with exchange", **fields, exchange_into=small)
    assert value_of(solution, "each") == each.to(pint_small).magnitude


@tried
@given(pounds=st.integers(1, 90), shares=st.integers(2, 12))
def test_sharing_pounds_with_exchange(pounds: int, shares: int) -> None:
    pence, rest = divmod(pounds * 100, shares)
    fields = {"total": f"£{pounds}", "groups": f"{shares} friends"}
    if rest or pence % 100 == 0:
        with pytest.raises(AmountError):
            solved("sharing with exchange", **fields)
        return
    assert value_of(solved("sharing with exchange", **fields), "each") * 100 == pence


# As an author types the unit, and as pint knows it.
MEASURED = {
    "length": {"mm": "mm", "cm": "cm", "m": "m", "km": "km"},
    "mass": {"g": "g", "kg": "kg", "tonnes": "metric_ton"},
    "capacity": {"ml": "ml", "cl": "cl", "litres": "litre"},
    "time": {"s": "s", "min": "minute", "h": "hour", "days": "day", "weeks": "week"},
}


def is_written(value: Fraction) -> bool:
    """True for a decimal of at most three places."""
    return value > 0 and (value * 1000).denominator == 1


@tried
@given(
    amount=hundredths,
    count=st.integers(2, 12),
    operation=st.sampled_from(["", "times", "shared_among", "more", "less"]),
    data=st.data(),
)
def test_unit_conversion(amount: Fraction, count: int, operation: str, data: st.DataObject) -> None:
    units = MEASURED[data.draw(st.sampled_from(sorted(MEASURED)))]
    source, target, other = (data.draw(st.sampled_from(sorted(units))) for _ in range(3))
    assume(source != target)
    reference = PINT.Quantity(amount, units[source])
    fields = {"amount": f"{typed(amount)} {source}", "answer_in": target}
    if operation in ("more", "less"):
        change = PINT.Quantity(Fraction(count), units[other])
        reference = reference + change if operation == "more" else reference - change
        fields[operation] = f"{count} {other}"
    elif operation:
        reference = reference * count if operation == "times" else reference / count
        fields[operation] = f"{count} boxes"
    expected = Fraction(reference.to(units[target]).magnitude)
    if not is_written(expected):
        with pytest.raises(AmountError):
            solved("unit conversion", **fields)
        return
    assert value_of(solved("unit conversion", **fields), "answer") == expected


@tried
@given(minutes=st.integers(60, 3000))
def test_minutes_in_hours_and_minutes(minutes: int) -> None:
    solution = solved("unit conversion", amount=f"{minutes} min", mixed_units="yes")
    told = plain(answer_text(solution.answers["answer"]))
    read = timedelta(
        **{
            {"h": "hours", "min": "minutes"}[unit]: int(number.replace(",", ""))
            for number, unit in zip(told.split()[::2], told.split()[1::2], strict=True)
        }
    )
    assert read == timedelta(minutes=minutes)


@tried
@given(large=st.integers(1, 40), small=st.integers(1, 59))
def test_hours_and_minutes_in_minutes(large: int, small: int) -> None:
    solution = solved("unit conversion", amount=f"{large} h {small} min", answer_in="min")
    reference = timedelta(hours=large, minutes=small) // timedelta(minutes=1)
    assert value_of(solution, "answer") == reference


@tried
@given(miles=st.integers(1, 400))
def test_miles_by_the_classroom_fact(miles: int) -> None:
    x = sympy.Symbol("x")
    reference = root(x, 5 * x - 8 * miles)
    solution = solved(
        "unit conversion",
        amount=f"{miles} mile{'' if miles == 1 else 's'}",
        answer_in="km",
        together={"miles": "5 miles", "kilometres": "8 km"},
    )
    assert value_of(solution, "answer") == reference
