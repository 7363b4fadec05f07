"""Class lists: what is read, and what is refused, with every complaint in one run."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.errors import ContentError, OutputError
from typeset.reading.class_list import LONGEST_NAME, ClassList, read_class_list

NAMES = (
    *("Asha", "Tomasz", "Imogen", "Kofi", "Leila", "Rhys"),
    *("Yuki", "Odette", "Femi", "Nell", "Idris", "Marta"),
)


def listed(folder: Path, text: str | bytes) -> ClassList:
    file = folder / "class.csv"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_class_list(file)


def complaints(folder: Path, text: str | bytes) -> list[str]:
    with pytest.raises(ContentError) as refused:
        listed(folder, text)
    return [str(each).removeprefix(f"{folder}/") for each in refused.value.complaints]


def test_names_versions_and_layouts_in_order(tmp_path: Path) -> None:
    text = "name,version,layout\nAsha,support,\nTomasz,,large-print-18\nAsha B,Stretch,\n"
    found = listed(tmp_path, text)
    assert [(p.number, p.name, p.version, p.layout, p.place.line) for p in found.pupils] == [
        (1, "Asha", "support", "", 2),
        (2, "Tomasz", "core", "large-print-18", 3),
        (3, "Asha B", "stretch", "", 4),
    ]
    assert found.versions == ("support", "core", "stretch")
    assert found.layouts == ("large-print-18",)


@pytest.mark.parametrize(
    "text",
    [
        "name\nAsha\nTomasz\n",
        "Name\r\nAsha\r\nTomasz\r\n",
        "\ufeffname\nAsha\nTomasz",
        "\n name \n\n Asha \n\n\nTomasz\n\n",
        'layout,name\n,"Asha"\n,Tomasz\n',
        "name,version,layout,,\nAsha,,,,\nTomasz,,,,\n",
        "name,version\nAsha\nTomasz\n",
    ],
)
def test_what_spreadsheets_write_is_read(text: str, tmp_path: Path) -> None:
    assert [pupil.name for pupil in listed(tmp_path, text).pupils] == ["Asha", "Tomasz"]


def test_accents_and_initials_are_names(tmp_path: Path) -> None:
    found = listed(tmp_path, "name\nZoë\nD’Arcy\nM.K.\nAnne-Marie\n")
    assert [pupil.name for pupil in found.pupils] == ["Zoë", "D’Arcy", "M.K.", "Anne-Marie"]


BAD: dict[str, tuple[str | bytes, list[str]]] = {
    "empty file": ("", ["class.csv:1:1: the file is empty; begin it with"]),
    "nobody": ("name\n\n", ["class.csv:1:1: the list names nobody"]),
    "no header": ("Asha\nTomasz\n", ["class.csv:1:1: the first line is no header"]),
    "misspelt": ("nmae\nAsha\n", ["class.csv:1:1: unknown column 'nmae'; did you mean 'name'?"]),
    "no names": ("version\ncore\n", ["class.csv:1:1: the column 'name' is missing"]),
    "twice": ("name,name\nAsha,B\n", ["class.csv:1:1: the column 'name' stands there twice"]),
    "more data": (
        "name,surname,born\nAsha,B,2016\n",
        [
            "class.csv:1:1: unknown column 'born'; the columns are 'name', 'version' and 'layout', "
            "since a class list holds no more about children than printing their sheets needs",
            "class.csv:1:1: unknown column 'surname'",
        ],
    ),
    "more cells": ("name\nAsha,B\n", ["class.csv:2:1: the line has 2 cells, the header 1"]),
    "semicolons": ("name;version\nAsha;core\n", ["class.csv:1:1: the columns are parted by semi"]),
    "tabs": ("name\tversion\nAsha\tcore\n", ["class.csv:1:1: the columns are parted by tabs"]),
    "not UTF-8": (b"name\nAsha\nZo\xeb\n", ["class.csv:3:3: the byte 0xeb is not UTF-8 text"]),
    "a spreadsheet": (b"PK\x03\x04\x14\0\0", ["class.csv:1:1: this is no CSV file"]),
    "two bytes a letter": ("name\nAsha\n".encode("utf-16-le"), ["class.csv:1:1: this is no CSV"]),
    "open quotation": ('name\nAsha\n"Tomasz\nKofi\n', ["class.csv:3:1: a quotation mark is not"]),
    "quotation within": ('name\n"As"ha\n', ["class.csv:2:1: a quotation mark "]),
    "all at once": (
        "name,version\nAsha,\n,core\nTomasz,suport\n asha ,\nKofi,easy\n" + "N" * 25 + ",\n",
        [
            "class.csv:3:1: the name is empty",
            "class.csv:4:1: unknown version 'suport'; did you mean 'support'?",
            "class.csv:5:1: the name stands in line 2 already; add an initial",
            "class.csv:6:1: unknown version 'easy'; write 'support', 'core' or 'stretch'",
            f"class.csv:7:1: the name has 25 characters, {LONGEST_NAME} at most find room",
        ],
    ),
}


@pytest.mark.parametrize("name", BAD)
def test_bad_lists_are_refused_with_line_and_remedy(name: str, tmp_path: Path) -> None:
    text, told = BAD[name]
    found = complaints(tmp_path, text)
    assert len(found) == len(told), found
    for one, start in zip(found, told, strict=True):
        assert one.startswith(start)


def test_complaints_never_repeat_a_name(tmp_path: Path) -> None:
    text = "name,version\nImogen,\nImogen,hard\nOdette,,x\nFemi Akande Oluwaseun Babatunde,\n"
    told = " ".join(complaints(tmp_path, text))
    assert len(told.split("class.csv:")) == 5
    assert not [name for name in ("Imogen", "Odette", "Femi", "Akande") if name in told]


def test_a_missing_list_is_a_message(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="there is no class list"):
        read_class_list(tmp_path / "nowhere.csv")


def test_the_sample_list_has_invented_names_alone() -> None:
    found = read_class_list(Path(__file__).parents[2] / "content" / "tern-class.csv")
    assert tuple(pupil.name for pupil in found.pupils) == NAMES
    assert found.versions == ("support", "core", "stretch")
