"""Every wrong layout gives exactly the messages that stand beside it."""

from pathlib import Path

import pytest

from typeset.documents.layout_files import read_layout
from typeset.errors import ContentError, LayoutError

BAD = sorted((Path(__file__).parent / "bad_layouts").glob("*.yaml"))


def messages(file: Path) -> list[str]:
    """Every complaint about the layout, as the command gives them."""
    try:
        read_layout(file)
    except ContentError as error:
        return [str(each).replace(f"{file.parent}/", "") for each in error.complaints]
    except LayoutError as error:
        return [str(error).replace(f"{file.parent}/", "")]
    return []


@pytest.mark.parametrize("file", BAD, ids=lambda each: each.stem)
def test_a_wrong_layout_gives_its_messages(file: Path) -> None:
    expected = file.with_suffix(".txt").read_text(encoding="utf-8").splitlines()
    assert messages(file) == expected
