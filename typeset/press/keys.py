"""What a file is made of, as a digest: content, layout and program.

A file whose key is that of an earlier one would come out the same, so it need not be made.
"""

from __future__ import annotations

import platform
import zlib
from functools import cache
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

from typeset.documents.layout import Layout
from typeset.drawing.fonts import own_path
from typeset.drawing.shapes import Face

_PACKAGE = Path(__file__).parents[1]
# The packages that have a say in what is made, or in whether it is found right.
_OTHERS = ("reportlab", "pypdf", "pdfplumber", "pdfminer.six", "pydantic", "jinja2", "pyyaml")


def stem_of(layout: Layout) -> str:
    """What all keys begin with of what is made in this layout by this program."""
    return digest_of(program(), _layout(layout))


def digest_of(*words: str) -> str:
    """A digest of texts, each told from its neighbours."""
    digest = sha256()
    for word in words:
        data = word.encode()
        digest.update(f"{len(data)}\0".encode())
        digest.update(data)
    return digest.hexdigest()


@cache
def program() -> str:
    """A digest of every file of the package, and the versions of what it works with."""
    digest = sha256()
    for file in sorted(_PACKAGE.rglob("*")):
        if file.is_file() and "__pycache__" not in file.parts:
            digest.update(f"{file.relative_to(_PACKAGE).as_posix()}\0".encode())
            digest.update(sha256(file.read_bytes()).digest())
    versions = (version(package) for package in _OTHERS)
    ours = (platform.python_version(), zlib.ZLIB_RUNTIME_VERSION)
    return digest_of(digest.hexdigest(), *ours, *versions)


def _layout(layout: Layout) -> str:
    """All that the layout says, and the bytes of its fonts."""
    # Our own are not opened as fonts for it: that takes as long as reading a lesson.
    family = layout.fonts
    paths = (family.file(face).path if family else own_path(face) for face in Face)
    fonts = (sha256(path.read_bytes()).hexdigest() for path in paths)
    return digest_of(repr(layout), *fonts)
