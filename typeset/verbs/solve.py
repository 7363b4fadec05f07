"""Shows answers and workings in the terminal.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from typeset.verbs.adding import Verbs, add_verb
from typeset.verbs.telling import DONE, say


def add_solve(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "solve",
        _solve,
        "show answers, workings, reasons and mistakes of a week or of one lesson",
        "typeset solve content/harbour-festival/tuesday.yaml --json",
    )
    parser.add_argument("content", type=Path, metavar="WEEK|LESSON", help="a folder or a file")
    parser.add_argument("--json", action="store_true", help="as JSON, for other programs")


def _solve(options: argparse.Namespace) -> int:
    from typeset.arithmetic.building import solve_week
    from typeset.reading.week import read_lesson_alone, read_week

    path: Path = options.content
    solved = solve_week(read_lesson_alone(path) if path.is_file() else read_week(path))
    if options.json:
        import json

        from typeset.documents.solutions_json import week_data

        say(json.dumps(week_data(solved), indent=2, ensure_ascii=False))
    else:
        from typeset.documents.solutions_text import week_text

        say(week_text(solved))
    return DONE
