"""The rooms to answer in are there, and as large as the layout and the author promise."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from typeset.proofing.checks import Proof, in_mm
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE, Stroke, Word
from typeset.proofing.places import MM_PT
from typeset.proofing.promises import Promise
from typeset.proofing.regions import Region, question_regions
from typeset.reading.content import Space

_SLACK_PT = 0.3 * MM_PT
# A frame to draw in; a box for one number is 14 mm wide.
_LEAST_FRAME_MM = 20.0
# From one answer to the next, as ruled lines are (common practice, no source), where the
# layout has no closer ones.
_LEAST_BETWEEN_RULES_MM = 8.0
# A box for one number: a figure by hand needs about as much as a ruled line (common practice).
_LEAST_NUMBER_BOX_MM = (12.0, 8.0)
# A box to tick, by a capital letter of 9 pt and more (common practice).
_LEAST_TICK_BOX_MM = 3.0
# A rule begins this close behind its word and stands this little under its letters; words of
# the line before or after are not further off than a line.
_NEXT_TO_PT, _UNDER_PT, _A_LINE_PT = 15.0, 5.0, 25.0
# A rule may stand on the line after its word.
_LINES_EMS = 2.6
# Guides that are written on are paler than text and darker than nothing.
_PALEST = 0.8


def check_rooms(proof: Proof, promises: Iterable[Promise]) -> Iterator[Finding]:
    """A finding for every room that is missing or smaller than promised."""
    regions = {each.about: each for each in question_regions(proof.account, proof.document.pages)}
    for promise in promises:
        if promise.about in regions:
            yield from _Room(proof, regions[promise.about], promise).check()


@dataclass(frozen=True, slots=True)
class _Room:
    proof: Proof
    region: Region
    promise: Promise

    def check(self) -> Iterator[Finding]:
        match self.promise.space:
            case Space.LINE:
                yield from self.above_rule(self.promise.least_mm * MM_PT)
            case Space.WORKING:
                yield from self.blank()
            case Space.LINES:
                yield from self.lines()
            case Space.SQUARES:
                yield from self.squares()
            case Space.MODEL:
                yield from self.frame()
            case Space.BOX:
                yield from self.boxes(*_LEAST_NUMBER_BOX_MM)
        if self.promise.sorts:
            yield from self.boxes(_LEAST_TICK_BOX_MM, _LEAST_TICK_BOX_MM)
        yield from self.between_rules()
        yield from self.beside_words()

    def above_rule(self, least_pt: float) -> Iterator[Finding]:
        """From the text to the first rule to write on."""
        for rule in self.marks(WRITING_RULE)[:1]:
            room = rule.box.bottom - self.text_foot(above=rule.box.bottom)
            if room < least_pt - _SLACK_PT:
                yield self.small(rule, f"has {in_mm(room)} to the line to write on", least_pt)

    def beside_words(self) -> Iterator[Finding]:
        """A rule right behind a word stands on the line of that word."""
        every = self.words((Part.ROOM,))
        for word, rule in pairwise(every):
            off = rule.box.bottom - word.baseline
            is_led = word.is_text and rule.text == WRITING_RULE
            if is_led and not -_A_LINE_PT < off < _LINES_EMS * word.size_pt:
                what = f"{self.promise.about} has '{word.text}' away from its answer line"
                yield self.proof.about_word(word, what, "", "space")
        words = [word for word in every if word.is_text]
        for rule in self.marks(WRITING_RULE):
            before = [w for w in words if -1.0 < rule.box.left - w.box.right < _NEXT_TO_PT]
            offs = [rule.box.bottom - word.baseline for word in before]
            offs = [off for off in offs if abs(off) < _A_LINE_PT]
            if offs and not any(-1.0 < off < _UNDER_PT for off in offs):
                what = f"{self.promise.about} has an answer line that is not beside its word"
                yield self.proof.about_word(rule, what, "", "space")

    def between_rules(self) -> Iterator[Finding]:
        """From one answer to the next."""
        own = self.proof.layout.answer_spaces.line_mm
        least = min(_LEAST_BETWEEN_RULES_MM, own) * MM_PT
        for before, after in pairwise(self.marks(WRITING_RULE)):
            room = after.box.bottom - before.box.bottom
            if room < least - _SLACK_PT:
                yield self.small(after, f"has {in_mm(room)} between its answer lines", least)

    def blank(self) -> Iterator[Finding]:
        """Nothing printed between the text and the answer line, for a working."""
        answers = [w for w in self.words((Part.ROOM,)) if w.box.top > self.text_foot()]
        if not answers:
            return
        first = min(answers, key=lambda word: word.box.top)
        foot = self.text_foot(above=first.box.top)
        if self.promise.begun:
            # The room is what follows the sentence to finish.
            foot = first.box.bottom
            rest = [word for word in answers if word.box.top > foot]
            if not rest:
                return
            first = min(rest, key=lambda word: word.box.top)
        room = first.box.top - foot
        least = self.promise.least_mm * MM_PT
        if room < least - _SLACK_PT:
            yield self.small(first, f"has {in_mm(room)} of room to work in", least)

    def lines(self) -> Iterator[Finding]:
        """So many ruled lines, evenly apart."""
        ys = sorted({round(s.box.top, 1) for s in self.guides() if s.is_level})
        if len(ys) < self.promise.rows:
            yield self.lacking(f"has {len(ys)} ruled lines", str(self.promise.rows))
        least = self.proof.layout.answer_spaces.ruled_mm * MM_PT
        gaps = [below - above for above, below in pairwise(ys)]
        if gaps and max(gaps) - min(gaps) > _SLACK_PT:
            what = f"has ruled lines {in_mm(min(gaps))} to {in_mm(max(gaps))} apart"
            yield self.lacking(what, "lines evenly apart")
        if ys:
            gaps.append(ys[0] - self.text_foot(above=ys[0]))
        if gaps and min(gaps) < least - _SLACK_PT:
            what = f"has {in_mm(min(gaps))} of room above a ruled line"
            yield self.lacking(what, f"at least {in_mm(least)}")

    def squares(self) -> Iterator[Finding]:
        """Squares of the layout's side, so many rows of them."""
        side = self.proof.layout.answer_spaces.square_mm * MM_PT
        guides = self.guides()
        ys = sorted({round(stroke.box.top, 2) for stroke in guides if stroke.is_level})
        xs = sorted({round(stroke.box.left, 2) for stroke in guides if stroke.is_upright})
        steps = [after - before for each in (xs, ys) for before, after in pairwise(each)]
        if len(ys) - 1 < self.promise.rows or len(xs) < 2:
            rows = max(0, len(ys) - 1)
            yield self.lacking(f"has {rows} rows of squares", str(self.promise.rows))
        elif max(abs(step - side) for step in steps) > _SLACK_PT:
            odd = max(steps, key=lambda step: abs(step - side))
            yield self.lacking(f"has squares of {in_mm(odd)}", in_mm(side))

    def frame(self) -> Iterator[Finding]:
        """A frame to draw a model in."""
        least = self.promise.least_mm * MM_PT
        frames = [s for s in self.region.strokes if _is_frame(s)]
        highest = max((frame.box.height for frame in frames), default=0.0)
        if not frames:
            yield self.lacking("has no frame to draw a model in", "")
        elif highest < least - _SLACK_PT:
            what = f"has a frame of {in_mm(highest)} to draw a model in"
            yield self.lacking(what, f"at least {in_mm(least)}")

    def boxes(self, wide_mm: float, high_mm: float) -> Iterator[Finding]:
        for box in self.marks(OPEN_BOX):
            wide, high = box.box.width, box.box.height
            if wide < wide_mm * MM_PT - _SLACK_PT or high < high_mm * MM_PT - _SLACK_PT:
                what = f"{self.promise.about} has a box of {in_mm(wide)} by {in_mm(high)}"
                should = f"at least {wide_mm:g} by {high_mm:g} mm"
                yield self.proof.about_word(box, what, should, "space")

    def words(self, parts: Sequence[Part]) -> list[Word]:
        passages = self.proof.account.passages
        return [
            word
            for index in self.region.passages
            if passages[index].part in parts
            for word in self.proof.account.words_of(index)
        ]

    def marks(self, mark: str) -> list[Word]:
        return [word for word in self.words((Part.ROOM,)) if word.text == mark]

    def text_foot(self, above: float | None = None) -> float:
        """Where story, figure and printed working end, and what is ticked."""
        words = self.words((Part.NUMBER, Part.STORY, Part.WORKING, Part.FIGURE))
        feet = [word.box.bottom for word in words]
        limit = self.region.box.bottom if above is None else above
        feet += [s.box.bottom for s in self.region.strokes if _is_drawn(s) and s.box.top < limit]
        feet = [foot for foot in feet if above is None or foot <= above]
        return max(feet, default=self.region.box.top)

    def guides(self) -> list[Stroke]:
        """Pale lines to write on, and the lines of squares."""
        return [s for s in self.region.strokes if s.stroked and s.ink and 0.3 < s.ink[0] < _PALEST]

    def small(self, word: Word, what: str, least_pt: float) -> Finding:
        about = f"{self.promise.about} {what}"
        return self.proof.about_word(word, about, f"at least {in_mm(least_pt)}", "space")

    def lacking(self, what: str, should: str) -> Finding:
        words = self.words((Part.STORY,))
        about = f"{self.promise.about} {what}"
        return (
            self.proof.about_word(words[-1], about, should, "space")
            if words
            else self.nowhere(about, should)
        )

    def nowhere(self, what: str, should: str) -> Finding:
        return self.proof.finding(self.region.page.number, self.region.box, what, should, "space")


def _is_frame(stroke: Stroke) -> bool:
    """An empty rectangle larger than a box for a number."""
    return (
        stroke.shape == "rect"
        and stroke.stroked
        and not stroke.filled
        and stroke.box.width > _LEAST_FRAME_MM * MM_PT
    )


def _is_drawn(stroke: Stroke) -> bool:
    """Part of a figure or of a frame: what is neither a guide nor a rule to write on."""
    return stroke.shape == "curve" or (stroke.shape == "rect" and (stroke.filled or stroke.stroked))
