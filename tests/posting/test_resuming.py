"""Runs that are killed anywhere go on where they were."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import threading
from collections import Counter
from email import policy
from email.parser import BytesParser
from pathlib import Path

import pytest

from tests.posting.mail_server import Letterbox, running, write_certificate
from tests.posting.one_run import VERSIONS, outgoing
from typeset.posting.journal import Journal, State

ROOT = Path(__file__).parents[2]
RUN = Path(__file__).with_name("one_run.py")
FAMILIES, KILLS = 200, 20


class Killer:
    """A server that ends the run beside it at a message's recipient, at its end, or a moment
    after either; told how many recipients it lets pass before."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.letterbox = Letterbox(rcpt=self.at_recipient, data=self.at_end)
        self.run: subprocess.Popen[bytes] | None = None
        self.left = -1
        self.kills: Counter[str] = Counter()
        # Whose answer was held back by a kill, and whose message was then kept.
        self.in_doubt: dict[str, bool] = {}

    def kill(self, how: str) -> None:
        assert self.run is not None
        self.kills[how] += 1
        os.kill(self.run.pid, signal.SIGKILL)

    def at_recipient(self, _address: str, _time: int) -> str | None:
        self.left -= 1
        if self.left == 0 and self.random.random() < 0.3:
            self.left = -1
            self.kill("before")
        elif self.left == 0 and self.random.random() < 0.5:
            self.left = -1
            threading.Timer(self.random.random() * 0.02, self.kill, ["anywhere"]).start()
        return None

    def at_end(self, address: str, _time: int) -> str | None:
        if self.left != 0:
            return None
        self.left = -1
        self.kill("unanswered")
        self.in_doubt[address] = self.random.random() < 0.5
        return None if self.in_doubt[address] else "drop"


@pytest.fixture
def certificate(tmp_path: Path) -> Path:
    return write_certificate(tmp_path)


def start(folder: Path, port: int, certificate: Path, count: int) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, str(RUN), str(folder), str(port), str(count)],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT), "SSL_CERT_FILE": str(certificate)},
    )


def test_each_family_has_one_message_after_twenty_kills(tmp_path: Path, certificate: Path) -> None:
    killer, folder = Killer(9), tmp_path / "post"
    controller = running(killer.letterbox, certificate)
    try:
        for _ in range(KILLS):
            # Set before the run begins: it cannot send anything unnoticed.
            killer.left = killer.random.randint(1, 9)
            killer.run = start(folder, controller.port, certificate, FAMILIES)
            assert killer.run.wait(60) == -signal.SIGKILL
        killer.left = -1
        assert start(folder, controller.port, certificate, FAMILIES).wait(60) == 0
    finally:
        controller.stop()
    assert sum(killer.kills.values()) == KILLS and len(killer.kills) == 3
    got = Counter(killer.letterbox.addresses())
    with Journal(folder) as journal:
        doubtful = set()
        for number in range(FAMILIES):
            to = outgoing(number).to
            state = journal.entry(journal.digest(to)).state
            assert state in (State.SENT, State.HANDED)
            assert got[to.text] == 1 or state is State.HANDED
            # Never twice, whatever happened.
            assert got[to.text] <= 1
            if state is State.HANDED:
                doubtful.add(to.text)
    # Doubtful are only those whose answer a kill held back.
    assert set(killer.in_doubt) <= doubtful
    assert len(doubtful) <= killer.kills["unanswered"] + killer.kills["anywhere"]
    assert all(got[address] == kept for address, kept in killer.in_doubt.items())
    # The teacher looks at what the account has sent, and sends what is not there: all have one.
    for address in doubtful:
        got[address] += got[address] == 0
    assert set(got.values()) == {1} and len(got) == FAMILIES
    for (address,), data in killer.letterbox.got:
        message = BytesParser(policy=policy.default).parsebytes(data)
        assert message["To"] == address
        number = int(address.removeprefix("family").split("@")[0])
        assert message["Subject"] == VERSIONS[number % 3]


def test_a_polite_request_to_stop_waits_for_the_answer(tmp_path: Path, certificate: Path) -> None:
    folder = tmp_path / "post"
    runs: list[subprocess.Popen[bytes]] = []

    def ask(_address: str, _time: int) -> None:
        os.kill(runs[0].pid, signal.SIGTERM)

    letterbox = Letterbox(data=ask, slow_s=0.1)
    controller = running(letterbox, certificate)
    try:
        runs.append(start(folder, controller.port, certificate, 3))
        assert runs[0].wait(60) != 0
    finally:
        controller.stop()
    with Journal(folder) as journal:
        states = [journal.entry(journal.digest(outgoing(n).to)).state for n in range(3)]
    assert states == [State.SENT, State.LATER, State.LATER]
    assert letterbox.addresses() == [outgoing(0).to.text]
