"""Layouts: the ones that come with the package, and files that change only a part of one."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.documents.layout_files import find_layout, layout_names, read_layout
from typeset.errors import LayoutError
from typeset.reading.tree import bare
from typeset.reading.yaml_reader import parse_yaml

ROOT = Path(__file__).parents[2]


def write(folder: Path, name: str, text: str) -> Path:
    file = folder / f"{name}.yaml"
    file.write_text(f"layout: {name}\n{text}", encoding="utf-8")
    return file


def test_the_layouts_that_ship() -> None:
    assert set(layout_names()) == {
        "standard",
        "large-print-18",
        "large-print-24",
        "low-glare",
        "paper-saving",
    }


@pytest.mark.parametrize("name", layout_names())
def test_every_layout_can_be_read_and_is_called_as_its_file(name: str) -> None:
    assert find_layout(name, Path("nowhere")).name == name


def test_like_keeps_what_is_not_changed(tmp_path: Path) -> None:
    file = write(
        tmp_path,
        "ours",
        "like: standard\nmargins: {left: 25 mm}\nwording: {sheet: {name: First name}}\n",
    )
    layout, standard = read_layout(file), find_layout("standard", tmp_path)
    assert layout.margins.left == 25.0
    assert layout.margins.top == standard.margins.top
    assert layout.wording["sheet"]["name"] == "First name"
    assert layout.wording["sheet"]["date"] == standard.wording["sheet"]["date"]
    assert layout.type_size == standard.type_size


def test_a_copy_may_carry_the_name_of_what_it_changes(tmp_path: Path) -> None:
    """The teacher's 'standard' is like ours, not like itself."""
    folder = tmp_path / "layouts"
    folder.mkdir()
    write(folder, "standard", "like: standard\nleading: 1.3\n")
    assert find_layout("standard", tmp_path).leading == 1.3


def test_layouts_may_be_like_one_another_in_a_chain(tmp_path: Path) -> None:
    write(tmp_path, "first", "like: large-print-18\nleading: 1.5\n")
    layout = read_layout(write(tmp_path, "second", "like: first\npaper: A3\n"))
    assert (layout.leading, layout.upright.name, layout.type_size.largest) == (1.5, "A3", 18)


def test_a_circle_is_found(tmp_path: Path) -> None:
    write(tmp_path, "one", "like: two\n")
    with pytest.raises(Exception, match="like itself"):
        read_layout(write(tmp_path, "two", "like: one\n"))


def test_an_unknown_layout_is_told_its_nearest() -> None:
    with pytest.raises(LayoutError, match="did you mean 'standard'"):
        find_layout("standart", Path("nowhere"))


def test_the_standard_layout_says_everything_that_may_be_said() -> None:
    """A teacher who copies it sees every key."""
    from typeset.documents.layout import Layout

    root = parse_yaml((ROOT / "layouts/standard.yaml").read_text("utf-8"), Path("s.yaml")).root
    assert root is not None
    assert set(bare(root)) == set(Layout.keys())


def test_a_font_s_path_counts_from_the_file_that_names_it(tmp_path: Path) -> None:
    """Also where another layout is like it. The package's own typeface under other names."""
    from shutil import copy

    from typeset.drawing.fonts import font_path
    from typeset.drawing.shapes import Face

    folder = tmp_path / "ours"
    folder.mkdir()
    copy(font_path(Face.REGULAR), folder / "Plain.ttf")
    copy(font_path(Face.BOLD), folder / "Heavy.ttf")
    write(folder, "lettered", "like: standard\nfonts: {regular: Plain.ttf, bold: Heavy.ttf}\n")
    layout = read_layout(write(folder, "again", "like: lettered\nleading: 1.4\n"))
    assert layout.fonts is not None
    assert layout.fonts.regular.path == folder / "Plain.ttf"
