"""The command line: verbs, messages and exit codes.

0: done. 1: findings, or content that is wrong. 2: misuse. Everything heavy is imported
only by the verb that needs it, so that help comes at once.
"""

from __future__ import annotations

import argparse
import signal
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from types import FrameType

from typeset import __version__
from typeset.errors import ContentError, Remark, TypesetError
from typeset.reading.content import ANSWERS, DOCUMENTS, END, VERSIONS

DONE, WRONG = 0, 1
# What a shell gives for a program ended by Ctrl-C.
INTERRUPTED = 130


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command line; gives the exit code."""
    options = _parser().parse_args(arguments)
    run: Callable[[argparse.Namespace], int] = options.run
    signal.signal(signal.SIGTERM, _stop)
    try:
        return run(options)
    except ContentError as error:
        return _failed(*(str(complaint) for complaint in error.complaints), _count(error))
    except TypesetError as error:
        return _failed(str(error))
    except KeyboardInterrupt:
        _say_error("stopped; nothing was changed")
        return INTERRUPTED
    except BrokenPipeError:
        # Whoever read our output has enough of it ('typeset solve … | head').
        sys.stderr.close()
        return DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="typeset",
        description="Typesets a week of primary maths lessons: solved, set, and proofed.",
        epilog="example: typeset make content/harbour-festival",
    )
    parser.add_argument("--version", action="version", version=f"typeset {__version__}")
    verbs = parser.add_subparsers(title="verbs", metavar="VERB", required=True)
    _add_make(verbs)
    _add_check(verbs)
    _add_solve(verbs)
    _add_diagnose(verbs)
    _add_proof(verbs)
    _add_new(verbs)
    return parser


_Verbs = argparse._SubParsersAction  # argparse gives this class no public name


def _verb(
    verbs: _Verbs[argparse.ArgumentParser],
    name: str,
    run: Callable[[argparse.Namespace], int],
    what: str,
    example: str,
) -> argparse.ArgumentParser:
    parser = verbs.add_parser(
        name,
        help=what,
        description=what[:1].upper() + what[1:] + ".",
        epilog=f"example: {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.set_defaults(run=run)
    return parser


def _add_make(verbs: _Verbs[argparse.ArgumentParser]) -> None:
    parser = _verb(
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
        "--only", choices=_documents(), metavar="DOCUMENT", help=f"only {_listed(_documents())}"
    )
    parser.add_argument(
        "--version",
        action="append",
        default=[],
        choices=VERSIONS,
        metavar="VERSION",
        help=f"task sheets in this version, {_listed(VERSIONS)}; may be given several times",
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
    _add_pictures(parser)


def _add_pictures(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--pictures",
        type=Path,
        metavar="FOLDER",
        help="write every side with findings as a picture, the places ringed",
    )


def _documents() -> tuple[str, ...]:
    return tuple(document.replace(" ", "-") for document in DOCUMENTS)


def _listed(words: Sequence[str]) -> str:
    return f"{', '.join(words[:-1])} or {words[-1]}"


def _add_check(verbs: _Verbs[argparse.ArgumentParser]) -> None:
    parser = _verb(
        verbs,
        "check",
        _check,
        "check the content of a week, and list every complaint with its file and line",
        "typeset check content/harbour-festival",
    )
    parser.add_argument("week", type=Path, metavar="WEEK", help="the folder with week.yaml")


def _add_solve(verbs: _Verbs[argparse.ArgumentParser]) -> None:
    parser = _verb(
        verbs,
        "solve",
        _solve,
        "show answers, workings, reasons and mistakes of a week or of one lesson",
        "typeset solve content/harbour-festival/tuesday.yaml --json",
    )
    parser.add_argument("content", type=Path, metavar="WEEK|LESSON", help="a folder or a file")
    parser.add_argument("--json", action="store_true", help="as JSON, for other programs")


def _add_diagnose(verbs: _Verbs[argparse.ArgumentParser]) -> None:
    parser = _verb(
        verbs,
        "diagnose",
        _diagnose,
        "tell what a pupil's answer to a question shows: right, or the mistake that leads to it",
        'typeset diagnose content/harbour-festival tuesday 4 "180 gulls"',
    )
    parser.add_argument("week", type=Path, metavar="FOLDER", help="the folder with week.yaml")
    parser.add_argument("lesson", metavar="LESSON", help="such as tuesday")
    parser.add_argument("question", metavar="QUESTION", help="its number on the sheet, or its id")
    parser.add_argument("answer", nargs="+", metavar="ANSWER", help="as the pupil wrote it")


def _add_proof(verbs: _Verbs[argparse.ArgumentParser]) -> None:
    parser = _verb(
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
    parser.add_argument("--json", action="store_true", help="findings as JSON, for other programs")
    _add_pictures(parser)


def _add_new(verbs: _Verbs[argparse.ArgumentParser]) -> None:
    parser = _verb(
        verbs,
        "new",
        _new,
        "start a week: a commented week.yaml and one lesson that shows every stage",
        "typeset new content/spring-tides",
    )
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="a folder to be made")


def _make(options: argparse.Namespace) -> int:
    from typeset.press.making import Order, make_week
    from typeset.terminal import Progress, document_line

    to: Path = options.to or Path("printed") / options.week.resolve().name
    remarks: list[Remark] = []
    with Progress() as progress:
        order = Order(
            options.week,
            to,
            options.lesson,
            options.only and options.only.replace("-", " "),
            tuple(options.layout),
            tuple(options.version),
            options.pictures,
            progress.begin,
            remarks.append,
            options.answers,
        )
        results = make_week(order)
    _say_remarks(remarks)
    findings = [finding for result in results for finding in result.findings]
    if findings:
        return _failed(*map(str, findings), f"{_found(len(findings))}; nothing in {to} was changed")
    for result in results:
        _say(document_line(to / result.made.file, result))
        for note in result.notes:
            _say(f"    {note}")
    return DONE


def _check(options: argparse.Namespace) -> int:
    from typeset.arithmetic.remarks import remarks_on
    from typeset.documents.solutions_text import drawn_text
    from typeset.press.making import solved_with_layouts

    versions, _layouts = solved_with_layouts(options.week, ())
    solved = versions.core
    _say_remarks(remarks_on(solved))
    count = sum(len(lesson.problems()) for lesson in solved.lessons)
    lessons = len(solved.lessons)
    _say(f"{options.week}: {lessons} lessons, {count} problems, nothing to complain about")
    for lesson in solved.lessons:
        for problem in lesson.problems():
            if problem.content.drawn:
                _say(f"    {lesson.lesson.name}, {problem.number}: {drawn_text(problem)}")
    return DONE


def _solve(options: argparse.Namespace) -> int:
    from typeset.arithmetic.building import solve_week
    from typeset.reading.week import read_lesson_alone, read_week

    path: Path = options.content
    solved = solve_week(read_lesson_alone(path) if path.is_file() else read_week(path))
    if options.json:
        import json

        from typeset.documents.solutions_json import week_data

        _say(json.dumps(week_data(solved), indent=2, ensure_ascii=False))
    else:
        from typeset.documents.solutions_text import week_text

        _say(week_text(solved))
    return DONE


def _diagnose(options: argparse.Namespace) -> int:
    from typeset.arithmetic.building import solve_week
    from typeset.documents.diagnosis_text import diagnosis_text
    from typeset.reading.week import read_week

    solved = solve_week(read_week(options.week))
    _say(diagnosis_text(solved, options.lesson, options.question, " ".join(options.answer)))
    return DONE


def _proof(options: argparse.Namespace) -> int:
    from typeset.press.checking import proof_made
    from typeset.press.reporting import findings_json, write_pictures

    count, findings = proof_made(options.target, options.week)
    if options.pictures:
        write_pictures(findings, _pdfs(options.target), options.pictures)
    if options.json:
        _say(findings_json(findings))
        return WRONG if findings else DONE
    if findings:
        return _failed(*map(str, findings), _found(len(findings)))
    _say(f"{options.target}: {count} {'document' if count == 1 else 'documents'}, no findings")
    return DONE


def _pdfs(target: Path) -> dict[str, bytes]:
    """The PDFs of a folder, or the one, by name."""
    files = sorted(target.glob("*.pdf")) if target.is_dir() else [target]
    return {file.name: file.read_bytes() for file in files}


def _new(options: argparse.Namespace) -> int:
    from typeset.reading.new_week import start_week

    for path in start_week(options.folder):
        _say(str(path))
    _say(f"now: typeset make {options.folder}")
    return DONE


def _stop(_signal: int, _frame: FrameType | None) -> None:
    """A polite request to end is taken like Ctrl-C, so that unfinished files are cleared away."""
    raise KeyboardInterrupt


def _found(count: int) -> str:
    return f"{count} {'finding' if count == 1 else 'findings'}"


def _say_remarks(remarks: Sequence[Remark]) -> None:
    """Remarks are warnings: they go where complaints go, and change no exit code."""
    for remark in remarks:
        _say_error(str(remark))


def _count(error: ContentError) -> str:
    count = len(error.complaints)
    return f"{count} {'complaint' if count == 1 else 'complaints'}"


def _failed(*lines: str) -> int:
    for line in lines:
        _say_error(line)
    return WRONG


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def _say_error(text: str) -> None:
    sys.stderr.write(f"{text}\n")
