"""The command line: its verbs stand in `typeset.verbs`, errors and exit codes here.

0: done. 1: findings, or content that is wrong. 2: misuse.

Help and misuse are answered before anything but the parsers is loaded, and of these only that
of the verb asked for, where one is.
"""

from __future__ import annotations

import argparse
import atexit
import gc
import os
import signal
import sys
from collections.abc import Callable, Sequence
from importlib import import_module
from types import FrameType

from typeset import __version__
from typeset.verbs.telling import DONE, WRONG, complaint_count, failed, say_error

__all__ = ["DONE", "INTERRUPTED", "WRONG", "main"]

# In the order of the help. The verb 'make' is added by `add_make` of `typeset.verbs.make`.
VERBS = ("make", "check", "solve", "diagnose", "proof", "answers", "new", "post")
# What a shell gives for a program ended by Ctrl-C.
INTERRUPTED = 130
# New objects after which Python looks for circles of rubbish. Loading a verb and solving a week
# make some 100,000 and no such circles; the usual 700 costs a check a tenth of its time.
_OBJECTS_BETWEEN_LOOKS = 100_000


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command line; gives the exit code."""
    typed = sys.argv[1:] if arguments is None else list(arguments)
    options = _parser(typed[:1]).parse_args(typed)
    signal.signal(signal.SIGTERM, _stop)
    gc.set_threshold(_OBJECTS_BETWEEN_LOOKS)
    # On the way out everything goes at once, so that nobody need look through it before.
    atexit.register(gc.freeze)
    # Else pydantic looks for plugins in every package that is installed; we use none.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    return _run(options.run, options)


def _run(run: Callable[[argparse.Namespace], int], options: argparse.Namespace) -> int:
    """The verb's exit code, or that of what stopped it."""
    # Past the parsers, since none of these errors can come from them.
    from typeset.errors import ContentError, TypesetError

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


def _parser(first: Sequence[str]) -> argparse.ArgumentParser:
    """The parser for what begins with the `first` argument: with one verb where it is one, and
    with all of them for the help that lists them."""
    parser = argparse.ArgumentParser(
        prog="typeset",
        description="Typesets a week of primary maths lessons: solved, set, and proofed.",
        epilog="example: typeset make content/harbour-festival",
    )
    parser.add_argument("--version", action="version", version=f"typeset {__version__}")
    verbs = parser.add_subparsers(title="verbs", metavar="VERB", required=True)
    for name in [verb for verb in VERBS if verb in first] or VERBS:
        getattr(import_module(f"typeset.verbs.{name}"), f"add_{name}")(verbs)
    return parser


def _stop(_signal: int, _frame: FrameType | None) -> None:
    """A polite request to end is taken like Ctrl-C, so that unfinished files are cleared away."""
    raise KeyboardInterrupt
