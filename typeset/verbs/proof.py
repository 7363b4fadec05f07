"""Reads made files back.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from typeset.verbs.adding import Verbs, add_pictures, add_verb, add_workers
from typeset.verbs.telling import DONE, WRONG, failed, found, say, say_error


def add_proof(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "proof",
        _proof,
        "read made PDFs back against their content, and list findings",
        "typeset proof printed/harbour-festival",
    )
    parser.add_argument("target", type=Path, metavar="FOLDER|PDF", help="made files, or one")
    parser.add_argument(
        "--week", type=Path, metavar="WEEK", help="the content, where it is not the recorded one"
    )
    parser.add_argument(
        "--class",
        dest="class_list",
        type=Path,
        metavar="FILE.csv",
        help="the class list, where sheets with names are to be read",
    )
    parser.add_argument("--json", action="store_true", help="findings as JSON, for other programs")
    add_workers(parser)
    add_pictures(parser)


def _proof(options: argparse.Namespace) -> int:
    from typeset.press.checking import left_unread, proof_made
    from typeset.press.reporting import findings_json, write_pictures
    from typeset.press.workers import cores

    workers = options.workers or cores()
    count, findings = proof_made(options.target, options.week, options.class_list, workers)
    for name in () if options.class_list else left_unread(options.target):
        say_error(f"{name}: not read, since it carries names; say --class FILE.csv")
    if options.pictures:
        write_pictures(findings, _pdfs(options.target), options.pictures)
    if options.json:
        say(findings_json(findings))
        return WRONG if findings else DONE
    if findings:
        return failed(*map(str, findings), found(len(findings)))
    say(f"{options.target}: {count} {'document' if count == 1 else 'documents'}, no findings")
    return DONE


def _pdfs(target: Path) -> dict[str, bytes]:
    """The PDFs of a folder, or the one, by name."""
    files = sorted(target.glob("*.pdf")) if target.is_dir() else [target]
    return {file.name: file.read_bytes() for file in files}
