"""Wishes about a lifter that a coach types with their name: the view that is meant, or a button for the act, for each it may be about.

Nothing is done or changed here: an act begins with a tap that names the lifter.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from companion.coach.letters import NAMED_NOBODY, tap
from companion.coach.names import display_name, lifters_matching
from companion.conversation.effects import Say, Show, Tap
from companion.conversation.number_kinds import parse_number
from companion.conversation.prompt import in_rows
from companion.export.questions import in_words
from companion.language.coach_words import STATES_ASKED, Wish, nearly_called, wish_in
from companion.language.units import METRIC, shown
from companion.record import coaching, orders
from companion.record.groups import groups_of
from companion.record.turn import Turn
from companion.screening.coach_acts import COACH_ACTS
from companion.screening.depth import BAND_WORDS, Band
from companion.screening.protocols import routed

CHOICES_MOST: Final = 6
"""Lifters that are offered where a name may be several; our choice."""
ACT_DONE: Final = {"snooze": "put aside", "dismiss": "put aside", "reviewed": "reviewed", "note": "a message", "private": "a private note"}
WRITES: Final = "Write to {}? Tap Yes and type it: you see it once more before it goes out."
STAYS_SENT: Final = "What was sent, noted or asked for can't be taken back; write to them again, or open their page."


def answer_to(turn: Turn, text: str) -> Show | Say:
    """Return the view that a coach's message asks for, where it is about the one lifter of that name, or about a state; else the buttons
    that do what is wished."""
    names = [*coaching.told_apart(turn.db, turn.person).values(), *(one.name for one in groups_of(turn.db, turn.person))]
    wish = wish_in(text, names) or Wish("see", text)
    if not wish.name and wish.what in STATES_ASKED:
        return Show("since", "") if wish.what == "since" else Show("caseload", wish.what)
    if wish.what == "undo" or wish.what in COACH_ACTS:
        return _buttons(turn, wish)
    if wish.name == "everybody":
        return Show("caseload", "")
    whom = lifters_matching(turn.db, turn.person, wish.name)
    return Show(*_view(wish.what, f"{whom[0]}")) if len(whom) == 1 else _buttons(turn, wish)


def _view(what: str, of: str) -> tuple[str, str]:
    """Return the view of a lifter and what it is asked for."""
    return {"see": ("lifter", of), "log": ("lifter_log", f"{of}-0"), "report": ("lifter_report", of)}.get(what, ("lifter", f"{of}-{what}"))


def _buttons(turn: Turn, wish: Wish) -> Say:
    """Return the buttons that do what is wished, one for each lifter or group it may be about."""
    back = (tap("My lifters", "caseload"),)
    if wish.what == "undo":
        return _last_act(turn)
    if wish.what == "seen":
        return _alerts_seen(turn)
    groups = [one for one in groups_of(turn.db, turn.person) if one.name.casefold() == wish.name and wish.what in COACH_ACTS]
    whom = lifters_matching(turn.db, turn.person, wish.name)
    near = [] if whom or groups else lifters_matching(turn.db, turn.person, wish.name, nearly_called)
    given, words = _given(turn, wish)
    names = {**{str(one.number): one.name for one in groups},
             **{str(one): display_name(turn.db, turn.person, one) for one in (whom or near)}}
    if not names:
        return Say(NAMED_NOBODY, (back,))
    labels = {of: f"{name}: {words}" if words else f"See {name}" for of, name in list(names.items())[:CHOICES_MOST]}
    if len(labels) == 1 and not near:
        ((of, label),) = labels.items()
        return Say(WRITES.format(names[of]) if wish.what == "note" else f"{label}?", ((_tap(wish.what, of, "Yes", given),), back))
    more = f" Here are the first {CHOICES_MOST}: type more of the name to narrow this down." if len(names) > CHOICES_MOST else ""
    asks = f"{NAMED_NOBODY} Did you mean one of these?" if near else "Which one?"
    return Say(f"{asks}{more}", (*in_rows([_tap(wish.what, of, label, given) for of, label in labels.items()], 1), back))


def _alerts_seen(turn: Turn) -> Say:
    """Return the buttons that say of each lifter that their alerts were seen; a coach who taps none is told that all are."""
    waits = coaching.unseen_of(turn.db, turn.person)
    rows = [(tap(f"Seen: {display_name(turn.db, turn.person, lifter)}", "alert_seen", f"{lifter}-{alert}"),)
            for lifter, alert in waits[:CHOICES_MOST]]
    return Say("Whose alert have you seen?" if waits else "No alert waits for you: all are noted as seen.",
               (*rows, (tap("My lifters", "caseload"),)))


def _tap(what: str, of: str, label: str, given: str) -> Tap:
    act = COACH_ACTS.get(what)
    return tap(label, *(_view(what, of) if act is None else (act.flow, f"{of}-{what}{f'-{given}' if given else ''}")))


def _given(turn: Turn, wish: Wish) -> tuple[str, str]:
    """Return the value that a wish came with, as the act keeps it, "" where it is asked for; and the act in words for a button, "" for a
    look."""
    if wish.what == "pin_load":
        units = str(turn.known.facts.get("welcome.units", METRIC))
        kg = parse_number(wish.value, "kg", units)
        return (f"{round(kg, 2):g}", f"at most {shown(round(kg, 2), 'kg', units)}") if kg is not None else ("", "pin load")
    if wish.what == "pin_depth":
        band = _band(wish.value)
        return (band.value, BAND_WORDS[band]) if band else ("", "pin depth")
    if wish.what == "ask_for":
        title = next((test for test, one in routed().items() if one.title.casefold() in wish.value or one.short_name in wish.value), "")
        given = title or ("film" if re.search(r"\b(?:film|video|clip)\b", wish.value) else "")
        return given, f"ask for {'a film' if given == 'film' else in_words(given) if given else 'a test'}"
    act = COACH_ACTS.get(wish.what)
    return "", "" if act is None else (act.label or "Write").lower()


def _band(words: str) -> Band | None:
    if "above" in words:
        return Band.WELL_ABOVE if "well" in words else Band.A_LITTLE_ABOVE if words != "above" else None
    return Band.BELOW if "below" in words else Band.PARALLEL if words else None


def _last_act(turn: Turn) -> Say:
    """Return a button that takes back the last thing this coach did, where it can be."""
    last = coaching.last_act_of(turn.db, turn.person)
    back = (tap("My lifters", "caseload"),)
    if last is None:
        return Say("There is nothing of yours to take back.", (back,))
    act, lifter, what, value = last
    name = display_name(turn.db, turn.person, lifter)
    said = ACT_DONE.get(what) or COACH_ACTS[what].words or in_words(what)
    done = f"{said}{f', {orders.value_words(what, value, METRIC)}' if value and what != 'dismiss' else ''}"
    if what in ("reviewed", "snooze", "dismiss"):
        way: Iterable[Tap] = (tap(f"Take it back for {name}", "coach_act", f"{lifter}-unreviewed-{act}"),)
    elif COACH_ACTS[what].ends and value != "none":
        way = (tap(f"End it for {name}", "coach_act", f"{lifter}-{what}-none"),)
    elif what == "retest":
        way = (tap(f"End it for {name}", "coach_act", f"{lifter}-end_retest"),)
    elif what == "overrule":
        way = (tap(f"Overrule {name} anew", "coach_act", f"{lifter}-overrule"),)
    else:
        return Say(f"Last for {name}: {done}. {STAYS_SENT}", ((tap(f"See {name}", "lifter", lifter),), back))
    return Say(f"Last for {name}: {done}.", (tuple(way), back))
