"""Gets a week's home packs ready to post: each kind is made once, each family has its message."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from email.message import EmailMessage
from email.utils import localtime, make_msgid
from pathlib import Path

from typeset.documents.layout_files import find_layout, layouts_folder
from typeset.errors import Complaint, ContentError, LayoutError, OutputError, Remark
from typeset.posting.addresses import Address, Malformed, Sender, read_sender
from typeset.posting.families import Families, Family, read_families
from typeset.posting.journal import Journal
from typeset.posting.message import Occasion, Pack, check_size, file_name, message_to
from typeset.posting.sending import Outgoing
from typeset.posting.wording import read_wording
from typeset.press.making import Order, make_week
from typeset.reading.complaints import missing_key
from typeset.reading.content import HOME_PACK, VERSIONS, Week
from typeset.reading.week import read_week


@dataclass(frozen=True, slots=True)
class PostOrder:
    """What is to be posted. `most` is how many octets a message may have."""

    folder: Path
    families: Path
    answers: str
    most: int
    progress: Callable[[str, int], None]
    # Called with every remark on content and families, before anything is made.
    remark: Callable[[Remark], None]
    # How many processes share the making of the packs.
    workers: int = 1


@dataclass(frozen=True, slots=True)
class Post:
    """Everything that is needed to write each family's message."""

    families: tuple[Family, ...]
    occasion: Occasion
    # By version and layout.
    packs: dict[tuple[str, str], Pack]
    usual_layout: str

    def message(self, family: Family, journal: Journal) -> EmailMessage:
        """The message to the family, with its own pack. Raises LayoutError."""
        pack, sender = self.pack(family), self.occasion.sender.address
        message_id = journal.message_id(family.address, sender)
        return message_to(family.address, family.name, pack, self.occasion, message_id)

    def outgoing(self, family: Family, journal: Journal) -> Outgoing:
        """The same, made when it is sent."""
        return Outgoing(
            self.occasion.sender.address,
            family.address,
            lambda: self.message(family, journal).as_bytes(),
        )

    def trial(self, address: Address) -> Outgoing:
        """The first family's message, to somebody else."""
        first, sender = self.families[0], self.occasion.sender.address
        message_id = make_msgid(domain=sender.domain)
        message = message_to(address, first.name, self.pack(first), self.occasion, message_id)
        return Outgoing(sender, address, message.as_bytes)

    def pack(self, family: Family) -> Pack:
        """What is attached to the family's message."""
        return self.packs[family.version, family.layout or self.usual_layout]


def prepare_post(order: PostOrder) -> Post:
    """The packs made and proofed, and all that is written in the messages checked.

    Raises ContentError with every complaint about week, families and wording; LayoutError;
    OutputError where a file cannot be read, a pack has findings, or a message is too large.
    """
    week = read_week(order.folder)
    sender, families = _checked(week, order.families)
    wording = read_wording(
        (week.folder / "layouts", layouts_folder()), week.subject, week.place.file
    )
    occasion = Occasion(
        sender,
        wording,
        week.title,
        week.class_name,
        order.answers,
        file_name(week.name),
        localtime(),
    )
    for remark in families.remarks:
        order.remark(remark)
    post = Post(families.all, occasion, _packs(order, week, families), week.layout)
    _check_sizes(post, order.most)
    return post


def _checked(week: Week, file: Path) -> tuple[Sender, Families]:
    """The sender and the families; complaints about both come together."""
    complaints: list[Complaint] = []
    sender = _sender(week, complaints)
    families = Families((), ())
    try:
        families = read_families(file, lambda name: _why_no_layout(name, week.folder))
    except ContentError as error:
        complaints += error.complaints
    if complaints or sender is None:
        raise ContentError(complaints)
    return sender, families


def _sender(week: Week, complaints: list[Complaint]) -> Sender | None:
    if week.sender is None:
        complaints.append(missing_key("sender", week.place))
        return None
    sender = read_sender(week.sender.text)
    if isinstance(sender, Malformed):
        complaints.append(Complaint(week.sender.place, sender.problem, sender.remedy))
        return None
    return sender


def _why_no_layout(name: str, folder: Path) -> str | None:
    try:
        find_layout(name, folder)
    except LayoutError as error:
        return str(error)
    return None


def _packs(order: PostOrder, week: Week, families: Families) -> dict[tuple[str, str], Pack]:
    """Each combination of version and layout that a family gets, made once."""
    wanted = {(each.version, each.layout or week.layout) for each in families.all}
    packs: dict[tuple[str, str], Pack] = {}
    remark = order.remark
    for layout in sorted({layout for _, layout in wanted}):
        versions = tuple(each for each in VERSIONS if (each, layout) in wanted)
        packs |= _packs_in(order, layout, versions, remark)
        remark = _said_already
    return packs


def _said_already(_remark: Remark) -> None:
    pass


def _packs_in(
    order: PostOrder, layout: str, versions: tuple[str, ...], remark: Callable[[Remark], None]
) -> dict[tuple[str, str], Pack]:
    with tempfile.TemporaryDirectory(prefix="packs-") as name:
        folder = Path(name)
        results = make_week(
            Order(
                order.folder,
                folder,
                only=HOME_PACK,
                layouts=(layout,),
                versions=versions,
                progress=order.progress,
                remark=remark,
                answers=order.answers,
                workers=order.workers,
            )
        )
        findings = [finding for result in results for finding in result.findings]
        if findings:
            raise OutputError("\n".join([*map(str, findings), "nothing was posted"]))
        return {
            (made.version, layout): Pack(
                f"pack in {made.version}, {layout} ({made.sides} sides)",
                (folder / made.file).read_bytes(),
            )
            for made in (result.made for result in results)
            if made.kind == HOME_PACK
        }


def _check_sizes(post: Post, most: int) -> None:
    """Tries the message of one family for each pack; names differ by a few octets at most."""
    longest = max(post.families, key=lambda each: len(each.name.encode())).name
    for key, pack in post.packs.items():
        family = next(
            each
            for each in post.families
            if (each.version, each.layout or post.usual_layout) == key
        )
        message = message_to(family.address, longest, pack, post.occasion, "<1@size.invalid>")
        check_size(message, pack, most)
