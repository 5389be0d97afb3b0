"""A small HTTP/1.1 server on loopback, standard library only: keep-alive, form, multipart and JSON bodies."""

from __future__ import annotations

import asyncio
import contextlib
import email
import email.policy
import json
from collections.abc import Awaitable, Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import parse_qsl, urlsplit


@dataclass(frozen=True, slots=True)
class Request:
    """One request: its path, its fields (decoded from JSON where they are), its files; ``closed`` returns when the
    other side has gone away."""

    path: str
    fields: Mapping[str, Any]
    files: Mapping[str, bytes]
    closed: Callable[[], Awaitable[None]] = field(repr=False)


@dataclass(frozen=True, slots=True)
class Response:
    """An answer; ``drop`` closes the connection instead. ``more``: what follows the body, whose length is not declared then."""

    status: int
    body: bytes
    kind: str = "application/json"
    drop: bool = False
    more: Iterator[bytes] | None = None


Answer = Callable[[Request], Awaitable[Response]]


class Server:
    """Answers requests on 127.0.0.1 while it is entered; ``port`` 0 takes a free one."""

    def __init__(self, answer: Answer, port: int = 0) -> None:
        self._answer, self.port = answer, port
        self._server: asyncio.Server | None = None
        self._connections: set[asyncio.Task[None]] = set()

    async def __aenter__(self) -> Server:
        self._server = await asyncio.start_server(self._connected, "127.0.0.1", self.port, limit=2**20)
        self.port = self._server.sockets[0].getsockname()[1]
        return self

    async def __aexit__(self, *_: object) -> None:
        assert self._server is not None
        self._server.close()
        for connection in list(self._connections):
            connection.cancel()
        await asyncio.gather(*self._connections, return_exceptions=True)
        await self._server.wait_closed()

    async def _connected(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        task = asyncio.current_task()
        assert task is not None
        self._connections.add(task)
        try:
            with contextlib.suppress(ConnectionError, asyncio.IncompleteReadError, asyncio.CancelledError):
                while await self._exchange(reader, writer):
                    pass
        finally:
            self._connections.discard(task)
            writer.close()
            with contextlib.suppress(ConnectionError):
                await writer.wait_closed()

    async def _exchange(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> bool:
        head = await reader.readuntil(b"\r\n\r\n")
        first, _, rest = head.decode("latin-1").partition("\r\n")
        _, target, _ = first.split(" ", 2)
        headers = email.message_from_string(rest, policy=email.policy.HTTP)
        body = await reader.readexactly(int(headers.get("content-length", 0)))

        async def closed() -> None:
            await reader.read(1)  # nothing more comes before the answer, so this returns at the end only

        url = urlsplit(target)
        fields, files = _parts(headers.get("content-type", ""), body)
        fields = {**_decoded(dict(parse_qsl(url.query))), **fields}
        response = await self._answer(Request(url.path, fields, files, closed))
        if response.drop:
            return False
        length = f"Content-Length: {len(response.body)}" if response.more is None else "Connection: close"
        head_out = f"HTTP/1.1 {response.status} .\r\nContent-Type: {response.kind}\r\n{length}\r\n\r\n"
        writer.write(head_out.encode() + response.body)
        await writer.drain()
        if response.more is not None:
            for part in response.more:
                writer.write(part)
                await writer.drain()
            return False
        return bool(headers.get("connection", "").lower() != "close")


def _parts(kind: str, body: bytes) -> tuple[dict[str, Any], dict[str, bytes]]:
    """The fields and files of a body."""
    if kind.startswith("multipart/form-data"):
        message = email.message_from_bytes(f"Content-Type: {kind}\r\n\r\n".encode() + body, policy=email.policy.HTTP)
        texts: dict[str, str] = {}
        files: dict[str, bytes] = {}
        for part in message.iter_parts():
            name, content = str(part.get_param("name", header="content-disposition")), part.get_payload(decode=True)
            assert isinstance(content, bytes)
            if part.get_filename() is None:
                texts[name] = content.decode()
            else:
                files[name] = content
        return _decoded(texts), files
    if kind.startswith("application/json"):
        return json.loads(body or b"{}"), {}
    return _decoded(dict(parse_qsl(body.decode(), keep_blank_values=True))), {}


_WORDS = {"text", "caption", "callback_query_id", "file_id", "message"}
"""Fields that stay as they are written, even where they look like JSON."""


def _decoded(fields: Mapping[str, str]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in fields.items():
        found[name] = value
        if name not in _WORDS:
            with contextlib.suppress(ValueError):
                found[name] = json.loads(value)
    return found
