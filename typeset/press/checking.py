"""Proofs files that were made earlier against the content they were made from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from typeset.documents.solved_week import solved_with_layouts
from typeset.drawing.fonts import in_family
from typeset.errors import OutputError
from typeset.press.class_plan import VARIED, ClassOrder, plan_class
from typeset.press.job import Job
from typeset.press.plan import Wanted, plan_jobs
from typeset.press.print_page import Layouts, print_job
from typeset.press.record import RECORD, Made, Record, read_record
from typeset.press.workers import crew
from typeset.proofing import Finding
from typeset.reading.content import ANSWER_GRID, HOW_TO_PRINT, NAMED_SET

# What only a class list can tell right from wrong.
_OF_CLASS = (NAMED_SET, ANSWER_GRID)


def proof_made(
    target: Path, week: Path | None = None, class_list: Path | None = None, workers: int = 1
) -> tuple[int, list[Finding]]:
    """How many files were read, and the findings about a made PDF or a folder of them.

    The record beside the files says what they were made from, unless `week` does. It holds no
    names: what was made for a class is read only with its `class_list`; see `left_unread`.
    So many processes share the work.
    Raises OutputError where that cannot be known, ContentError where the content is wrong.
    """
    if not target.exists():
        raise OutputError(f"{target} is not there")
    folder = target if target.is_dir() else target.parent
    record = read_record(folder) if (folder / RECORD).is_file() or week is None else None
    unread = () if class_list or record is None else _of_class(record)
    if target.name in unread:
        raise OutputError(f"{target} carries names: say --class FILE with the list of the class")
    jobs = _jobs(record, week, class_list)
    if target.is_file():
        return 1, _proof_one(target, jobs)
    findings = list(_strangers(folder, {*jobs, *unread}, record))
    present = [job for job in jobs.values() if (folder / job.file).is_file()]
    return len(present), [*findings, *_proof_all(folder, present, jobs, workers)]


def _proof_all(
    folder: Path, present: Sequence[Job], jobs: Mapping[str, Job], workers: int
) -> Iterator[Finding]:
    """The findings about all files, in their order; the largest are begun first."""
    files = [folder / job.file for job in present]
    by_size = sorted(files, key=lambda file: -file.stat().st_size)
    found: dict[Path, list[Finding]] = {}

    def proof_file(file: Path) -> list[Finding]:
        return _proof_one(file, jobs)

    with crew(proof_file, min(workers, len(files))) as hands:
        for file in by_size:
            hands.add(file)
        found.update(hands.done())
    for file in files:
        yield from found[file]


def left_unread(target: Path) -> tuple[str, ...]:
    """The files of a folder that cannot be proofed without a class list."""
    if not (target / RECORD).is_file():
        return ()
    return tuple(file for file in _of_class(read_record(target)) if (target / file).is_file())


def _of_class(record: Record) -> tuple[str, ...]:
    return tuple(each.file for each in record.made if each.kind in _OF_CLASS)


def _jobs(record: Record | None, week: Path | None, class_list: Path | None) -> dict[str, Job]:
    content = week or (record.week if record is not None else None)
    assert content is not None
    made = record.made if record else ()
    usual = [each for each in made if each.kind not in (*_OF_CLASS, HOW_TO_PRINT)]
    versions, layouts = solved_with_layouts(
        content, [each.layout for each in usual], [each.version for each in usual]
    )
    jobs = list(plan_jobs(versions, layouts, Wanted(fields=None)))
    if class_list is not None:
        jobs += _class_jobs(made, content, class_list)
    jobs.append(print_job(versions.core, made, Layouts(versions.core.week, layouts)))
    return {job.file: job for job in jobs}


def _class_jobs(made: Sequence[Made], content: Path, class_list: Path) -> Iterator[Job]:
    """The files of the class in the ways in which they were made."""
    grids = [each for each in made if each.kind == ANSWER_GRID]
    for layout, numbers in dict.fromkeys((each.layout, each.version) for each in grids):
        order = ClassOrder(content, class_list, None, layout, numbers == VARIED)
        yield from plan_class(order)[1]


def _proof_one(file: Path, jobs: Mapping[str, Job]) -> list[Finding]:
    job = jobs.get(file.name)
    if job is None:
        return [_about(file.name, "is no document of this week", f"one of {', '.join(jobs)}")]
    try:
        with in_family(job.fonts):
            return job.proof(file.read_bytes())
    except OSError as error:
        raise OutputError(f"{file} cannot be read: {error.strerror}") from error


def _strangers(folder: Path, known: set[str], record: Record | None) -> Iterator[Finding]:
    """Files that are missing from the folder, and PDFs that do not belong there."""
    wanted = {each.file for each in record.made} if record is not None else known
    there = {path.name for path in folder.glob("*.pdf")}
    for name in sorted(wanted - there):
        yield _about(name, "is missing", "make it again with 'typeset make'")
    for name in sorted(there - known):
        yield _about(name, "does not belong to this week", "move it away, or make the week again")


def _about(name: str, what: str, should: str) -> Finding:
    return Finding(
        document=name, page=0, place=None, what=what, should=should, source="", kind="file"
    )
