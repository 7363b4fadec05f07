"""A file to make: how it is composed and proofed, as a whole or in parts."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from typeset.drawing.fonts import TypeFamily
    from typeset.proofing.finding import Finding
    from typeset.setting.frames import Document
    from typeset.setting.pages import PageLayout


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a file's sides that is set and proofed by itself.

    Parts with the same `key` have the same sides, and the same is true of them. `proof` is given
    the file, its first side (from 0), how many sides it has, and how many there are in all.
    """

    key: str
    compose: Callable[[], PageLayout]
    proof: Callable[[bytes, int, int, int], list[Finding]]


@dataclass(frozen=True, slots=True)
class InParts:
    """How a long file is made in parts: bound to one document, and proofed around them."""

    parts: tuple[Part, ...]
    bind: Callable[[Sequence[PageLayout]], tuple[Document, PageLayout]]
    proof_frame: Callable[[bytes], list[Finding]]


@dataclass(frozen=True, slots=True)
class Job:
    """One file to make. `lesson` is a lesson's name, empty where the file is for the week.

    It is composed, written and proofed in the family `fonts`, our own for None.
    """

    file: str
    kind: str
    lesson: str
    version: str
    layout: str
    fonts: TypeFamily | None
    compose: Callable[[], tuple[Document, PageLayout]]
    proof: Callable[[bytes], list[Finding]]
    # Of a home pack: where its answers are.
    answers: str = ""
    # True where it has fields to type in.
    fields: bool = False
    # Files of the same key are alike, byte for byte; empty for one that is always made anew.
    key: str = ""
    in_parts: InParts | None = None
