"""The school's mail server: who we are to it, and a connection whose certificate is checked."""

from __future__ import annotations

import importlib
import importlib.util
import smtplib
import socket
import ssl
import time
from collections.abc import Mapping
from dataclasses import dataclass, field

from typeset.errors import OutputError
from typeset.posting.addresses import without_addresses

HOST, PORT, USER = "TYPESET_MAIL_HOST", "TYPESET_MAIL_PORT", "TYPESET_MAIL_USER"
PASSWORD = "TYPESET_MAIL_PASSWORD"
# What the password is called in the system's keyring.
KEYRING_SERVICE = "typeset"
# RFC 8314: submission with STARTTLS, and with TLS from the first byte.
STARTTLS_PORT, TLS_PORT = 587, 465
_TRIES = 3


@dataclass(frozen=True, slots=True)
class Server:
    """Where messages are handed over. On port 465 TLS begins at once, elsewhere by STARTTLS;
    without TLS nothing is ever sent."""

    host: str
    port: int
    user: str
    password: str = field(repr=False)
    # How long a server may take to answer; RFC 5321 section 4.5.3.2 has minutes for its parts.
    timeout_s: float = 120.0
    # Between tries to reach it.
    wait_s: float = 3.0
    # None for the port's own way.
    tls_at_once: bool | None = None


def server_of(environment: Mapping[str, str]) -> Server:
    """The server that the environment names.

    Raises OutputError, without any value of it, where something is missing.
    """
    for name in (HOST, USER):
        if not environment.get(name):
            raise OutputError(f"to send, set {name} in the environment (and {USER}, {PASSWORD})")
    port = environment.get(PORT, str(STARTTLS_PORT))
    if not (port.isascii() and port.isdigit() and 0 < int(port) < 65536):
        raise OutputError(f"{PORT} must be a number such as {STARTTLS_PORT} or {TLS_PORT}")
    user = environment[USER]
    password = environment.get(PASSWORD) or _from_keyring(user)
    if not password:
        where = f"set {PASSWORD}, or keep it in the system's keyring under '{KEYRING_SERVICE}'"
        raise OutputError(f"there is no password for the mail server; {where}")
    return Server(environment[HOST], int(port), user, password)


def _from_keyring(user: str) -> str:
    """The password in the system's keyring; empty where the library is not installed."""
    if importlib.util.find_spec("keyring") is None:
        return ""
    keyring = importlib.import_module("keyring")
    try:
        return keyring.get_password(KEYRING_SERVICE, user) or ""
    except Exception as error:  # Its many backends raise errors of their own.
        raise OutputError(f"the system's keyring fails ({type(error).__name__})") from error


def connected(server: Server) -> smtplib.SMTP:
    """A connection, encrypted and logged in.

    Raises OutputError where the certificate is not trusted or the login refused, and where
    the server is not reached in three tries.
    """
    why = ""
    for attempt in range(_TRIES):
        if attempt:
            time.sleep(server.wait_s)
        try:
            return _connected(server)
        except ssl.SSLCertVerificationError as error:
            what = f"the certificate of {server.host} is not trusted ({error.verify_message})"
            raise OutputError(f"{what}; nothing was sent to it") from error
        except smtplib.SMTPAuthenticationError as error:
            told = words_of(error.smtp_error)
            raise OutputError(
                f"{server.host} refuses the login: {error.smtp_code} {told}"
            ) from None
        except smtplib.SMTPNotSupportedError as error:
            what = f"{server.host} offers no encryption or no login on port {server.port}"
            raise OutputError(f"{what}; nothing was sent to it") from error
        except (OSError, smtplib.SMTPException) as error:
            why = _why(error)
    raise OutputError(f"{server.host} cannot be reached on port {server.port}: {why}")


def _why(error: Exception) -> str:
    if isinstance(error, smtplib.SMTPResponseException):
        return f"{error.smtp_code} {words_of(error.smtp_error)}"
    return without_addresses(str(error)) or type(error).__name__


def _connected(server: Server) -> smtplib.SMTP:
    # Checks the certificate and the name in it.
    context = ssl.create_default_context()
    at_once = server.port == TLS_PORT if server.tls_at_once is None else server.tls_at_once
    # The name that is said in greeting; the machine's own would tell more than is needed.
    smtp = (
        smtplib.SMTP_SSL(
            server.host, server.port, "[127.0.0.1]", timeout=server.timeout_s, context=context
        )
        if at_once
        else smtplib.SMTP(server.host, server.port, "[127.0.0.1]", timeout=server.timeout_s)
    )
    try:
        if not at_once:
            smtp.starttls(context=context)
        # The last line of a message is sent by itself; the system would hold it back a while.
        assert smtp.sock is not None  # It is connected.
        smtp.sock.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        smtp.login(server.user, server.password)
    except BaseException:
        smtp.close()
        raise
    return smtp


def words_of(answer: bytes | str) -> str:
    """What a server said, on one line, short, and with addresses shortened."""
    text = answer.decode("utf-8", "replace") if isinstance(answer, bytes) else answer
    plain = "".join(each if each.isprintable() else " " for each in text)
    return without_addresses(plain)[:200]
