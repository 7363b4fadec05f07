"""The families' file: checked whole, and no complaint names anybody."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.errors import ContentError, OutputError
from typeset.posting.families import Families, read_families

CSV = """\
address,name,version,layout
asha@harbour.example,Asha,,
"kofi@harbour.example","Kofi, Nell",SUPPORT,large-print-18
,,,
yuki@quay.example,,stretch,
"""
YAML = """\
- address: asha@harbour.example
  name: Asha
- address: kofi@harbour.example
  name: Kofi, Nell
  version: support
  layout: large-print-18
- address: yuki@quay.example
  version: stretch
"""


def read(text: str, folder: Path, name: str = "families.csv") -> Families:
    file = folder / name
    file.write_bytes(text.encode("utf-8"))
    return read_families(file, lambda layout: "no such layout" if layout == "huge" else None)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        (CSV, "families.csv"),
        ("\ufeff" + CSV.replace("\n", "\r\n"), "families.csv"),
        (YAML, "families.yaml"),
    ],
    ids=["csv", "csv of a spreadsheet", "yaml"],
)
def test_families_are_read(text: str, name: str, tmp_path: Path) -> None:
    families = read(text, tmp_path, name).all
    assert [(f.address.text, f.name, f.version, f.layout) for f in families] == [
        ("asha@harbour.example", "Asha", "core", ""),
        ("kofi@harbour.example", "Kofi, Nell", "support", "large-print-18"),
        ("yuki@quay.example", "", "stretch", ""),
    ]


HEAD = "address,name,version,layout\n"
BAD = {
    "empty": ("", ["1:1: the first line is no header"]),
    "nobody": (HEAD, ["1:1: the file names no family"]),
    "no header": ("asha@harbour.example,Asha\n", ["1:1: the first line is no header"]),
    "slip": ("adress,name\na@b.example,A\n", ["1:1: unknown column 'adress'; did you mean"]),
    "more": (
        "address,birthday\na@b.example,Reed\n",
        ["1:1: unknown column 'birthday'; the columns are"],
    ),
    "no address": ("name,version\nAsha,\n", ["1:1: the column 'address' is missing"]),
    "twice": ("address,name,name\na@b.example,A,B\n", ["1:1: the column 'name' stands twice"]),
    "cells": (HEAD + "asha@b.example,A,,,x\n", ["2:1: the line has 5 cells, the header 4"]),
    "quotation": (HEAD + 'asha@b.example,"A\n', ["2:1: a quotation mark is not closed"]),
    "all at once": (
        HEAD
        + "asha@harbour.example,Asha,,\n"
        + "Asha@HARBOUR.example,Imogen,,\n"
        + "kofi@harbour,Kofi,,\n"
        + ",Nell,,\n"
        + "rhys@harbour.example,Rhys,suport,\n"
        + "odette@harbour.example,Odette,,huge\n"
        + f"femi@harbour.example,{'F' * 61},,\n",
        [
            "3:1: the address A…@harbour.example stands in line 2 already",
            "4:1: behind the @ the ending of the domain is missing (k…@harbour)",
            "5:1: the address is empty",
            "6:1: unknown version 'suport'; did you mean 'support'?",
            "7:1: no such layout",
            "8:1: the name has more than 60 characters",
        ],
    ),
    # Line breaks that would begin a header of their own.
    "name with a line": (
        HEAD + '"asha@harbour.example","Asha\nBcc: all@harbour.example",,\n',
        ["2:1: the name holds a line break"],
    ),
    "address with a line": (
        HEAD + '"asha@harbour.example\nBcc: all@harbour.example",Asha,,\n',
        ["2:1: the address holds a line break"],
    ),
    "control": (HEAD + "asha@harbour.example,As\x00ha,,\n", ["1:1: this is neither CSV nor YAML"]),
    "escape": (HEAD + "asha@harbour.example,As\x1bha,,\n", ["2:24: a character that cannot be"]),
    "separator": (HEAD + "asha@harbour.example,As\u2028ha,,\n", ["2:24: a character that"]),
    "archive": ("PK\x03\x04", ["1:1: this is neither CSV nor YAML"]),
}


@pytest.mark.parametrize("name", BAD)
def test_complaints_come_all_at_once_and_name_nobody(name: str, tmp_path: Path) -> None:
    text, told = BAD[name]
    with pytest.raises(ContentError) as raised:
        read(text, tmp_path)
    complaints = [str(each).split("families.csv:")[1] for each in raised.value.complaints]
    assert len(complaints) == len(told)
    for complaint, start in zip(complaints, told, strict=True):
        assert complaint.startswith(start)
        for private in ("Asha", "asha", "Imogen", "Kofi", "kofi", "Nell", "rhys", "odette"):
            assert private not in complaint


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("address: a@b.example\n", "the families must be a list"),
        ("- a@b.example\n", "a family must be keys with values"),
        ("- address: [a@b.example]\n", "'address' must be a text"),
        ("- adress: a@b.example\n", "unknown column 'adress'"),
        ('- address: "a@b.example\\nBcc: c@d.example"\n', "the address holds a line break"),
        ('- {address: a@b.example, name: "A\\r\\nBcc: c@d.example"}\n', "the name holds a line"),
    ],
)
def test_yaml_that_is_no_list_of_families(text: str, told: str, tmp_path: Path) -> None:
    with pytest.raises(ContentError) as raised:
        read(text, tmp_path, "families.yaml")
    assert told in str(raised.value)


def test_a_domain_that_looks_like_another_is_remarked_on(tmp_path: Path) -> None:
    text = HEAD + "asha@асео.example,Asha,,\nkofi@bücher.example,Kofi,,\n"
    (remark,) = read(text, tmp_path).remarks
    assert remark.place.line == 2 and "look like Latin ones" in remark.text
    assert "asha" not in remark.text


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="there is no families' file"):
        read_families(tmp_path / "none.csv")
