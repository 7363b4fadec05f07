"""Type that can be read: large enough, dark enough, upright, in the layout's own faces."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from functools import lru_cache

from typeset.drawing.fonts import font_path
from typeset.drawing.shapes import Face
from typeset.proofing.checks import Proof, few
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Glyph, ReadPage, Rgb, Word
from typeset.proofing.places import Box

# Numbers of a stacked fraction against the text, and labels of a figure against the body: at
# 12 pt they are 9 and 9.6 pt, still a clear size (our own choice, common practice).
LEAST_FRACTION_RATIO = 0.75
LEAST_LABEL_RATIO = 0.8
_SLACK_PT = 0.05
# What is set in one size throughout a document.
_TEXT = (Part.TEXT, Part.NUMBER, Part.WORKING, Part.ANSWER, Part.ROOM)
# WCAG 2.2, success criterion 1.4.3 (sources.md section 4); never rounded up.
LEAST_CONTRAST = 4.5
# WCAG 2.2, success criterion 1.4.11: lines that are needed to understand a page.
LEAST_LINE_CONTRAST = 3.0
WHITE: Rgb = (1.0, 1.0, 1.0)
_NO_GLYPH = ("(cid:", "\ufffd", "\x00")


def check_print(proof: Proof) -> Iterator[Finding]:
    """Findings about sizes, contrast, faces and missing letters."""
    body, text = body_size(proof), _text_size(proof)
    for page in proof.document.pages:
        yield from few(_sizes(proof, page, body))
        yield from few(_larger_than_text(proof, page, text))
        yield from few(_contrasts(proof, page))
        yield from few(_letters(proof, page))


def body_size(proof: Proof) -> float:
    """The size that the stories stand in: that of most of their words where it is not known
    beforehand, and the least allowed where there is none."""
    if proof.story_pt is not None:
        return proof.story_pt
    sizes = Counter(
        round(word.size_pt, 2)
        for index, passage in enumerate(proof.account.passages)
        if passage.part is Part.STORY
        for word in proof.account.words_of(index)
    )
    return sizes.most_common(1)[0][0] if sizes else proof.least_pt


def _sizes(proof: Proof, page: ReadPage, body_pt: float) -> Iterator[Finding]:
    for word in page.words:
        if not word.is_text:
            continue
        part = proof.part_of(word)
        least = _least_size(part, body_pt, proof.least_pt)
        small = LEAST_FRACTION_RATIO * (word.size_pt if word.has_letters else least)
        if word.has_letters and word.size_pt < least - _SLACK_PT:
            yield _small(proof, word, word.size_pt, least)
        elif word.least_pt < small - _SLACK_PT:
            yield _small(proof, word, word.least_pt, small)
        elif part is Part.STORY and word.size_pt > body_pt + _SLACK_PT:
            what = f"'{word.text}' is set in {word.size_pt:.1f} pt"
            yield proof.about_word(word, what, f"{body_pt:g} pt as in all questions", "size")


def _text_size(proof: Proof) -> float | None:
    """The size of most words that are neither title nor heading; None where there are none."""
    sizes = Counter(
        round(word.size_pt, 2)
        for index, passage in enumerate(proof.account.passages)
        if passage.part in _TEXT
        for word in proof.account.words_of(index)
    )
    return sizes.most_common(1)[0][0] if sizes else None


def _larger_than_text(proof: Proof, page: ReadPage, text_pt: float | None) -> Iterator[Finding]:
    """Words of the text that stand out by their size: an aim, an instruction, a name."""
    if text_pt is None:
        return
    for word in page.words:
        if word.is_text and word.size_pt > text_pt + _SLACK_PT and proof.part_of(word) in _TEXT:
            what = f"'{word.text}' is set in {word.size_pt:.1f} pt"
            yield proof.about_word(word, what, f"{text_pt:g} pt as the rest of the text", "size")


def _least_size(part: Part | None, body_pt: float, least_pt: float) -> float:
    """The least size for a word: the body's for text, less for labels and what is unknown."""
    if part is None or part is Part.FIGURE:
        return LEAST_LABEL_RATIO * least_pt
    return max(body_pt, least_pt)


def _small(proof: Proof, word: Word, size_pt: float, least_pt: float) -> Finding:
    what = f"'{word.text}' is set in {size_pt:.1f} pt"
    return proof.about_word(word, what, f"at least {least_pt:.1f} pt", "size")


def _contrasts(proof: Proof, page: ReadPage) -> Iterator[Finding]:
    fills = [stroke for stroke in page.strokes if stroke.filled]
    for word in page.words:
        behind = [each for each in fills if _touch(each.box, word.box)]
        for glyph in word.glyphs:
            under = [
                each
                for each in behind
                if each.order < glyph.order and each.box.holds(*glyph.box.centre)
            ]
            ground = under[-1].fill if under else WHITE
            ratio = contrast(glyph.colour, ground)
            if ratio < LEAST_CONTRAST:
                what = f"'{word.text}' stands out from its ground by only {ratio:.2f} : 1"
                should = f"at least {LEAST_CONTRAST} : 1 (WCAG 2.2)"
                yield proof.about_word(word, what, should, "colour")
                break


def _touch(one: Box, other: Box) -> bool:
    """True where they meet, if only at an edge: the middle of a letter lies in its word."""
    return (
        one.left <= other.right
        and other.left <= one.right
        and one.top <= other.bottom
        and other.top <= one.bottom
    )


# A page has a letter after another in the same colour on the same ground.
@lru_cache(maxsize=256)
def contrast(one: Rgb | None, other: Rgb | None) -> float:
    """The contrast ratio of WCAG 2.2, from 1 to 21; 1 for a colour that is not understood."""
    if one is None or other is None:
        return 1.0
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: Rgb) -> float:
    """The relative luminance of WCAG 2.2."""
    red, green, blue = (_linear(min(1.0, max(0.0, level))) for level in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(level: float) -> float:
    return level / 12.92 if level <= 0.04045 else ((level + 0.055) / 1.055) ** 2.4


def _letters(proof: Proof, page: ReadPage) -> Iterator[Finding]:
    """Faces that are not the document's, letters that the font lacks, turned text."""
    known = {font_path(face).stem for face in Face}
    fonts = {glyph.font for word in page.words for glyph in word.glyphs}
    strange = {font for font in fonts if font.split("+")[-1] not in known}
    for word in page.words:
        odd = _first_in(word.glyphs, strange) if strange else None
        if odd is not None:
            what = f"'{word.text}' is set in the font {odd.font.split('+')[-1]}"
            yield proof.about_word(word, what, f"only {' and '.join(sorted(known))} belong", "font")
        if any(mark in word.text for mark in _NO_GLYPH):
            what = f"a letter of '{word.text}' is missing in its font"
            yield proof.about_word(word, what, "", "font")
        if not all(glyph.upright for glyph in word.glyphs):
            yield proof.about_word(word, f"'{word.text}' is turned", "", "font")


def _first_in(glyphs: Sequence[Glyph], fonts: set[str]) -> Glyph | None:
    return next((each for each in glyphs if each.font in fonts), None)
