"""A run of its own process, to be killed: `one_run.py FOLDER PORT COUNT`."""

from __future__ import annotations

import signal
import sys
from email import policy
from email.message import EmailMessage
from pathlib import Path
from types import FrameType

from typeset.posting.addresses import Address
from typeset.posting.journal import Journal
from typeset.posting.sending import Outgoing, Pace, send_all
from typeset.posting.server import Server

SENDER = Address("gulls", "harbour.example")
VERSIONS = ("support", "core", "stretch")


def outgoing(number: int) -> Outgoing:
    to = Address(f"family{number}", "quay.example")
    message = EmailMessage(policy=policy.SMTP)
    message["From"], message["To"] = SENDER.text, to.text
    message["Subject"] = VERSIONS[number % 3]
    message.set_content("Ahoy!\n" * 50)
    return Outgoing(SENDER, to, message.as_bytes)


def stop(_signal: int, _frame: FrameType | None) -> None:
    """As the command line does."""
    raise KeyboardInterrupt


def main() -> None:
    folder, port, count = Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    server = Server("localhost", port, "gulls", "a long password", 5.0, 0.01)
    signal.signal(signal.SIGTERM, stop)
    with Journal(folder) as journal:
        send_all([outgoing(each) for each in range(count)], journal, server, Pace(0.0, (0.01,)))


if __name__ == "__main__":
    main()
