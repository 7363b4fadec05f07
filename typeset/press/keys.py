"""What a file is made of, as a digest: content, layout and program.

A file whose key is that of an earlier one would come out the same, so it need not be made.
"""

from __future__ import annotations

import platform
import zlib
from functools import cache
from hashlib import sha256
from pathlib import Path

import jinja2
import pdfplumber
import pydantic
import pypdf
import reportlab
import yaml

from typeset.documents.layout import Layout
from typeset.drawing.fonts import own_family

_PACKAGE = Path(__file__).parents[1]


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
    """A digest of every file of the package, and the versions of all that has a say in a PDF."""
    digest = sha256()
    for file in sorted(_PACKAGE.rglob("*")):
        if file.is_file() and "__pycache__" not in file.parts:
            digest.update(f"{file.relative_to(_PACKAGE).as_posix()}\0".encode())
            digest.update(sha256(file.read_bytes()).digest())
    versions = (
        platform.python_version(),
        zlib.ZLIB_RUNTIME_VERSION,
        reportlab.Version,
        pypdf.__version__,
        pdfplumber.__version__,
        pydantic.VERSION,
        jinja2.__version__,
        yaml.__version__,
    )
    return digest_of(digest.hexdigest(), *versions)


def _layout(layout: Layout) -> str:
    """All that the layout says, and the bytes of its fonts."""
    family = layout.fonts or own_family()
    fonts = (sha256(file.path.read_bytes()).hexdigest() for file in (family.regular, family.bold))
    return digest_of(repr(layout), *fonts)
