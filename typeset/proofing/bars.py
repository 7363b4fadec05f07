"""Bar models read back: so many bars of so many parts, in true proportion, values in their parts.

The rectangles on the page are grouped into bars and set against the figure's data: a 5 : 2 model
has five and two equal parts. Where a scale is broken (marked by short slanting strokes), lengths
still rise with their numbers and equal lengths stay equal.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise

from typeset.arithmetic.figures import Bar, BarModel, Show
from typeset.proofing.checks import Proof
from typeset.proofing.expected import Passage
from typeset.proofing.figure_text import seen
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Stroke
from typeset.proofing.places import Box, around
from typeset.proofing.print_quality import LEAST_LINE_CONTRAST, WHITE, contrast
from typeset.proofing.regions import Region, question_regions

_SLACK_PT = 0.5
# A brace stands in from the ends of its parts by no more than this.
_INSET_PT = 2.5
# A brace for the total stands right beside the longest bar.
_BESIDE_PT = 20.0
# How far a name beside its bar may stand off it, and one over its bar may stand over it.
_OFF_PT, _OVER_PT = 8.0, 60.0
# From line to line of a name, in heights of its letters.
_LINE_HEIGHTS = 1.5


def check_bars(proof: Proof) -> Iterator[Finding]:
    """A finding for every bar model that does not show its numbers."""
    passages = proof.account.passages
    for region in question_regions(proof.account, proof.document.pages):
        for index in region.passages:
            passage = passages[index]
            if isinstance(passage.figure, BarModel) and passage.show is not Show.FRAME:
                yield from _Model(proof, region, passage, passage.figure, index).check()


@dataclass(frozen=True, slots=True)
class _Model:
    proof: Proof
    region: Region
    passage: Passage
    model: BarModel
    index: int

    def check(self) -> Iterator[Finding]:
        rows = rows_of_parts(self.region.strokes)
        wanted = [len(bar.parts) for bar in self.model.bars]
        printed = [len(row) for row in rows]
        if printed != wanted:
            told = "no bars" if not printed else f"bars of {_listed(printed)} parts"
            yield self.finding(rows, f"shows {told}", f"bars of {_listed(wanted)} parts")
            return
        yield from self.lengths(rows)
        yield from self.values(rows)
        yield from self.braces(rows)
        yield from self.total(rows)
        yield from self.names(rows)
        yield from self.outlines(rows)

    def lengths(self, rows: Sequence[Sequence[Box]]) -> Iterator[Finding]:
        places = [
            pair
            for bar, row in zip(self.model.bars, rows, strict=True)
            for pair in zip(_ends(bar), _edges(row), strict=True)
        ]
        if not _is_proportional(places) and not (self.is_broken and _rises(places)):
            what = "has parts that are not in the proportion of their numbers"
            yield self.finding(rows, what, "")

    def values(self, rows: Sequence[Sequence[Box]]) -> Iterator[Finding]:
        """A value that stands inside a part is that part's."""
        words = [word for word in self.proof.account.words_of(self.index) if word.is_text]
        for bar, row in zip(self.model.bars, rows, strict=True):
            for part, box in zip(bar.parts, row, strict=True):
                inside = [word for word in words if box.holds(*word.box.centre)]
                wanted = seen(part.mark, self.passage.show) or ()
                text = tuple(word.text for word in inside)
                if text and sorted(text) != sorted(wanted):
                    what = f"shows '{' '.join(text)}' in a part of '{bar.name or 'the bar'}'"
                    should = f"'{' '.join(wanted)}'" if wanted else "nothing"
                    yield self.finding([[each.box for each in inside]], what, should)

    def braces(self, rows: Sequence[Sequence[Box]]) -> Iterator[Finding]:
        """Every brace that this state shows spans its own parts."""
        curves = [s.box for s in self.region.strokes if s.shape == "curve" and not s.filled]
        for brace in self.model.braces:
            words = seen(brace.mark, self.passage.show)
            if words is None:
                continue
            if brace.gap_to is not None:
                ends = sorted(_edges(rows[each])[-1] for each in (brace.bar, brace.gap_to))
                start, end = ends[0], ends[-1]
            else:
                edges = _edges(rows[brace.bar])
                start, end = edges[brace.first], edges[brace.last + 1]
            if not any(_spans(curve, start, end) for curve in curves):
                what = f"has no brace over the parts that '{' '.join(words)}' belongs to"
                yield self.finding(rows, what, "")

    def total(self, rows: Sequence[Sequence[Box]]) -> Iterator[Finding]:
        """The brace beside all bars spans them from the first to the last."""
        mark = self.model.total
        words = seen(mark, self.passage.show) if mark is not None else None
        if words is None:
            return
        top, foot = rows[0][0].top, rows[-1][0].bottom
        right = max(row[-1].right for row in rows)
        curves = [s.box for s in self.region.strokes if s.shape == "curve" and not s.filled]
        if not any(
            max(abs(curve.top - top), abs(curve.bottom - foot)) <= _INSET_PT
            and -_SLACK_PT <= curve.left - right <= _BESIDE_PT
            for curve in curves
        ):
            what = f"has no brace beside its bars for '{' '.join(words)}'"
            yield self.finding(rows, what, "")

    def names(self, rows: Sequence[Sequence[Box]]) -> Iterator[Finding]:
        """Every bar has its name to its left, or over it."""
        words = [word for word in self.proof.account.words_of(self.index) if word.is_text]
        for number, (bar, row) in enumerate(zip(self.model.bars, rows, strict=True)):
            name = bar.name.split()
            above = rows[number - 1][0].bottom if number else row[0].top - _OVER_PT
            places = [word.box for word in words if word.text in name[:1]]
            if places and not any(
                _stands_beside(place, row[0], len(name)) or _stands_over(place, row[0], above)
                for place in places
            ):
                yield self.finding(rows, f"has '{bar.name}' away from its bar", "")

    def outlines(self, rows: Sequence[Sequence[Box]]) -> Iterator[Finding]:
        """Where one part ends and the next begins can be seen."""
        parts = [s for s in self.region.strokes if s.shape == "rect" and s.filled and s.stroked]
        if any(contrast(part.ink, WHITE) < LEAST_LINE_CONTRAST for part in parts):
            yield self.finding(rows, "has parts whose outlines cannot be seen", "")

    @property
    def is_broken(self) -> bool:
        """True where the marks of a broken scale are drawn."""
        return any(
            stroke.shape == "curve" and stroke.filled and stroke.box.height < 10
            for stroke in self.region.strokes
        )

    def finding(self, rows: Sequence[Sequence[Box]], what: str, should: str) -> Finding:
        boxes = [box for row in rows for box in row]
        box = around(boxes) if boxes else self.region.box
        page, name = self.region.page.number, self.proof.document.name
        about = f"the bar model of {self.passage.about} {what}"
        return Finding(name, page, box.place_mm, about, should, self.passage.source, "figure")


def rows_of_parts(strokes: Sequence[Stroke]) -> list[list[Box]]:
    """The rectangles of a model as bars from top to bottom, each from left to right."""
    boxes = [s.box for s in strokes if s.shape == "rect" and s.filled and s.stroked]
    rows: list[list[Box]] = []
    for box in sorted(boxes, key=lambda each: (round(each.top), each.left)):
        if rows and abs(rows[-1][0].top - box.top) < 1 and abs(rows[-1][0].bottom - box.bottom) < 1:
            rows[-1].append(box)
        else:
            rows.append([box])
    return [sorted(row, key=lambda each: each.left) for row in rows]


def _ends(bar: Bar) -> list[Fraction]:
    return list(accumulate((part.size for part in bar.parts), initial=Fraction(0)))


def _edges(row: Sequence[Box]) -> list[float]:
    return [row[0].left, *(box.right for box in row)]


def _is_proportional(places: Sequence[tuple[Fraction, float]]) -> bool:
    """True where every end lies where its number says, on one scale from the common start."""
    longest, right = max(places)
    left = min(x for _, x in places)
    scale = (right - left) / float(longest)
    return all(abs(left + float(at) * scale - x) <= _SLACK_PT for at, x in places)


def _rises(places: Sequence[tuple[Fraction, float]]) -> bool:
    """True where equal numbers end at equal places and larger ones further right."""
    return all(
        abs(x - y) <= _SLACK_PT if one == other else y > x
        for (one, x), (other, y) in pairwise(sorted(places))
    )


def _spans(curve: Box, start: float, end: float) -> bool:
    """True for a level brace from start to end, a little inside both."""
    return (
        -_SLACK_PT <= curve.left - start <= _INSET_PT
        and -_SLACK_PT <= end - curve.right <= _INSET_PT
    )


def _stands_beside(first: Box, part: Box, words: int) -> bool:
    """True for the first word of a name to the left of a bar: on its height, or as far above it
    as in the middle of so many lines as the name has words."""
    lines_above = (words - 1) / 2 * _LINE_HEIGHTS * first.height
    x, y = first.centre
    return x < part.left and part.top - _OFF_PT - lines_above < y < part.bottom + _OFF_PT


def _stands_over(first: Box, part: Box, above_pt: float) -> bool:
    """True for the first word of a name that begins over a bar, under the bar before it."""
    return abs(first.left - part.left) < _OFF_PT and above_pt < first.top < part.bottom


def _listed(counts: Sequence[int]) -> str:
    return " and ".join(map(str, counts))
