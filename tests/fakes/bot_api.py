"""A stand-in for the Bot API on loopback, with the true semantics of getUpdates.

Inside a test: ``async with BotApi() as api: ...``. As its own process: ``python -m tests.fakes.bot_api PORT``, told
what to do by POST /control/VERB with the verb's arguments as JSON (say, tap, press, send_kind, edit, push, sent).

What getUpdates does is from its description in the Bot API and from the error texts people report: an update is given
again until a later call carries an offset above its id; a negative offset forgets all but the last; a second poll ends
the first with 409.
"""

from __future__ import annotations

import asyncio
import base64
import json
import sys
from collections import deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any
from urllib.parse import unquote

from tests.fakes.updates import BOT, EPOCH, content_of, person, private
from tests.fakes.wire import Request, Response, Server

TOKEN = "4242:stand-in_token_of_no_bot_at_all_0123"
FIRST_UPDATE = 700_000_001

Buttons = tuple[tuple[tuple[str, str], ...], ...]


@dataclass(frozen=True, slots=True)
class Call:
    """One call of a method, as it came."""

    method: str
    params: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class SentMessage:
    """A message the bot sent. ``buttons`` are rows of (label, data); ``at`` is the loop's time."""

    chat_id: int
    message_id: int
    text: str
    buttons: Buttons = ()
    kind: str = "text"
    file: bytes = b""
    at: float = 0.0

    def data_of(self, label: str) -> str | None:
        """What the button with this label carries."""
        return next((data for row in self.buttons for name, data in row if name == label), None)


@dataclass(frozen=True, slots=True)
class Fault:
    """How one call goes wrong. ``accepted``: its work is done all the same. ``how``: answer with the status; "cut" the
    JSON; "drop" the connection; "hang" until the other side goes away."""

    status: int = 500
    description: str = "Internal Server Error"
    retry_after: int | None = None
    how: str = "answer"
    accepted: bool = False
    chat_id: int | None = None


def flood(seconds: int, chat_id: int | None = None) -> Fault:
    """429: too many requests, with the seconds to wait."""
    return Fault(429, f"Too Many Requests: retry after {seconds}", seconds, chat_id=chat_id)


class _Refusal(Exception):
    def __init__(self, status: int, description: str, retry_after: int | None = None) -> None:
        self.status, self.description, self.retry_after = status, description, retry_after


class BotApi:
    """The Bot API of one bot. ``calls`` and ``sent`` record what came; ``strict`` answers 429 above 1/s to a chat and
    30/s in all."""

    def __init__(self, token: str = TOKEN, port: int = 0, strict: bool = False) -> None:
        self.token, self.strict = token, strict
        self.calls: list[Call] = []
        self.sent: list[SentMessage] = []
        self.answered: list[str] = []
        self.blocked: set[int] = set()
        self.unknown: set[int] = set()
        self.confirmed = 0
        """The highest offset a poll has carried."""
        self._server = Server(self._answer, port)
        self._faults: dict[str, deque[Fault]] = {}
        self._waiting: list[dict[str, Any]] = []
        self._next_update, self._next_message, self._next_query = FIRST_UPDATE, 1, 1
        self._allowed: list[str] = []
        self._changed = asyncio.Condition()
        self._poll = 0
        self._files: dict[str, bytes] = {}
        self.more_of: dict[str, Iterator[bytes]] = {}
        """What follows of a file, by its id, beyond the size that is declared."""
        self.webhook: Mapping[str, Any] = {}
        """What setWebhook was last called with."""

    async def __aenter__(self) -> BotApi:
        await self._server.__aenter__()
        return self

    async def __aexit__(self, *_: object) -> None:
        await self._server.__aexit__()

    @property
    def url(self) -> str:
        """What COMPANION_API_URL should be."""
        return f"http://127.0.0.1:{self._server.port}"

    @property
    def waiting(self) -> list[int]:
        """The ids of the updates that are not confirmed."""
        return [update["update_id"] for update in self._waiting]

    # what people do ---------------------------------------------------------------------------------------

    async def push(self, update: Mapping[str, Any]) -> int:
        """Add an update, with the next id unless it has one; gives its id."""
        number = update.get("update_id", self._next_update)
        self._next_update = number + 1
        if self._allowed and not any(kind in self._allowed for kind in update if kind != "update_id"):
            return int(number)
        self._waiting.append({**update, "update_id": number})
        await self._tell()
        return int(number)

    async def say(self, chat_id: int, text: str, name: str = "Sam") -> int:
        """A person writes; gives the update's id."""
        return await self.push({"message": {**self._message(chat_id, name), "text": text}})

    async def tap(self, chat_id: int, data: str, message_id: int | None = None, name: str = "Sam") -> int:
        """A person taps a button that carries this data, on the latest message unless another is named."""
        of_chat = [one.message_id for one in self.sent if one.chat_id == chat_id]
        on = message_id or (of_chat[-1] if of_chat else 1)
        query, self._next_query = str(self._next_query), self._next_query + 1
        message = {"message_id": on, "date": EPOCH, "chat": private(chat_id, name), "from": BOT, "text": "…"}
        return await self.push({"callback_query": {"id": query, "from": person(chat_id, name), "data": data,
                                                   "message": message, "chat_instance": "1"}})

    async def press(self, chat_id: int, label: str) -> int:
        """A person taps the button with this label on the latest message that has it."""
        for message in reversed(self.sent):
            if message.chat_id == chat_id and (data := message.data_of(label)) is not None:
                return await self.tap(chat_id, data, message.message_id)
        raise ValueError(f"no message in chat {chat_id} has a button {label!r}")

    async def send_kind(self, chat_id: int, kind: str, caption: str = "", name: str = "Sam") -> int:
        """A person sends a photo, video, voice, audio, document, sticker, location, contact, dice or poll."""
        content: dict[str, Any] = {kind: content_of(kind)}
        if caption:
            content["caption"] = caption
        return await self.push({"message": {**self._message(chat_id, name), **content}})

    async def edit(self, chat_id: int, text: str, message_id: int = 1, name: str = "Sam") -> int:
        """A person changes an earlier message."""
        message = {**self._message(chat_id, name), "message_id": message_id, "edit_date": EPOCH + 1, "text": text}
        return await self.push({"edited_message": message})

    async def say_in_group(self, chat_id: int, text: str, name: str = "Sam") -> int:
        """Somebody writes in a group that the bot is in."""
        message = {**self._message(7, name), "chat": {"id": chat_id, "type": "supergroup", "title": "Gym"}}
        return await self.push({"message": {**message, "text": text}})

    async def block(self, chat_id: int, name: str = "Sam") -> int:
        """A person blocks the bot."""
        self.blocked.add(chat_id)
        member = {"user": BOT, "status": "kicked", "until_date": 0}
        return await self.push({"my_chat_member": {
            "chat": private(chat_id, name), "from": person(chat_id, name), "date": EPOCH,
            "old_chat_member": {"user": BOT, "status": "member"}, "new_chat_member": member}})

    # what goes wrong, and waiting -------------------------------------------------------------------------

    def fail(self, method: str, *faults: Fault) -> None:
        """The next calls of a method go wrong, one fault each."""
        self._faults.setdefault(method.lower(), deque()).extend(faults)

    async def until_sent(self, count: int) -> list[SentMessage]:
        """Wait until the bot has sent so many messages."""
        await self._until(lambda: len(self.sent) >= count)
        return self.sent

    async def until_confirmed(self) -> None:
        """Wait until every update is confirmed."""
        await self._until(lambda: not self._waiting)

    async def until_called(self, method: str, count: int = 1) -> list[Call]:
        """Wait until a method has been called so often."""
        def calls() -> list[Call]:
            return [call for call in self.calls if call.method == method]
        await self._until(lambda: len(calls()) >= count)
        return calls()

    async def _until(self, holds: Any, seconds: float = 5.0) -> None:
        async with asyncio.timeout(seconds), self._changed:
            await self._changed.wait_for(holds)

    async def _tell(self) -> None:
        async with self._changed:
            self._changed.notify_all()

    # answering --------------------------------------------------------------------------------------------

    async def _answer(self, request: Request) -> Response:
        first, _, rest = request.path.lstrip("/").partition("/")
        if first == "control":
            return await self._control(rest, request.fields)
        if first == "file":
            return self._file(rest)
        if first != f"bot{self.token}":
            return _failure(_Refusal(401, "Unauthorized") if first.startswith("bot") and ":" in first
                            else _Refusal(404, "Not Found"))
        method = rest.lower()
        handler = getattr(self, f"_on_{method}", None)
        params = {**request.fields, **request.files}
        self.calls.append(Call(rest[:1].lower() + rest[1:], params))
        await self._tell()
        fault = self._fault(method, params)
        try:
            if handler is None:
                raise _Refusal(404, "Not Found")
            if fault is not None and not fault.accepted:
                return await self._go_wrong(fault, request, b"")
            result = await (handler(params, request) if method == "getupdates" else handler(params))
        except _Refusal as refusal:
            return _failure(refusal)
        finally:
            await self._tell()
        body = json.dumps({"ok": True, "result": result}).encode()
        return Response(200, body) if fault is None else await self._go_wrong(fault, request, body)

    def _fault(self, method: str, params: Mapping[str, Any]) -> Fault | None:
        faults = self._faults.get(method)
        if not faults or faults[0].chat_id not in (None, params.get("chat_id")):
            return None
        return faults.popleft()

    async def _go_wrong(self, fault: Fault, request: Request, body: bytes) -> Response:
        match fault.how:
            case "hang":
                await request.closed()
                return Response(200, b"", drop=True)
            case "drop":
                return Response(200, b"", drop=True)
            case "cut":
                whole = body or json.dumps({"ok": True, "result": []}).encode()
                return Response(200, whole[: len(whole) // 2])
            case _:
                return _failure(_Refusal(fault.status, fault.description, fault.retry_after))

    async def _control(self, verb: str, arguments: Mapping[str, Any]) -> Response:
        if verb == "sent":
            rows = [asdict(one) | {"file": base64.b64encode(one.file).decode()} for one in self.sent]
            return Response(200, json.dumps(rows).encode())
        if verb not in ("say", "tap", "press", "send_kind", "edit", "push", "say_in_group", "block"):
            return Response(404, b"{}")
        return Response(200, json.dumps(await getattr(self, verb)(**arguments)).encode())

    def _file(self, rest: str) -> Response:
        token, _, path = unquote(rest).partition("/")
        name = path.rpartition("/")[2]
        content = self._files.get(name) if token == f"bot{self.token}" else None
        return Response(404, b"{}") if content is None else Response(200, content, "application/octet-stream",
                                                                     more=self.more_of.get(name))

    # the methods ------------------------------------------------------------------------------------------

    async def _on_getupdates(self, params: Mapping[str, Any], request: Request) -> list[dict[str, Any]]:
        self._poll += 1
        mine = self._poll
        await self._tell()  # ends the poll that waits, if any
        offset, limit = params.get("offset") or 0, min(100, max(1, params.get("limit") or 100))
        self._allowed = params.get("allowed_updates", self._allowed)
        if offset > 0:
            self.confirmed = max(self.confirmed, offset)
            self._waiting = [update for update in self._waiting if update["update_id"] >= offset]
        elif offset < 0:
            self._waiting = self._waiting[offset:]
        if not self._waiting and params.get("timeout"):
            await self._wait_for_update(mine, params["timeout"], request)
        if self._poll != mine:
            raise _Refusal(409, "Conflict: terminated by other getUpdates request; make sure that only one bot "
                                "instance is running")
        return self._waiting[:limit]

    async def _wait_for_update(self, mine: int, seconds: float, request: Request) -> None:
        async def arrival() -> None:
            async with self._changed:
                await self._changed.wait_for(lambda: self._waiting or self._poll != mine)
        waits = [asyncio.ensure_future(arrival()), asyncio.ensure_future(request.closed())]
        try:
            await asyncio.wait(waits, timeout=seconds, return_when=asyncio.FIRST_COMPLETED)
        finally:
            for wait in waits:
                wait.cancel()
            await asyncio.gather(*waits, return_exceptions=True)

    async def _on_getme(self, params: Mapping[str, Any]) -> dict[str, Any]:
        return BOT | {"can_join_groups": True, "can_read_all_group_messages": False, "supports_inline_queries": False}

    async def _on_true(self, params: Mapping[str, Any]) -> bool:
        return True

    _on_setmycommands = _on_sendchataction = _on_logout = _on_close = _on_true

    async def _on_deletewebhook(self, params: Mapping[str, Any]) -> bool:
        if params.get("drop_pending_updates"):
            self._waiting.clear()
        self.webhook = {}
        return True

    async def _on_setwebhook(self, params: Mapping[str, Any]) -> bool:
        self.webhook = params
        return True

    async def _on_getwebhookinfo(self, params: Mapping[str, Any]) -> dict[str, Any]:
        return {"url": self.webhook.get("url", ""), "has_custom_certificate": False, "pending_update_count": len(self._waiting)}

    async def _on_sendmessage(self, params: Mapping[str, Any]) -> dict[str, Any]:
        text = str(params.get("text", ""))
        if not text.strip():
            raise _Refusal(400, "Bad Request: message text is empty")
        if _units(text) > 4096:
            raise _Refusal(400, "Bad Request: message is too long")
        return self._deliver(params, "text", text, b"") | {"text": text}

    async def _on_sendphoto(self, params: Mapping[str, Any]) -> dict[str, Any]:
        return self._send_file(params, "photo")

    async def _on_sendanimation(self, params: Mapping[str, Any]) -> dict[str, Any]:
        return self._send_file(params, "animation")

    async def _on_senddocument(self, params: Mapping[str, Any]) -> dict[str, Any]:
        return self._send_file(params, "document")

    async def _on_sendvideo(self, params: Mapping[str, Any]) -> dict[str, Any]:
        return self._send_file(params, "video")

    def _send_file(self, params: Mapping[str, Any], kind: str) -> dict[str, Any]:
        caption, file = str(params.get("caption", "")), params.get(kind)
        if _units(caption) > 1024:
            raise _Refusal(400, "Bad Request: message caption is too long")
        if isinstance(file, str) and file.startswith("attach://"):
            file = params.get(file.removeprefix("attach://"))
        if not isinstance(file, bytes):
            file = self._files.get(str(file))
        if not file:
            raise _Refusal(400, "Bad Request: file must be non-empty")
        answer = self._deliver(params, kind, caption, file)
        name = f"{kind}-{answer['message_id']}"
        self._files[name] = file
        content = content_of(kind)
        (content[-1] if isinstance(content, list) else content)["file_id"] = name
        return answer | {"caption": caption, kind: content}

    def _deliver(self, params: Mapping[str, Any], kind: str, text: str, file: bytes) -> dict[str, Any]:
        chat, now = params.get("chat_id"), asyncio.get_running_loop().time()
        if not isinstance(chat, int) or chat in self.unknown:
            raise _Refusal(400, "Bad Request: chat not found")
        if chat in self.blocked:
            raise _Refusal(403, "Forbidden: bot was blocked by the user")
        buttons = _buttons(params.get("reply_markup"))
        if self.strict:
            lately = [one for one in self.sent if now - one.at < 1.0]
            if len(lately) >= 30 or any(one.chat_id == chat for one in lately):
                raise _Refusal(429, "Too Many Requests: retry after 1", 1)
        self.sent.append(SentMessage(chat, self._next_message, text, buttons, kind, file, now))
        self._next_message += 1
        return {"message_id": self._next_message - 1, "date": EPOCH, "from": BOT, "chat": private(chat, "Sam")}

    async def _on_editmessagetext(self, params: Mapping[str, Any]) -> dict[str, Any]:
        text = str(params.get("text", ""))
        for place, one in enumerate(self.sent):
            if (one.chat_id, one.message_id) == (params.get("chat_id"), params.get("message_id")):
                changed = replace(one, text=text, buttons=_buttons(params.get("reply_markup")))
                if changed == one:
                    raise _Refusal(400, "Bad Request: message is not modified")
                self.sent[place] = changed
                return {"message_id": one.message_id, "date": EPOCH, "from": BOT, "text": text,
                        "chat": private(one.chat_id, "Sam")}
        raise _Refusal(400, "Bad Request: message to edit not found")

    async def _on_answercallbackquery(self, params: Mapping[str, Any]) -> bool:
        query = str(params.get("callback_query_id"))
        if query in self.answered or not query.isdecimal() or int(query) >= self._next_query:
            raise _Refusal(400, "Bad Request: query is too old and response timeout expired or query ID is invalid")
        self.answered.append(query)
        return True

    async def _on_getfile(self, params: Mapping[str, Any]) -> dict[str, Any]:
        name = str(params.get("file_id"))
        if name not in self._files:
            raise _Refusal(400, "Bad Request: invalid file_id")
        return {"file_id": name, "file_unique_id": name, "file_size": len(self._files[name]),
                "file_path": f"files/{name}"}

    def _message(self, chat_id: int, name: str) -> dict[str, Any]:
        number, self._next_message = self._next_message, self._next_message + 1
        return {"message_id": number, "date": EPOCH, "chat": private(chat_id, name), "from": person(chat_id, name)}


def _failure(refusal: _Refusal) -> Response:
    answer: dict[str, Any] = {"ok": False, "error_code": refusal.status, "description": refusal.description}
    if refusal.retry_after is not None:
        answer["parameters"] = {"retry_after": refusal.retry_after}
    return Response(refusal.status, json.dumps(answer).encode())


def _units(text: str) -> int:
    """Length in UTF-16 units: the stricter of the counts Telegram may use."""
    return len(text.encode("utf-16-le")) // 2


def _buttons(markup: Any) -> Buttons:
    rows: Sequence[Sequence[Mapping[str, str]]] = (markup or {}).get("inline_keyboard", ())
    for row in rows:
        for one in row:
            if not one.get("text"):
                raise _Refusal(400, "Bad Request: text buttons are unallowed in the inline keyboard")
            if not 1 <= len(one.get("callback_data", "").encode()) <= 64:
                raise _Refusal(400, "Bad Request: BUTTON_DATA_INVALID")
    return tuple(tuple((one["text"], one["callback_data"]) for one in row) for row in rows)


async def _serve(port: int) -> None:
    async with BotApi(port=port) as api:
        print(api.url, flush=True)
        await asyncio.Event().wait()


if __name__ == "__main__":
    asyncio.run(_serve(int(sys.argv[1]) if len(sys.argv) > 1 else 0))
