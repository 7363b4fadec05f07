"""Letters to words: parted by spaces, gaps and changes of line, with fractions folded to '3/4'.

Rules to write on and empty boxes stand among the words as `____` and `□`, so that the account
of a page covers them too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from typeset.proofing.fractions_read import ReadFraction, find_fractions
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE, Glyph, Stroke, Word
from typeset.proofing.places import MM_PT, around
from typeset.proofing.symbols_read import drawn_alike, find_symbols

# Within a word letters touch; a space of the face is a quarter of an em or so, and drawn.
_GAP_EMS = 0.22
_BACK_EMS = 0.3
_SAME_LINE_EMS = 0.12
# A fraction's bar lies on the maths axis, which is this far above the baseline at most.
_AXIS_EMS = (0.1, 0.5)
# Room for a written number (common practice, no source).
LEAST_RULE_PT = 18 * MM_PT - 0.5
_HEAVY_PT = 1.5
_DARK = 0.25
# From a tick box of a small type to a box for a number.
_BOX_SIDES_PT = (2.5 * MM_PT, 16 * MM_PT)
_NONE: frozenset[int] = frozenset()


def words_of(glyphs: Sequence[Glyph], strokes: Sequence[Stroke], page: int) -> tuple[Word, ...]:
    """The words of a page in the order of drawing."""
    fractions = find_fractions(glyphs, strokes)
    drawn = list(find_symbols(glyphs, strokes))
    letters = sorted((*glyphs, *drawn), key=lambda glyph: glyph.order) if drawn else glyphs
    builder = _Builder(page)
    for mark in _marks(letters, fractions):
        builder.add(mark)
    builder.end()
    bars = {fraction.bar for fraction in fractions}
    marks = (_mark_word(stroke, page) for stroke in strokes if stroke.order not in bars)
    words = [*builder.done, *(word for word in marks if word is not None)]
    return tuple(sorted(words, key=lambda word: word.order))


def _marks(
    glyphs: Sequence[Glyph], fractions: Iterable[ReadFraction]
) -> list[Glyph | ReadFraction]:
    """Letters and fractions in the order of drawing; the parts of fractions are gone."""
    part_of = {glyph.order: each for each in fractions for glyph in each.glyphs}
    first = {min(glyph.order for glyph in each.glyphs): each for each in part_of.values()}
    marks: list[Glyph | ReadFraction] = []
    for glyph in glyphs:
        if glyph.order not in part_of:
            marks.append(glyph)
        elif glyph.order in first:
            marks.append(first[glyph.order])
    return marks


def _mark_word(stroke: Stroke, page: int) -> Word | None:
    text = ""
    if is_writing_rule(stroke):
        text = WRITING_RULE
    elif is_open_box(stroke):
        text = OPEN_BOX
    if not text:
        return None
    box = stroke.box
    return Word(text, page, box, box.bottom, 0.0, 0.0, (), stroke.order)


def is_writing_rule(stroke: Stroke) -> bool:
    """A dark, solid, fine level line, long enough to write a number on."""
    ink = stroke.ink if stroke.stroked else stroke.fill
    return (
        stroke.is_level
        and stroke.box.width >= LEAST_RULE_PT
        and not stroke.dashed
        and stroke.thickness_pt < _HEAVY_PT
        and ink is not None
        and max(ink) < _DARK
    )


def is_open_box(stroke: Stroke) -> bool:
    """An empty rectangle of the size of a tick box or of a box for one number."""
    least, most = _BOX_SIDES_PT
    return (
        stroke.shape == "rect"
        and stroke.stroked
        and not stroke.filled
        and least <= min(stroke.box.width, stroke.box.height)
        and max(stroke.box.width, stroke.box.height) <= most
        and stroke.ink is not None
        and max(stroke.ink) < _DARK
    )


@dataclass(slots=True)
class _Builder:
    """Gathers marks into a word until something parts them."""

    page: int
    done: list[Word] = field(default_factory=list)
    marks: list[Glyph | ReadFraction] = field(default_factory=list)

    def add(self, mark: Glyph | ReadFraction) -> None:
        if not mark.text.strip():
            self.end()
            return
        if self.marks and not _stand_together(self.marks[-1], mark):
            self.end()
        self.marks.append(mark)

    def end(self) -> None:
        """Close the word that is being gathered."""
        if self.marks:
            self.done.append(_word(self.marks, self.page))
        self.marks = []


def _stand_together(before: Glyph | ReadFraction, after: Glyph | ReadFraction) -> bool:
    is_letter = isinstance(before, Glyph)
    if isinstance(after, ReadFraction) and (not is_letter or before.text[-1:].isdigit()):
        # A mixed number reads as two words, '2 3/4'.
        return False
    size = before.size_pt if isinstance(before, Glyph) else _size_of(after)
    gap = after.box.left - before.box.right
    return -_BACK_EMS * size <= gap <= _GAP_EMS * size and _on_one_line(before, after)


def _on_one_line(before: Glyph | ReadFraction, after: Glyph | ReadFraction) -> bool:
    if isinstance(before, Glyph) and isinstance(after, Glyph):
        return abs(before.baseline - after.baseline) <= _SAME_LINE_EMS * before.size_pt
    letter, fraction = (before, after) if isinstance(before, Glyph) else (after, before)
    assert isinstance(letter, Glyph) and isinstance(fraction, ReadFraction)
    rise = (letter.baseline - fraction.axis) / letter.size_pt
    return _AXIS_EMS[0] <= rise <= _AXIS_EMS[1]


def _size_of(mark: Glyph | ReadFraction) -> float:
    return mark.size_pt if isinstance(mark, Glyph) else mark.glyphs[0].size_pt


def _word(marks: Sequence[Glyph | ReadFraction], page: int) -> Word:
    letters = [mark for mark in marks if isinstance(mark, Glyph)]
    fractions = [mark for mark in marks if isinstance(mark, ReadFraction)]
    every = letters if not fractions else list(_letters_of(marks))
    # A drawn symbol has no font; it counts as the stroke that it is.
    glyphs = tuple([glyph for glyph in every if glyph.font])
    drawn = _NONE if len(glyphs) == len(every) else {g.order for g in every if not g.font}
    sizes = [glyph.size_pt for glyph in every]
    full = [glyph.size_pt for glyph in letters] if letters and fractions else sizes
    return Word(
        text=drawn_alike("".join([mark.text for mark in marks])),
        page=page,
        box=around([mark.box for mark in marks]),
        baseline=letters[0].baseline if letters else fractions[0].axis,
        size_pt=max(full),
        least_pt=min(sizes),
        glyphs=glyphs,
        order=min([glyph.order for glyph in every]),
        is_fraction=bool(fractions),
        has_letters=bool(letters),
        bars=_NONE.union([each.bar for each in fractions], drawn),
    )


def _letters_of(marks: Sequence[Glyph | ReadFraction]) -> Iterator[Glyph]:
    for mark in marks:
        if isinstance(mark, Glyph):
            yield mark
        else:
            yield from mark.glyphs
