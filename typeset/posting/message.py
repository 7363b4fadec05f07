"""A message to one family: plain text and HTML saying the same, and the pack (RFC 5322, 2045)."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime
from email.headerregistry import Address as Mailbox
from email.message import EmailMessage
from email.policy import SMTP
from email.utils import format_datetime

from typeset.errors import OutputError
from typeset.posting.addresses import Address, Sender
from typeset.posting.size import encoded_size, told
from typeset.posting.wording import Wording

# Seven bits in every part, so that no server on the way has to understand more.
_POLICY = SMTP.clone(cte_type="7bit")
_WIDE_POLICY = _POLICY.clone(utf8=True)


@dataclass(frozen=True, slots=True)
class Pack:
    """A pack as it is attached. `name` says which one it is, for complaints about its size."""

    name: str
    pdf: bytes


@dataclass(frozen=True, slots=True)
class Occasion:
    """What the messages of a run have in common. `file` is the attachment's name."""

    sender: Sender
    wording: Wording
    week: str
    class_name: str
    answers: str
    file: str
    date: datetime


def file_name(week: str) -> str:
    """'harbour-festival-home-pack.pdf': plain letters, and the same for every family, so that
    it tells nobody's version."""
    plain = re.sub(r"[^a-z0-9]+", "-", week.lower()).strip("-")[:40].rstrip("-")
    return f"{plain}-home-pack.pdf" if plain else "home-pack.pdf"


def message_to(
    address: Address, pupil: str, pack: Pack, occasion: Occasion, message_id: str
) -> EmailMessage:
    """The message. Raises LayoutError where its wording fails."""
    names = _names(pupil, occasion)
    wording, sender = occasion.wording, occasion.sender
    mailbox = sender.address
    is_ascii = address.is_ascii and mailbox.is_ascii
    message = EmailMessage(policy=_POLICY if is_ascii else _WIDE_POLICY)
    message["From"] = Mailbox(sender.name, mailbox.local, mailbox.domain)
    message["To"] = Mailbox("", address.local, address.domain)
    message["Subject"] = wording.said(wording.subject, names)
    message["Date"] = format_datetime(occasion.date)
    message["Message-ID"] = message_id
    message.set_content(wording.said(wording.text, names))
    message.add_alternative(wording.said(wording.html, names), subtype="html")
    message.add_attachment(pack.pdf, maintype="application", subtype="pdf", filename=occasion.file)
    return message


def _names(pupil: str, occasion: Occasion) -> dict[str, str]:
    return {
        "pupil": pupil,
        "week": occasion.week,
        "class": occasion.class_name,
        "sender": occasion.sender.name or occasion.class_name,
        "answers": occasion.answers,
        "file": occasion.file,
    }


def as_draft(message: EmailMessage) -> EmailMessage:
    """The same as mail programs open it: ready to be looked at, changed and sent."""
    message["X-Unsent"] = "1"
    return message


def check_size(message: EmailMessage, pack: Pack, most: int) -> None:
    """Raises OutputError where the message has more octets than `most`, with its heavy part."""
    size, attached = len(message.as_bytes()), encoded_size(len(pack.pdf))
    if size <= most:
        return
    parts = (
        f"the pack has {told(len(pack.pdf))}, which electronic mail makes {told(attached)}",
        f"the wording has {told(size - attached)}",
    )
    heavy, rest = parts if attached * 2 >= size else parts[::-1]
    remedy = "leave the answers out (--answers none), or allow more (--largest)"
    raise OutputError(
        f"the message with the {pack.name} would have {told(size)}, more than {told(most)}: "
        f"{heavy}, {rest}; {remedy}"
    )
