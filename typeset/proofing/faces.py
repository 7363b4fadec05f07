"""Every text stands in the face that tells what it is: bold, or the plain one of a story."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from typeset.drawing.fonts import font_path
from typeset.drawing.shapes import Face
from typeset.proofing.checks import Proof, few
from typeset.proofing.expected import Part
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Word

_BOLD = (Part.TITLE, Part.HEADING, Part.NUMBER)
_PLAIN = (Part.STORY, Part.ROOM)
# A line of a working is bold or plain; a text may begin with a bold label, or end in a name.
_CHANGES = {Part.WORKING: 0, Part.TEXT: 1}


def check_faces(proof: Proof) -> Iterator[Finding]:
    """Findings about words in bold that should not be, and the other way round."""
    yield from few(_findings(proof))


def _findings(proof: Proof) -> Iterator[Finding]:
    bold_font = font_path(Face.BOLD).stem
    for index, passage in enumerate(proof.account.passages):
        words = [word for word in proof.account.words_of(index) if word.is_text]
        if passage.part in _BOLD or passage.part in _PLAIN:
            wanted = passage.part in _BOLD
            odd = next((word for word in words if _is_bold(word, bold_font) is not wanted), None)
            if odd is not None:
                should = f"{'bold' if wanted else 'plain'} as all of {passage.part.value}"
                yield _finding(proof, odd, should)
        elif passage.part in _CHANGES:
            odd = _after_changes(words, bold_font, _CHANGES[passage.part])
            if odd is not None:
                yield _finding(proof, odd, f"the face of the rest of {passage.part.value}")


def _after_changes(words: Sequence[Word], bold_font: str, most: int) -> Word | None:
    """The first word after more changes of face than `most`; one partly bold is no change."""
    told = [(_is_bold(word, bold_font), word) for word in words]
    runs = groupby((each for each in told if each[0] is not None), key=lambda each: each[0])
    starts = [next(run)[1] for _, run in runs]
    return starts[most + 1] if len(starts) > most + 1 else None


def _is_bold(word: Word, bold_font: str) -> bool | None:
    """None for a word that is partly bold, as where a label ends in it."""
    bold = {glyph.font.split("+")[-1] == bold_font for glyph in word.glyphs}
    return bold.pop() if len(bold) == 1 else None


def _finding(proof: Proof, word: Word, should: str) -> Finding:
    return proof.about_word(word, f"'{word.text}' is set in the wrong face", should, "font")
