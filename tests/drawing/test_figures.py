"""Laws that every figure keeps in every state, over random data with extremes."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace
from fractions import Fraction
from itertools import count
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from typeset.arithmetic.figures import (
    Angles,
    AngleSetting,
    AreaRectangle,
    BranchingTree,
    Choice,
    ClockFace,
    ClockFaces,
    DotArray,
    DoubleNumberLine,
    Figure,
    GroupedObjects,
    JoinedPoints,
    Jump,
    Mark,
    MeasuringScale,
    Moment,
    NumberLine,
    Outline,
    PairTick,
    Part,
    PostsAndGaps,
    RatioTable,
    ScaleLabel,
    ScaleShape,
    SequenceBoxes,
    Show,
    Tick,
    TimeLine,
    TimeRow,
    TwoWayTable,
    Wedge,
)
from typeset.drawing.figure_reading import figure_reading
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import PT_PER_MM, Drawing, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import Stacked, solid, words

Check = Callable[[Drawing], None]

texts = st.one_of(
    st.integers(1, 99).map(lambda n: words(str(n))),
    st.integers(1, 999_999_999).map(lambda n: words(f"{n:,}")),
    st.integers(1, 9999).map(lambda n: words(f"{n}\u00a0litres")),
    st.integers(2, 99).map(lambda n: solid("3", Stacked("1", str(n)))),
)
marks = st.builds(Mark, texts, st.booleans(), st.booleans())
maybe = st.none() | marks
nouns = ["gulls", "a", "ropes", "in", "the", "chandlery", "stairs", "of", "breakwater"]
phrases = st.lists(st.sampled_from(nouns), min_size=1, max_size=6).map(
    lambda parts: " ".join(parts)[:40].strip()
)
names = st.one_of(
    phrases,
    st.sampled_from(["gulls", "terns", "a", "l" * 40, "mackerelsandherringsandcrabsandlobsters!"]),
)
# From a narrow column to the whole width of an A4 page between margins of 10 mm.
widths = st.floats(50 * PT_PER_MM, 190 * PT_PER_MM)
type_sizes = st.sampled_from([10.0, 11.0, 12.0, 14.0, 18.0, 24.0])


def jumps(places: int) -> st.SearchStrategy[tuple[Jump, ...]]:
    if places < 2:
        return st.just(())
    pairs = st.permutations(range(places)).map(lambda order: tuple(order[:2]))
    one = st.builds(
        lambda pair, mark, below: Jump(pair[0], pair[1], mark, below), pairs, marks, st.booleans()
    )
    return st.lists(one, max_size=4).map(tuple)


@st.composite
def rising(draw: st.DrawFn) -> list[Fraction]:
    found = draw(st.lists(st.fractions(0, 1000, max_denominator=8), min_size=2, max_size=8))
    return sorted(set(found))


@st.composite
def number_lines(draw: st.DrawFn) -> Figure:
    ticks = tuple(Tick(at, draw(maybe)) for at in draw(rising()))
    return NumberLine(ticks, draw(jumps(len(ticks))), draw(names | st.just("")))


@st.composite
def double_lines(draw: st.DrawFn) -> Figure:
    ticks = tuple(PairTick(at, draw(maybe), draw(maybe)) for at in draw(rising()))
    return DoubleNumberLine(draw(names), draw(names), ticks, draw(jumps(len(ticks))))


@st.composite
def ratio_tables(draw: st.DrawFn) -> Figure:
    rows, columns = draw(st.integers(2, 3)), draw(st.integers(1, 6))
    cells = tuple(tuple(draw(maybe) for _ in range(columns)) for _ in range(rows))
    heads = tuple(draw(names) for _ in range(rows))
    return RatioTable(heads, cells, draw(jumps(columns)), draw(jumps(rows)))


@st.composite
def areas(draw: st.DrawFn) -> Figure:
    sizes = st.integers(1, 9000).map(Fraction)
    sides = st.lists(st.builds(Part, sizes, maybe), min_size=1, max_size=4).map(tuple)
    widths, heights = draw(sides), draw(sides)
    cells = tuple(tuple(draw(maybe) for _ in widths) for _ in heights)
    return AreaRectangle(widths, heights, cells, draw(maybe))


@st.composite
def outlines(draw: st.DrawFn) -> Figure:
    """An L: a rectangle without its top right corner."""
    size = st.integers(1, 60).map(Fraction)
    top, across, step, right = (draw(size) for _ in range(4))
    zero, wide, high = Fraction(0), top + across, step + right
    corners = ((zero, zero), (top, zero), (top, step), (wide, step), (wide, high), (zero, high))
    return Outline(corners, tuple(draw(maybe) for _ in corners), draw(maybe), draw(maybe))


options = st.lists(names, min_size=1, max_size=12).map(tuple)
choices = st.builds(Choice, names | st.just(""), options)


@st.composite
def two_way_tables(draw: st.DrawFn) -> Figure:
    down, across = draw(choices), draw(choices)
    mark = st.builds(Mark, st.just(words("ab")), st.booleans(), st.booleans())
    cells = tuple(tuple(draw(mark) for _ in across.options) for _ in down.options)
    return TwoWayTable(down, across, cells, draw(maybe))


@st.composite
def time_lines(draw: st.DrawFn) -> Figure:
    moments = tuple(Moment(draw(names), at) for at in draw(rising())[:3])
    upper, lower = (TimeRow(draw(names), tuple(draw(maybe) for _ in moments)) for _ in range(2))
    return TimeLine(moments, upper, lower, draw(marks))


@st.composite
def sequences(draw: st.DrawFn) -> Figure:
    terms = tuple(draw(st.lists(marks, min_size=1, max_size=12)))
    return SequenceBoxes(terms, tuple(draw(maybe) for _ in terms[1:]))


arrays: st.SearchStrategy[Figure] = st.builds(
    DotArray, st.integers(1, 60), st.integers(1, 60), marks, marks, maybe
)
trees: st.SearchStrategy[Figure] = st.builds(
    BranchingTree, st.lists(choices, min_size=1, max_size=4).map(tuple), maybe
)
letters = st.integers(3, 12).map(lambda n: tuple("ABCDEFGHIJKL"[:n]))


@st.composite
def orders(draw: st.DrawFn) -> Figure:
    things = draw(letters)
    heads = ("first", "second", "third", "fourth", "fifth")[: draw(st.integers(2, 5))]
    levels = tuple(Choice(head, things) for head in heads[: len(things)])
    return BranchingTree(levels, draw(maybe), without_repeats=True)


posts: st.SearchStrategy[Figure] = st.builds(
    lambda gaps, more, gap, length, number: PostsAndGaps(gaps + more, gaps, gap, length, number),
    st.integers(2, 200),
    st.integers(-1, 1),
    marks,
    marks,
    maybe,
)
times = st.fractions(0, Fraction(719), max_denominator=4)
faces = st.builds(ClockFace, times, maybe, names | st.just(""), st.booleans())
clocks: st.SearchStrategy[Figure] = st.one_of(
    st.builds(ClockFaces, st.tuples(faces)),
    st.builds(ClockFaces, st.lists(faces, min_size=2, max_size=3).map(tuple), maybe),
)


@st.composite
def scales(draw: st.DrawFn) -> Figure:
    start, step = draw(st.sampled_from([0, 0, 0, -10, 30])), draw(st.sampled_from([1, 5, 100, 25]))
    count = draw(st.integers(2, 13))
    texted = draw(st.booleans())
    labels = tuple(
        ScaleLabel(Fraction(at), words(f"{at:,}") if texted or n % 2 else ())
        for n, at in enumerate(range(start, start + count * step, step))
    )
    at = draw(st.fractions(start, start + (count - 1) * step, max_denominator=10))
    divisions, unit = draw(st.integers(1, 10)), draw(st.sampled_from(["", "kg", "°C", "litres"]))
    shape, is_given = draw(st.sampled_from(ScaleShape)), draw(st.booleans())
    return MeasuringScale(shape, labels, divisions, at, draw(maybe), unit, is_given)


@st.composite
def angles(draw: st.DrawFn) -> Figure:
    setting = draw(st.sampled_from(AngleSetting))
    whole = 360 if setting is AngleSetting.POINT else 180
    count = 3 if setting is AngleSetting.TRIANGLE else draw(st.integers(2, 5))
    shares = draw(st.lists(st.integers(1, 20), min_size=count, max_size=count))
    degrees = (Fraction(share * whole, sum(shares)) for share in shares)
    texts = (words(f"{round(size)}°") for size in degrees)
    sizes = [Fraction(share * whole, sum(shares)) for share in shares]
    marks = (Mark(text, draw(st.booleans())) for text in texts)
    return Angles(setting, tuple(Wedge(*pair) for pair in zip(sizes, marks, strict=True)))


groups: st.SearchStrategy[Figure] = st.builds(
    GroupedObjects,
    st.integers(1, 13),
    st.integers(1, 13),
    marks,
    marks,
    st.integers(0, 12),
    maybe,
    maybe,
)
joined: st.SearchStrategy[Figure] = st.builds(
    JoinedPoints, st.lists(names | st.just("B"), min_size=2, max_size=11).map(tuple), maybe
)
KINDS: dict[str, st.SearchStrategy[Figure]] = {
    "number line": number_lines(),
    "double number line": double_lines(),
    "ratio table": ratio_tables(),
    "array": arrays,
    "area": areas(),
    "outline": outlines(),
    "tree": trees,
    "tree without repeats": orders(),
    "two-way table": two_way_tables(),
    "time line": time_lines(),
    "posts": posts,
    "sequence": sequences(),
    "clock": clocks,
    "scale": scales(),
    "groups": groups,
    "angles": angles(),
    "joined": joined,
}
ORDINARY = settings(
    max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@pytest.mark.parametrize("kind", KINDS)
@ORDINARY
@given(data=st.data())
def test_figures_draw_cleanly_or_say_why_not(
    assert_clean: Check, kind: str, data: st.DataObject
) -> None:
    figure = data.draw(KINDS[kind])
    width, size = data.draw(widths), data.draw(type_sizes)
    for show in Show:
        try:
            drawing = draw_figure(figure, show, width, size)
        except FitError as error:
            assert len(str(error)) > 20
            continue
        assert_clean(drawing)
        assert drawing.width_pt == width
        assert drawing.reads_as == figure_reading(figure, show)
        runs = [shape for shape in drawing.shapes if isinstance(shape, TextRun)]
        # Numbers of stacked fractions are 0.8 of their label.
        assert all(run.size_pt >= 0.8 * 0.8 * size - 1e-9 for run in runs)


@pytest.mark.parametrize("kind", KINDS)
@ORDINARY
@given(data=st.data())
def test_nothing_is_told_too_early(kind: str, data: st.DataObject) -> None:
    """Every value is made unlike any other, so that one that slips through can be told."""
    number = count(7_000_001)
    figure = _renumbered(data.draw(KINDS[kind]), number)
    secret = {text for mark in _marks(figure) if not mark.is_given for text in [_text(mark)]}
    every = {_text(mark) for mark in _marks(figure)}
    for show, hidden in ((Show.FRAME, every), (Show.FIRST_STEP, secret)):
        try:
            drawing = draw_figure(figure, show, 480.0, 12.0)
        except FitError:
            continue
        runs = [shape.text for shape in drawing.shapes if isinstance(shape, TextRun)]
        seen = " ".join([*runs, drawing.reads_as])
        assert not [text for text in hidden if text in seen]


def _text(mark: Mark) -> str:
    return str(mark.text[0].text)  # type: ignore[union-attr]  # all are Words by now


def _renumbered(thing: Any, number: Iterator[int]) -> Any:
    if isinstance(thing, Mark):
        return replace(thing, text=words(str(next(number))))
    if isinstance(thing, tuple):
        return tuple(_renumbered(item, number) for item in thing)
    if is_dataclass(thing) and not isinstance(thing, type):
        own = {f.name: _renumbered(getattr(thing, f.name), number) for f in fields(thing)}
        return replace(thing, **own)
    return thing


def _marks(thing: Any) -> Iterator[Mark]:
    if isinstance(thing, Mark):
        yield thing
    elif isinstance(thing, tuple):
        for item in thing:
            yield from _marks(item)
    elif is_dataclass(thing) and not isinstance(thing, type):
        for field in fields(thing):
            yield from _marks(getattr(thing, field.name))


def _ordinary() -> list[Figure]:
    given_, asked = Mark(words("12")), Mark(words("48 m"), is_given=False)
    moments = (Moment("at noon", Fraction(0)), Moment("six hours later", Fraction(6)))
    choice = Choice("sail", ("red", "white", "blue"))
    pair = tuple(PairTick(Fraction(n), given_, asked) for n in (0, 1, 5, 10))
    return [
        NumberLine(tuple(Tick(Fraction(n), given_) for n in (46, 50, 100)), (Jump(0, 2, asked),)),
        DoubleNumberLine("ropes", "metres", pair, (Jump(1, 2, asked), Jump(2, 3, asked, True))),
        RatioTable(
            ("kites", "metres"),
            ((given_,) * 4, (asked,) * 4),
            (Jump(0, 3, asked),),
            (Jump(0, 1, asked),),
        ),
        DotArray(4, 7, given_, given_, asked),
        AreaRectangle(
            (Part(Fraction(40), given_), Part(Fraction(8), given_)),
            (Part(Fraction(20), given_), Part(Fraction(3), given_)),
            ((asked, asked), (asked, asked)),
        ),
        Outline(
            tuple(
                (Fraction(x), Fraction(y))
                for x, y in ((0, 0), (6, 0), (6, 3), (10, 3), (10, 8), (0, 8))
            ),
            (given_, given_, Mark(words("4 m"), False, True), asked, given_, given_),
            asked,
            asked,
        ),
        BranchingTree((choice, Choice("flag", ("plain", "striped")), choice), asked),
        TwoWayTable(choice, choice, ((given_,) * 3,) * 3, asked),
        TimeLine(moments, TimeRow("Asha", (given_, asked)), TimeRow("Kofi", (given_,) * 2), asked),
        PostsAndGaps(9, 8, given_, asked, given_),
        SequenceBoxes((given_, given_, asked, asked), (asked, asked, asked)),
        ClockFaces((ClockFace(Fraction(220), asked, "start"),)),
        MeasuringScale(
            ScaleShape.JUG,
            tuple(ScaleLabel(Fraction(at), words(str(at))) for at in (0, 250, 500)),
            5,
            Fraction(350),
            asked,
            "ml",
        ),
        GroupedObjects(4, 5, given_, asked, 3, asked, given_),
        Angles(
            AngleSetting.LINE,
            (Wedge(Fraction(50), given_), Wedge(Fraction(130), asked)),
        ),
        JoinedPoints(("A", "B", "C", "D"), asked),
    ]


@pytest.mark.parametrize(
    ("width_mm", "size"),
    [(50, 10.0), (50, 12.0), (80, 12.0), (170, 12.0), (80, 18.0), (80, 24.0), (150, 24.0)],
)
@pytest.mark.parametrize("figure", _ordinary(), ids=lambda figure: type(figure).__name__)
def test_ordinary_figures_draw_from_a_narrow_column_to_large_print(
    assert_clean: Check, figure: Figure, width_mm: float, size: float
) -> None:
    for show in Show:
        drawing = draw_figure(figure, show, width_mm * PT_PER_MM, size)
        assert_clean(drawing)
        assert drawing.reads_as


@pytest.mark.parametrize("figure", _ordinary(), ids=lambda figure: type(figure).__name__)
def test_own_words_are_kept_for_the_complete_figure_only(figure: Figure) -> None:
    told = replace(figure, reads_as="told by the problem")
    reads = {show: draw_figure(told, show, 480.0, 12.0).reads_as for show in Show}
    plain = draw_figure(replace(figure, reads_as=""), Show.COMPLETE, 480.0, 12.0).reads_as
    assert reads[Show.COMPLETE] == f"told by the problem {plain}"
    assert "told by" not in reads[Show.FRAME] + reads[Show.FIRST_STEP]
