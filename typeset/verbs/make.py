"""Makes the documents of a week.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from typeset.reading.choices import ANSWERS, DOCUMENTS, END, VERSIONS
from typeset.verbs.adding import Verbs, add_pictures, add_verb, add_workers
from typeset.verbs.telling import DONE, failed, found, listed, say, say_remarks

if TYPE_CHECKING:
    from typeset.errors import Remark


def add_make(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "make",
        _make,
        "make the PDFs of a week: task sheets and the answer booklet, proofed",
        "typeset make content/harbour-festival --lesson tuesday",
    )
    parser.add_argument("week", type=Path, metavar="WEEK", help="the folder with week.yaml")
    parser.add_argument(
        "--to", type=Path, metavar="FOLDER", help="where the PDFs go (printed/<week>/)"
    )
    parser.add_argument("--lesson", metavar="NAME", help="only this lesson, such as tuesday")
    parser.add_argument(
        "--only", choices=_documents(), metavar="DOCUMENT", help=f"only {listed(_documents())}"
    )
    parser.add_argument(
        "--version",
        action="append",
        default=[],
        choices=VERSIONS,
        metavar="VERSION",
        help=f"task sheets in this version, {listed(VERSIONS)}; may be given several times",
    )
    parser.add_argument(
        "--layout",
        action="append",
        default=[],
        metavar="NAME",
        help="this layout instead of the week's own; may be given several times",
    )
    parser.add_argument(
        "--answers",
        choices=ANSWERS,
        default=END,
        help="in a home pack: at its end (the usual), in a separate file, or none",
    )
    parser.add_argument(
        "--fields",
        action="store_true",
        help="task sheets with fields, to fill in on a screen, as a home pack always has them; "
        "'typeset answers' reads them back",
    )
    parser.add_argument(
        "--fresh",
        action="store_true",
        help="make and proof everything again, also what has not changed since the last time",
    )
    add_workers(parser)
    _add_class(parser)
    add_pictures(parser)


def _add_class(parser: argparse.ArgumentParser) -> None:
    group = parser.add_argument_group("for a class, whose list says version and layout")
    group.add_argument(
        "--class",
        dest="class_list",
        type=Path,
        metavar="FILE.csv",
        help="a sheet for each pupil of the list, with the name, and the answers by name",
    )
    group.add_argument("--vary", action="store_true", help="other numbers for every pupil")
    parser.set_defaults(misused=parser.error)


def _check_class(options: argparse.Namespace) -> None:
    """Ends with a message where options do not go with a class list, or want one."""
    if options.class_list is None:
        if options.vary:
            options.misused("--vary goes with --class: numbers vary from pupil to pupil")
        return
    for given, name in ((options.only, "--only"), (options.version, "--version")):
        if given:
            options.misused(f"{name} does not go with --class: the list says what each pupil gets")
    if options.fields:
        options.misused("--fields does not go with --class: named sheets are printed")
    if len(options.layout) > 1:
        options.misused("with --class one --layout can be given, for pupils without one")


def _make(options: argparse.Namespace) -> int:
    from typeset.press.kept import usual_folder
    from typeset.press.making import Order, make_week
    from typeset.press.workers import cores
    from typeset.terminal import Progress, document_line

    _check_class(options)
    to: Path = options.to or Path("printed") / options.week.resolve().name
    remarks: list[Remark] = []
    printing: list[str] = []
    with Progress(ticks=False) as progress:
        order = Order(
            options.week,
            to,
            lesson=options.lesson,
            only=options.only and options.only.replace("-", " "),
            layouts=tuple(options.layout),
            versions=tuple(options.version),
            pictures=options.pictures,
            progress=progress.begin,
            remark=remarks.append,
            printing=printing.append,
            answers=options.answers,
            class_list=options.class_list,
            vary=options.vary,
            fields=options.fields,
            workers=options.workers or cores(),
            kept=usual_folder(),
            fresh=options.fresh,
        )
        results = make_week(order)
    say_remarks(remarks)
    findings = [finding for result in results for finding in result.findings]
    if findings:
        return failed(*map(str, findings), f"{found(len(findings))}; nothing in {to} was changed")
    for result in results:
        say(document_line(to / result.made.file, result))
        for note in result.notes:
            say(f"    {note}")
    say("")
    for line in printing:
        say(line)
    return DONE


def _documents() -> tuple[str, ...]:
    return tuple(document.replace(" ", "-") for document in DOCUMENTS)
