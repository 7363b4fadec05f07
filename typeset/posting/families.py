"""The families' file: an address a line, and what that family gets; checked whole.

Complaints give the line and at most a shortened address, never a name.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from io import StringIO
from pathlib import Path

from typeset.errors import Complaint, ContentError, OutputError, Place, Remark
from typeset.posting.addresses import (
    Address,
    Malformed,
    looks_like_another,
    read_address,
    shortened,
)
from typeset.reading.complaints import KEYS, likely, nearest, quoted, shown, wrong_kind
from typeset.reading.content import CORE, VERSIONS
from typeset.reading.text_file import decoded, read_bytes
from typeset.reading.tree import Keyed, Listing, Scalar
from typeset.reading.yaml_reader import parse_yaml

ADDRESS, NAME, VERSION, LAYOUT = "address", "name", "version", "layout"
COLUMNS = (ADDRESS, NAME, VERSION, LAYOUT)
# First names or initials of all the children of a family.
LONGEST_NAME = 60
_NO_MORE = "no more is needed to post a pack; take it out"


@dataclass(frozen=True, slots=True)
class Family:
    """A line of the file. `name` may be empty; `layout` is empty for the week's own."""

    address: Address
    name: str
    version: str
    layout: str
    place: Place


@dataclass(frozen=True, slots=True)
class Families:
    """The families in the order of the file, and what is worth a look."""

    all: tuple[Family, ...]
    remarks: tuple[Remark, ...]


@dataclass(frozen=True, slots=True)
class _Row:
    """What is typed for a family, by column."""

    place: Place
    cells: dict[str, str]

    def cell(self, column: str) -> str:
        return self.cells.get(column, "").strip(" \t")


def _any_layout(_name: str) -> str | None:
    return None


def read_families(file: Path, about_layout: Callable[[str], str | None] = _any_layout) -> Families:
    """The families of the file. `about_layout` says why there is no layout of a name, or None.

    Raises ContentError with every complaint about it; OutputError where it cannot be read.
    """
    if not file.is_file():
        raise OutputError(f"there is no families' file {file}")
    complaints: list[Complaint] = []
    text = decoded(_plain_bytes(file), file)
    read = _keyed_rows if file.suffix.lower() in (".yaml", ".yml") else _csv_rows
    rows = read(text, file, complaints)
    found = tuple(family for row in rows for family in _family(row, about_layout, complaints))
    complaints += _repeated(found)
    if not rows and not complaints:
        complaints.append(Complaint(Place(file, 1, 1), "the file names no family", "add a line"))
    if complaints:
        raise ContentError(complaints)
    return Families(found, tuple(_remarks(found)))


def _plain_bytes(file: Path) -> bytes:
    data = read_bytes(file)
    if data.startswith(b"PK\x03\x04") or b"\0" in data:
        what, remedy = "this is neither CSV nor YAML", "save the list as 'CSV UTF-8'"
        raise ContentError([Complaint(Place(file, 1, 1), what, remedy)])
    return data


def _csv_rows(text: str, file: Path, complaints: list[Complaint]) -> list[_Row]:
    """A row for each line behind the header; spreadsheets leave lines of commas alone."""
    reader = csv.reader(StringIO(text, newline=""), strict=True, skipinitialspace=True)
    lines: list[tuple[Place, list[str]]] = []
    line = 1
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                lines.append((Place(file, line, 1), cells))
            line = reader.line_num + 1
    except csv.Error:
        what = "a quotation mark is not closed or stands alone"
        complaints.append(Complaint(Place(file, line, 1), what, "take it out"))
        return []
    if not lines:
        complaints.append(_no_header(Place(file, 1, 1)))
        return []
    place, header = lines[0]
    names = [cell.strip().lower() for cell in header]
    while names and not names[-1]:
        names.pop()
    if not _is_header(names, place, complaints):
        return []
    for at, cells in lines[1:]:
        if any(cell.strip() for cell in cells[len(names) :]):
            what = f"the line has {len(cells)} cells, the header {len(names)}"
            complaints.append(Complaint(at, what, _NO_MORE))
    return [_Row(at, dict(zip(names, cells, strict=False))) for at, cells in lines[1:]]


def _no_header(place: Place) -> Complaint:
    remedy = f"begin the file with the line '{','.join(COLUMNS)}'"
    return Complaint(place, "the first line is no header", remedy)


def _is_header(names: Sequence[str], place: Place, complaints: list[Complaint]) -> bool:
    """Whether rows can be read under these names; what is wrong with them is complained of."""
    if any("@" in name for name in names) or not set(names) & set(COLUMNS):
        # Not shown: it may be a family's line.
        complaints.append(_no_header(place))
        return False
    before = len(complaints)
    for name in dict.fromkeys(names):
        if name not in COLUMNS:
            complaints.append(_unknown(name, place, names))
        elif names.count(name) > 1:
            complaints.append(Complaint(place, f"the column '{name}' stands twice", "keep one"))
    if ADDRESS not in names and len(complaints) == before:
        what = f"the column '{ADDRESS}' is missing"
        complaints.append(Complaint(place, what, f"the columns are {quoted(COLUMNS)}"))
    return len(complaints) == before


def _unknown(name: str, place: Place, there: Iterable[str]) -> Complaint:
    meant = likely(name, [each for each in COLUMNS if each not in there]) if name else None
    known = f"the columns are {quoted(COLUMNS)}; {_NO_MORE}"
    return Complaint(
        place, f"unknown column {shown(name)}", f"did you mean '{meant}'?" if meant else known
    )


def _keyed_rows(text: str, file: Path, complaints: list[Complaint]) -> list[_Row]:
    """A row for each item of a list of keys."""
    parsed = parse_yaml(text, file)
    complaints += parsed.complaints
    if parsed.root is None:
        return []
    if not isinstance(parsed.root, Listing):
        remedy = "write '- address: …' for each family"
        complaints.append(Complaint(parsed.root.place, "the families must be a list", remedy))
        return []
    rows: list[_Row] = []
    for item in parsed.root.items:
        if not isinstance(item, Keyed):
            complaints.append(wrong_kind(item, KEYS, "a family"))
            continue
        cells: dict[str, str] = {}
        for entry in item:
            if entry.key not in COLUMNS:
                complaints.append(_unknown(entry.key, entry.place, [e.key for e in item]))
            elif not isinstance(entry.value, Scalar):
                complaints.append(wrong_kind(entry.value, "a text", f"'{entry.key}'"))
            else:
                cells[entry.key] = entry.value.text
        rows.append(_Row(item.place, cells))
    return rows


def _family(
    row: _Row, about_layout: Callable[[str], str | None], complaints: list[Complaint]
) -> Iterator[Family]:
    """The family of a row, where nothing is wrong with it."""
    amiss = list(_amiss(row, about_layout))
    typed = row.cell(ADDRESS)
    address = read_address(typed)
    if isinstance(address, Malformed):
        what = f"{address.problem} ({shortened(typed)})" if typed else "the address is empty"
        remedy = address.remedy if typed else "write it, or take out the line"
        amiss.append(Complaint(row.place, what, remedy))
    else:
        version = row.cell(VERSION).lower() or CORE
        yield Family(address, row.cell(NAME), version, row.cell(LAYOUT), row.place)
    complaints += amiss


def _amiss(row: _Row, about_layout: Callable[[str], str | None]) -> Iterator[Complaint]:
    name, version, layout = row.cell(NAME), row.cell(VERSION).lower(), row.cell(LAYOUT)
    if not name.isprintable():
        what = "the name holds a line break or another character that is not seen"
        yield Complaint(row.place, what, "type it anew on one line")
    elif len(name) > LONGEST_NAME:
        what = f"the name has more than {LONGEST_NAME} characters"
        yield Complaint(row.place, what, "first names or initials are enough")
    if version and version not in VERSIONS:
        yield Complaint(row.place, f"unknown version {shown(version)}", nearest(version, VERSIONS))
    if why := about_layout(layout) if layout else None:
        yield Complaint(row.place, why)


def _repeated(families: Sequence[Family]) -> Iterator[Complaint]:
    """Addresses that stand there before, in whatever way they are written."""
    first: dict[str, Family] = {}
    for family in families:
        earlier = first.setdefault(family.address.key, family)
        if earlier is not family:
            short = family.address.short
            what = f"the address {short} stands in line {earlier.place.line} already"
            remedy = "one message a family: name brothers and sisters in one line"
            yield Complaint(family.place, what, remedy)


def _remarks(families: Sequence[Family]) -> Iterator[Remark]:
    for family in families:
        if looks_like_another(family.address.domain):
            text = (
                f"the domain of {family.address.short} has letters of another alphabet "
                "that look like Latin ones; make sure that it is the family's own"
            )
            yield Remark(family.place, text)
