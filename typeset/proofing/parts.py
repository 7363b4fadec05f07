"""The proof of a long document in parts, each of which may be read in a process of its own.

Whatever the proof of the whole would find is found around the parts, or in the part that has
its page: so parts have to cover all pages. How many pages a part takes is for the caller to
say, and trusted for nothing: what is missing in a part, or left over in it, is a finding.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.layout import Layout
from typeset.proofing.booklet_text import booklet_head, lesson_passages
from typeset.proofing.collecting import seldom_collecting
from typeset.proofing.documents import booklet_order
from typeset.proofing.file_check import check_drawings, check_frame
from typeset.proofing.finding import Finding
from typeset.proofing.form_read import read_form
from typeset.proofing.opened import opened
from typeset.proofing.order import Order, nouns_of
from typeset.proofing.proof import in_order, proof_pages, unreadable
from typeset.proofing.read_back import Unreadable, read_document, told_as_unreadable
from typeset.proofing.signature import signature_of
from typeset.proofing.structure_check import check_structure_around


def booklet_parts(
    name: str, solved: SolvedWeek, layout: Layout, sisters: Sequence[SolvedWeek] = ()
) -> tuple[Order, tuple[Order, ...]]:
    """What is true around the parts of the week's answer booklet, and of each of them: a part a
    lesson, the first with what stands before it.

    `sisters` are the other versions of the week, easiest first. What a part must say follows
    from its own lesson, and from the week's title, class and note.
    """
    page = layout.for_booklet()
    whole = booklet_order(name, replace(solved, lessons=()), layout, sisters)
    head = tuple(booklet_head(solved, page))
    parts = []
    for index, lesson in enumerate(solved.lessons):
        passages = (*(head if index == 0 else ()), *lesson_passages(lesson, page, sisters))
        parts.append(
            replace(
                whole,
                expected=replace(whole.expected, passages=passages),
                nouns=nouns_of((lesson,)),
                is_part=True,
                story_pt=whole.least_pt,
            )
        )
    return whole, tuple(parts)


@seldom_collecting()
def proof_frame(data: bytes, order: Order) -> list[Finding]:
    """Everything that is wrong with the file around its parts: what it says of itself, its
    objects, and its structure as a tree. `order` says nothing of what stands on its pages."""
    try:
        findings = list(check_frame(data, order.name, order.facts))
        if order.facts.tagged:
            with told_as_unreadable():
                structure = opened(data).structure
            findings += check_structure_around(order.name, structure)
    except Unreadable as error:
        return [unreadable(order.name, error)]
    return in_order(findings)


@seldom_collecting()
def proof_part(data: bytes, order: Order, first: int, count: int, of_all: int) -> list[Finding]:
    """Everything that is wrong with `count` pages from `first` (from 0) on, in a file of
    `of_all` pages; told by the pages of the file."""
    pages, name = range(first, first + count), order.name
    try:
        with told_as_unreadable():
            held = len(opened(data).reader.pages)
        if held != of_all or count < 1 or pages.stop > held:
            what = (
                f"the document has {held} pages, where pages {first + 1} to {pages.stop} are read"
            )
            return [Finding(name, 0, None, what, f"{of_all} pages", "", "page")]
        findings = list(check_drawings(data, name, order.facts, pages))
        document = read_document(data, name, pages)
        with told_as_unreadable():
            if order.facts.tagged:
                document = replace(document, structure=opened(data).told_on(pages))
            if order.facts.fields:
                form = read_form(opened(data).reader)
                here = [field for field in form.fields if field.page - 1 in pages]
                document = replace(document, form=replace(form, fields=here))
        findings += proof_pages(document, replace(order, is_part=True, pages_in_all=of_all))
    except Unreadable as error:
        return [unreadable(name, error)]
    return in_order(findings)


def page_signature(data: bytes, first: int, count: int) -> str:
    """All that decides how `count` pages from `first` (from 0) on read, look and behave, as a
    digest in hexadecimal figures.

    Pages of the same signature, in a file that has nothing wrong around its parts, are the same
    to a proof. Neither the numbers of objects nor other pages enter into it.
    """
    return signature_of(data, range(first, first + count))
