"""What the page on printing must say of the files that were made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.layout import Layout
from typeset.documents.print_list import PrintedFile
from typeset.proofing.expected import Expected, Part, Passage, passage, said
from typeset.proofing.file_check import FileFacts
from typeset.proofing.finding import Finding
from typeset.proofing.order import Order
from typeset.proofing.proof import proof

# Read by an adult who stands at a printer.
LEAST_PT = 9.0
# The kinds in the order of the page, with what is done after printing.
_KINDS = {
    "task sheet": "",
    "answer booklet": "",
    "folded booklet": "fold",
    "marking strips": "cut",
    "sorting cards": "card cut",
    "sorting key": "",
    "own problems": "",
    "home pack": "",
    "named set": "names",
    "answer grid": "names",
}


def proof_how_to_print(
    pdf: Path | bytes, name: str, solved: SolvedWeek, files: Sequence[PrintedFile], layout: Layout
) -> list[Finding]:
    """Everything that is wrong with the finished page about these files."""
    week, title = solved.week, said(layout, "print", "title")
    order = Order(
        name,
        Expected(tuple(_passages(files, layout)), f"{title} · {week.title}"),
        FileFacts(f"{week.title} – {title.lower()}", week.title, week.fingerprint),
        layout.for_booklet(),
        LEAST_PT,
    )
    return proof(pdf, order)


def _passages(files: Sequence[PrintedFile], layout: Layout) -> Iterator[Passage]:
    yield passage("the title", Part.TITLE, said(layout, "print", "title"))
    yield passage("what holds for all", Part.TEXT, said(layout, "print", "about"))
    for kind in _KINDS:
        ways: dict[str, list[PrintedFile]] = {}
        for each in files:
            if each.kind == kind:
                ways.setdefault(_way(each, layout), []).append(each)
        for way, own in ways.items():
            yield from _group(kind, way, own, layout)


def _group(kind: str, way: str, files: Sequence[PrintedFile], layout: Layout) -> Iterator[Passage]:
    heading = said(layout, "print", kind)
    yield passage(f"the heading '{heading}'", Part.HEADING, heading)
    sides = sum(each.sides for each in files)
    papers = sum((each.sides + 1) // 2 if _on_both(each) else each.sides for each in files)
    count = said(layout, "print", "count", sides=str(sides), papers=str(papers))
    yield passage(f"how to print '{heading}'", Part.TEXT, f"{way} ({count})")
    for each in files:
        told = said(layout, "print", "file", file=each.file, sides=str(each.sides))
        yield passage(f"the line of {each.file}", Part.TEXT, told)


def _way(file: PrintedFile, layout: Layout) -> str:
    """Paper, edge and what is done afterwards."""
    edge = file.layout.backs
    if file.kind == "answer grid":
        # It lies on its side.
        edge = "short edge"
    key = edge if _on_both(file) else "one side"
    then = _KINDS[file.kind].split()
    if file.kind == "task sheet" and file.layout.copies > 1:
        then = ["cut"]
    if file.kind == "named set" and file.layout.copies > 1:
        then = ["names", "stack"]
    told = [said(layout, "print", key, paper=file.layout.upright.name)]
    return "; ".join([*told, *(said(layout, "print", each) for each in then)])


def _on_both(file: PrintedFile) -> bool:
    return file.sides > 1 and file.kind != "marking strips"
