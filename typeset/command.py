"""The command line: its verbs stand in `typeset.verbs`, errors and exit codes here.

0: done. 1: findings, or content that is wrong. 2: misuse.
"""

from __future__ import annotations

import argparse
import signal
import sys
from collections.abc import Callable, Sequence
from types import FrameType

from typeset import __version__
from typeset.errors import ContentError, TypesetError
from typeset.verbs.answers import add_answers
from typeset.verbs.check import add_check
from typeset.verbs.diagnose import add_diagnose
from typeset.verbs.make import add_make
from typeset.verbs.new import add_new
from typeset.verbs.post import add_post
from typeset.verbs.proof import add_proof
from typeset.verbs.solve import add_solve
from typeset.verbs.telling import DONE, WRONG, complaint_count, failed, say_error

__all__ = ["DONE", "INTERRUPTED", "WRONG", "main"]

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
        return failed(*(str(complaint) for complaint in error.complaints), complaint_count(error))
    except TypesetError as error:
        return failed(str(error))
    except KeyboardInterrupt:
        say_error("stopped; nothing was changed")
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
    add_make(verbs)
    add_check(verbs)
    add_solve(verbs)
    add_diagnose(verbs)
    add_proof(verbs)
    add_answers(verbs)
    add_new(verbs)
    add_post(verbs)
    return parser


def _stop(_signal: int, _frame: FrameType | None) -> None:
    """A polite request to end is taken like Ctrl-C, so that unfinished files are cleared away."""
    raise KeyboardInterrupt
