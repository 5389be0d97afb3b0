"""The doors, by hand: which flow opens to whom, what comes first instead, and why. Never written from the gates.

``tests/test_doors.py`` tries every combination of what a row or a gate asks about on the engine and holds it against the first
row that fits; where none does, the door is open. A flow that stands in no row and not in ``OPEN`` fails.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from typing import Final

from companion.conversation.condition import Value

Facts = Mapping[str, Value]

AXES: Final[Mapping[str, Mapping[str, Facts]]] = {
    "welcomed": {"yes": {"welcome.zone_right": "yes"}, "no": {}, "zone wrong": {"welcome.zone_right": "no"}},
    "age": {"adult": {"welcome.adult": "yes"}, "under 18": {"welcome.adult": "no"},
            "said so later": {"welcome.adult": "yes", "safety.age": "under_18"},
            "put right": {"welcome.adult": "no", "safety.age": "grown"}},
    "crisis": {"none": {}, "over": {"crisis": "over"}, "asked": {"crisis": "asked"}, "open": {"crisis": "open"}},
    "coach": {"linked": {"coach": "yes"}, "none": {}, "left": {"coach": "no"}},
    "level": {"none": {}} | {level: {"safety.level": level} for level in (
        "go", "no_load", "not_today", "clinician", "same_day", "emergency")},
    "checked": {"today": {"safety.checked": "go", "safety.checked.today": "yes"}, "before": {"safety.checked": "go"},
                "undone": {"safety.checked": "undone", "safety.checked.today": "yes"}},
    "slip": {"none": {}, "open": {"safety.slip.open": "yes", "safety.slip.in_time": "yes"}},
    "level of": {"today": {"safety.may_open": "no"}, "before": {"safety.may_open": "yes"}},
    "hurt": {"no": {}, "asked today": {"pain.follow": "open", "pain.follow.today": "yes"}, "not asked": {"pain.follow": "open"},
             "over": {"pain.follow": "over"}},
    "seen": {"no": {}, "yes": {"safety.seen": "yes"}, "booked": {"safety.seen": "booked"}},
    "warm": {"done": {"warm": "done", "warm.today": "yes"}, "no": {}, "done before": {"warm": "done"},
             "later": {"warm": "later", "warm.today": "yes"}},
    "pregnant": {"no": {"safety_check.pregnant": "no"}, "never asked": {}, "yes": {"safety_check.pregnant": "yes"},
                 "unsure": {"safety_check.pregnant": "unsure"}, "wrote so": {"safety_check.pregnant": "no", "safety.pregnant": "yes"},
                 "wrote of it": {"safety.pregnant": "unsure"}, "wrote, and not so": {"safety.pregnant": "no"}},
    "sore": {"no": {"safety.sore": "no", "safety.sore.today": "yes"}, "today": {"safety.sore": "yes", "safety.sore.today": "yes"},
             "before": {"safety.sore": "yes"}},
    "load": {"free": {}, "body weight": {"safety.body_first": "yes"}},
    "limit": {"none": {}, "no load": {"limit.load": "closed"}, "no squats": {"limit.squat": "closed"},
              "no bending": {"limit.squat": "closed", "limit.bend": "closed"}, "no bend alone": {"limit.bend": "closed"},
              "no hip stretching": {"limit.stretch_hip": "closed"}, "no hamstring stretching": {"limit.stretch_hamstrings": "closed"},
              "no calf stretching": {"limit.stretch_calf": "closed"}, "nothing": {"limit.move": "closed"},
              "asked about": {"limit.open": "yes", "limit.move": "closed"}, "its date": {"limit.due": "yes"}},
    "drill": {"given": {"drill": "control"}, "none": {"drill": "none"}, "not known": {}},
    "retest": {"due": {"retest.tests": "leg_raise"}, "nothing": {}},
    "proposed": {"yes": {"setup.proposed": "slow"}, "a weight": {"setup.proposed": "front"}, "no": {}},
    "set-up": {"waits": {"setup.state": "waits"}, "none": {}},
    "years": {"one": {"about_you.years": 1.0}, "less": {"about_you.years": 0.9}, "not told": {}},
    "earned": {"yes": {"may_hinge": "yes"}, "no": {}},
    "day": {"today": {"of_day": "2026-03-02"}, "over": {"of_day": "2026-03-01"}},
    "heard": {"nothing": {}, "fever": {"heard": "fever"}},
    "films": {"read here": {"films": "yes"}, "not read here": {}},
    "a coach": {"yes": {"is_coach": "yes"}, "no": {}},
    "asked to link": {"no": {}, "by a coach": {"link.status": "lifter"}, "as a coach": {"link.status": "coach"}},
}
"""What may be the case, and the facts that say so; the first of each where nothing asks about it."""


@dataclass(frozen=True, slots=True)
class Door:
    """``flows`` are shut where all of ``where`` holds: ``first`` names the flow that begins instead ("": none does) and, where
    that leaves things as they were, ``says`` is part of what is said."""

    flows: Collection[str]
    where: Mapping[str, str | tuple[str, ...]]
    says: str
    why: str
    first: str = field(default="")


LYING: Final = ("hip_fold", "leg_raise", "rock_back")
SQUATS: Final = ("squat_look", "film_measure", "knee_to_wall", "hand_on_back_squat", "arms_forward_squat", "pause_squat", "hinge_to_squat")
TESTS: Final = (*LYING, "bird_dog", *SQUATS)
MOVING: Final = (*TESTS, "warm_up", "prime", "squat_day", "best_squat")
"""The body works in them."""
ROUNDS: Final = ("screen", "full_screen", "retest", "depth_estimate")
"""They lead to those, or tell of depth."""
PLANS: Final = ("squat_days", "trial")
OWN: Final = ("age", "bar", "depth_step", "film", "leave_coach", "morning", "note_to_coach", "reminder_times", "reminders", "since_pain",
              "clearance", "limit_over", "limits", "referral", "retest_later", "safety_check", "setup_morning", "share_outcomes",
              "share_trial", "squat_after", "squats_told", "time_off", "whereabouts")
COACHES: Final = ("alert_seen", "caseload", "compare", "coach_act", "coach_note", "digest", "find_lifter", "groups", "invite_lifter",
                  "lifter", "lifter_log", "lifter_named", "lifter_report", "since")
TO_LIFTERS: Final = ("coach_act", "coach_note")
"""What a coach writes or sets in them reaches a lifter."""

OPEN: Final = {
    "welcome": "it is the first of all", "about_you": "it is part of the welcome", "coach_welcome": "a code is asked for in it",
    "consent_again": "it asks for the consent itself", "link": "a code may come before the welcome: under 18 it must",
    "link_request": "who is asked must be able to say no", "pain": "pain is heard from everybody, always",
    "crisis": "so are thoughts of self-harm", "begin_again": "it opens the rest again",
    "erase": "everybody may have what is kept erased", "export": "everybody may have a copy", "my_data": "everybody may see it",
    "outcome": "results are kept; drill, load and depth in it have doors of their own (tests/flows/test_outcome.py)",
    "recount": "the same results, counted again", "over_load": "what was told, against its limit",
    "changes": "numbers of before; no movement", "progress": "numbers of before; no movement",
    "next_test": "it runs within a screen, whose doors come first; each test in it has its own",
    "why": "what numbers rest on; no movement", "why_told": "what numbers rest on; no movement"}
"""Never shut, and why."""

UNDER_18: Final = {"age": ("under 18", "said so later"), "coach": ("none", "left")}

DOORS: Final = (
    Door(("signs",), {"heard": "nothing"}, "no question about", "these questions begin where a sign was heard, by no button"),
    Door(("wrong_tap",), {"slip": "none", "level": ("emergency", "same_day", "clinician")}, "So it has to be looked at first",
         "too late, or written: what has to be seen stays so"),
    Door(("wrong_tap",), {"slip": "none"}, "can't be undone here: only a tap", "only a tap, once, and within ten minutes"),
    Door(("squat_day",), {"day": "over"}, "That squat day is over", "what was begun before midnight is not gone on with"),
    Door((*MOVING, *ROUNDS, *PLANS, *OWN), {"welcomed": ("no", "zone wrong")}, "at the beginning come first",
         "consent, age, units and time zone come before all else", "welcome"),
    Door(("home",), {"asked to link": ("by a coach", "as a coach")}, "",
         "a coach who asks to see somebody's answers is told to them before the menu", "link_request"),
    Door(("home", "my_coaches"), {"welcomed": ("no", "zone wrong"), "a coach": "no"}, "at the beginning come first",
         "a stranger has no menu; a coach need be no lifter", "welcome"),
    Door(COACHES, {"a coach": "no"}, "for coaches", "only whom the operator made a coach sees anything of others"),
    Door((*MOVING, *ROUNDS, *PLANS), UNDER_18, "Under 18", "under 18 only with a coach, also when that one has left"),
    Door((*MOVING, *ROUNDS, *PLANS, *TO_LIFTERS), {"crisis": "open"}, "",
         "after thoughts of self-harm nothing goes on until they begin again", "begin_again"),
    Door((*MOVING, *ROUNDS, *PLANS, *TO_LIFTERS), {"crisis": "asked"}, "",
         "while it is asked about thoughts of self-harm, that comes first", "crisis"),
    Door((*MOVING, *ROUNDS, "safety_check"), {"level": ("emergency", "same_day"), "level of": "today", "seen": "yes"}, "You have been seen",
         "who has been seen is not sent again; the check is for tomorrow"),
    Door((*MOVING, *ROUNDS, "safety_check"), {"level": "emergency", "level of": "today"}, "can be an emergency",
         "no check of the same day takes an emergency back"),
    Door((*MOVING, *ROUNDS, "safety_check"), {"level": "same_day", "level of": "today"}, "looked at today",
         "no check of the same day takes same-day care back"),
    Door(("squat_after", "squats_told"), {"level": "emergency"}, "can be an emergency",
         "who is sent to emergency care is asked nothing of squats"),
    Door(("squat_after", "squats_told"), {"level": "same_day"}, "looked at today", "who is to be seen today is asked nothing of squats"),
    Door(("film_measure",), {"films": "not read here"}, "Films can't be read here", "no check for what is not installed"),
    Door((*MOVING, "safety_check"), {"hurt": "not asked"}, "", "from the day after pain, wherever it was, that comes first",
         "morning"),
    Door(MOVING, {"level": "not_today", "level of": "today"}, "No squats, tests or drills today", "today is closed: no check opens it"),
    Door(("safety_check",), {"level": "not_today", "level of": "today", "hurt": ("asked today",)}, "can't open today any more",
         "pain has closed today: a check would ask much and open nothing"),
    Door(("safety_check",), {"level": "not_today", "level of": "today", "checked": ("today", "undone")}, "can't open today any more",
         "a check has closed today: another would ask much and open nothing"),
    Door(MOVING, {"limit": "asked about"}, "what it is stays open", "what a clinician told is not known yet", "limits"),
    Door(MOVING, {"checked": ("before", "undone")}, "Without today's safety check", "yesterday's answers are not today's", "safety_check"),
    Door((*MOVING, *ROUNDS), {"level": ("emergency", "same_day"), "seen": "yes"}, "You have been seen", "not before they were cleared"),
    Door((*MOVING, *ROUNDS), {"level": "emergency"}, "can be an emergency", "until somebody has seen them"),
    Door((*MOVING, *ROUNDS), {"level": "same_day"}, "looked at today", "until somebody has seen them"),
    Door((*MOVING, *ROUNDS), {"level": "clinician"}, "Please see a doctor or physiotherapist", "until one has cleared them"),
    Door((*MOVING, *ROUNDS), {"level": "not_today"}, "No squats, tests or drills today", "pain, fever or illness: the day is over"),
    Door(("screen", "full_screen", "retest"), {"limit": "asked about"}, "what it is stays open",
         "what a clinician told is not known yet", "limits"),
    Door((*MOVING, "screen", "full_screen", "retest"), {"limit": "its date"}, "has come to its date",
         "on its date a clinician's limit ends with a question, never by itself", "limit_over"),
    Door((*SQUATS, "prime", "squat_day", "best_squat"), {"level": "no_load"}, "No squats or loaded work",
         "a small pain: the floor tests only"),
    Door((*MOVING, *ROUNDS), {"limit": ("nothing", "asked about")}, "You were told to leave that out",
         "no training at all, or words that could not be read: nothing that moves"),
    Door(("squat_day", "best_squat", "depth_estimate", "squat_look", "film_measure", "hand_on_back_squat", "arms_forward_squat",
          "pause_squat", "hinge_to_squat"),
         {"limit": ("no squats", "no bending")}, "You were told to leave that out", "who may not squat or bend does not squat here"),
    Door((*LYING, "hinge_to_squat"), {"limit": ("no bending", "no bend alone")}, "You were told to leave that out",
         "they fold hips and back"),
    Door(("hip_fold", "rock_back"), {"limit": "no hip stretching"}, "You were told to leave that out", "they stretch the hip"),
    Door(("leg_raise",), {"limit": "no hamstring stretching"}, "You were told to leave that out", "it stretches the hamstrings"),
    Door(("knee_to_wall",), {"limit": "no calf stretching"}, "You were told to leave that out", "it stretches the calf"),
    Door(LYING, {"pregnant": ("yes", "unsure", "wrote so", "wrote of it")}, "left out in pregnancy",
         "no lying on the back and no deep fold, also where it may be"),
    Door(("hinge_to_squat",), {"years": "not told"}, "for how long you have squatted", "it is for who has squatted for a year"),
    Door(("hinge_to_squat",), {"years": "less"}, "a year or more", "it is for who has squatted for a year"),
    Door(("hinge_to_squat",), {"earned": "no"}, "both went without pain", "after two clean tests, neither of which hurt"),
    Door((*TESTS, "best_squat"), {"sore": "today"}, "sore from training", "sore muscles change the numbers"),
    Door((*TESTS, "best_squat"), {"warm": ("no", "done before", "later")}, "warmed up and rested",
         "the same warm-up before every number, on its day",
         "warm_up"),
    Door(("prime",), {"drill": "not known"}, "Say “screen” first", "a drill comes from the tests"),
    Door(("best_squat",), {"proposed": "no"}, "no set-up to check", "what moved nothing is not checked"),
    Door(("best_squat",), {"proposed": "a weight", "load": "body weight"}, "keep to body weight",
         "the change to check is a weight in front"),
    Door(("best_squat",), {"proposed": "a weight", "limit": "no load"}, "keep to body weight", "so a clinician said"),
    Door(("setup_morning",), {"set-up": "none"}, "No set-up waits", "there is nothing to ask about"),
    Door(("retest",), {"retest": "nothing"}, "nothing to test again", "only what a screen left open is tested again"),
    Door(("trial",), {"drill": ("not known", "none")}, "A trial needs a drill", "there is nothing to compare"),
    Door(("trial",), {"load": "body weight"}, "keep to body weight", "the trial is of squats with the same load"),
    Door(("trial",), {"limit": "no load"}, "keep to body weight", "so a clinician said"),
)
"""In the order in which they are met; the first that fits is told."""
