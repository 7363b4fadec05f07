"""`typeset post --send` and `--try` from end to end, against a real server."""

from __future__ import annotations

from collections.abc import Iterator
from email import policy
from email.message import EmailMessage
from email.parser import BytesParser
from pathlib import Path

import pytest
from aiosmtpd.controller import Controller

from tests.posting.mail_server import PASSWORD, USER, Letterbox, running, write_certificate
from typeset.command import DONE, WRONG, main

FAMILIES = """\
address,name,version
asha.family@harbour.example,Asha,
tomasz.family@harbour.example,Tomasz,support
nell.family@harbour.example,Nell,
"""


@pytest.fixture
def letterbox() -> Letterbox:
    return Letterbox()


@pytest.fixture
def server(
    letterbox: Letterbox, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Controller]:
    certificate = write_certificate(tmp_path)
    controller = running(letterbox, certificate)
    monkeypatch.setenv("SSL_CERT_FILE", str(certificate))
    monkeypatch.setenv("TYPESET_MAIL_HOST", "localhost")
    monkeypatch.setenv("TYPESET_MAIL_PORT", str(controller.port))
    monkeypatch.setenv("TYPESET_MAIL_USER", USER)
    monkeypatch.setenv("TYPESET_MAIL_PASSWORD", PASSWORD)
    yield controller
    controller.stop()


def post(week: Path, *more: str) -> int:
    families = week.parent / "families.csv"
    families.write_text(FAMILIES, encoding="utf-8")
    to = week.parent / "post"
    return main(
        ["post", str(week), "--families", str(families), "--to", str(to), "--pause", "0", *more]
    )


def parsed(data: bytes) -> EmailMessage:
    message = BytesParser(policy=policy.default).parsebytes(data)
    assert isinstance(message, EmailMessage)
    return message


def pdf_of(message: EmailMessage) -> bytes:
    (part,) = message.iter_attachments()
    assert isinstance(part, EmailMessage)
    return bytes(part.get_content())


def test_a_week_is_sent_and_what_was_refused_goes_on(
    week: Path, server: Controller, letterbox: Letterbox, capsys: pytest.CaptureFixture[str]
) -> None:
    refused = "tomasz.family@harbour.example"
    letterbox.rcpt = lambda address, _: f"550 no {refused}" if address == refused else None
    assert post(week, "--send") == WRONG
    told = capsys.readouterr()
    assert "2 messages sent, 0 sent before, of 3" in told.out
    assert "families.csv:3:1: t…@harbour.example: refused: 550 no t…@harbour.example" in told.err
    letterbox.rcpt = lambda _, __: None
    assert post(week, "--send") == DONE
    again = capsys.readouterr()
    assert "1 message sent, 2 sent before, of 3" in again.out
    for private in ("asha", "tomasz", "nell", PASSWORD):
        assert private not in (told.out + told.err + again.out + again.err).lower()
    assert sorted(letterbox.addresses()) == [
        f"{name}.family@harbour.example" for name in ("asha", "nell", "tomasz")
    ]
    # The packs are those that 'make' makes and proofs, each family's own.
    printed = week.parent / "printed"
    make = ["make", str(week), "--only", "home-pack", "--to", str(printed)]
    assert main([*make, "--version", "core", "--version", "support"]) == DONE
    assert main(["proof", str(printed)]) == DONE
    for (address,), data in letterbox.got:
        message = parsed(data)
        assert message["To"] == address and message["X-Unsent"] is None
        file = "home-pack-support.pdf" if "tomasz" in address else "home-pack.pdf"
        assert pdf_of(message) == (printed / file).read_bytes()
    left = [file for file in (week.parent / "post").rglob("*") if file.is_file()]
    assert {file.name for file in left} == {"key", "journal.jsonl"}
    assert not any(b"family@" in f.read_bytes() or b".family" in f.read_bytes() for f in left)
    assert post(week) == DONE
    assert "3 messages of these went out" in capsys.readouterr().err


def test_a_try_goes_to_the_teacher_alone(
    week: Path, server: Controller, letterbox: Letterbox, capsys: pytest.CaptureFixture[str]
) -> None:
    assert post(week, "--try", "teacher@harbour.example") == DONE
    assert "went to t…@harbour.example" in capsys.readouterr().out
    (((address,), data),) = letterbox.got
    assert address == "teacher@harbour.example"
    assert parsed(data)["To"] == address and b"asha.family" not in data
    assert not (week.parent / "post").exists()
    assert post(week, "--try", "teacher") == WRONG
    assert "--try: this is no address" in capsys.readouterr().err


def test_without_a_server_nothing_is_made(
    week: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.delenv("TYPESET_MAIL_HOST", raising=False)
    assert post(week, "--send") == WRONG
    assert "set TYPESET_MAIL_HOST" in capsys.readouterr().err
    assert not (week.parent / "post").exists()
