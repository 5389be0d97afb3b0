"""The webhook server: one path on a local port, POST only, behind a proxy that ends TLS.

It answers 200 only after the turn is committed; after anything else Telegram delivers the update again. No body is read before the
secret is verified.
"""

from __future__ import annotations

import asyncio
import hmac
from collections.abc import Awaitable, Callable
from http import HTTPStatus
from typing import Final

from companion.base.settings import Webhook
from companion.channels.telegram.settings import CannotHook

SECRET_HEADER: Final = "x-telegram-bot-api-secret-token"
"""Bot API, setWebhook, secret_token (read)."""

HEAD_MOST: Final = 8192
"""Most bytes of a request's head, our choice."""

BODY_MOST: Final = 2**20
"""Most bytes of an update, our choice: a text has at most 4096 characters, so the largest is some tens of thousands."""

HOOK_SECONDS: Final = 10.0
"""Time limit for reading a request, and again for writing its response: our choice."""

HOOK_CONNECTIONS: Final = 100
"""Most concurrent connections, the most that setWebhook lets Telegram open (memory); further ones are closed at once."""

TakeUpdate = Callable[[bytes], Awaitable[int]]
"""Takes an update as JSON; returns the response status, 200 once it is committed."""


class WebhookServer:
    """The server. ``take`` is called on the loop, once per request."""

    def __init__(self, at: Webhook, take: TakeUpdate, seconds: float = HOOK_SECONDS) -> None:
        self._at, self._take, self._seconds = at, take, seconds
        self._server: asyncio.Server | None = None
        self._busy: dict[asyncio.Task[None], asyncio.StreamWriter] = {}
        self._taking: set[asyncio.Task[None]] = set()
        self.port = at.port

    async def start(self) -> None:
        """Start listening. Raises CannotHook if the port can't be used."""
        try:
            self._server = await asyncio.start_server(self._met, self._at.host, self._at.port, limit=HEAD_MOST)
        except OSError as error:
            raise CannotHook(f"can't listen on port {self._at.port} of {self._at.host}: {error.strerror}") from error
        self.port = self._server.sockets[0].getsockname()[1]

    async def close(self, seconds: float) -> None:
        """Stop accepting; requests being handled have so many seconds to finish, all others are cut off at once."""
        if self._server is not None:
            self._server.close()
        for task, writer in self._busy.items():
            if task not in self._taking:
                writer.transport.abort()
        if self._taking and seconds:
            await asyncio.wait(self._taking, timeout=seconds)

    async def ended(self) -> None:
        """Cut off what remains and return when every request has ended."""
        for writer in self._busy.values():
            writer.transport.abort()
        await asyncio.gather(*self._busy, return_exceptions=True)

    async def _met(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        task = asyncio.current_task()
        assert task is not None
        if len(self._busy) >= HOOK_CONNECTIONS:
            writer.transport.abort()
            return
        self._busy[task] = writer
        try:
            async with asyncio.timeout(self._seconds):
                asked = await self._read(reader)
            if isinstance(asked, bytes):
                self._taking.add(task)
                asked = HTTPStatus(await self._take(asked))
            async with asyncio.timeout(self._seconds):
                writer.write(_answer(asked))
                await writer.drain()
                if asked is HTTPStatus.REQUEST_ENTITY_TOO_LARGE and writer.can_write_eof():
                    writer.write_eof()  # drain what still arrives, or a reset could lose the response
                    while await reader.read(HEAD_MOST):
                        pass
                writer.close()
                await writer.wait_closed()
        except (TimeoutError, asyncio.IncompleteReadError, asyncio.LimitOverrunError, ConnectionError):
            pass  # slow, too long or gone: cut off below
        finally:
            writer.transport.abort()
            self._busy.pop(task)
            self._taking.discard(task)

    async def _read(self, reader: asyncio.StreamReader) -> bytes | HTTPStatus:
        """Return the body of a valid request, else the error status."""
        first, *lines = (await reader.readuntil(b"\r\n\r\n")).decode("latin-1").split("\r\n")
        words = first.split(" ")
        heads = [(name.strip().lower(), value.strip()) for name, _, value in (line.partition(":") for line in lines if line)]
        given = dict(heads)
        if len(words) != 3 or not words[2].startswith("HTTP/1.") or len([name for name, _ in heads if name == "content-length"]) > 1:
            return HTTPStatus.BAD_REQUEST
        if words[1] != self._at.path:
            return HTTPStatus.NOT_FOUND
        if words[0] != "POST":
            return HTTPStatus.METHOD_NOT_ALLOWED
        if not hmac.compare_digest(given.get(SECRET_HEADER, "").encode("latin-1"), self._at.secret.encode("ascii")):
            return HTTPStatus.FORBIDDEN
        length = given.get("content-length", "")
        if not (length.isascii() and length.isdigit()) or "transfer-encoding" in given:
            return HTTPStatus.LENGTH_REQUIRED
        if len(length) > 9 or int(length) > BODY_MOST:
            return HTTPStatus.REQUEST_ENTITY_TOO_LARGE
        return await reader.readexactly(int(length))


def _answer(status: HTTPStatus) -> bytes:
    allow = "Allow: POST\r\n" if status is HTTPStatus.METHOD_NOT_ALLOWED else ""
    return f"HTTP/1.1 {status.value} {status.phrase}\r\n{allow}Content-Length: 0\r\nConnection: close\r\n\r\n".encode("latin-1")
