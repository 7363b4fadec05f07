"""The class list of a named set: a CSV file with a first name, a version and a layout a pupil.

Nothing else is read, and a column for anything else is refused: whoever prints a sheet needs
no surname, no date of birth and no mark, and a file that does not hold them cannot lose them.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from io import StringIO
from pathlib import Path

from typeset.errors import Complaint, ContentError, OutputError, Place
from typeset.reading.complaints import likely, nearest, quoted, shown
from typeset.reading.content import CORE, VERSIONS
from typeset.reading.text_file import decoded, read_bytes

NAME, VERSION, LAYOUT = "name", "version", "layout"
COLUMNS = (NAME, VERSION, LAYOUT)
# A first name with an initial; a longer text is more than that.
LONGEST_NAME = 24
_WHY_NO_MORE = "a class list holds no more about children than printing their sheets needs"
# Spreadsheets save their own files as ZIP archives.
_ARCHIVE = b"PK\x03\x04"
_SEPARATORS = {";": "semicolons", "\t": "tabs", "|": "upright strokes"}


@dataclass(frozen=True, slots=True)
class Pupil:
    """A line of the list. `number` counts from 1; `layout` is empty for the week's own."""

    number: int
    name: str
    version: str
    layout: str
    place: Place


@dataclass(frozen=True, slots=True)
class ClassList:
    """The pupils in the order of the list."""

    file: Path
    pupils: tuple[Pupil, ...]

    @property
    def versions(self) -> tuple[str, ...]:
        """Those that somebody gets, easiest first."""
        return tuple(each for each in VERSIONS if any(p.version == each for p in self.pupils))

    @property
    def layouts(self) -> tuple[str, ...]:
        """Those that the list names, each once."""
        return tuple(dict.fromkeys(p.layout for p in self.pupils if p.layout))


def _no_more(_pupil: Pupil) -> Iterable[Complaint]:
    return ()


def read_class_list(
    file: Path, check: Callable[[Pupil], Iterable[Complaint]] = _no_more
) -> ClassList:
    """The list in the file. `check` may have more complaints about a pupil that has a name.

    Raises ContentError with every complaint about it; OutputError where it cannot be read.
    No complaint repeats a pupil's name: the line says whose it is.
    """
    rows = _rows(file)
    header = next(rows, None)
    if header is None:
        raise _refused(
            file, 1, "the file is empty", f"begin it with the line '{','.join(COLUMNS)}'"
        )
    columns = _columns(header)
    lines = list(rows)
    if not lines:
        raise _refused(file, header.line, "the list names nobody", "write a line for each pupil")
    pupils = tuple(_pupil(number, line, columns) for number, line in enumerate(lines, 1))
    complaints = [
        *(each for line in lines for each in _about_line(line, columns)),
        *_repeated(pupils),
        *(each for pupil in pupils if pupil.name for each in check(pupil)),
    ]
    if complaints:
        raise ContentError(complaints)
    return ClassList(file, pupils)


@dataclass(frozen=True, slots=True)
class _Row:
    """A row of the file that holds something, with the line that it begins on."""

    place: Place
    cells: tuple[str, ...]

    @property
    def line(self) -> int:
        return self.place.line

    def cell(self, column: int | None) -> str:
        return self.cells[column] if column is not None and column < len(self.cells) else ""


def _rows(file: Path) -> Iterator[_Row]:
    """The rows that are not blank, spaces around cells taken off."""
    reader = csv.reader(StringIO(_text(file), newline=""), strict=True, skipinitialspace=True)
    line = 1
    try:
        for cells in reader:
            bare = tuple(re.sub(" +", " ", cell.strip()) for cell in cells)
            if any(bare):
                yield _Row(Place(file, line, 1), bare)
            line = reader.line_num + 1
    except csv.Error as error:
        what = "a quotation mark is not closed or stands alone" if '"' in str(error) else str(error)
        if "unexpected end of data" in what:
            what = "a quotation mark is not closed"
        raise _refused(file, line, what, "a name needs no quotation marks") from None


def _text(file: Path) -> str:
    """What the file holds; a byte order mark, which spreadsheets write, is no part of it."""
    if not file.exists():
        raise OutputError(f"there is no class list {file}")
    data = read_bytes(file)
    if data.startswith(_ARCHIVE) or b"\0" in data:
        raise _refused(file, 1, "this is no CSV file", "save the list as 'CSV UTF-8'")
    return decoded(data, file)


def _columns(header: _Row) -> dict[str, int]:
    """Which cell of a line is what. Raises ContentError for a header that is none."""
    names = [cell.lower() for cell in header.cells]
    while names and not names[-1]:
        names.pop()
    complaints = list(_about_header(header, names))
    if complaints:
        raise ContentError(complaints)
    return {name: index for index, name in enumerate(names)}


def _about_header(header: _Row, names: Sequence[str]) -> Iterator[Complaint]:
    for separator, word in _SEPARATORS.items():
        if any(separator in name for name in names):
            what = f"the columns are parted by {word}"
            yield Complaint(header.place, what, "save the list as CSV with commas")
            return
    if not set(names) & set(COLUMNS) and not likely(names[0], COLUMNS):
        what = "the first line is no header"
        yield Complaint(header.place, what, f"begin the list with the line '{','.join(COLUMNS)}'")
        return
    known = quoted(COLUMNS)
    for name in dict.fromkeys(names):
        if name in COLUMNS and names.count(name) > 1:
            yield Complaint(header.place, f"the column '{name}' stands there twice", "keep one")
        elif name not in COLUMNS:
            meant = likely(name, [each for each in COLUMNS if each not in names]) if name else None
            remedy = (
                f"did you mean '{meant}'?"
                if meant
                else f"the columns are {known}, since {_WHY_NO_MORE}; take it out"
            )
            yield Complaint(header.place, f"unknown column {shown(name)}", remedy)
    if NAME not in names and not likely(NAME, [n for n in names if n not in COLUMNS]):
        yield Complaint(header.place, f"the column '{NAME}' is missing", f"the columns are {known}")


def _pupil(number: int, row: _Row, columns: dict[str, int]) -> Pupil:
    name, version, layout = (row.cell(columns.get(column)) for column in COLUMNS)
    return Pupil(number, name, version.lower() or CORE, layout, row.place)


def _about_line(row: _Row, columns: dict[str, int]) -> Iterator[Complaint]:
    name, version = row.cell(columns[NAME]), row.cell(columns.get(VERSION)).lower()
    if any(row.cells[len(columns) :]):
        what = f"the line has {len(row.cells)} cells, the header {len(columns)}"
        yield Complaint(row.place, what, f"{_WHY_NO_MORE}; take out what is beyond")
    if not name:
        what = "the name is empty"
        yield Complaint(row.place, what, "write a first name or initials, or take out the line")
    elif len(name) > LONGEST_NAME:
        what = f"the name has {len(name)} characters, {LONGEST_NAME} at most find room"
        yield Complaint(
            row.place, what, "a first name is enough, with an initial where two are alike"
        )
    elif not name.isprintable():
        what = "the name holds a character that cannot be seen"
        yield Complaint(row.place, what, "type it anew")
    if version and version not in VERSIONS:
        yield Complaint(row.place, f"unknown version {shown(version)}", nearest(version, VERSIONS))


def _repeated(pupils: Sequence[Pupil]) -> Iterator[Complaint]:
    """Names that stand there before, in capitals or not."""
    first: dict[str, Pupil] = {}
    for pupil in pupils:
        key = pupil.name.casefold()
        if key and key in first:
            what = f"the name stands in line {first[key].place.line} already"
            yield Complaint(
                pupil.place, what, "add an initial, so that the sheets can be told apart"
            )
        first.setdefault(key, pupil)


def _refused(file: Path, line: int, problem: str, remedy: str) -> ContentError:
    return ContentError([Complaint(Place(file, line, 1), problem, remedy)])
