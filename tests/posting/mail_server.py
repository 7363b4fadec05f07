"""A real mail server on the loopback, with TLS and login, that can be told to misbehave."""

from __future__ import annotations

import socket
import ssl
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path
from typing import Any

from aiosmtpd.controller import Controller
from aiosmtpd.smtp import SMTP, AuthResult, Envelope, LoginPassword, Session
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import NameOID

USER, PASSWORD = "gulls", "a long password"


def write_certificate(folder: Path, host: str = "localhost") -> Path:
    """A certificate that signs itself, with its key, in one PEM file."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, host)])
    now = datetime.now(UTC)
    names: list[x509.GeneralName] = [x509.DNSName(host)]
    if host == "localhost":
        names.append(x509.IPAddress(ip_address("127.0.0.1")))
    certificate = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - timedelta(days=1))
        .not_valid_after(now + timedelta(days=1))
        .add_extension(x509.SubjectAlternativeName(names), critical=False)
        .add_extension(x509.BasicConstraints(ca=True, path_length=None), critical=True)
        .sign(key, hashes.SHA256())
    )
    file = folder / f"{host}.pem"
    file.write_bytes(
        certificate.public_bytes(serialization.Encoding.PEM)
        + key.private_bytes(
            serialization.Encoding.PEM,
            serialization.PrivateFormat.PKCS8,
            serialization.NoEncryption(),
        )
    )
    return file


@dataclass(slots=True)
class Letterbox:
    """What the server got, and how it behaves: `rcpt` and `data` may give another answer."""

    got: list[tuple[tuple[str, ...], bytes]] = field(default_factory=list)
    rcpt: Callable[[str, int], str | None] = lambda _address, _time: None
    data: Callable[[str, int], str | None] = lambda _address, _time: None
    tried: Counter[str] = field(default_factory=Counter)
    logins: int = 0
    slow_s: float = 0.0
    knows_utf8: bool = True

    def addresses(self) -> list[str]:
        """Every recipient, in the order of messages."""
        return [address for addresses, _ in self.got for address in addresses]

    def login(
        self, _server: SMTP, _session: Session, _envelope: Envelope, _mechanism: str, data: Any
    ) -> AuthResult:
        """Whether the user may send."""
        is_right = isinstance(data, LoginPassword) and (data.login, data.password) == (
            USER.encode(),
            PASSWORD.encode(),
        )
        self.logins += is_right
        return AuthResult(success=is_right, handled=False)

    async def handle_RCPT(  # noqa: N802
        self, server: SMTP, session: Session, envelope: Envelope, address: str, options: list[str]
    ) -> str:
        self.tried[address] += 1
        answer = self.rcpt(address, self.tried[address])
        if answer == "drop":
            _drop(server)
            return "421 gone"
        if answer is None:
            envelope.rcpt_tos.append(address)
        return answer or "250 OK"

    async def handle_DATA(  # noqa: N802
        self, server: SMTP, session: Session, envelope: Envelope
    ) -> str:
        assert session.authenticated
        assert server.transport is not None
        assert server.transport.get_extra_info("cipher") is not None
        time.sleep(self.slow_s)
        address = str(envelope.rcpt_tos[0])
        answer = self.data(address, self.tried[address])
        if answer in (None, "drop after"):
            content = envelope.original_content or b""
            self.got.append((tuple(map(str, envelope.rcpt_tos)), content))
        if answer in ("drop", "drop after"):
            _drop(server)
            return "421 gone"
        return answer or "250 OK"


def _drop(server: SMTP) -> None:
    assert server.transport is not None
    server.transport.close()


def running(
    letterbox: Letterbox, certificate: Path | None, size: int = 33_554_432, at_once: bool = False
) -> Controller:
    """The server on a free port, started; whoever asks stops it. Without a certificate it
    offers no encryption."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    if certificate is not None:
        context.load_cert_chain(certificate)
    by_starttls = certificate is not None and not at_once
    controller = Controller(
        letterbox,
        hostname="127.0.0.1",
        port=_free_port(),
        ssl_context=context if at_once else None,
        tls_context=context if by_starttls else None,
        require_starttls=by_starttls,
        auth_required=certificate is not None,
        auth_require_tls=by_starttls,
        authenticator=letterbox.login,
        enable_SMTPUTF8=letterbox.knows_utf8,
        data_size_limit=size,
    )
    controller.start()
    return controller


def _free_port() -> int:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])
