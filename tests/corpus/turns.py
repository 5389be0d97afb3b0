"""What people type at a question, played through the real step: ``python -m tests.corpus.turns [seen|unseen] [--list]``.

Each line of ``turns_*.tsv`` is a state, the act a careful person hears in the words, what should come of it, and the words; a fifth column
"ask" where that person would ask back. The session is put at the state with plausible answers before it; one step takes the words. The
outcome is one of

* right: what should come of it, at once;
* confirmed: said back with one tap to confirm, and it is what should come of it;
* asked: nothing was filled, and the reply asks back where that is sensible (safety, "ask", words that leave it open);
* missed: nothing was filled, but what was said was not understood, or something else is asked;
* silent: a slot was filled wrongly, or without anything asserted, and nobody asked.

Of the unseen lines only totals are printed, and no rule may be written from them.
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from random import Random
from typing import Final, NamedTuple

from companion.conversation.condition import Value
from companion.conversation.corrections import correction, several_of
from companion.conversation.draft import Draft
from companion.conversation.effects import Record, Say
from companion.conversation.events import Typed
from companion.conversation.flow import Ask, Known
from companion.conversation.hearing import DOES, heard_at, meant_at, read_of
from companion.conversation.kinds import Kind, Ready
from companion.conversation.number_kinds import Number
from companion.conversation.number_slots import Slot
from companion.conversation.session import Frame, Session
from companion.conversation.slots import reads_acts, torn, understand
from companion.conversation.step import step
from companion.conversation.wishes import wants_of
from companion.conversation.wording import render
from companion.language.acts import SpeechAct, hear_act
from companion.language.learnt import A_NUMBER
from companion.language.places import find_zone
from companion.language.quantities import quantities
from flows.catalogue import BOOK
from tests.drive import CHECKED, NOW

HERE: Final = Path(__file__).parent
PAIN_FLOWS: Final = frozenset(("pain", "signs", "crisis"))
FACTS: Final[Mapping[str, Value]] = {
    **CHECKED, "about_you.height": 178.0, "about_you.mass": 80.0, "welcome.units": "metric", "welcome.consent": "yes",
    "drill": "hip", "coach": "yes", "about_you.tape": "yes", "about_you.level": "yes", "setup.proposed": "heels"}

PLANNED: Final[Mapping[str, Value]] = {**FACTS, "today": "2026-03-02", "squat.plan": '{"weekly":{"TU":"18:00","FR":"18:00"}}'}
"""The same where a change of the squat days is asked for, which somebody without any is not."""
CHANGED: Final = ("squat_days/change", "squat_days/to", "squat_days/extra", "squat_days/until")

ATTEMPTS: Final = 200
"""Most draws of the answers before a state; in the second half numbers are drawn too, for states that hang on one."""

USUAL: Final = 0.37
"""How far up its usual range a number lies otherwise."""

MOVED: Final[Mapping[str, str]] = {
    r"knee_to_wall/setup": "knee_to_wall/left_1",
    r"knee_to_wall/setup_level": "knee_to_wall/left_deg_1",
    r"leg_raise/(?:left|right)_do_2": "leg_raise/did_2",
    r"hip_fold/(?:left|right)_pinch": "hip_fold/pinched",
    r"(squat_look|hand_on_back_squat)/(change_\d|again|usual|cued)_(?:rounds|moves)": r"\1/\2_depth",
    r"(\w+)/(?:filming|go|squats|setup(?:_\w+)?)": r"\1/did",
    r"(\w+)/(?:left|right|narrow|middle|wide|plain|change_\d|again|usual|cued|moving|stops)_do": r"\1/did",
    r"screen/(go_\w+)": r"full_screen/\1",
}
"""Where a question that is no longer asked on its own is asked now; one that is not here either is gone, and its lines with it."""

ANSWERS: Final[Mapping[str, str]] = {"did=ready": "none", "left_pinch=yes": "left", "right_pinch=yes": "right", "pinched=no": "none"}
"""What an answer of such a question is called now, where it is called otherwise: by the new question, or by the old one."""

SIDES: Final = ("left", "right")

NOT_ASKED: Final = frozenset((
    "leg_raise/placement", "leg_raise/left_end", "leg_raise/right_end", "squat_look/video", "pause_squat/less_deep",
    "pause_squat/moving_higher", "screen/route", "coach_act/guess"))
"""Questions that are gone: what ended a leg raise, which route, where the phone lies, a film to send, shallower squats after others, a
coach's guess."""


class Turn(NamedTuple):
    """One line: the state, the act, what should come of it, the words, and whether asking back is right."""

    state: str
    act: str
    value: str
    text: str
    ask: bool


class Outcome(NamedTuple):
    """What came of a line."""

    verdict: str
    why: str = ""


def turns(name: str) -> list[Turn]:
    """Return the lines of one of the two files whose question is still asked, each at the state where it is asked now."""
    return [turn for turn in map(_today, _written(name)) if turn]


def gone(name: str) -> list[Turn]:
    """Return the lines of one of the two files whose question, or what they put right, is no longer asked anywhere."""
    return [turn for turn in _written(name) if _today(turn) is None]


def _written(name: str) -> list[Turn]:
    rows = (line.split("\t") for line in (HERE / f"turns_{name}.tsv").read_text("utf-8").splitlines() if line and line[0] != "#")
    return [Turn(*row[:4], len(row) > 4 and row[4].strip() == "ask") for row in rows]


def _now(state: str) -> str:
    """Return the state where a question is asked now, "" if it is gone."""
    for one in (state, *(found.expand(new) for old, new in MOVED.items() if (found := re.fullmatch(old, state)))):
        flow, key = one.split("/")
        if isinstance(BOOK[flow].stops.get(key), Ask):
            return one
    return ""


def _today(turn: Turn) -> Turn | None:
    """Return a line as it stands today: none if its question is gone, or what it puts right; asking back is right where the answer it names
    is none of today's."""
    state, old = _now(turn.state), turn.state.partition("/")[2]
    last = turn.act == "correction" and "" in expected(turn)
    if not state or turn.act not in ("answer", "correction", "unsure") or not turn.value or last:
        return turn._replace(state=state) if state else None
    slots = dict(filter(None, (_slot(turn, name or old, wanted) for name, wanted in expected(turn).items())))
    if state == turn.state and slots == expected(turn):
        return turn
    if turn.act == "correction" and not slots:
        return None
    return turn._replace(state=state, value="; ".join(f"{name}={wanted}" for name, wanted in slots.items()), ask=turn.ask or not slots)


def _slot(turn: Turn, name: str, wanted: str) -> tuple[str, str] | None:
    """Return a slot that a line fills, by the names of today; none where the question is gone or has no such answer. Where the side that
    the question named is now the answer, and the words name none, it is both, as for a bare yes: the careful side."""
    state = _now(f"{turn.state.partition('/')[0]}/{name}")
    if not state:
        return None
    where, key = state.split("/")
    ask = BOOK[where].stops[key]
    wanted = ANSWERS.get(f"{name}={wanted}", ANSWERS.get(f"{key}={wanted}", wanted))
    if key != name and wanted in SIDES and wanted not in turn.text.casefold().split():
        wanted = "both"
    options = {option.value for option in ask.kind.options} if isinstance(ask, Ask) else set()
    return (key, wanted) if key == name or (wanted in options if options else quantities(wanted)) else None


@cache
def session_at(state: str, of: frozenset[str] = frozenset()) -> tuple[Session, Mapping[str, Value]]:
    """Return a session that waits at a state, with plausible answers before it, and the facts known beside it. ``of``: questions that were
    answered before, where that can be: those of which a line puts an answer right."""
    name, key = state.split("/")
    compiled, draw, known = BOOK[name], Random(state), PLANNED if state in CHANGED else FACTS
    asks = [step for step in compiled.flow.steps if isinstance(step, Ask)]
    fixed: dict[str, Value] = {}
    try:
        fixed = dict(compiled.flow.at_start(Known(known, NOW))) if compiled.flow.at_start else {}
    except (KeyError, ValueError, TypeError):
        fixed = {}
    best: tuple[dict[str, Value], list[str]] = ({}, [])
    reached = False
    for attempt in range(ATTEMPTS):
        got: dict[str, Value] = {}
        trail: list[str] = []
        here = False
        for ask in asks:
            facts = compiled.facts_of(known, fixed, got)
            if ask.key == key:
                here = ask.only_if.holds(facts)
                if (here and not reached) or not best[1]:
                    best, reached = (got, trail), here
                break
            if ask.only_if.holds(facts):
                values = [value for value in ask.kind.samples if not isinstance(value, str) or all(
                    option.value != value or option.only_if.holds(facts) for option in ask.kind.options)]
                got[render(ask.log_as, facts, NOW, ask.side) or ask.key] = plausible(
                    ask.kind, draw, values if attempt else [], draw.random() if attempt >= ATTEMPTS // 2 else USUAL)
                trail.append(ask.key)
        if here and of <= got.keys():
            best = got, trail
            break
    got, trail = best
    for ask in asks:  # what other facts would have had asked
        if ask.key in of and ask.key not in trail:
            got, trail = got | {ask.key: plausible(ask.kind, draw, list(ask.kind.samples), USUAL)}, [*trail, ask.key]
    frame = Frame(name, compiled.flow.version, "1", key, got, fixed, tuple(trail))
    return Session(stack=(frame,), runs=1, at=NOW.isoformat()), known


def plausible(kind: Kind, draw: Random, values: list[Value], share: float) -> Value:
    """Return a plausible answer: a number that share up its usual range, one of the values, or the typical answer."""
    if isinstance(kind, Number):
        return round(kind.usual[0] + share * (kind.usual[1] - kind.usual[0]), 1)
    return kind.typical if isinstance(kind, Ready) or not values else draw.choice(values)


def expected(turn: Turn) -> dict[str, str]:
    """Return the slots a line should fill: the open question's under its own key, "" for the last answer's."""
    key = turn.state.split("/")[1]
    if not turn.value:
        return {}
    parts = [part.strip().partition("=") for part in turn.value.split(";")]
    if all(sign and name.strip().isidentifier() for name, sign, _ in parts):
        return {name.strip(): value.strip() for name, _, value in parts}
    return {"" if turn.act == "correction" else key: turn.value}


def same(wanted: str, value: Value | None) -> bool:
    """True if a value is the one a label names."""
    if isinstance(value, float | int):
        found = quantities(wanted)
        return bool(found) and abs(found[0].value - value) < 0.06
    return wanted.casefold() == str(value).casefold() or find_zone(wanted, NOW) == value


def fits(turn: Turn, slots: Mapping[str, Value | None]) -> bool:
    """True if every slot filled is one that the line's label names."""
    wanted = expected(turn)
    if turn.act == "correction" and "" in wanted:
        return any(same(wanted[""], value) for value in slots.values())
    return bool(slots) and all(name in wanted and same(wanted[name], value) for name, value in slots.items())


def _otherwise(session: Session, turn: Turn) -> Session:
    """Return the session with what a correction puts right answered otherwise before."""
    top, got = session.top, dict(session.top.got)
    for name, wanted in expected(turn).items() if turn.act == "correction" else ():
        stop = BOOK[top.flow].stops.get(name)
        if isinstance(stop, Ask) and name in got and same(wanted, got[name]):
            others = stop.kind.samples if isinstance(got[name], str) else (float(got[name]) + 2,)
            got[name] = next(value for value in others if value != got[name])
    return session.with_top(top._replace(got=got))


def draft_at(turn: Turn) -> Draft:
    """Return the place where a line is typed."""
    of = frozenset(expected(turn)) - {"", turn.state.split("/")[1]} if turn.act == "correction" else frozenset()
    session, facts = session_at(turn.state, of)
    return Draft(BOOK, _otherwise(session, turn), Known(facts, NOW), [])


def play(turn: Turn) -> Outcome:
    """Play one line through the real step."""
    draft = draft_at(turn)
    flow, key = turn.state.split("/")
    ask = BOOK[flow].stops[key]
    assert isinstance(ask, Ask)
    taken = step(BOOK, draft.session, Typed(turn.text), draft.known)
    after = taken.session
    log_name = next((row.key for row in taken.effects if isinstance(row, Record) and ask.log_as), key)
    filled = {key if row.key == log_name else row.key: row.value for row in taken.effects if isinstance(row, Record) and row.status == "ok"}
    status = {row.status for row in taken.effects if isinstance(row, Record)}
    over = {frame.flow for frame in after.stack[1:]} | ({after.stack[-1].flow} if after.stack and after.stack[-1].flow != flow else set())
    about = after.aside.about if after.aside else ""
    stays = bool(after.stack) and after.top.flow == flow and after.top.state == key and not about
    proposed: dict[str, Value | None] = {}
    if about == "understood" and (heard := understand(draft, turn.text, heard_at(draft, turn.text))):
        proposed = {slot.key: slot.value for slot in heard.slots}
    elif about == "corrected" and (several := several_of(draft, turn.text)):
        good = turn.act == "correction" and any(fits(turn, {one.new.key: one.new.value}) for one in several if one.new)
        return Outcome("asked" if good or turn.ask else "missed", f"which {[(one.key, one.new and one.new.value) for one in several]}")
    elif about == "corrected" and (found := correction(draft, turn.text)) and found.new:
        proposed = {found.new.key: found.new.value}
    elif about == "which":
        return _offered(turn, key, meant_at(draft, turn.text))
    elif about == "wish":
        return _wished(turn, draft)
    elif about == "unusual" and (read := read_of(draft, turn.text)):
        proposed = {key: read.value}
    act = (heard_at(draft, turn.text) if reads_acts(ask) else hear_act(turn.text)).act
    between = torn(draft, turn.text, heard_at(draft, turn.text)) if reads_acts(ask) else ()
    said = " ".join(one.text for one in taken.effects if isinstance(one, Say))
    free = ask.free or not reads_acts(ask)
    return _judged(turn, ask, filled, status, over, about, stays, proposed, act, said, free, between)


def _offered(turn: Turn, key: str, names: tuple[str, ...]) -> Outcome:
    """Return what comes of a question which of two things is meant: right to ask if one of them is."""
    wanted = {f"@{turn.act}", f"!{turn.value}"} if turn.act not in ("answer", "unsure") else {"@unsure"} if turn.act == "unsure" else set()
    wanted |= {*DOES.get(f"!{turn.value}", ()), *DOES.get(f"@{turn.act}", ())}
    wanted |= {turn.value.removeprefix("start:")} if turn.act == "command" and turn.state == "home/pick" else set()
    wanted |= {name for name in names if name.startswith("!") and _NAMES.get(name[1:], name[1:]) == turn.value.removeprefix("start:")}
    answer = expected(turn).get(key) if turn.act in ("answer", "unsure", "correction") else None
    good = any(name in wanted or (answer and (same(answer, name) or (name == A_NUMBER and quantities(answer)))) for name in names)
    return Outcome("asked" if good or turn.ask else "missed", f"which {names}")


def _wished(turn: Turn, draft: Draft) -> Outcome:
    """Return what comes of a wish that is asked about."""
    wants = wants_of(draft, turn.text)
    fits = turn.value in (wants, {"skip": "skip", "stop": "later"}.get(wants)) or turn.value.removeprefix("start:") == _NAMES.get(wants, "")
    return Outcome("confirmed" if fits else "asked" if turn.ask else "missed", f"wish {wants}")


def _judged(turn: Turn, ask: Ask, filled: Mapping[str, Value | None], status: set[str], over: set[str], about: str, stays: bool,
            proposed: Mapping[str, Value | None], act: SpeechAct, said: str, free: bool, between: tuple[Slot, ...]) -> Outcome:
    careful = bool(over & PAIN_FLOWS) or about == "ache"
    if careful:
        return Outcome("right" if turn.act in ("pain", "flag") else "asked", f"{over or about}")
    wants = {"answer", "correction", "unsure"} if turn.value else {"answer", "correction"}
    if filled:
        if turn.act in wants and fits(turn, filled):
            return Outcome("right")
        if free and turn.act == "answer":
            return Outcome("right", "in their own words, or a day or a place")
        if ask.safety and turn.value == "yes" and set(filled.values()) <= {"yes", "unsure"}:
            return Outcome("right", "the careful answer")
        if set(DOES.get(f"!{turn.value}", ())) & set(filled.values()):
            return Outcome("right", "the answer that does it")
        if turn.act == "unsure" and set(filled.values()) <= {"cant_tell", "unsure"}:
            return Outcome("right", "the answer that says it can't be told")
        flow = str(filled.get("pick") or filled.get("test"))
        if turn.act == "flag" or turn.value in (f"start:{flow}", {"outcome": "results"}.get(flow)):
            return Outcome("right")
        return Outcome("silent", f"{dict(filled)}")
    if proposed:
        untold = turn.act == "unsure" and set(proposed.values()) <= {"cant_tell", "unsure"}
        good = (turn.act in wants and fits(turn, proposed)) or untold or f"start:{proposed.get('test')}" == turn.value
        good = good or bool(set(DOES.get(f"!{turn.value}", ())) & set(proposed.values()))
        return Outcome("confirmed" if good else "asked" if turn.ask else "missed", f"proposed {dict(proposed)}")
    if turn.value.removeprefix("start:") in over or (about == "understood" and free and turn.act != "answer"):
        return Outcome("right" if over else "asked")
    if turn.ask and stays:
        return Outcome("asked")
    match turn.act:
        case "pain" | "flag":
            return Outcome("missed", "not heard")
        case "question":
            return Outcome("right" if act is SpeechAct.QUESTION or over & {"why", "why_told"} else "missed", f"{act} {over or ''}")
        case "not_yet":
            return Outcome("right" if act is SpeechAct.NOT_YET else "asked" if stays and act is SpeechAct.ANSWER else "missed", f"{act}")
        case "unsure":
            return Outcome("right" if act is SpeechAct.UNSURE and not turn.value else "asked" if stays else "missed", f"{act}")
        case "chat" | "nothing":
            return Outcome("right" if stays else "missed", f"{over}")
        case "command":
            done = _done(turn.value, status, over, about, stays, act, said, turn.state.split("/")[0])
            return Outcome("right" if done else "missed", f"{act} {status} {over}")
        case "correction":
            return Outcome("asked" if stays and (act is SpeechAct.CORRECTION or ask.safety) else "missed", f"{act}")
    if ask.safety and stays:
        return Outcome("asked", "safety: only its own words count")
    if stays and said.startswith("Which one: ") and any(same(wanted, slot.value) for wanted in expected(turn).values() for slot in between):
        return Outcome("asked", "which one")
    if isinstance(ask.kind, Ready) and stays:
        return Outcome("asked", "to tap when ready")
    if turn.state == "home/pick" and turn.value in over:
        return Outcome("right")
    return Outcome("missed", f"{act} {over or ''}")


_NAMES: Final = {"erase": "erase", "stop_reminders": "reminder_times", "my_data": "my_data", "results": "outcome", "menu": "home"}
"""The flow that a command begins."""


def _done(wanted: str, status: set[str], over: set[str], about: str, stays: bool, act: SpeechAct, said: str, turn_flow: str) -> bool:
    """True if a command was carried out, or asked about as it should be."""
    flow = wanted.removeprefix("start:")
    if flow != wanted:
        return flow in over
    match wanted:
        case "stop":
            return about == "stop" or (not over and not stays)
        case "back":
            return "withdrawn" in status or "first question" in said or "earlier answers stay" in said
        case "skip":
            return "skipped" in status or "need an answer" in said
        case "again" | "help":
            return stays
    if (wanted, turn_flow) in (("my_data", "my_data"), ("results", "outcome")):
        return stays
    return _NAMES.get(wanted, "") in over or (wanted == "menu" and stays)


def counted(name: str) -> Iterator[tuple[Turn, Outcome]]:
    """Yield each line of a file with what came of it."""
    for turn in turns(name):
        yield turn, play(turn)


def main() -> None:
    """Print the totals of a file by act; of the seen one, with ``--list``, each line that was not right."""
    name = "unseen" if "unseen" in sys.argv else "seen"
    totals: Counter[tuple[str, str]] = Counter()
    for turn, outcome in counted(name):
        totals[turn.act, outcome.verdict] += 1
        if name == "seen" and "--list" in sys.argv and outcome.verdict in ("silent", "missed"):
            print(f"{outcome.verdict:7} {turn.state:32} {turn.act:10} {turn.value:24} | {turn.text} | {outcome.why}")
    verdicts = ("right", "confirmed", "asked", "missed", "silent")
    print(f"{name:12}" + "".join(f"{verdict:>11}" for verdict in verdicts) + "      right or sensibly asked")
    for act in [*dict.fromkeys(act for act, _ in totals), ""]:
        row = [sum(n for (one, verdict), n in totals.items() if verdict == wanted and act in ("", one)) for wanted in verdicts]
        print(f"{act or 'all':12}" + "".join(f"{n:11}" for n in row) + f"{100 * sum(row[:3]) / sum(row):12.1f} %")


if __name__ == "__main__":
    main()
