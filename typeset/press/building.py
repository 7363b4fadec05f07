"""A build: what need not be made again is found, the rest is shared out, results are gathered."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from typeset.arithmetic.lessons import SolvedWeek
from typeset.press.bench import LAST, Bench, Outcome, Piece, Step
from typeset.press.job import Job
from typeset.press.kept import Proofed, digest_of_file
from typeset.press.record import Made, with_earlier
from typeset.press.workers import Crew, crew

if TYPE_CHECKING:
    from typeset.proofing.finding import Finding


@dataclass(frozen=True, slots=True)
class Result:
    """A document that was made, with what was noticed while making it.

    `seconds` are those of all its pieces; it `is_as_before` where nothing of it has changed, so
    that it was neither set nor proofed again.
    """

    made: Made
    type_size_pt: float
    seconds: float
    notes: tuple[str, ...]
    findings: tuple[Finding, ...]
    is_as_before: bool = False


class Build:
    """One build of the bench's jobs, which go to the folder `to`."""

    def __init__(
        self, bench: Bench, to: Path, core: SolvedWeek, progress: Callable[[str, int], None]
    ) -> None:
        self._bench = bench
        self._to = to
        self._core = core
        self._progress = progress
        # By number of the job: what came of it so far, and how many pieces are still out.
        self._outcomes: dict[int, Outcome] = {}
        self._out: Counter[int] = Counter()
        self._as_before: set[int] = set()
        self._last: Job | None = None

    def run(self, workers: int) -> tuple[Result, ...]:
        """The results in the order of the jobs, that of the page about all files last.

        Raises what a piece of work raises.
        """
        for at, job in enumerate(self._bench.jobs):
            self._look_for(at, job)
        wanted = [at for at in range(len(self._bench.jobs)) if at not in self._as_before]
        first = list(self._bench.first_pieces(wanted))
        with crew(self._bench.do, min(workers, len(first))) as hands:
            self._add(hands, first)
            self._add(hands, self._last_of_all())
            for piece, outcome in hands.done():
                self._add(hands, self._after(piece, outcome))
        order = [*range(len(self._bench.jobs)), LAST]
        return tuple(self._result(at) for at in order)

    def told(self, results: Sequence[Result]) -> tuple[Made, ...]:
        """These files, and those made earlier of the same week that still stand in the folder."""
        return with_earlier(self._to, self._core, [result.made for result in results])

    def keep(self, results: Sequence[Result]) -> None:
        """Keeps what is known of the files that were proofed, for the next build."""
        for at, result in zip([*range(len(self._bench.jobs)), LAST], results, strict=True):
            key = self._job(at).key
            if key and not result.is_as_before:
                digest = digest_of_file(self._bench.staging / result.made.file)
                size, notes = result.type_size_pt, result.notes
                self._bench.kept.keep_file(key, Proofed(digest, result.made.sides, size, notes))

    def _look_for(self, at: int, job: Job) -> None:
        """The file of an earlier build counts where it would come out the same."""
        known = job.key and self._bench.kept.file_as_proofed(job.key, self._to / job.file)
        if known:
            self._as_before.add(at)
            self._outcomes[at] = Outcome(
                0.0, sides=known.sides, type_size_pt=known.type_size_pt, notes=known.notes
            )
            self._say_done(at)

    def _add(self, hands: Crew[Piece, Outcome], pieces: Sequence[Piece]) -> None:
        for piece in pieces:
            self._out[piece.job] += 1
            hands.add(piece)

    def _after(self, piece: Piece, outcome: Outcome) -> list[Piece]:
        """Takes down what came of the piece; gives the pieces that can be begun now."""
        at = piece.job
        self._out[at] -= 1
        self._outcomes[at] = _both(self._outcomes.get(at, Outcome(0.0)), outcome)
        more: list[Piece] = []
        if self._out[at] == 0 and piece.step is Step.SET:
            more.append(Piece(Step.BIND, at))
        elif piece.step is Step.BIND:
            more += self._bench.pieces_after(piece, outcome)
        if not more and self._out[at] == 0:
            self._say_done(at)
        return [*more, *self._last_of_all()]

    def _last_of_all(self) -> list[Piece]:
        """The page about all files, as soon as it is known how many sides each has."""
        known = [each for each in self._outcomes.values() if each.sides]
        if self._last is not None or len(known) < len(self._bench.jobs):
            return []
        made = self._made_so_far()
        self._last = self._bench.last(made)
        self._look_for(LAST, self._last)
        if LAST in self._as_before:
            return []
        return [Piece(Step.MAKE, LAST, made=made)]

    def _made_so_far(self) -> tuple[Made, ...]:
        made = [self._made(at) for at in range(len(self._bench.jobs))]
        return with_earlier(self._to, self._core, made)

    def _job(self, at: int) -> Job:
        if at != LAST:
            return self._bench.jobs[at]
        assert self._last is not None, "planned when all others have their sides"
        return self._last

    def _made(self, at: int) -> Made:
        job, sides = self._job(at), self._outcomes[at].sides
        return Made(job.file, job.kind, job.lesson, job.version, job.layout, sides)

    def _result(self, at: int) -> Result:
        each = self._outcomes[at]
        before = at in self._as_before
        own = (each.type_size_pt, each.seconds, each.notes, each.findings)
        return Result(self._made(at), *own, is_as_before=before)

    def _say_done(self, at: int) -> None:
        self._progress(self._job(at).file, len(self._bench.jobs) + 1)


def _both(one: Outcome, other: Outcome) -> Outcome:
    """What came of both pieces of a file."""
    told = other if other.sides else one
    findings = tuple(dict.fromkeys((*one.findings, *other.findings)))
    return replace(
        told,
        seconds=one.seconds + other.seconds,
        findings=tuple(sorted(findings, key=lambda each: (each.page, each.place or (0.0, 0.0)))),
    )
