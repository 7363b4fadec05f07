"""The proof of an answer grid, the pages of which are read before it is known what each says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from typeset.documents.class_work import PupilsSheet, lying
from typeset.documents.layout import Layout
from typeset.proofing.account import take_account
from typeset.proofing.expected import Expected, said
from typeset.proofing.file_check import FileFacts, check_file
from typeset.proofing.finding import Finding
from typeset.proofing.foot import body_words
from typeset.proofing.grid_text import Grid, check_columns
from typeset.proofing.order import Order, nouns_of
from typeset.proofing.page_marks import ReadDocument
from typeset.proofing.proof import in_order, proof_pages, unreadable
from typeset.proofing.read_back import Unreadable, read_document


def proof_answer_grid(
    pdf: Path | bytes, name: str, sheets: Sequence[PupilsSheet], layout: Layout, varied: bool
) -> list[Finding]:
    """Everything that is wrong with the finished answer grid of a lesson's named set.

    `layout` is the week's own; with `varied` numbers every pupil has a row.
    """
    data = pdf if isinstance(pdf, bytes) else pdf.read_bytes()
    page = lying(layout)
    week, lesson = sheets[0].solved.week, sheets[0].lesson.lesson
    title = f"{lesson.title} – {said(layout, 'class', 'grid')}"
    facts = FileFacts(title, week.title, week.fingerprint)
    try:
        findings = list(check_file(data, name, facts))
        document = read_document(data, name)
    except Unreadable as error:
        return [unreadable(name, error)]
    size_pt = layout.booklet.size_pt
    items = Grid(sheets, layout, varied).on_pages(
        [body_words(_alone(document, index), page, size_pt) for index in range(len(document.pages))]
    )
    passages = tuple(cell for item in items for cell in item.cells)
    names = {"week": week.title, "class": week.class_name, "day": lesson.day}
    foot = said(layout, "sheet", "foot", **names, lesson=lesson.title, version="")
    nouns = nouns_of(each.lesson for each in sheets)
    order = Order(name, Expected(passages, foot), facts, page, size_pt, nouns=nouns)
    findings += proof_pages(document, order)
    account = take_account(passages, body_words(document, page, size_pt))
    findings += check_columns(account, items, name)
    return in_order(findings)


def _alone(document: ReadDocument, index: int) -> ReadDocument:
    return replace(document, pages=document.pages[index : index + 1])
