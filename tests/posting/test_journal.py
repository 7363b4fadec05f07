"""The journal: what it holds, what it survives, and that it names nobody."""

from __future__ import annotations

import json
import stat
from pathlib import Path

import pytest

from typeset.errors import OutputError
from typeset.posting.addresses import Address
from typeset.posting.journal import Entry, Journal, State, forget

ASHA, KOFI = Address("asha", "harbour.example"), Address("kofi", "harbour.example")


def test_what_is_recorded_is_there_in_another_run(tmp_path: Path) -> None:
    with Journal(tmp_path) as journal:
        digest, other = journal.digest(ASHA), journal.digest(KOFI)
        assert journal.entry(digest) == Entry(State.LATER)
        journal.record(digest, Entry(State.HANDED))
        journal.record(digest, Entry(State.SENT, "250 “OK”"))
        journal.record(other, Entry(State.HANDED))
    with Journal(tmp_path) as journal:
        assert journal.digest(ASHA) == digest
        assert journal.entry(digest) == Entry(State.SENT, "250 “OK”")
        assert journal.entry(other) == Entry(State.HANDED)


def test_it_names_nobody_and_is_for_its_owner(tmp_path: Path) -> None:
    with Journal(tmp_path) as journal:
        journal.record(journal.digest(ASHA), Entry(State.SENT))
    folder = tmp_path / "journal"
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    for file in folder.iterdir():
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
        assert b"asha" not in file.read_bytes() and b"harbour" not in file.read_bytes()


def test_another_key_gives_another_digest(tmp_path: Path) -> None:
    with Journal(tmp_path / "one") as one, Journal(tmp_path / "two") as two:
        assert one.digest(ASHA) != two.digest(ASHA)
        assert one.digest(ASHA) == one.digest(Address("ASHA", "harbour.example"))
        assert one.message_id(ASHA, KOFI) == one.message_id(ASHA, KOFI)
        assert one.message_id(ASHA, KOFI) != one.message_id(KOFI, KOFI)
        assert one.digest(ASHA)[:32] not in one.message_id(ASHA, KOFI)


def test_a_line_broken_off_anywhere_is_none(tmp_path: Path) -> None:
    with Journal(tmp_path) as journal:
        asha, kofi = journal.digest(ASHA), journal.digest(KOFI)
        journal.record(asha, Entry(State.SENT))
        # Longer than the line that will stand in its place.
        journal.record(kofi, Entry(State.HANDED, "450" * 9))
    file = tmp_path / "journal" / "journal.jsonl"
    whole = file.read_bytes()
    begin = whole.index(b"\n") + 1
    for end in range(begin, len(whole)):
        file.write_bytes(whole[:end])
        with Journal(tmp_path) as journal:
            assert journal.entry(asha).state is State.SENT
            assert journal.entry(kofi).state is State.LATER
            journal.record(kofi, Entry(State.REFUSED, "550"))
        lines = file.read_text(encoding="utf-8").splitlines()
        assert [json.loads(line)["state"] for line in lines] == ["sent", "refused"]


def test_two_runs_at_once_are_refused(tmp_path: Path) -> None:
    with Journal(tmp_path), pytest.raises(OutputError, match="another run is posting"):
        Journal(tmp_path)
    with Journal(tmp_path):
        pass


def test_a_journal_without_its_key_is_refused(tmp_path: Path) -> None:
    """With a new key every family would look like a new one."""
    with Journal(tmp_path) as journal:
        journal.record(journal.digest(ASHA), Entry(State.SENT))
    (tmp_path / "journal" / "key").unlink()
    with pytest.raises(OutputError, match="--forget begins anew"):
        Journal(tmp_path)


@pytest.mark.parametrize("line", ["nonsense", "[]", '{"family": "x"}', '{"state": "gone"}'])
def test_a_journal_that_cannot_be_read_is_refused(line: str, tmp_path: Path) -> None:
    with Journal(tmp_path):
        pass
    (tmp_path / "journal" / "journal.jsonl").write_text(line + "\n", encoding="utf-8")
    with pytest.raises(OutputError, match="--forget removes it"):
        Journal(tmp_path)
    assert forget(tmp_path) and not forget(tmp_path)
    with Journal(tmp_path) as journal:
        assert journal.entry(journal.digest(ASHA)) == Entry(State.LATER)
