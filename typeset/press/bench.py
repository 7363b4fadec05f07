"""What is done to make files, in pieces that can be shared among processes.

A short file is one piece: composed, written and proofed. A long one is made in parts: the sides
of each part are set, all are bound to one file, and then each part of that is proofed. What
writes and reads PDFs is loaded with the first piece that needs it.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import accumulate
from pathlib import Path
from typing import TYPE_CHECKING

from typeset.drawing.fonts import in_family
from typeset.press.job import InParts, Job, Part
from typeset.press.kept import Kept
from typeset.press.keys import digest_of
from typeset.press.record import Made

if TYPE_CHECKING:
    from typeset.proofing.finding import Finding
    from typeset.setting.frames import Document
    from typeset.setting.pages import PageLayout


class Step(Enum):
    """What is done in a piece of work."""

    MAKE = "make"
    SET = "set"
    BIND = "bind"
    PROOF = "proof"


# Stands for the job that can only be planned when all others have their sides.
LAST = -1


@dataclass(frozen=True, slots=True)
class Piece:
    """A step in making the file of job `job`; of its `part`, which has `count` sides from
    `first` on, of so many in all. The last job tells of all that was `made`."""

    step: Step
    job: int
    part: int = 0
    first: int = 0
    count: int = 0
    of_all: int = 0
    signature: str = ""
    made: tuple[Made, ...] = ()


@dataclass(frozen=True, slots=True)
class BoundPart:
    """A part in its file: its first side (from 0), how many it has, and the signature of these.

    It `is_clean` where a part with its key was proofed without findings on sides like these.
    """

    first: int
    count: int
    signature: str
    is_clean: bool


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a piece. `sides` are those of the file, which may be bound of parts."""

    seconds: float
    findings: tuple[Finding, ...] = ()
    sides: int = 0
    type_size_pt: float = 0.0
    notes: tuple[str, ...] = ()
    parts: tuple[BoundPart, ...] = ()


@dataclass(frozen=True, slots=True)
class Bench:
    """Makes the files of `jobs` in the folder `staging`; what was made before lies in `kept`.

    `last` plans the job that tells of all files made.
    """

    jobs: tuple[Job, ...]
    last: Callable[[tuple[Made, ...]], Job]
    staging: Path
    kept: Kept

    def do(self, piece: Piece) -> Outcome:
        """One piece of work."""
        start = time.perf_counter()
        job = self.last(piece.made) if piece.job == LAST else self.jobs[piece.job]
        with in_family(job.fonts):
            outcome = self._done(piece, job)
        return replace(outcome, seconds=time.perf_counter() - start)

    def first_pieces(self, wanted: Sequence[int]) -> Iterator[Piece]:
        """What can be begun at once for these jobs: the long files first, since more follows
        from them."""
        for at in wanted:
            if (in_parts := self.jobs[at].in_parts) is not None:
                yield from (Piece(Step.SET, at, part) for part in range(len(in_parts.parts)))
        yield from (Piece(Step.MAKE, at) for at in wanted if self.jobs[at].in_parts is None)

    def pieces_after(self, bound: Piece, outcome: Outcome) -> Iterator[Piece]:
        """The proofs of the parts of a file that is bound, as far as they are needed."""
        for at, part in enumerate(outcome.parts):
            if not part.is_clean:
                span = (part.first, part.count, outcome.sides)
                yield Piece(Step.PROOF, bound.job, at, *span, part.signature)

    def _done(self, piece: Piece, job: Job) -> Outcome:
        if job.in_parts is None:
            return self._make(job)
        match piece.step:
            case Step.SET:
                return self._set(piece, job.in_parts)
            case Step.BIND:
                return self._bind(piece, job, job.in_parts)
            case _:
                return self._proof(piece, job, job.in_parts)

    def _make(self, job: Job) -> Outcome:
        document, pages = job.compose()
        pdf = self._write(job, document)
        return _outcome(document, pages, job.proof(pdf))

    def _write(self, job: Job, document: Document) -> bytes:
        from typeset.setting.pdf import write_pdf

        pdf = write_pdf(document)
        (self.staging / job.file).write_bytes(pdf)
        return pdf

    def _set(self, piece: Piece, in_parts: InParts) -> Outcome:
        """The sides of a part lie in the staging folder afterwards."""
        from typeset.press.shelf import put_down, taken_up

        part = in_parts.parts[piece.part]
        data = self.kept.sides(part.key)
        if data is None or taken_up(data) is None:
            data = put_down(part.compose())
            self.kept.keep_sides(part.key, data)
        self._sides_of(piece.job, piece.part).write_bytes(data)
        return Outcome(0.0)

    def _bind(self, piece: Piece, job: Job, in_parts: InParts) -> Outcome:
        """The file itself lies there."""
        from typeset.press.shelf import taken_up

        files = (self._sides_of(piece.job, part) for part in range(len(in_parts.parts)))
        parts = [taken_up(file.read_bytes()) for file in files]
        set_parts = [part for part in parts if part is not None]
        assert len(set_parts) == len(parts), "what was just put down can be taken up"
        document, pages = in_parts.bind(set_parts)
        pdf = self._write(job, document)
        outcome = _outcome(document, pages, in_parts.proof_frame(pdf))
        counts = [len(part.pages) for part in set_parts]
        firsts = accumulate(counts, initial=0)
        spans = zip(in_parts.parts, firsts, counts, strict=False)
        of_all = sum(counts)
        bound = [self._bound(part, pdf, first, count, of_all) for part, first, count in spans]
        outcome = replace(outcome, parts=tuple(bound))
        pieces = list(self.pieces_after(piece, outcome))
        if len(pieces) != 1:
            return outcome
        # After an edit to one lesson: here the file is open already.
        proofed = self._proof(pieces[0], job, in_parts)
        findings = (*outcome.findings, *proofed.findings)
        return replace(outcome, parts=(), findings=findings)

    def _bound(self, part: Part, pdf: bytes, first: int, count: int, of_all: int) -> BoundPart:
        """A part that was proofed before, with the same true of it and the same on its sides,
        need not be proofed again."""
        from typeset.proofing.parts import page_signature

        signature = page_signature(pdf, first, count)
        is_clean = self.kept.is_clean(_key_in_file(part, first, of_all), signature)
        return BoundPart(first, count, signature, is_clean)

    def _proof(self, piece: Piece, job: Job, in_parts: InParts) -> Outcome:
        part = in_parts.parts[piece.part]
        pdf = (self.staging / job.file).read_bytes()
        findings = part.proof(pdf, piece.first, piece.count, piece.of_all)
        if not findings:
            self.kept.keep_clean(_key_in_file(part, piece.first, piece.of_all), piece.signature)
        return Outcome(0.0, tuple(findings))

    def _sides_of(self, job: int, part: int) -> Path:
        return self.staging / f"{job}-{part}.sides"


def _key_in_file(part: Part, first: int, of_all: int) -> str:
    """The key of what is true of the part at this place of its file."""
    return digest_of(part.key, str(first), str(of_all))


def _outcome(document: Document, pages: PageLayout, findings: list[Finding]) -> Outcome:
    size = pages.type_size_pt
    return Outcome(0.0, tuple(findings), len(document.pages), size, pages.notes)
