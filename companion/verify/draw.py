"""A flow drawn: as a Mermaid state diagram, and as an outline to read."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import Final

from companion.conversation.condition import ALWAYS, Condition
from companion.conversation.flow import END, Ask
from companion.conversation.machine import Compiled
from companion.conversation.table import (
    BACK,
    BEGIN,
    EARLY_END,
    ENDED,
    ENDED_BY_PAIN,
    ENDINGS,
    GATE_CLOSED,
    ONWARD,
    RESUMED,
    RETURNED,
    START,
    Move,
)

ASKING: Final = "asking"
"""The frame around all questions, from which one arrow stands for the same arrow of each."""

_WAY, _OUT, _NOTE = "        ", "    ", "      "
"""How far the lines of each part stand in."""

_NOTES: Final = {
    "same": "{events} - the same question again",
    "back": "back - to the question answered last",
    "reopen": "back where nothing is answered - into the flow that has just ended",
    "hold": "stop just after a timed hold - paused at the hold, which is held again",
    "done_back": "back once it is done - to the question answered last",
    "done_pain": "pain told just after it is done - ended by pain",
    "gate": "{events} - closed while {whens}",
    "first": "{events} - first {firsts}",
    "lapsed": "resumed - past a question that would not be asked any more, of {ats}",
    "refused": "{events} - refused where nothing else follows, at {sources} - “{refused}”",
}
"""What is said once for many rows of the table."""


def mermaid(compiled: Compiled) -> str:
    """Return a Mermaid ``stateDiagram-v2`` of a flow's table.

    The arrows out of a state stand in the order they are tried, each with its own condition: one is taken where none above it
    holds. "else" is the last of several. What every question answers alike is one arrow from the frame around them, or a line
    of its note.
    """
    lines = drawn(compiled)
    ways, out, notes = ([line for line in lines if line[:len(line) - len(line.lstrip())] == start] for start in (_WAY, _OUT, _NOTE))
    works = [f"{_WAY}{state} : {state} (body at work)" for state, stop in compiled.stops.items() if isinstance(stop, Ask) and stop.caution]
    return "\n".join([
        f"%% {compiled.flow.title}, version {compiled.flow.version}. Written by “companion flows draw”.", "stateDiagram-v2",
        f"    state {ASKING} {{", *works, *ways, "    }", *out,
        *([f"    note right of {ASKING}", *notes, "    end note"] if notes else ())]) + "\n"


def drawn(compiled: Compiled) -> dict[str, list[Move]]:
    """Return the lines of a drawing, each with the rows of the table that it stands for; every row is in one of them."""
    groups: dict[tuple[str, ...], list[Move]] = {}
    for row in compiled.table:
        groups.setdefault(_group(row), []).append(row)
    asks = [key for key, stop in compiled.stops.items() if isinstance(stop, Ask)]
    ways = Counter(group[1] for group in groups if group[0] == _WAY)
    lines: dict[str, list[Move]] = {}
    for group, rows in groups.items():
        if group[0] == _WAY:
            words = " or ".join(_each(_words(row.when) for row in rows))
            line = f"{_WAY}{group[1]} --> {group[2]}" + (f" : {words}" if ways[group[1]] > 1 else "")
        elif group[0] == _OUT:
            line = f"{_OUT}{group[1]} --> {group[2]} : {_listed(row.event for row in rows)}{group[3]}"
        else:
            sources = _each(row.source for row in rows)
            line = _NOTE + _NOTES[group[1]].format(
                events=_listed(row.event for row in rows), whens=" or ".join(_each(str(row.when) for row in rows)).replace(":", " "),
                firsts=_listed(row.first for row in rows), ats=_listed(row.at for row in rows), refused=rows[0].refused,
                sources="any question" if sources == asks else ", ".join(sources))
        lines[line] = rows
    return lines


def _group(row: Move) -> tuple[str, ...]:
    """Return what a row is drawn together with: a way from one state, a way out of the frame or into it, a line of the note."""
    if row.refused:
        return _NOTE, "refused", row.event, row.refused
    if row.event in (BEGIN, RESUMED, RETURNED) and (row.first or row.target == GATE_CLOSED):
        return _NOTE, "first" if row.first else "gate"
    if row.event in ONWARD:
        return _WAY, _name(row.source), _name(row.target)
    if row.source in ENDINGS:
        return _NOTE, f"done_{row.event}"
    if row.event == BACK:
        return _NOTE, "reopen" if any(compare.fact == ENDED.name for compare in row.when.compares()) else "back"
    if row.again:
        return _NOTE, "hold"
    if row.event != RESUMED:
        return (_NOTE, "same") if row.target == row.source else (_OUT, ASKING, row.target, "")
    if row.target == ENDED_BY_PAIN:
        return _OUT, row.source, "[*]", ", where something hurt"
    if row.target == START:
        return _OUT, row.source, ASKING, ", begun anew"
    return (_OUT, row.source, ASKING, ", at the same question") if row.at == row.target else (_NOTE, "lapsed")


def _each(words: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(words))


def _listed(words: Iterable[str]) -> str:
    return ", ".join(_each(words))


def _name(state: str) -> str:
    return "[*]" if state in (START, END, EARLY_END) else state


def _words(when: Condition) -> str:
    return "else" if when == ALWAYS else str(when).replace(":", " ")


def outline(compiled: Compiled) -> str:
    """Return a flow in the order of its steps: each question with what it asks for and when it is asked."""
    flow = compiled.flow
    lines = [f"{flow.title} ({flow.name}, version {flow.version})"]
    if flow.needs:
        lines.append(f"needs: {', '.join(flow.needs)}")
    for state, stop in compiled.stops.items():
        when = "" if stop.only_if == ALWAYS else f"   [if {stop.only_if}]"
        what = type(stop.kind).__name__.lower() if isinstance(stop, Ask) else "flow"
        lines.append(f"  {state:22} {what:10}{when}")
    return "\n".join(lines)
