"""Finds and reads the layouts, in a checkout or in the installed package."""

from __future__ import annotations

from pathlib import Path

from pydantic import ValidationError

from typeset.documents.layout import Layout
from typeset.documents.wording import faults
from typeset.errors import Complaint, ContentError, LayoutError
from typeset.reading.complaints import complaints_of, nearest
from typeset.reading.text_file import decoded, read_bytes
from typeset.reading.tree import Entry, Keyed, Scalar, bare, place_of
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
    file = _find(name, beside / "layouts")
    if file is None:
        raise LayoutError(f"there is no layout called '{name}'; {nearest(name, layout_names())}")
    return read_layout(file)


def _find(name: str, folder: Path) -> Path | None:
    """The file of this layout: in the teacher's folder, or one of ours."""
    files = (each / f"{name}.yaml" for each in (folder, layouts_folder()))
    return next((file for file in files if file.is_file()), None)


def read_layout(file: Path) -> Layout:
    """The layout of the file. Raises ContentError with every complaint."""
    layout = _checked(_whole(file, ()))
    if layout.name != file.stem:
        where = f"the file is called {file.name}, and the layout in it '{layout.name}'"
        raise LayoutError(f"{file}: {where}; give both the same name")
    return layout


def _whole(file: Path, seen: tuple[Path, ...]) -> Keyed:
    """What the file says, over what the layout says that it is like."""
    root = _parsed(file)
    like = root.get("like")
    if like is None:
        return root
    if not isinstance(like, Scalar):
        raise ContentError([Complaint(like.place, "'like' is the name of one layout", "")])
    base = _base(like, file, (*seen, file.resolve()))
    return _over(_whole(base, (*seen, file.resolve())), root.without(("like",)))


def _base(like: Scalar, file: Path, seen: tuple[Path, ...]) -> Path:
    """The file that this one is like; a copy may carry the name of the one of ours it changes."""
    files = (file.parent / f"{like.text}.yaml", layouts_folder() / f"{like.text}.yaml")
    there = [each for each in files if each.is_file()]
    unseen = [each for each in there if each.resolve() not in seen]
    if unseen:
        return unseen[0]
    if there:
        complaint = Complaint(like.place, f"this makes '{like.text}' like itself", "name another")
    else:
        remedy = nearest(like.text, layout_names())
        complaint = Complaint(like.place, f"there is no layout called '{like.text}'", remedy)
    raise ContentError([complaint])


def _over(base: Keyed, change: Keyed) -> Keyed:
    """The base with the changed entries in their places, mapping by mapping."""
    changed = {entry.key: entry for entry in change}
    kept = [_entry_over(entry, changed.pop(entry.key, None)) for entry in base]
    return Keyed((*kept, *changed.values()), change.place)


def _entry_over(base: Entry, change: Entry | None) -> Entry:
    if change is None:
        return base
    if isinstance(base.value, Keyed) and isinstance(change.value, Keyed):
        return Entry(change.key, _over(base.value, change.value), change.place)
    return change


def _parsed(file: Path) -> Keyed:
    parsed = parse_yaml(decoded(read_bytes(file), file), file)
    if parsed.complaints:
        raise ContentError(parsed.complaints)
    if not isinstance(parsed.root, Keyed):
        place = place_of(parsed.root, ()) if parsed.root else None
        where = f"{place}: " if place else f"{file}: "
        raise LayoutError(
            f"{where}a layout is lines such as 'paper: A4'; see layouts/standard.yaml"
        )
    return parsed.root


def _checked(root: Keyed) -> Layout:
    try:
        # A font's path counts from the file that names it.
        folder = place_of(root, ("fonts",)).file.parent
        layout = Layout.model_validate(bare(root), context={"fonts in": folder})
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
