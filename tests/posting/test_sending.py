"""Messages handed over to a real server, which refuses, drops, delays and puts off."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from email import policy
from email.message import EmailMessage
from importlib.machinery import ModuleSpec
from pathlib import Path
from types import ModuleType

import pytest

from tests.posting.mail_server import PASSWORD, USER, Letterbox, running, write_certificate
from typeset.errors import OutputError
from typeset.posting.addresses import Address
from typeset.posting.journal import Journal, State
from typeset.posting.sending import Outgoing, Pace, Sent, send_all, send_one
from typeset.posting.server import Server, server_of

SENDER = Address("gulls", "harbour.example")
QUICK = Pace(0.0, (0.01, 0.01))


@pytest.fixture(scope="module")
def certificate(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_certificate(tmp_path_factory.mktemp("certificate"))


@pytest.fixture
def trusted(certificate: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The certificate, trusted as an authority the way OpenSSL itself is told to."""
    monkeypatch.setenv("SSL_CERT_FILE", str(certificate))
    return certificate


@contextmanager
def served(letterbox: Letterbox, certificate: Path, size: int = 1_000_000) -> Iterator[Server]:
    controller = running(letterbox, certificate, size)
    try:
        yield Server("localhost", controller.port, USER, PASSWORD, timeout_s=5.0, wait_s=0.01)
    finally:
        controller.stop()


def families(count: int) -> list[Address]:
    return [Address(f"family{number}", "quay.example") for number in range(count)]


def outgoing(to: Address, body: str = "Ahoy!\n.\n..and more\n") -> Outgoing:
    message = EmailMessage(policy=policy.SMTP if to.is_ascii else policy.SMTPUTF8)
    message["From"], message["To"], message["Subject"] = SENDER.text, to.text, f"For {to.local}"
    message.set_content(body)
    return Outgoing(SENDER, to, message.as_bytes)


def send(folder: Path, server: Server, to: list[Address], pace: Pace = QUICK) -> Sent:
    with Journal(folder) as journal:
        return send_all([outgoing(each) for each in to], journal, server, pace)


def states(sent: Sent) -> list[State]:
    return [entry.state for entry in sent.entries]


def test_each_family_gets_its_own_message_and_no_other(tmp_path: Path, trusted: Path) -> None:
    letterbox, to = Letterbox(), families(5)
    with served(letterbox, trusted) as server:
        assert states(send(tmp_path, server, to)) == [State.SENT] * 5
    assert [addresses for addresses, _ in letterbox.got] == [(each.text,) for each in to]
    for each, (_, data) in zip(to, letterbox.got, strict=True):
        # The bytes arrive as they were made, also lines that are a full stop alone.
        assert data == outgoing(each).data()
        assert [other.text for other in to if other.text.encode() in data] == [each.text]


def test_a_second_run_sends_nothing_again(tmp_path: Path, trusted: Path) -> None:
    letterbox, to = Letterbox(), families(3)
    with served(letterbox, trusted) as server:
        send(tmp_path, server, to)
        again = [replace(to[0], local="FAMILY0"), *to[1:], Address("new", "quay.example")]
        assert states(send(tmp_path, server, again)) == [State.SENT] * 4
    assert letterbox.addresses() == [*(each.text for each in to), "new@quay.example"]


def test_a_refused_family_is_told_with_the_servers_words(tmp_path: Path, trusted: Path) -> None:
    to = families(4)
    said = f"550 5.1.1 <{to[1].text}> no such user"
    letterbox = Letterbox(rcpt=lambda address, _: said if address == to[1].text else None)
    letterbox.data = lambda address, _: "554 not that" if address == to[2].text else None
    with served(letterbox, trusted) as server:
        sent = send(tmp_path, server, to)
    assert states(sent) == [State.SENT, State.REFUSED, State.REFUSED, State.SENT]
    assert sent.entries[1].words == "550 5.1.1 <f…@quay.example> no such user"
    assert sent.entries[2].words == "554 not that"
    # Told once, not tried again and again.
    assert letterbox.tried[to[1].text] == 1
    written = b"".join(f.read_bytes() for f in tmp_path.rglob("*") if f.is_file())
    assert b"family" not in written.replace(b'"family"', b"")


@pytest.mark.parametrize("answer", ["451 try later", "452 too many recipients", "421 busy"])
def test_what_is_put_off_is_tried_again(answer: str, tmp_path: Path, trusted: Path) -> None:
    """Greylisting: every first try of an address is put off."""
    letterbox = Letterbox(rcpt=lambda _, time: answer if time == 1 else None)
    with served(letterbox, trusted) as server:
        assert states(send(tmp_path, server, families(3))) == [State.SENT] * 3
    assert sorted(letterbox.addresses()) == [each.text for each in families(3)]


def test_what_is_put_off_for_ever_is_told(tmp_path: Path, trusted: Path) -> None:
    letterbox = Letterbox(rcpt=lambda _, __: "450 busy")
    with served(letterbox, trusted) as server:
        sent = send(tmp_path, server, families(2))
        assert states(sent) == [State.LATER] * 2 and sent.entries[0].words == "450 busy"
        assert letterbox.tried["family0@quay.example"] == 3
        letterbox.rcpt = lambda _, __: None
        assert states(send(tmp_path, server, families(2))) == [State.SENT] * 2


def test_a_connection_that_drops_before_the_end_is_made_again(
    tmp_path: Path, trusted: Path
) -> None:
    letterbox = Letterbox(rcpt=lambda _, time: "drop" if time == 1 else None)
    with served(letterbox, trusted) as server:
        assert states(send(tmp_path, server, families(3))) == [State.SENT] * 3
    assert sorted(letterbox.addresses()) == [each.text for each in families(3)]


@pytest.mark.parametrize("arrived", [True, False])
def test_a_message_whose_answer_is_lost_is_doubtful_and_never_sent_again(
    arrived: bool, tmp_path: Path, trusted: Path
) -> None:
    to, lost = families(3), "drop after" if arrived else "drop"
    letterbox = Letterbox(data=lambda address, _: lost if address == to[1].text else None)
    with served(letterbox, trusted) as server:
        for _ in range(2):
            assert states(send(tmp_path, server, to)) == [State.SENT, State.HANDED, State.SENT]
    assert letterbox.tried[to[1].text] == 1
    assert letterbox.addresses().count(to[1].text) == arrived


def test_a_server_that_is_too_slow_leaves_a_doubtful_message(tmp_path: Path, trusted: Path) -> None:
    letterbox = Letterbox(slow_s=1.8)
    with served(letterbox, trusted) as server:
        sent = send(tmp_path, replace(server, timeout_s=0.3), families(1))
    assert states(sent) == [State.HANDED]


def test_a_slow_server_is_waited_for(tmp_path: Path, trusted: Path) -> None:
    """Five times as long at the end of a message as elsewhere."""
    letterbox = Letterbox(slow_s=0.6)
    with served(letterbox, trusted) as server:
        assert (
            states(send(tmp_path, replace(server, timeout_s=0.4), families(2))) == [State.SENT] * 2
        )


def test_a_connection_takes_a_hundred_messages_at_most(tmp_path: Path, trusted: Path) -> None:
    """RFC 5321 section 4.5.3.1.8: more than 100 recipients need not be taken."""
    letterbox, to = Letterbox(), families(201)
    with served(letterbox, trusted) as server:
        assert states(send(tmp_path, server, to)) == [State.SENT] * 201
    assert letterbox.logins == 3


def test_an_address_beyond_ascii_goes_where_the_server_knows_them(
    tmp_path: Path, trusted: Path
) -> None:
    letterbox, to = Letterbox(), [Address("zoë", "quay.example"), *families(1)]
    with served(letterbox, trusted) as server:
        assert states(send(tmp_path, server, to)) == [State.SENT] * 2
    assert letterbox.addresses() == ["zoë@quay.example", "family0@quay.example"]
    letterbox.knows_utf8 = False
    with served(letterbox, trusted) as server:
        sent = send(tmp_path / "other", server, to)
    assert states(sent) == [State.REFUSED, State.SENT]
    assert "letters beyond A to Z" in sent.entries[0].words


def test_a_message_over_the_servers_size_ends_the_run(tmp_path: Path, trusted: Path) -> None:
    """RFC 1870: the server says how much it takes."""
    letterbox = Letterbox()
    with served(letterbox, trusted, size=100) as server:
        sent = send(tmp_path, server, families(2))
    assert states(sent) == [State.LATER] * 2
    assert "the server takes 0.1 MB at most" in sent.stopped
    assert letterbox.got == []


def test_a_wrong_password_ends_the_run(tmp_path: Path, trusted: Path) -> None:
    letterbox = Letterbox()
    with served(letterbox, trusted) as server:
        sent = send(tmp_path, replace(server, password="wrong"), families(2))
    assert "refuses the login" in sent.stopped and "wrong" not in sent.stopped
    assert letterbox.got == [] and "wrong" not in repr(replace(server, password="wrong"))


def test_a_certificate_that_nobody_vouches_for_ends_the_run(
    tmp_path: Path, certificate: Path
) -> None:
    letterbox = Letterbox()
    with served(letterbox, certificate) as server:
        sent = send(tmp_path, server, families(1))
    assert "is not trusted" in sent.stopped and letterbox.logins == 0


def test_a_certificate_of_another_host_ends_the_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    other = write_certificate(tmp_path, "elsewhere.example")
    monkeypatch.setenv("SSL_CERT_FILE", str(other))
    letterbox = Letterbox()
    with served(letterbox, other) as server:
        sent = send(tmp_path, server, families(1))
    assert "is not trusted" in sent.stopped and letterbox.logins == 0


def test_a_server_without_encryption_gets_no_password(tmp_path: Path) -> None:
    letterbox = Letterbox()
    controller = running(letterbox, None)
    try:
        server = Server("localhost", controller.port, USER, PASSWORD, 5.0, 0.01)
        sent = send(tmp_path, server, families(1))
    finally:
        controller.stop()
    assert "offers no encryption" in sent.stopped
    assert letterbox.logins == 0 and letterbox.got == []


# aiosmtpd sees no STARTTLS here and warns of a login without encryption.
@pytest.mark.filterwarnings("ignore:Requiring AUTH while not requiring TLS")
def test_tls_from_the_first_byte(tmp_path: Path, trusted: Path) -> None:
    letterbox = Letterbox()
    controller = running(letterbox, trusted, at_once=True)
    try:
        server = Server("localhost", controller.port, USER, PASSWORD, 5.0, 0.01, tls_at_once=True)
        assert states(send(tmp_path, server, families(2))) == [State.SENT] * 2
    finally:
        controller.stop()


def test_a_server_that_is_not_there(tmp_path: Path) -> None:
    server = Server("localhost", 1, USER, PASSWORD, 5.0, 0.01)
    assert "cannot be reached" in send(tmp_path, server, families(1)).stopped


def test_one_to_try_leaves_no_journal(tmp_path: Path, trusted: Path) -> None:
    letterbox = Letterbox(rcpt=lambda address, _: "550 no" if "nobody" in address else None)
    with served(letterbox, trusted) as server:
        send_one(outgoing(SENDER), server)
        with pytest.raises(OutputError, match="n…@quay\\.example: 550 no"):
            send_one(outgoing(Address("nobody", "quay.example")), server)
    assert letterbox.addresses() == [SENDER.text] and list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({}, "set TYPESET_MAIL_HOST"),
        ({"TYPESET_MAIL_HOST": "h"}, "set TYPESET_MAIL_USER"),
        ({"TYPESET_MAIL_HOST": "h", "TYPESET_MAIL_USER": "u"}, "there is no password"),
        (
            {"TYPESET_MAIL_HOST": "h", "TYPESET_MAIL_USER": "u", "TYPESET_MAIL_PORT": "x"},
            "TYPESET_MAIL_PORT must be a number",
        ),
    ],
)
def test_what_the_environment_lacks_is_told(given: dict[str, str], told: str) -> None:
    with pytest.raises(OutputError, match=told):
        server_of(given)


def test_the_environment_names_the_server() -> None:
    given = {"TYPESET_MAIL_HOST": "h", "TYPESET_MAIL_USER": "u", "TYPESET_MAIL_PASSWORD": "p"}
    assert server_of(given) == Server("h", 587, "u", "p")
    assert server_of({**given, "TYPESET_MAIL_PORT": "465"}).port == 465


def test_a_password_in_the_systems_keyring_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """`keyring` by its documented call; the library itself is none of our dependencies."""
    keyring = ModuleType("keyring")
    keyring.__spec__ = ModuleSpec("keyring", None)
    kept = {("typeset", "u"): "p"}
    keyring.get_password = lambda service, user: kept.get((service, user))  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "keyring", keyring)
    given = {"TYPESET_MAIL_HOST": "h", "TYPESET_MAIL_USER": "u"}
    assert server_of(given).password == "p"
    with pytest.raises(OutputError, match="there is no password"):
        server_of({**given, "TYPESET_MAIL_USER": "other"})

    def locked(_service: str, _user: str) -> str:
        raise RuntimeError("p is locked")

    keyring.get_password = locked  # type: ignore[attr-defined]
    with pytest.raises(OutputError, match=r"the system's keyring fails \(RuntimeError\)"):
        server_of(given)
