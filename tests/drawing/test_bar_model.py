"""Bar models: true proportions, braces over the right parts, nothing told too early."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from typeset.arithmetic.figures import Bar, BarModel, Brace, Mark, Part, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.pens import BRACE_PT, SHADE
from typeset.drawing.shapes import Drawing, Face, Path, Rect, Rule, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import Stacked, solid, words

Check = Callable[[Drawing], None]


def mark(text: str, given: bool = True, hidden: bool = False) -> Mark:
    return Mark(words(text), given, hidden)


def equal(count: int, text: Mark | None = None, shaded: bool = False) -> tuple[Part, ...]:
    return tuple(Part(Fraction(1), text, shaded) for _ in range(count))


GULLS = BarModel(
    bars=(
        Bar("gulls", equal(5, mark("12", given=False, hidden=True), shaded=True)),
        Bar("terns", equal(2, mark("12", given=False, hidden=True))),
    ),
    braces=(
        Brace(0, mark("60", given=False), 0, 4),
        Brace(1, mark("36"), gap_to=0),
        Brace(1, mark("24", given=False, hidden=True), 0, 1, below=True),
    ),
    total=mark("84", given=False, hidden=True),
)


def rects(drawing: Drawing) -> list[Rect]:
    return [shape for shape in drawing.shapes if isinstance(shape, Rect)]


def texts(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, TextRun)]


def braces(drawing: Drawing) -> list[Path]:
    """Curves with four arcs: the braces."""
    paths = [shape for shape in drawing.shapes if isinstance(shape, Path)]
    return [path for path in paths if sum(step[0] == "C" for step in path.steps) == 4]


def ends(brace: Path) -> tuple[float, float]:
    xs = [float(step[-2]) for step in brace.steps]
    return min(xs), max(xs)


@pytest.mark.parametrize("width", [480.0, 240.0, 150.0])
def test_five_to_two_has_five_and_two_equal_parts(width: float) -> None:
    parts = rects(draw_figure(GULLS, Show.COMPLETE, width, 12.0))
    tops = sorted({part.y_pt for part in parts})
    rows = [[part for part in parts if part.y_pt == top] for top in tops]
    assert [len(row) for row in rows] == [5, 2]
    assert {round(part.width_pt, 9) for part in parts} == {round(parts[0].width_pt, 9)}
    for row in rows:
        for left, right in pairwise(sorted(row, key=lambda part: part.x_pt)):
            assert left.x_pt + left.width_pt == pytest.approx(right.x_pt)
    assert rows[0][0].x_pt == rows[1][0].x_pt


def test_all_bars_have_one_scale() -> None:
    sizes = [[Fraction(3), Fraction(5, 2)], [Fraction(7, 3)], [Fraction(1), Fraction(1, 2)]]
    model = BarModel(tuple(Bar("x", tuple(Part(s) for s in row)) for row in sizes))
    drawn = [part.width_pt for part in rects(draw_figure(model, Show.COMPLETE, 400.0, 12.0))]
    scale = drawn[0] / 3
    assert drawn == pytest.approx([float(s) * scale for row in sizes for s in row])


def test_braces_stand_over_their_parts() -> None:
    drawing = draw_figure(GULLS, Show.COMPLETE, 480.0, 12.0)
    unit = rects(drawing)[0].width_pt
    left = rects(drawing)[0].x_pt
    level = [brace for brace in braces(drawing) if ends(brace)[1] - ends(brace)[0] > BRACE_PT + 1]
    spans = sorted(
        (round((a - left) / unit, 1), round((b - left) / unit, 1)) for a, b in map(ends, level)
    )
    # All of the gulls, both terns, and from the end of the terns to the end of the gulls.
    assert spans == [(0.0, 2.0), (0.0, 5.0), (2.0, 5.0)]
    upright = [brace for brace in braces(drawing) if brace not in level]
    assert len(upright) == 1
    ys = [float(step[-1]) for step in upright[0].steps]
    bottom = max(part.y_pt + part.height_pt for part in rects(drawing))
    assert (min(ys), max(ys)) == pytest.approx((min(p.y_pt for p in rects(drawing)), bottom))


def test_the_difference_has_a_dashed_guide_from_the_end_of_the_longer_bar() -> None:
    drawing = draw_figure(GULLS, Show.FIRST_STEP, 480.0, 12.0)
    guides = [s for s in drawing.shapes if isinstance(s, Rule) and s.dash_pt is not None]
    end = max(part.x_pt + part.width_pt for part in rects(drawing))
    assert guides
    assert all(guide.x1_pt == guide.x2_pt == pytest.approx(end) for guide in guides)


def test_states_tell_only_what_they_may() -> None:
    frame, first, complete = (draw_figure(GULLS, show, 480.0, 12.0) for show in Show)
    assert texts(frame) == ["gulls", "terns"]
    assert sorted(texts(first)) == ["36", "?", "gulls", "terns"]
    assert sorted(texts(complete)) == sorted(
        ["12"] * 7 + ["24", "36", "60", "84", "gulls", "terns"]
    )
    assert len(rects(frame)) == 1
    for answer in ("12", "24", "60", "84"):
        assert answer not in frame.reads_as
        assert answer not in first.reads_as


def test_answers_are_bold_and_given_values_are_not() -> None:
    drawing = draw_figure(GULLS, Show.COMPLETE, 480.0, 12.0)
    faces = {run.text: run.face for run in drawing.shapes if isinstance(run, TextRun)}
    assert faces["60"] is Face.BOLD
    assert faces["36"] is Face.REGULAR


def test_reads_as_is_written_from_the_data() -> None:
    drawing = draw_figure(GULLS, Show.FIRST_STEP, 480.0, 12.0)
    assert drawing.reads_as == (
        "Bar model: gulls, 5 equal parts; terns, 2 equal parts; all of gulls is ?; "
        "the difference of terns and gulls is 36"
    )
    told = replace(GULLS, reads_as="Told by the problem.")
    whole = draw_figure(GULLS, Show.COMPLETE, 480.0, 12.0).reads_as
    complete = draw_figure(told, Show.COMPLETE, 480.0, 12.0).reads_as
    assert complete == f"Told by the problem. {whole}"
    for show in (Show.FRAME, Show.FIRST_STEP):
        assert "Told" not in draw_figure(told, show, 480.0, 12.0).reads_as


def test_labels_of_narrow_equal_parts_become_one(assert_clean: Check) -> None:
    model = BarModel((Bar("herring", equal(19, mark("123,456,789"))), Bar("mackerel", equal(1))))
    drawing = draw_figure(model, Show.COMPLETE, 240.0, 12.0)
    assert_clean(drawing)
    assert texts(drawing).count("123,456,789") == 0
    assert (
        sum(
            "19\u00a0×\u00a0123,456,789".replace("\u00a0", " ") in t.replace("\u00a0", " ")
            for t in texts(drawing)
        )
        == 1
    )


def test_a_sliver_is_shown_on_a_broken_scale_where_equal_stays_equal() -> None:
    whole = Bar("whole", (Part(Fraction(2400)),))
    split = Bar("pieces", (Part(Fraction(2395)), Part(Fraction(5))))
    one, big, small = rects(draw_figure(BarModel((whole, split)), Show.COMPLETE, 300.0, 12.0))
    assert one.width_pt == pytest.approx(big.width_pt + small.width_pt)
    assert small.width_pt >= 5.0


def test_shading_keeps_the_contrast_of_black_text() -> None:
    """WCAG 2.2 relative luminance and contrast ratio (sources.md section 4); 7 is level AAA."""

    def linear(channel: float) -> float:
        return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4

    def contrast(grey: float) -> float:
        return (linear(grey) + 0.05) / 0.05

    assert contrast(0x76 / 255) > 4.5 > contrast(0x76 / 255) - 0.5  # #767676 on black: 4.62
    fills = {part.fill for part in rects(draw_figure(GULLS, Show.COMPLETE, 480.0, 12.0))}
    assert SHADE in fills
    for fill in fills:
        assert fill is not None
        assert fill[0] == fill[1] == fill[2] >= 0.85
        assert contrast(fill[0]) > 7


def test_labels_are_never_smaller_than_four_fifths_of_the_text() -> None:
    for width in (480.0, 200.0, 150.0):
        runs = [
            s
            for s in draw_figure(GULLS, Show.COMPLETE, width, 12.0).shapes
            if isinstance(s, TextRun)
        ]
        assert all(run.size_pt >= 0.8 * 12.0 - 1e-9 for run in runs)


def test_stacked_fractions_in_parts(assert_clean: Check) -> None:
    thirds = tuple(Part(Fraction(1, 3), Mark(solid("2", Stacked("1", "3")))) for _ in range(3))
    model = BarModel((Bar("rope", thirds),), (Brace(0, Mark(solid(Stacked("7", "8"))), 0, 2),))
    drawing = draw_figure(model, Show.COMPLETE, 300.0, 12.0)
    assert_clean(drawing)
    assert texts(drawing).count("3") == 3


def test_a_word_wider_than_the_figure_is_an_error() -> None:
    with pytest.raises(FitError, match=r"wider|leave no room"):
        draw_figure(BarModel((Bar("m" * 60, equal(2)),)), Show.FRAME, 200.0, 14.0)


values = st.one_of(
    st.integers(1, 999_999_999).map(lambda n: words(f"{n:,}")),
    st.integers(1, 9999).map(lambda n: words(f"{n}\u00a0litres")),
    st.tuples(st.integers(1, 99), st.integers(1, 99)).map(
        lambda pair: solid("1", Stacked(str(pair[0]), str(pair[1])))
    ),
)
marks = st.builds(Mark, values, st.booleans(), st.booleans())
names = st.one_of(
    st.sampled_from(["gulls", "terns", "ropes in the chandlery", ""]),
    st.text("abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=40),
)


@st.composite
def bars(draw: st.DrawFn, sizes: st.SearchStrategy[Fraction], most: int) -> Bar:
    if draw(st.booleans()):
        part = Part(draw(sizes), draw(st.none() | marks), draw(st.booleans()))
        return Bar(draw(names), (part,) * draw(st.integers(1, most)))
    parts = st.builds(Part, sizes, st.none() | marks, st.booleans(), st.booleans())
    return Bar(draw(names), tuple(draw(st.lists(parts, min_size=1, max_size=most))))


@st.composite
def models(draw: st.DrawFn, largest: int, most: int) -> BarModel:
    sizes = st.fractions(1, largest, max_denominator=4)
    rows = tuple(draw(st.lists(bars(sizes, most), min_size=1, max_size=4)))
    found = []
    for _ in range(draw(st.integers(0, 4))):
        bar = draw(st.integers(0, len(rows) - 1))
        first = draw(st.integers(0, len(rows[bar].parts) - 1))
        last = draw(st.integers(first, len(rows[bar].parts) - 1))
        other = draw(st.none() | st.integers(0, len(rows) - 1))
        gap = None if other == bar else other
        found.append(Brace(bar, draw(marks), first, last, draw(st.booleans()), gap))
    return BarModel(rows, tuple(found), draw(st.none() | marks))


ORDINARY = settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


def given_texts(model: BarModel) -> set[str]:
    found = [part.mark for bar in model.bars for part in bar.parts]
    found += [brace.mark for brace in model.braces] + [model.total]
    return {str(mark.text) for mark in found if mark is not None and mark.is_given}


@ORDINARY
@given(models(largest=12, most=6), st.sampled_from([300.0, 480.0]), st.sampled_from([12.0, 14.0]))
def test_ordinary_models_always_draw_cleanly(
    assert_clean: Check, model: BarModel, width: float, size: float
) -> None:
    for show in Show:
        assert_clean(draw_figure(model, show, width, size))


@ORDINARY
@given(
    models(largest=999_999_999, most=19),
    st.floats(120.0, 500.0),
    st.sampled_from([10.0, 12.0, 18.0, 24.0]),
)
def test_extreme_models_draw_cleanly_or_say_why_not(
    assert_clean: Check, model: BarModel, width: float, size: float
) -> None:
    for show in Show:
        try:
            drawing = draw_figure(model, show, width, size)
        except FitError as error:
            assert len(str(error)) > 20
            continue
        assert_clean(drawing)
        names_of = {bar.name for bar in model.bars}
        if show is Show.FRAME:
            assert "".join(texts(drawing)).replace(" ", "") == "".join(
                name for bar in model.bars for name in [bar.name]
            ).replace(" ", "")
            assert not any(text.isdigit() for text in texts(drawing) if text not in names_of)


@ORDINARY
@given(models(largest=30, most=8))
def test_first_step_shows_no_value_that_is_not_given(model: BarModel) -> None:
    """Every value is made unlike any other, so that one that slips through can be told."""
    secret = iter(range(7_000_001, 8_000_000))

    def renamed(mark: Mark | None) -> Mark | None:
        return None if mark is None else replace(mark, text=words(str(next(secret))))

    bars_ = tuple(
        replace(bar, parts=tuple(replace(p, mark=renamed(p.mark)) for p in bar.parts))
        for bar in model.bars
    )
    braces_ = tuple(replace(b, mark=renamed(b.mark) or b.mark) for b in model.braces)
    told = BarModel(bars_, braces_, renamed(model.total))
    every = [p.mark for bar in bars_ for p in bar.parts] + [b.mark for b in braces_] + [told.total]
    hidden = {str(m.text[0].text) for m in every if m and not m.is_given}  # type: ignore[union-attr]  # all are Words
    try:
        drawing = draw_figure(told, Show.FIRST_STEP, 480.0, 12.0)
    except FitError:
        return
    seen = " ".join([*texts(drawing), drawing.reads_as])
    assert not [text for text in hidden if text in seen]
