"""Starts a week.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from typeset.verbs.adding import Verbs, add_verb
from typeset.verbs.telling import DONE, say


def add_new(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "new",
        _new,
        "start a week: a commented week.yaml and one lesson that shows every stage",
        "typeset new content/spring-tides",
    )
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="a folder to be made")


def _new(options: argparse.Namespace) -> int:
    from typeset.reading.new_week import start_week

    for path in start_week(options.folder):
        say(str(path))
    say(f"now: typeset make {options.folder}")
    return DONE
