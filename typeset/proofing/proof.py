"""Reads a finished document back and proves that it says what the arithmetic says."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path

from typeset.proofing.account import Account, take_account
from typeset.proofing.bars import check_bars
from typeset.proofing.checks import Proof, owners_of
from typeset.proofing.collecting import seldom_collecting
from typeset.proofing.drawn_figures import check_drawn_figures
from typeset.proofing.edges import check_edges
from typeset.proofing.faces import check_faces
from typeset.proofing.field_check import check_field_places
from typeset.proofing.file_check import check_file
from typeset.proofing.finding import Finding
from typeset.proofing.flow import check_flow
from typeset.proofing.foot import body_words, check_feet
from typeset.proofing.form_read import read_form
from typeset.proofing.furniture import check_furniture
from typeset.proofing.on_paper import on_paper
from typeset.proofing.opened import opened
from typeset.proofing.order import Order
from typeset.proofing.overlaps import check_overlaps
from typeset.proofing.page_marks import ReadDocument
from typeset.proofing.paper_check import check_paper
from typeset.proofing.print_quality import check_print
from typeset.proofing.read_back import Unreadable
from typeset.proofing.rooms import check_rooms
from typeset.proofing.structure_check import (
    check_structure,
    check_structure_of_part,
    faults_of,
    with_structure,
)
from typeset.proofing.telling import tell_account
from typeset.proofing.values import check_values


@seldom_collecting()
def proof(pdf: Path | bytes, order: Order) -> list[Finding]:
    """Everything that is wrong with the document; empty where nothing is.

    Look at the file, read its pages back, set them against what is expected, look at them.
    A file that is no readable PDF is a finding too. Raises OSError where a path cannot be read.
    """
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    try:
        findings = list(check_file(data, order.name, order.facts))
        document, about_papers = order.lies_on.read(data, order.name)
        if order.facts.tagged:
            document = with_structure(document, data)
            findings += faults_of(document)
        if order.facts.fields:
            document = replace(document, form=read_form(opened(data).reader))
        found = (on_paper(each, document) for each in proof_pages(document, order))
        findings += [*about_papers, *found]
    except Unreadable as error:
        return [unreadable(order.name, error)]
    return in_order(findings)


def proof_pages(document: ReadDocument, order: Order) -> list[Finding]:
    """Everything that is wrong with pages that are read back already."""
    has_foot = order.expected.foot_left is not None
    words = body_words(document, order.layout, order.least_pt, has_foot)
    account = take_account(order.expected.passages, words)
    return [*_say(account, document, order), *_look(account, document, order)]


def unreadable(name: str, error: Unreadable) -> Finding:
    """The finding about a file that is no readable PDF."""
    what = f"the file cannot be read as a PDF ({error})"
    return Finding(name, 0, None, what, "make it again", "", "file")


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """Each finding once, page by page."""
    return sorted(_once(findings), key=lambda each: (each.page, each.place or (0.0, 0.0)))


def _say(account: Account, document: ReadDocument, order: Order) -> Iterator[Finding]:
    """What the pages say."""
    yield from tell_account(account, order.name, order.expected.secrets)
    counted = (order.pages_before, order.pages_in_all or len(document.pages))
    yield from check_feet(document, order.expected, order.layout, order.least_pt, counted)
    yield from check_values(account, order.name, order.nouns)
    if document.structure is not None:
        check = check_structure_of_part if order.is_part else check_structure
        yield from check(document, account, document.structure)


def _look(account: Account, document: ReadDocument, order: Order) -> Iterator[Finding]:
    """How the pages look."""
    read = Proof(
        document,
        account,
        order.layout,
        order.least_pt,
        owners_of(account),
        order.has_columns,
        order.story_pt,
    )
    yield from check_paper(read, order.sides)
    yield from check_edges(read)
    yield from check_overlaps(read)
    yield from check_print(read)
    yield from check_faces(read)
    yield from check_furniture(read)
    yield from check_flow(read)
    yield from check_rooms(read, order.promises)
    yield from check_field_places(read, order.facts.fields, order.promises)
    yield from check_bars(read)
    yield from check_drawn_figures(read)


def _once(findings: Iterable[Finding]) -> list[Finding]:
    """Each finding once, in its first place."""
    return list(dict.fromkeys(findings))
