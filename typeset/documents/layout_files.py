"""Finds and reads the layouts, in a checkout or in the installed package."""

from __future__ import annotations

from pathlib import Path

from pydantic import ValidationError

from typeset.documents.layout import Layout
from typeset.documents.wording import faults
from typeset.errors import Complaint, ContentError, LayoutError
from typeset.reading.complaints import complaints_of, nearest
from typeset.reading.text_file import decoded, read_bytes
from typeset.reading.tree import Keyed, bare, place_of
from typeset.reading.yaml_reader import parse_yaml

_PACKAGE = Path(__file__).parents[1]


def layouts_folder() -> Path:
    """`layouts/` inside the installed package, or at the top of a checkout."""
    inside = _PACKAGE / "layouts"
    return inside if inside.is_dir() else _PACKAGE.parent / "layouts"


def layout_names() -> tuple[str, ...]:
    """The layouts that come with the package."""
    return tuple(sorted(path.stem for path in layouts_folder().glob("*.yaml")))


def find_layout(name: str, beside: Path) -> Layout:
    """The layout of this name; a file of that name in the week's folder goes before ours.

    Raises LayoutError for an unknown name, ContentError with every complaint of the file.
    """
    for folder in (beside / "layouts", layouts_folder()):
        file = folder / f"{name}.yaml"
        if file.is_file():
            return read_layout(file)
    raise LayoutError(f"there is no layout called '{name}'; {nearest(name, layout_names())}")


def read_layout(file: Path) -> Layout:
    """The layout of the file. Raises ContentError with every complaint."""
    parsed = parse_yaml(decoded(read_bytes(file), file), file)
    if parsed.complaints:
        raise ContentError(parsed.complaints)
    if not isinstance(parsed.root, Keyed):
        place = place_of(parsed.root, ()) if parsed.root else None
        where = f"{place}: " if place else f"{file}: "
        raise LayoutError(
            f"{where}a layout is lines such as 'paper: A4'; see layouts/standard.yaml"
        )
    return _checked(parsed.root)


def _checked(root: Keyed) -> Layout:
    try:
        layout = Layout.model_validate(bare(root))
    except ValidationError as error:
        raise ContentError(complaints_of(error, root, Layout.keys())) from None
    wrong = [
        Complaint(
            place_of(root, ("wording", fault.group, *([fault.key] if fault.key else []))),
            fault.problem,
            fault.remedy,
        )
        for fault in faults(layout.wording)
    ]
    if wrong:
        raise ContentError(wrong)
    return layout
