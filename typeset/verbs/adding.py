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


def add_workers(parser: argparse.ArgumentParser) -> None:
    """The option for the number of processes."""
    parser.add_argument(
        "--workers",
        type=_several,
        default=0,
        metavar="N",
        help="share the work among so many processes (one for each core of the machine)",
    )


def _several(typed: str) -> int:
    if not typed.isascii() or not typed.isdecimal() or not int(typed):
        raise argparse.ArgumentTypeError(f"'{typed}' is no number of processes; write 1 or more")
    return int(typed)
