"""`typeset post` without --send: drafts, read again with the standard library."""

from __future__ import annotations

import stat
from contextlib import redirect_stderr, redirect_stdout
from email import policy
from email.message import EmailMessage
from email.parser import BytesParser
from io import BytesIO, StringIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from typeset.command import DONE, WRONG, main
from typeset.press import posting
from typeset.press.building import Result
from typeset.press.making import Order, make_week
from typeset.reading.content import VERSIONS

FAMILIES = """\
address,name,version,layout
asha.family@harbour.example,Asha,,
odette@bücher.example,Odétte & <Nell>,support,
zoë@harbour.example,Zoë,,large-print-18
idris@quay.example,,,
"""
# RFC 5322 section 2.1.1: octets of a line without its end.
LONGEST_LINE = 998


@pytest.fixture
def families(tmp_path: Path) -> Path:
    file = tmp_path / "families.csv"
    file.write_text(FAMILIES, encoding="utf-8")
    return file


@pytest.fixture(scope="module")
def posted(lasting_week: Path) -> tuple[Path, str]:
    """The week whose drafts are written, and all that was said."""
    file = lasting_week.parent / "families.csv"
    file.write_text(FAMILIES, encoding="utf-8")
    out = StringIO()
    with redirect_stdout(out), redirect_stderr(out):
        assert post(lasting_week, file) == DONE
    return lasting_week, out.getvalue()


def post(week: Path, families: Path, *more: str) -> int:
    to = week.parent / "post"
    return main(["post", str(week), "--families", str(families), "--to", str(to), *more])


def drafts(week: Path) -> list[bytes]:
    folder = week.parent / "post" / "drafts"
    return [file.read_bytes() for file in sorted(folder.iterdir())]


def parsed(data: bytes) -> EmailMessage:
    message = BytesParser(policy=policy.default).parsebytes(data)
    assert isinstance(message, EmailMessage)
    assert [part.defects for part in message.walk() if part.defects] == []
    return message


def attached(message: EmailMessage) -> EmailMessage:
    (part,) = message.iter_attachments()
    assert isinstance(part, EmailMessage)
    return part


def pdf_of(message: EmailMessage) -> bytes:
    content = attached(message).get_content()
    assert isinstance(content, bytes)
    return content


def text_of(message: EmailMessage, kind: str) -> str:
    part = message.get_body((kind,))
    assert part is not None
    return str(part.get_content())


def words(pdf: bytes) -> str:
    return " ".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages)


def test_a_draft_a_family(posted: tuple[Path, str]) -> None:
    week, told = posted
    assert "4 messages to look at and send" in told
    folder = week.parent / "post" / "drafts"
    assert [file.name for file in sorted(folder.iterdir())] == [f"000{n}.eml" for n in range(1, 5)]
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert {stat.S_IMODE(file.stat().st_mode) for file in folder.iterdir()} == {0o600}
    messages = [parsed(data) for data in drafts(week)]
    assert [message["To"] for message in messages] == [
        "asha.family@harbour.example",
        "odette@xn--bcher-kva.example",
        "zoë@harbour.example",
        "idris@quay.example",
    ]
    for message in messages:
        assert message["X-Unsent"] == "1" and message["Date"] and message["Message-ID"]
        assert message["Subject"] == "Maths at home: Ropes & floats"
        assert message["From"] == "Gull class <gulls@harbour.example>"
        assert message["Cc"] is None and message["Bcc"] is None
        assert len(message.get_all("To", [])) == 1
        assert attached(message).get_filename() == "ropes-home-pack.pdf"
        assert attached(message).get_content_type() == "application/pdf"
    assert len({message["Message-ID"] for message in messages}) == 4


def test_lines_are_as_long_as_the_standard_allows(posted: tuple[Path, str]) -> None:
    week, _ = posted
    for data in drafts(week):
        lines = data.split(b"\r\n")
        assert max(map(len, lines)) <= LONGEST_LINE
        assert not any(b"\n" in line or b"\r" in line for line in lines)
    # Only an address with letters beyond A to Z needs more than seven bits.
    assert [data.isascii() for data in drafts(week)] == [True, True, False, True]


def test_both_parts_say_the_same_and_names_are_escaped(posted: tuple[Path, str]) -> None:
    week, _ = posted
    first, second, _, last = (parsed(data) for data in drafts(week))
    assert text_of(first, "plain").startswith("Dear family of Asha,")
    assert "Dear family of Asha," in text_of(first, "html")
    assert "Dear family of Odétte & <Nell>," in text_of(second, "plain")
    assert "Dear family of Odétte &amp; &lt;Nell&gt;," in text_of(second, "html")
    assert "Dear family," in text_of(last, "plain") and "Dear family," in text_of(last, "html")
    for message in (first, second, last):
        for kind in ("plain", "html"):
            assert "and the answers at the end" in text_of(message, kind)
            assert "http" not in text_of(message, kind)


def test_each_family_has_its_own_pack_without_name_or_address(posted: tuple[Path, str]) -> None:
    week, _ = posted
    packs = [pdf_of(parsed(data)) for data in drafts(week)]
    assert packs[0] == packs[3] and len(set(packs)) == 3
    # The standard layout's name of the version stands at the foot; the others' does not.
    assert "tern" in words(packs[1]) and "tern" not in words(packs[0])
    assert len(PdfReader(BytesIO(packs[2])).pages) > len(PdfReader(BytesIO(packs[0])).pages)
    for pack in packs:
        for private in ("Asha", "Od", "Zo", "Idris"):
            assert private not in words(pack)
        assert b"@" not in b"".join(str(PdfReader(BytesIO(pack)).metadata).encode().split())


def test_each_combination_is_made_once(
    week: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[tuple[tuple[str, ...], tuple[str, ...]]] = []

    def make(order: Order) -> tuple[Result, ...]:
        made.append((order.layouts, order.versions))
        return make_week(order)

    monkeypatch.setattr(posting, "make_week", make)
    file = tmp_path / "families.csv"
    rows = [f"a{n}@quay.example,{VERSIONS[1 + n % 2]}" for n in range(12)]
    file.write_text("\n".join(["address,version", *rows]), encoding="utf-8")
    assert post(week, file) == DONE
    assert made == [(("standard",), VERSIONS[1:])]
    assert len({pdf_of(parsed(data)) for data in drafts(week)}) == 2


def test_names_and_addresses_stand_nowhere_else(posted: tuple[Path, str]) -> None:
    week, told = posted
    for file in (week.parent / "post").rglob("*"):
        assert not any(word in file.name.lower() for word in ("asha", "odette", "zo", "idris"))
        # The journal's key is 32 bytes of chance, in which any letter may stand.
        if file.is_file() and file.parent.name != "drafts" and file.name != "key":
            assert not any(
                word in file.read_bytes().lower() for word in (b"asha", b"odette", b"idris", b"@")
            )
    assert "asha" not in told.lower() and "@" not in told


def test_answers_can_be_left_out(week: Path, families: Path) -> None:
    families.write_text("address\nidris@quay.example\n", encoding="utf-8")
    assert post(week, families, "--answers", "none") == DONE
    message = parsed(drafts(week)[0])
    assert "answers" not in text_of(message, "plain")
    assert "The answers are not in this pack" in " ".join(words(pdf_of(message)).split())


def test_a_family_taken_out_has_no_draft_left(week: Path, families: Path) -> None:
    assert post(week, families) == DONE
    families.write_text("address\nidris@quay.example\n", encoding="utf-8")
    assert post(week, families) == DONE
    (only,) = drafts(week)
    assert parsed(only)["To"] == "idris@quay.example"


def test_forget_removes_everything(
    week: Path, families: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert post(week, families) == DONE
    to = week.parent / "post"
    assert main(["post", str(week), "--to", str(to), "--forget"]) == DONE
    assert list(to.iterdir()) == []
    assert "removed from" in capsys.readouterr().out
    assert main(["post", str(week), "--to", str(to), "--forget"]) == DONE
    assert "nothing to forget" in capsys.readouterr().out


def test_a_message_that_is_too_large_names_its_heavy_part(
    week: Path, families: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert post(week, families) == DONE
    largest = max(len(data) for data in drafts(week))
    capsys.readouterr()
    # A draft has the line 'X-Unsent: 1' more than the message.
    assert post(week, families, "--largest", str(largest)) == DONE
    before = drafts(week)
    assert post(week, families, "--largest", "50kB") == WRONG
    told = capsys.readouterr().err
    assert "the message with the pack in core" in told and "more than 0.1 MB" in told
    assert "which electronic mail makes" in told
    assert drafts(week) == before


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ("sender: Gull class <gulls@harbour.example>", "the key 'sender' is missing"),
        ("sender: Gull class", "the address holds a space"),
        ('sender: "Gu\\u200blls <gulls@harbour.example>"', "a character that is not seen"),
        ("sender: gulls@harbour.example\nsubject: '{{ pupil }}'", "unknown name 'pupil'"),
        ("sender: gulls@harbour.example\nsubject: '{{ week'", "this cannot be read"),
        (f"sender: gulls@harbour.example\nsubject: {'a' * 121}", "more than 120 characters"),
    ],
)
def test_a_week_that_cannot_be_posted(
    change: str, told: str, week: Path, families: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = week / "week.yaml"
    typed = "sender: Gull class <gulls@harbour.example>\n"
    new = "" if change + "\n" == typed else f"{change}\n"
    file.write_text(file.read_text(encoding="utf-8").replace(typed, new), encoding="utf-8")
    assert post(week, families) == WRONG
    assert told in capsys.readouterr().err
    assert not (week.parent / "post").exists()


def test_a_subject_cannot_begin_a_header(week: Path, families: Path) -> None:
    """YAML knows line breaks; a subject has none left."""
    families.write_text("address\nidris@quay.example\n", encoding="utf-8")
    with (week / "week.yaml").open("a", encoding="utf-8") as stream:
        stream.write('subject: "Ropes\\r\\nBcc: all@harbour.example"\n')
    assert post(week, families) == DONE
    message = parsed(drafts(week)[0])
    assert message["Bcc"] is None
    assert message["Subject"] == "Ropes Bcc: all@harbour.example"


@pytest.mark.parametrize(
    ("file", "text", "told"),
    [
        ("message.txt", "Dear {{ pupil }},\n\nsee {{ fil }}\n", ":3:1: unknown name 'fil'; did"),
        ("message.html", "<p>{{ surname }}</p>", ":1:1: unknown name 'surname'"),
        ("message.txt", "{{ pupil.__class__ }}", ":1:1: the wording does more than name things"),
        ("message.html", "{% for each in range(9) %}x{% endfor %}", "does more than name things"),
        ("message.txt", "\n{% if pupil %}", ":2:1: this cannot be read"),
    ],
)
def test_wording_that_is_wrong(
    file: str,
    text: str,
    told: str,
    week: Path,
    families: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    (week / "layouts").mkdir()
    (week / "layouts" / file).write_text(text, encoding="utf-8")
    assert post(week, families) == WRONG
    assert told in capsys.readouterr().err
    assert not (week.parent / "post").exists()


def test_wording_of_ones_own(week: Path, families: Path) -> None:
    (week / "layouts").mkdir()
    own = "Ahoy {{ pupil }}, {{ class }} sends {{ file }}.\n.\n" + "long " * 400
    (week / "layouts" / "message.txt").write_text(own, encoding="utf-8")
    assert post(week, families) == DONE
    data = drafts(week)[0]
    assert max(map(len, data.split(b"\r\n"))) <= LONGEST_LINE
    text = text_of(parsed(data), "plain")
    assert text.splitlines()[:2] == ["Ahoy Asha, Gulls sends ropes-home-pack.pdf.", "."]


def test_misuse(week: Path, families: Path) -> None:
    for more in ((), ("--families", str(families), "--send", "--forget")):
        with pytest.raises(SystemExit) as ended:
            main(["post", str(week), *more])
        assert ended.value.code == 2
    with pytest.raises(SystemExit):
        post(week, families, "--largest", "many")
