"""The register of faults: every kind by its name, its theme, and the documents it is planted in.

A kind spoils a good PDF at a random place; the same seed spoils it in the same way. Kinds stand
in files by theme (`faults_*.py`); `kinds()` gathers them all.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Any, TypeAlias, TypeVar

from pypdf import PdfWriter

from tests.proofing.originals import SLOW, original
from tests.proofing.planting import Codes, Lines, Run, codes_of, pick, rebuild, redraw, runs_of
from typeset.proofing import Finding

DrawnPlanter = Callable[[list[Lines], random.Random], None]
HiddenPlanter = Callable[[list[Lines], random.Random, str], None]
CodedPlanter = Callable[[list[Lines], random.Random, Codes], None]
FilePlanter = Callable[[PdfWriter, random.Random], None]
BytesPlanter = Callable[[bytes, random.Random], bytes]
FolderPlanter = Callable[[Path, random.Random], None]
Maker = Callable[[random.Random], bytes]
_Planter = TypeVar("_Planter")
Registered: TypeAlias = Callable[[_Planter], _Planter]
# Spoils the document of this name.
Spoiler = Callable[[str, random.Random], bytes]
# Spoils it and proofs it.
Finder = Callable[[str, random.Random], list[Finding]]
FOLDER = "a folder of files"


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of fault. A finding must be of one of the `kinds` or say the words `told`; where
    neither is given, any finding will do."""

    name: str
    theme: str
    documents: tuple[str, ...]
    kinds: frozenset[str]
    told: str
    spoil: Spoiler
    # In place of spoiling and proofing one document.
    find: Finder | None = None

    def spoilt(self, document: str, seed: int) -> bytes:
        """The document with the fault at the place that the seed gives."""
        return self.spoil(document, self._rng(document, seed))

    def findings(self, document: str, seed: int) -> list[Finding]:
        """What the proof says of it."""
        if self.find is not None:
            return self.find(document, self._rng(document, seed))
        return original(document).proof(self.spoilt(document, seed))

    def _rng(self, document: str, seed: int) -> random.Random:
        return random.Random(f"{self.name}/{document}/{seed}")

    def document(self, seed: int) -> str:
        """The document for this seed: one after the other, each kind beginning with another."""
        return self._turn(self.documents, seed)

    def quick_document(self, seed: int) -> str:
        """The same for a short run: after the first, only those that are proofed quickly."""
        quick = tuple(each for each in self.documents if each not in SLOW)
        return self._turn(quick if quick and seed else self.documents, seed)

    def _turn(self, documents: Sequence[str], seed: int) -> str:
        first = sum(map(ord, self.name))
        return documents[(first + seed) % len(documents)]

    def is_found(self, findings: Sequence[Finding]) -> bool:
        """Whether it was found. That a file cannot be read at all counts only where it is said."""
        unread = any("cannot be read as a PDF" in each.what for each in findings)
        if unread and not self.told:
            return False
        if not self.kinds and not self.told:
            return bool(findings)
        return any(
            each.kind in self.kinds or (self.told and self.told in str(each)) for each in findings
        )


_KINDS: dict[str, Kind] = {}


@cache
def kinds() -> tuple[Kind, ...]:
    """All kinds of all themes, in the order of their files."""
    for file in sorted(Path(__file__).parent.glob("faults_*.py")):
        import_module(f"tests.proofing.{file.stem}")
    return tuple(_KINDS.values())


def kind_named(name: str) -> Kind:
    kinds()
    return _KINDS[name]


@dataclass(frozen=True, slots=True)
class Theme:
    """Registers planters of one theme under their own names, said in plain words.

    Each method takes the documents, and what must be found.
    """

    name: str

    def drawn(
        self, documents: str | Sequence[str], *kinds: str, told: str = ""
    ) -> Registered[DrawnPlanter]:
        """For a change to what the pages draw."""

        def register(plant: DrawnPlanter) -> DrawnPlanter:
            def spoil(document: str, rng: random.Random) -> bytes:
                return redraw(original(document).pdf, lambda pages: plant(pages, rng))

            self._add(plant.__name__, documents, kinds, told, spoil)
            return plant

        return register

    def hidden(
        self, documents: str | Sequence[str], *kinds: str, told: str = ""
    ) -> Registered[HiddenPlanter]:
        """For an answer that is drawn where pupils find it: the planter gets it, too."""

        def register(plant: HiddenPlanter) -> HiddenPlanter:
            def spoil(document: str, rng: random.Random) -> bytes:
                good = original(document)
                return redraw(good.pdf, lambda pages: plant(pages, rng, good.secret))

            self._add(plant.__name__, documents, kinds, told, spoil)
            return plant

        return register

    def coded(
        self, documents: str | Sequence[str], *kinds: str, told: str = ""
    ) -> Registered[CodedPlanter]:
        """For a change to signs outside ASCII: the planter gets what they are written as."""

        def register(plant: CodedPlanter) -> CodedPlanter:
            def spoil(document: str, rng: random.Random) -> bytes:
                pdf = original(document).pdf
                codes = codes_of(pdf)
                return redraw(pdf, lambda pages: plant(pages, rng, codes))

            self._add(plant.__name__, documents, kinds, told, spoil)
            return plant

        return register

    def filed(
        self, documents: str | Sequence[str], *kinds: str, told: str = ""
    ) -> Registered[FilePlanter]:
        """For a change to the objects of the file."""

        def register(plant: FilePlanter) -> FilePlanter:
            def spoil(document: str, rng: random.Random) -> bytes:
                return rebuild(original(document).pdf, lambda writer: plant(writer, rng))

            self._add(plant.__name__, documents, kinds, told, spoil)
            return plant

        return register

    def raw(
        self, documents: str | Sequence[str], *kinds: str, told: str = ""
    ) -> Registered[BytesPlanter]:
        """For a change to the bytes of the file."""

        def register(plant: BytesPlanter) -> BytesPlanter:
            def spoil(document: str, rng: random.Random) -> bytes:
                return plant(original(document).pdf, rng)

            self._add(plant.__name__, documents, kinds, told, spoil)
            return plant

        return register

    def made(
        self, documents: str | Sequence[str], *kinds: str, told: str = ""
    ) -> Registered[Maker]:
        """For a document that is made otherwise, from altered data or altered pages."""

        def register(make: Maker) -> Maker:
            def spoil(_document: str, rng: random.Random) -> bytes:
                return make(rng)

            self._add(make.__name__, documents, kinds, told, spoil)
            return make

        return register

    def found(
        self, find: Callable[[Callable[[Path], None]], list[Finding]], told: str
    ) -> Registered[FolderPlanter]:
        """For a fault in a folder of files, which `find` makes, lets the planter change, proofs."""

        def register(plant: FolderPlanter) -> FolderPlanter:
            def spoil(_document: str, _rng: random.Random) -> bytes:
                raise TypeError("a folder is not one document")

            def both(_document: str, rng: random.Random) -> list[Finding]:
                return find(lambda folder: plant(folder, rng))

            self._add(plant.__name__, FOLDER, (), told, spoil, both)
            return plant

        return register

    def _add(
        self,
        name: str,
        documents: str | Sequence[str],
        kinds: Sequence[str],
        told: str,
        spoil: Spoiler,
        find: Finder | None = None,
    ) -> None:
        plain = name.replace("_", " ")
        assert plain not in _KINDS, f"two kinds are called '{plain}'"
        where = (documents,) if isinstance(documents, str) else tuple(documents)
        _KINDS[plain] = Kind(plain, self.name, where, frozenset(kinds), told, spoil, find)


def text_run(pages: list[Lines], rng: random.Random, wanted: str, least: float = 0) -> Any:
    """A page and one of its runs whose text matches; feet are left out."""
    found = [
        (page, run)
        for page in pages
        for run in runs_of(page)
        if re.search(wanted, run.text) and run.y > 60 and run.size >= least
    ]
    return pick(rng, found)


def retype(page: Lines, run: Run, text: str) -> None:
    assert text != run.text
    page[run.index] = run.line(text=text)
