"""A week: the folder with week.yaml and one file a lesson."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from typeset.errors import Complaint, ContentError, Place
from typeset.reading.across_lessons import check_across_lessons, needs_earlier
from typeset.reading.complaints import likely
from typeset.reading.content import Lesson, Week
from typeset.reading.fingerprints import fingerprint_of, with_fingerprints
from typeset.reading.lesson import SourceFile, open_source, read_lesson
from typeset.reading.plan import NO_PLAN, WeekPlan, read_plan
from typeset.reading.problems import Desk
from typeset.reading.tree import Scalar

WEEK_FILE = "week.yaml"


def read_week(folder: Path) -> Week:
    """The week in the folder, checked in shape.

    Raises ContentError with every complaint about every file; OutputError where a file
    that is there cannot be read.
    """
    complaints: list[Complaint] = []
    week_file = _find_week_file(folder)
    week_source = open_source(week_file, complaints)
    plan = read_plan(week_source.root, complaints)
    complaints += _files_amiss(folder, plan)
    sources = [week_source]
    lessons: list[Lesson] = []
    for name in plan.names:
        file = folder / f"{name}.yaml"
        if file.is_file():
            source = open_source(file, complaints)
            sources.append(source)
            lessons += _lesson_of(source, plan, _before(name, plan.names), complaints)
    complaints += check_across_lessons(lessons)
    _raise_if_any(complaints)
    return _week(folder, plan, with_fingerprints(lessons, sources), sources)


def read_lesson_alone(file: Path) -> Week:
    """The lesson of one file as a week of its own, with what a week.yaml beside it says.

    Where there is none, or it does not name the lesson, recaps may look back at anything.
    Raises ContentError with every complaint; OutputError where a file cannot be read.
    """
    complaints: list[Complaint] = []
    week_file = file.parent / WEEK_FILE
    sources = [open_source(week_file, complaints)] if week_file.is_file() else []
    plan = read_plan(sources[0].root, complaints) if sources else NO_PLAN
    sources.append(open_source(file, complaints))
    earlier = _before(file.stem, plan.names) if file.stem in plan.names else None
    lessons = _lesson_of(sources[-1], plan, earlier, complaints)
    others, background = _background(file, plan, lessons, complaints)
    complaints += check_across_lessons([*background, *lessons])
    _raise_if_any(complaints)
    sources += others
    week = _week(file.parent, plan, with_fingerprints(lessons, sources), sources)
    return replace(week, background=tuple(background))


def _background(
    file: Path, plan: WeekPlan, lessons: Sequence[Lesson], complaints: list[Complaint]
) -> tuple[list[SourceFile], list[Lesson]]:
    """The lessons before this one, where its numbers depend on theirs."""
    if file.stem not in plan.names or not any(needs_earlier(lesson) for lesson in lessons):
        return [], []
    sources: list[SourceFile] = []
    background: list[Lesson] = []
    for name in _before(file.stem, plan.names):
        other = file.with_name(f"{name}.yaml")
        if other.is_file():
            sources.append(open_source(other, complaints))
            earlier = _before(name, plan.names)
            background += _lesson_of(sources[-1], plan, earlier, complaints)
    return sources, background


def _find_week_file(folder: Path) -> Path:
    """The folder's week.yaml. Raises ContentError where there is no such folder or file."""
    file = folder / WEEK_FILE
    if file.is_file():
        return file
    if not folder.exists():
        problem, remedy = "there is no such folder", "name a folder that holds a week.yaml"
    elif not folder.is_dir():
        problem, remedy = "this is a file, not the folder of a week", "name the folder it is in"
    elif (folder / "week.yml").is_file():
        problem, remedy = "the folder holds no week.yaml", "call week.yml week.yaml"
    else:
        problem, remedy = "the folder holds no week.yaml", "begin one with 'typeset new FOLDER'"
    raise ContentError([Complaint(Place(folder, 1, 1), problem, remedy)])


def _files_amiss(folder: Path, plan: WeekPlan) -> list[Complaint]:
    """Complaints about lessons without a file and files that are no lesson."""
    if not plan.lessons:
        return []
    found = sorted(file for file in folder.iterdir() if file.suffix in {".yaml", ".yml"})
    spare = [file for file in found if file.name not in {WEEK_FILE, *_file_names(plan.names)}]
    stems = [file.stem for file in spare if file.suffix == ".yaml"]
    missing = [name for name in plan.lessons if not (folder / f"{name.text}.yaml").is_file()]
    misspelt = {likely(name.text, stems) for name in missing}
    return [_missing_file(name, stems) for name in missing] + [
        _spare_file(file, plan.lessons[-1].place) for file in spare if file.stem not in misspelt
    ]


def _file_names(names: Sequence[str]) -> list[str]:
    return [f"{name}.yaml" for name in names]


def _missing_file(name: Scalar, stems: Sequence[str]) -> Complaint:
    problem = f"the folder holds no file '{name.text}.yaml'"
    meant = likely(name.text, stems)
    remedy = f"did you mean '{meant}'?" if meant else "write the lesson or take it off the list"
    return Complaint(name.place, problem, remedy)


def _spare_file(file: Path, place: Place) -> Complaint:
    if file.suffix == ".yml":
        problem = f"the file '{file.name}' in the folder is not read"
        return Complaint(place, problem, f"call it '{file.stem}.yaml'")
    problem = f"the file '{file.name}' in the folder is not in the list of lessons"
    return Complaint(place, problem, f"add '{file.stem}' or move the file elsewhere")


def _lesson_of(
    source: SourceFile, plan: WeekPlan, earlier: tuple[str, ...] | None, complaints: list[Complaint]
) -> list[Lesson]:
    """The lesson of the file in a list; an empty list where it cannot be read."""
    told = {complaint.place for complaint in complaints}
    desk = Desk(source.file.stem, plan.nouns, earlier, [])
    lesson = read_lesson(source, desk)
    # What YAML already stumbled over is not complained of a second time.
    complaints += [each for each in desk.complaints if each.place not in told]
    return [lesson] if lesson else []


def _before(name: str, names: tuple[str, ...]) -> tuple[str, ...]:
    return names[: names.index(name)]


def _raise_if_any(complaints: Sequence[Complaint]) -> None:
    if complaints:
        raise ContentError(complaints)


def _week(
    folder: Path, plan: WeekPlan, lessons: Sequence[Lesson], sources: Sequence[SourceFile]
) -> Week:
    return Week(
        name=folder.resolve().name,
        title=plan.title,
        class_name=plan.class_name,
        lessons=tuple(lessons),
        layout=plan.layout,
        folder=folder,
        fingerprint=fingerprint_of(sources),
        place=Place(folder / WEEK_FILE, 1, 1),
        note=plan.note,
        year=plan.year,
        seed=plan.seed,
        versions=plan.versions,
        makes=plan.makes,
        sender=plan.sender,
        subject=plan.subject,
    )
