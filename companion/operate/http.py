"""A few pages over HTTP on loopback, for monitoring: GET only, small, with slow clients cut off."""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import AsyncIterator, Callable
from dataclasses import dataclass
from http import HTTPStatus
from typing import Final

HOST: Final = "127.0.0.1"
HEAD_MOST: Final = 8192
"""Most bytes of a request, our choice: a scraper's is a few hundred."""

PAGE_SECONDS: Final = 5.0
"""Time limit for a request and its response together: our choice."""

PAGE_CONNECTIONS: Final = 16
"""Most concurrent connections; further ones are closed at once. Our choice."""


@dataclass(frozen=True, slots=True)
class HttpResponse:
    """One response."""

    status: int
    body: bytes
    type: str = "text/plain; charset=utf-8"


Pages = Callable[[str], HttpResponse | None]
"""Returns the response for a path, or None. Called on the loop, so it must be quick."""


class CannotListen(Exception):
    """The port can't be used; the message says why, in one line."""


@contextlib.asynccontextmanager
async def serving(port: int, pages: Pages, seconds: float = PAGE_SECONDS) -> AsyncIterator[int]:
    """Serve pages on 127.0.0.1 inside this context; yields the port (chosen by the system if 0). Raises CannotListen."""
    busy: dict[asyncio.Task[None], asyncio.StreamWriter] = {}

    async def met(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        """Serve one connection."""
        task = asyncio.current_task()
        assert task is not None
        if len(busy) >= PAGE_CONNECTIONS:
            writer.transport.abort()
            return
        busy[task] = writer
        try:
            async with asyncio.timeout(seconds):
                writer.write(_page(await reader.readuntil(b"\r\n\r\n"), pages))
                await writer.drain()
                writer.close()
                await writer.wait_closed()
        except (TimeoutError, asyncio.IncompleteReadError, asyncio.LimitOverrunError, ConnectionError):
            pass  # slow, too long or gone: cut off below
        finally:
            writer.transport.abort()
            del busy[task]

    try:
        server = await asyncio.start_server(met, HOST, port, limit=HEAD_MOST)
    except (OSError, OverflowError) as error:
        raise CannotListen(f"can't serve metrics on port {port} of {HOST}: {error}") from error
    try:
        yield server.sockets[0].getsockname()[1]
    finally:
        server.close()
        for writer in busy.values():  # Python 3.11 would log a cancelled handler as an error
            writer.transport.abort()
        await asyncio.gather(*busy, return_exceptions=True)
        await server.wait_closed()


def _page(request: bytes, pages: Pages) -> bytes:
    words = request.split(b"\r\n", 1)[0].split(b" ")
    if len(words) != 3 or not words[2].startswith(b"HTTP/1."):
        return _written(HttpResponse(400, b"not a request\n"))
    if words[0] != b"GET":
        return _written(HttpResponse(405, b"only GET\n"))
    return _written(pages(words[1].partition(b"?")[0].decode("latin-1")) or HttpResponse(404, b"nothing here\n"))


def _written(answer: HttpResponse) -> bytes:
    allow = "Allow: GET\r\n" if answer.status == 405 else ""
    head = (f"HTTP/1.1 {answer.status} {HTTPStatus(answer.status).phrase}\r\nContent-Type: {answer.type}\r\n{allow}"
            f"Content-Length: {len(answer.body)}\r\nConnection: close\r\n\r\n")
    return head.encode("latin-1") + answer.body
