"""How a verb is added to the command line."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias

# argparse gives this class no public name.
Verbs: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"


def add_verb(
    verbs: Verbs,
    name: str,
    run: Callable[[argparse.Namespace], int],
    what: str,
    example: str,
) -> argparse.ArgumentParser:
    """A verb with its help and an example; `run` gives the exit code."""
    parser = verbs.add_parser(
        name,
        help=what,
        description=what[:1].upper() + what[1:] + ".",
        epilog=f"example: {example}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.set_defaults(run=run)
    return parser


def add_pictures(parser: argparse.ArgumentParser) -> None:
    """The option for pictures of findings."""
    parser.add_argument(
        "--pictures",
        type=Path,
        metavar="FOLDER",
        help="write every side with findings as a picture, the places ringed",
    )
