"""Hands messages over one by one, so that a run may be broken off anywhere and go on.

A message is a server's from the moment it gets the line with a single full stop behind it (RFC
5321 section 4.1.1.4). The journal is written just before that line and just after the answer;
whoever is stopped earlier has sent nothing. Between the two nobody can know (RFC 1047), so such
a message is never sent again by itself: it is told as doubtful.
"""

from __future__ import annotations

import re
import signal
import smtplib
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from types import FrameType

from typeset.errors import OutputError
from typeset.posting.addresses import Address
from typeset.posting.journal import Entry, Journal, State
from typeset.posting.server import Server, connected, words_of
from typeset.posting.size import told

# RFC 5321 section 4.5.3.1.8: what a server must accept at once; so we begin anew after it.
_MOST_A_CONNECTION = 100
# RFC 5321 section 4.5.3.2: two minutes for DATA, ten for the answer to its end.
_PATIENCE = 5
_READY_FOR_DATA, _CLOSING = 354, 421
_LINE_BEGINNING_WITH_A_STOP = re.compile(rb"^\.", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Pace:
    """Seconds between messages, and before each further try of those not taken (greylisting)."""

    between_s: float = 1.0
    again_after_s: tuple[float, ...] = (60.0, 300.0)


@dataclass(frozen=True, slots=True)
class Outgoing:
    """A message to hand over; `data` gives its bytes, lines ended by CR LF."""

    sender: Address
    to: Address
    data: Callable[[], bytes]


@dataclass(frozen=True, slots=True)
class Sent:
    """What is known of each message in order, and why the run ended early, if it did."""

    entries: tuple[Entry, ...]
    stopped: str = ""


class _StopError(OutputError):
    """Nothing more can be sent in this run."""


def send_all(
    outgoing: Sequence[Outgoing],
    journal: Journal,
    server: Server,
    pace: Pace,
    begin: Callable[[str, int], None] = lambda _what, _count: None,
) -> Sent:
    """Sends every message that the journal does not know as sent or handed over.

    `begin` is called with each that is tried and the count. Raises OutputError where the
    journal cannot be written.
    """
    digests = [journal.digest(each.to) for each in outgoing]
    post = _Post(journal, server, pace)
    stopped = ""
    try:
        for number, wait_s in enumerate((0.0, *pace.again_after_s)):
            states = (State.LATER, State.REFUSED) if number == 0 else (State.LATER,)
            waiting = [
                (digest, each)
                for digest, each in zip(digests, outgoing, strict=True)
                if journal.entry(digest).state in states
            ]
            if not waiting:
                break
            if wait_s:
                begin(f"waiting {wait_s:g} s to try {len(waiting)} again", len(outgoing))
                post.close()
                time.sleep(wait_s)
            for count, (digest, each) in enumerate(waiting, 1):
                begin(f"message {count} of {len(waiting)}", len(waiting))
                post.send(digest, each)
    except _StopError as error:
        stopped = str(error)
    finally:
        post.close()
    return Sent(tuple(journal.entry(digest) for digest in digests), stopped)


def send_one(message: Outgoing, server: Server) -> None:
    """Sends a message that no journal knows, to try. Raises OutputError where it is not taken."""
    smtp = connected(server)
    try:
        entry = _handed_over(smtp, message, lambda: None)
    except smtplib.SMTPServerDisconnected:
        entry = Entry(State.LATER, "the connection broke off")
    finally:
        _quit(smtp)
    if entry.state is not State.SENT:
        raise OutputError(f"{message.to.short}: {entry.words}")


class _Post:
    """The way to the server: a connection that is made when it is needed."""

    def __init__(self, journal: Journal, server: Server, pace: Pace) -> None:
        self._journal = journal
        self._server = server
        self._pace = pace
        self._smtp: smtplib.SMTP | None = None
        self._count = 0

    def send(self, digest: str, message: Outgoing) -> None:
        """One message, and what became of it in the journal. Raises _StopError."""
        smtp = self._connection()
        self._count += 1
        journal = self._journal
        with _finished_first():
            try:
                entry = _handed_over(
                    smtp, message, lambda: journal.record(digest, Entry(State.HANDED))
                )
            except smtplib.SMTPServerDisconnected:
                self.close()
                if journal.entry(digest).state is State.HANDED:
                    return
                entry = Entry(State.LATER, "the connection broke off")
            journal.record(digest, entry)

    def close(self) -> None:
        """Ends the connection, if there is one."""
        if self._smtp is not None:
            _quit(self._smtp)
        self._smtp = None

    def _connection(self) -> smtplib.SMTP:
        if self._count:
            time.sleep(self._pace.between_s)
        if self._count % _MOST_A_CONNECTION == 0:
            self.close()
        if self._smtp is None or self._smtp.sock is None:
            try:
                self._smtp = connected(self._server)
            except OutputError as error:
                raise _StopError(str(error)) from error
        return self._smtp


def _quit(smtp: smtplib.SMTP) -> None:
    with suppress(OSError, smtplib.SMTPException):
        smtp.quit()
    smtp.close()


def _handed_over(smtp: smtplib.SMTP, message: Outgoing, note: Callable[[], None]) -> Entry:
    """What the server says to the message; `note` is called just before it is the server's.

    Raises SMTPServerDisconnected where the connection breaks off, _StopError where the server
    takes nothing from this sender.
    """
    data = message.data()
    options = _options(smtp, message, len(data))
    if options is None:
        words = "this server takes no address with letters beyond A to Z before the @"
        return Entry(State.REFUSED, words)
    code, said = smtp.mail(message.sender.text, options)
    if 500 <= code <= 599:
        raise _StopError(f"the server refuses the sender: {code} {words_of(said)}")
    if code // 100 == 2:
        code, said = smtp.rcpt(message.to.text)
    if code // 100 == 2:
        code, said = smtp.docmd("DATA")
        if code != _READY_FOR_DATA and code // 100 not in (4, 5):
            return Entry(State.LATER, f"not understood: {code} {words_of(said)}")
    if code == _READY_FOR_DATA:
        smtp.send(_LINE_BEGINNING_WITH_A_STOP.sub(b"..", data))
        note()
        with _patient(smtp):
            smtp.send(b".\r\n")
            code, said = smtp.getreply()
    return _judged(smtp, code, said)


@contextmanager
def _patient(smtp: smtplib.SMTP) -> Iterator[None]:
    """Waits longer for the answer to a message's end: who gives up there is left in doubt."""
    assert smtp.sock is not None  # It is connected.
    smtp.sock.settimeout(smtp.timeout * _PATIENCE)
    yield
    if smtp.sock is not None:
        smtp.sock.settimeout(smtp.timeout)


def _options(smtp: smtplib.SMTP, message: Outgoing, size: int) -> list[str] | None:
    """What is said beside the sender; None where the server cannot write to the address."""
    smtp.ehlo_or_helo_if_needed()
    options: list[str] = []
    most = smtp.esmtp_features.get("size", "").split(" ")[0]
    if smtp.has_extn("size"):
        if most.isdigit() and 0 < int(most) < size:
            what = f"a message has {told(size)}, the server takes {told(int(most))} at most"
            raise _StopError(what)
        options.append(f"size={size}")
    if not (message.to.is_ascii and message.sender.is_ascii):
        if not smtp.has_extn("smtputf8"):
            return None
        # How the addresses of the following commands are written.
        smtp.command_encoding = "utf-8"
        options += ["BODY=8BITMIME", "SMTPUTF8"]
    else:
        smtp.command_encoding = "ascii"
    return options


def _judged(smtp: smtplib.SMTP, code: int, said: bytes) -> Entry:
    """The answer as an entry; the connection is made ready for another message, or ended."""
    words = f"{code} {words_of(said)}"
    if code // 100 == 2:
        return Entry(State.SENT, words)
    if code == _CLOSING or code < 0:
        smtp.close()
    else:
        with suppress(smtplib.SMTPServerDisconnected):
            smtp.rset()
    # RFC 5321 section 4.2.1: 5 is for good, 4 for now (such as 452, too many recipients).
    return Entry(State.REFUSED if code // 100 == 5 else State.LATER, words)


@contextmanager
def _finished_first() -> Iterator[None]:
    """A polite request to stop waits until the server has answered and it is written down."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    asked: list[int] = []

    def note(number: int, _frame: FrameType | None) -> None:
        asked.append(number)

    before = {each: signal.signal(each, note) for each in (signal.SIGINT, signal.SIGTERM)}
    try:
        yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)
    if asked:
        raise KeyboardInterrupt
