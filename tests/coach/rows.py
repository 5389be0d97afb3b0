"""Rows of an answer log for tests of the exports: written by hand, and drawn with every nasty text."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from hypothesis import strategies as st

from companion.export.questions import questions_in
from companion.record.log import LogRow
from flows.catalogue import BOOK

START = datetime(2026, 3, 2, 18, 5, tzinfo=UTC)
QUESTIONS = questions_in(BOOK)
KEYS = sorted((flow, key) for flow, asks in QUESTIONS.items() for key in asks)

NASTY = ("=1+1", "+49 170", "-3", "@SUM(A1)", " \t=cmd|' /C calc'!A0", "\r=2", "\uff1d1+1", "\u00a0=1", "=\u0338", "\ufb29 1",
         "\N{MINUS SIGN}4", "\u200b=1", "\u202e=txt", "\ud83d", "\ud83d\ude00", "half \udc9c emoji", "\x00", "\x1b[31mred",
         'say "no"', "a,b;c", "one\r\ntwo\u2028three\x85four", "<b>&amp;</b>", "*bold* [link](http://x)", "\ufeff", "\uffff", " ",
         "\N{WOMAN}\N{ZERO WIDTH JOINER}\N{SQUARED OK}", "'=1", "e\u0301", "")
"""Formulas in any dress, direction overrides, half emoji, control characters, quotes, line ends, markup."""


def row(key: str = "left_1", value: float | str | None = 11.5, *, flow: str = "knee_to_wall", raw: str = "", status: str = "ok",
        ending: str | None = "done", **more: object) -> LogRow:
    """One row; the rest as a first answer of a first run of the flow as it is now has it."""
    version = BOOK[flow].flow.version if flow in BOOK.flows else 1
    side = key.split("_")[0] if key.split("_")[0] in ("left", "right") else ""
    whole = LogRow(1, START, flow, version, "1", key, side, raw or str(value or ""), value, "", status, "", "", None, ending, "")
    return whole._replace(**more)


def log_of(*rows: LogRow) -> list[LogRow]:
    """The same rows numbered and timed in this order, a minute apart."""
    return [one._replace(id=n, at=START + timedelta(minutes=n)) for n, one in enumerate(rows, 1)]


nasty = st.one_of(st.sampled_from(NASTY), st.text(st.characters(), max_size=8),
                  st.text(st.sampled_from("=+-@ \t\r\n'\"\ud83d\u202e"), max_size=5))


@st.composite
def _drawn(draw: st.DrawFn) -> LogRow:
    flow, key = draw(st.sampled_from(KEYS))
    ask = QUESTIONS[flow][key].ask
    options = [option.value for option in ask.kind.options]
    value = draw(st.one_of(st.none(), nasty, st.floats(), st.integers(-5, 200).map(float), st.sampled_from(options or ["x"])))
    if draw(st.booleans()):
        key = draw(st.sampled_from((key, "gone", "left_gone_2")))
    version = max(0, BOOK[flow].flow.version - draw(st.sampled_from((0, 0, 0, 1))))
    run = f"{flow} {draw(st.integers(1, 2))}"
    status = draw(st.sampled_from(("ok", "ok", "ok", "skipped", "withdrawn", "in_pain")))
    return LogRow(0, START, flow, version, run, key, ask.side, draw(nasty), value, ask.kind.unit, status, draw(nasty), draw(nasty),
               None, "done", draw(nasty))


@st.composite
def logs(draw: st.DrawFn) -> list[LogRow]:
    """Some rows of some flows; the rows of one run share its ending."""
    rows = log_of(*draw(st.lists(_drawn(), max_size=10)))
    endings = {one.run: draw(st.sampled_from((None, "done", "left", "pain", "closed"))) for one in rows}
    return [one._replace(ending=endings[one.run]) for one in rows]
