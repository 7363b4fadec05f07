"""Proofs files that were made earlier against the content they were made from."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from typeset.drawing.fonts import in_family
from typeset.errors import OutputError
from typeset.press.making import solved_with_layouts
from typeset.press.plan import Job, plan_jobs
from typeset.press.record import RECORD, Record, read_record
from typeset.proofing import Finding


def proof_made(target: Path, week: Path | None = None) -> tuple[int, list[Finding]]:
    """How many files were read, and the findings about a made PDF or a folder of them.

    The record beside the files says what they were made from, unless `week` does.
    Raises OutputError where that cannot be known, ContentError where the content is wrong.
    """
    if not target.exists():
        raise OutputError(f"{target} is not there")
    folder = target if target.is_dir() else target.parent
    record = read_record(folder) if (folder / RECORD).is_file() or week is None else None
    jobs = _jobs(record, week)
    if target.is_file():
        return 1, _proof_one(target, jobs)
    findings = list(_strangers(folder, jobs, record))
    present = [job for job in jobs.values() if (folder / job.file).is_file()]
    for job in present:
        findings.extend(_proof_one(folder / job.file, jobs))
    return len(present), findings


def _jobs(record: Record | None, week: Path | None) -> dict[str, Job]:
    content = week or (record.week if record is not None else None)
    assert content is not None
    made = record.made if record else ()
    versions, layouts = solved_with_layouts(
        content, [each.layout for each in made], [each.version for each in made]
    )
    return {job.file: job for job in plan_jobs(versions, layouts)}


def _proof_one(file: Path, jobs: dict[str, Job]) -> list[Finding]:
    job = jobs.get(file.name)
    if job is None:
        return [_about(file.name, "is no document of this week", f"one of {', '.join(jobs)}")]
    try:
        with in_family(job.fonts):
            return job.proof(file.read_bytes())
    except OSError as error:
        raise OutputError(f"{file} cannot be read: {error.strerror}") from error


def _strangers(folder: Path, jobs: dict[str, Job], record: Record | None) -> Iterator[Finding]:
    """Files that are missing from the folder, and PDFs that do not belong there."""
    wanted = {each.file for each in record.made} if record is not None else set(jobs)
    there = {path.name for path in folder.glob("*.pdf")}
    for name in sorted(wanted - there):
        yield _about(name, "is missing", "make it again with 'typeset make'")
    for name in sorted(there - set(jobs)):
        yield _about(name, "does not belong to this week", "move it away, or make the week again")


def _about(name: str, what: str, should: str) -> Finding:
    return Finding(
        document=name, page=0, place=None, what=what, should=should, source="", kind="file"
    )
