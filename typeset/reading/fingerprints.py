"""Digests of what a week and each of its lessons are made from."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from hashlib import sha256

from typeset.reading.across_lessons import needs_earlier
from typeset.reading.content import Lesson, Recap
from typeset.reading.lesson import SourceFile


def fingerprint_of(sources: Iterable[SourceFile], *words: str) -> str:
    """A digest of the names and bytes of the files, in the order of their names, and of words."""
    digest = sha256()
    for source in sorted(sources, key=lambda each: each.file.name):
        digest.update(f"{source.file.name}\0{len(source.data)}\0".encode())
        digest.update(source.data)
    for word in words:
        digest.update(f"\0{len(word)}\0{word}".encode())
    return digest.hexdigest()


def with_fingerprints(
    lessons: Sequence[Lesson], sources: Sequence[SourceFile]
) -> tuple[Lesson, ...]:
    """The lessons in the order of the week, each with a digest of what its pages are made from.

    That is its own file and whatever belongs to no single lesson (week.yaml); the lessons before
    it where its numbers are drawn from theirs or kept apart from them; and the titles of those
    that it looks back at.
    """
    by_name = {source.file.stem: source for source in sources}
    shared = [source for name, source in by_name.items() if name not in _names(lessons)]
    titles = {lesson.name: lesson.title for lesson in lessons}
    done: list[Lesson] = []
    for at, lesson in enumerate(lessons):
        own = lessons[: at + 1] if needs_earlier(lesson) else [lesson]
        files = [*shared, *(by_name[each.name] for each in own if each.name in by_name)]
        told = [titles.get(name, name) for name in _looked_back_at(lesson)]
        done.append(replace(lesson, fingerprint=fingerprint_of(files, *told)))
    return tuple(done)


def _names(lessons: Sequence[Lesson]) -> frozenset[str]:
    return frozenset(lesson.name for lesson in lessons)


def _looked_back_at(lesson: Lesson) -> Iterator[str]:
    for stage in lesson.stages:
        if isinstance(stage, Recap):
            yield from stage.looks_back_at
