"""Posts the home pack of a week: a message a family, as a draft or sent.

Everything heavy is imported only when the verb runs, so that help comes at once.
"""

from __future__ import annotations

import argparse
import os
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from typeset.posting.size import USUAL_LIMIT, read_size
from typeset.reading.choices import END, NONE
from typeset.verbs.adding import Verbs, add_verb
from typeset.verbs.telling import DONE, failed, say, say_error, say_remarks

if TYPE_CHECKING:
    from typeset.errors import Remark
    from typeset.posting.journal import Entry, Journal
    from typeset.posting.sending import Sent
    from typeset.press.posting import Post

# As of a program ended by Ctrl-C.
_INTERRUPTED = 130


def add_post(verbs: Verbs) -> None:
    """Adds the verb."""
    parser = add_verb(
        verbs,
        "post",
        _post,
        "write a message with the home pack to each family, as drafts or sent one by one",
        "typeset post content/harbour-festival --families families.csv",
    )
    parser.add_argument("week", type=Path, metavar="WEEK", help="the folder with week.yaml")
    parser.add_argument(
        "--families",
        type=Path,
        metavar="FILE",
        help="CSV or YAML with address, and where wanted name, version and layout",
    )
    parser.add_argument(
        "--to",
        type=Path,
        metavar="FOLDER",
        help="where drafts and journal are kept (printed/<week>/post/)",
    )
    parser.add_argument(
        "--answers", choices=(END, NONE), default=END, help="at the pack's end (the usual), or none"
    )
    parser.add_argument(
        "--largest",
        type=_size,
        default=USUAL_LIMIT,
        metavar="SIZE",
        help=f"how large a message may be, such as 900kB ({USUAL_LIMIT})",
    )
    parser.add_argument(
        "--pause",
        type=_seconds,
        default=1.0,
        metavar="SECONDS",
        help="between messages that are sent (1)",
    )
    ways = parser.add_mutually_exclusive_group()
    ways.add_argument(
        "--send", action="store_true", help="send the messages; without it they are drafts"
    )
    ways.add_argument(
        "--try", dest="try_address", metavar="ADDRESS", help="send the first message to yourself"
    )
    ways.add_argument(
        "--forget", action="store_true", help="remove the drafts and the journal of what was sent"
    )
    parser.set_defaults(misused=parser.error)


def _size(text: str) -> int:
    size = read_size(text)
    if size is None:
        raise argparse.ArgumentTypeError("write a size such as 10MB or 900kB")
    return size


def _seconds(text: str) -> float:
    if not (text.replace(".", "", 1).isdecimal() and float(text) <= 3600):
        raise argparse.ArgumentTypeError("write a number of seconds such as 2 or 0.5")
    return float(text)


def _post(options: argparse.Namespace) -> int:
    to: Path = options.to or Path("printed") / options.week.resolve().name / "post"
    if options.forget:
        return _forget(to)
    if options.families is None:
        options.misused("--families FILE is missing: it says who gets a message")
    if options.try_address is not None:
        return _try(options)
    return _send(options, to) if options.send else _draft(options, to)


def _forget(to: Path) -> int:
    from typeset.posting import drafts, journal

    there = [what.FOLDER for what in (drafts, journal) if what.forget(to)]
    say(f"removed from {to}: {' and '.join(there)}" if there else f"{to} holds nothing to forget")
    return DONE


def _prepared(
    options: argparse.Namespace, remarks: list[Remark], begin: Callable[[str, int], None]
) -> Post:
    """The packs and all that is in the messages; remarks are collected."""
    from typeset.press.posting import PostOrder, prepare_post
    from typeset.press.workers import cores

    week, families, answers = options.week, options.families, options.answers
    order = PostOrder(week, families, answers, options.largest, begin, remarks.append, cores())
    return prepare_post(order)


def _draft(options: argparse.Namespace, to: Path) -> int:
    from typeset.posting.drafts import FOLDER, write_drafts
    from typeset.posting.journal import Journal, State
    from typeset.terminal import Progress

    remarks: list[Remark] = []
    with Progress(ticks=False) as progress:
        post = _prepared(options, remarks, progress.begin)
        with Journal(to) as journal:
            count = write_drafts(to, (post.message(each, journal) for each in post.families))
            states = [entry.state for entry in _entries(post, journal)]
    say_remarks(remarks)
    say(f"{_messages(count)} to look at and send in {to / FOLDER}; nothing has left this machine")
    gone = states.count(State.SENT) + states.count(State.HANDED)
    if gone:
        say_error(f"remark: {_messages(gone)} of these went out with --send already, or may have")
    return DONE


def _try(options: argparse.Namespace) -> int:
    from typeset.posting.addresses import Malformed, read_address
    from typeset.posting.sending import send_one
    from typeset.posting.server import server_of
    from typeset.terminal import Progress

    address = read_address(options.try_address)
    if isinstance(address, Malformed):
        return failed(f"--try: {address.problem}; {address.remedy}")
    server = server_of(os.environ)
    remarks: list[Remark] = []
    with Progress(ticks=False) as progress:
        post = _prepared(options, remarks, progress.begin)
        send_one(post.trial(address), server)
    say_remarks(remarks)
    say(f"the first family's message went to {address.short}, and to nobody else")
    return DONE


def _send(options: argparse.Namespace, to: Path) -> int:
    from typeset.posting.journal import Journal
    from typeset.posting.sending import Pace, send_all
    from typeset.posting.server import server_of
    from typeset.terminal import Progress

    server = server_of(os.environ)
    remarks: list[Remark] = []
    try:
        with Progress(ticks=False) as progress:
            post = _prepared(options, remarks, progress.begin)
        with Journal(to) as journal, Progress() as progress:
            outgoing = [post.outgoing(each, journal) for each in post.families]
            before = _entries(post, journal)
            sent = send_all(outgoing, journal, server, Pace(options.pause), progress.begin)
    except KeyboardInterrupt:
        say_error("stopped; say the same again to go on, and no family gets a second message")
        return _INTERRUPTED
    say_remarks(remarks)
    return _told(post, before, sent)


def _entries(post: Post, journal: Journal) -> tuple[Entry, ...]:
    return tuple(journal.entry(journal.digest(each.address)) for each in post.families)


def _told(post: Post, before: tuple[Entry, ...], sent: Sent) -> int:
    """The summary: what was sent, then every family that has no message for certain."""
    from typeset.posting.journal import State

    earlier = sum(entry.state is State.SENT for entry in before)
    count = sum(entry.state is State.SENT for entry in sent.entries)
    say(f"{_messages(count - earlier)} sent, {earlier} sent before, of {len(sent.entries)}")
    if count == len(sent.entries):
        return DONE
    for family, entry in zip(post.families, sent.entries, strict=True):
        if entry.state is not State.SENT:
            why = _WHY[entry.state.value]
            words = f": {entry.words}" if entry.words else ""
            say_error(f"{family.place}: {family.address.short}: {why}{words}")
    if sent.stopped:
        say_error(f"stopped: {sent.stopped}")
    return failed(f"{_messages(len(sent.entries) - count)} not known to be sent")


# By the journal's words for how far a message has come.
_WHY = {
    "refused": "refused",
    "later": "not sent yet; say the same again",
    "handed over": (
        "may have been sent or not, since the answer was lost; look among what your account "
        "has sent, and send it by hand if it is not there"
    ),
}


def _messages(count: int) -> str:
    return f"{count} {'message' if count == 1 else 'messages'}"
