"""Which files are mutated, and which tests have to miss what is taken out. A file that moves costs one line here."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from tests.mutants.numbers import EQUAL, ROOT

DOORS: Final = "tests/test_doors.py"


@dataclass(frozen=True, slots=True)
class Target:
    """One file. ``stages``: what pytest is given, one run after the other until one fails, the quickest to fail first. ``only``:
    the functions and constants that are guards (none: all); ``but``: those that are none. ``compared``: only its comparisons."""

    file: str
    stages: tuple[str, ...]
    only: tuple[str, ...] = ()
    but: tuple[str, ...] = ()
    compared: bool = False


SAFETY_TESTS: Final = "tests/screening/test_safety.py tests/screening/test_safety_bounds.py"
CHECK_TESTS: Final = ("tests/flows/test_safety_facts.py", "tests/flows/test_safety_check.py tests/flows/test_pain.py")
RULING_TESTS: Final = ("tests/screening/test_rulings.py tests/screening/test_conclusion.py", "tests/screening/test_findings.py",
                       "tests/screening/test_cases.py tests/screening/test_expected.py tests/screening/test_next_by_hand.py")
CASELOAD_TESTS: Final = " ".join(f"tests/coach/test_{one}.py" for one in ("caseload_messages", "names", "summary", "views"))

NUMBER_TESTS: Final = (
    " ".join(sorted({f"tests/screening/{file.name}" for file in (ROOT / "tests/screening").glob("test_*.py")} - {EQUAL})),
    "tests/flows/test_why.py tests/coach/test_orders.py")
"""What is asked of every number, after the tests that know its readers (``numbers.stages_of``): none that says only what it is."""

PROTOCOLS: Final = ("arms_forward_squat", "bird_dog", "hand_on_back_squat", "hinge_to_squat", "hip_fold", "knee_to_wall", "leg_raise",
                    "pause_squat", "rock_back", "squat_look")
TARGETS: Final = (
    Target("companion/screening/safety.py", (SAFETY_TESTS, *CHECK_TESTS)),
    Target("flows/shared.py", (DOORS, "tests/flows/test_closed_meanwhile.py", "tests/flows/test_wrong_tap.py "
           "tests/flows/test_squat_day.py tests/flows/test_about_you.py tests/flows/test_safety_check.py "
           "tests/flows/test_pause_squat.py tests/flows/test_rock_back.py"),
           but=("BANDS", "WATCHED", "watched_by")),
    Target("flows/safety_facts.py", CHECK_TESTS),
    Target("companion/screening/signs.py", ("tests/screening/test_signs.py", "tests/flows/test_signs.py")),
    Target("flows/pain_facts.py", ("tests/flows/test_pain_facts.py tests/flows/test_safety_facts.py",
                                   "tests/flows/test_late_pain.py tests/flows/test_pain.py", "tests/coach/test_alerts.py"),
           but=("MOVEMENTS",)),
    Target("companion/screening/limits.py", ("tests/screening/test_limits.py", "tests/flows/test_limits.py"), but=("LimitsTold",)),
    Target("companion/reminders/decision.py",
           ("tests/reminders/test_kinds.py tests/reminders/test_kind_rows.py", "tests/reminders/test_sweep.py")),
    Target("companion/app/rate_limit.py", ("tests/app/test_rate_bounds.py", "tests/app/test_rate_limit.py")),
    Target("companion/record/coaching.py", ("tests/record/test_coaching.py", "tests/coach/test_orders.py tests/coach/test_links.py "
           "tests/coach/test_groups.py tests/coach/test_alerts.py tests/coach/test_actions.py tests/test_access.py")),
    Target("companion/screening/rulings.py", RULING_TESTS),
    Target("companion/screening/conclusion.py", RULING_TESTS, only=("_drill_part",)),
    Target("companion/screening/conclusion.py", (*RULING_TESTS, "tests/screening/test_setups.py tests/screening/test_load_threshold.py",
           "tests/flows/test_outcome.py"), compared=True),
    Target("companion/reminders/kinds.py", ("tests/reminders/test_kind_rows.py", "tests/reminders")),
    *(Target(f"companion/screening/protocols/{test}.py", ("tests/screening/test_evidence_rows.py", "tests/screening/test_findings.py"),
             only=("_ROWS",)) for test in PROTOCOLS),
    *(Target(f"companion/screening/protocols/{test}.py", (
        "tests/screening/test_findings.py tests/screening/test_evidence_rows.py", "tests/screening/test_readings.py "
        "tests/screening/test_doubts.py tests/screening/test_expected.py"), compared=True) for test in PROTOCOLS),
    Target("companion/screening/evidence.py", ("tests/screening/test_evidence_rows.py", *RULING_TESTS)),
    Target("companion/coach/caseload.py", ("tests/coach/test_caseload.py", CASELOAD_TESTS),
           only=("CaseloadLine", "URGENT_STATES", "urgency", "ordered", "place_of", "weight_under")),  # who comes first; the rest is words
    Target("companion/coach/since.py", ("tests/coach/test_since.py", CASELOAD_TESTS),
           only=("STANDING_STATES", "OWED", "news_of", "_is_new")),  # who is told; the rest is words and pages
    Target("companion/record/access.py", ("tests/record/test_access.py", "tests/coach/test_alerts.py tests/coach/test_typed.py")),
    Target("companion/record/unanswered.py", ("tests/record/test_unanswered.py", "tests/coach/test_alerts.py")),
    Target("companion/conversation/lapsed.py", ("tests/flows/test_lapsed.py", "tests/flows/test_closed_meanwhile.py")),
    Target("flows/cleared_by.py", ("tests/flows/test_cleared_by.py tests/language/test_clearances.py tests/flows/test_limits.py",
                                   "tests/flows/test_safety_check.py tests/flows/test_referral.py", "tests/flows/test_signs.py"),
           but=("EXAMPLES", "SENTENCES")),
    Target("flows/level_parts.py", ("tests/flows/test_level_parts.py", "tests/flows/test_signs.py tests/flows/test_late_pain.py")),
    Target("flows/sign_facts.py", ("tests/flows/test_sign_facts.py", "tests/flows/test_signs.py")),
    *(Target(f"flows/{name}_facts.py", ("tests/flows/test_limit_facts.py", "tests/flows/test_limits.py tests/flows/test_time_off.py",
                                        "tests/flows/test_closed_meanwhile.py tests/coach/test_alerts.py"))
      for name in ("limit", "limit_right", "limit_then", "limit_over", "clearance")),
    Target("companion/screening/standing.py", ("tests/screening/test_standing.py", "tests/coach/test_summary.py")),
    Target("companion/screening/levels.py", ("tests/screening/test_levels.py", "tests/flows/test_safety_check.py",
                                             "tests/coach/test_summary.py")),
    Target("flows/wrong_tap.py", ("tests/flows/test_flags_again.py", "tests/flows/test_wrong_tap.py")),
    Target("companion/record/orders.py", ("tests/coach/test_orders.py", "tests/record/test_coaching.py tests/coach/test_order_acts.py")),
    Target("companion/coach/triage.py", ("tests/coach/test_triage_bounds.py tests/coach/test_caseload.py", "tests/coach/test_triage.py",
                                         "tests/coach/test_caseload_messages.py tests/coach/test_report.py", "tests/coach/test_alerts.py"),
           but=("DayNamer", "LineReason", "Judge", "GROUP_WORDS")),
    Target("companion/app/consent.py", ("tests/app/test_consent.py",)),
    *(Target(f"companion/screening/{name}.py", tuple(f"tests/screening/test_{one}.py" for one in tests.split()), compared=True)
      for name, tests in (("readings", "readings expected findings"), ("errors", "errors open_data"), ("sureness", "sureness"),
                          ("retest", "drills_and_retest expected"), ("trend", "trend expected"), ("doubts", "doubts findings readings"),
                          ("next_test", "next_by_hand next_test"), ("outcomes", "outcomes open_data"),
                          ("load_threshold", "load_threshold expected"), ("priming_trial", "priming_trial open_data"),
                          ("certainty", "certainty next_by_hand rulings"),
                          ("pairs", "findings screen next_test film_measure conclusion"),
                          ("depth_progression", "depth_progression"), ("setups", "setups"),
                          ("protocols/film_measure", "film_measure evidence_rows"), ("estimate", "estimate_by_hand estimate"))),
    *(Target(f"companion/screening/numbers/{name}.toml", NUMBER_TESTS)
      for name in ("causes", "change", "doing", "estimate", "minutes", "readings", "safety", "training")),
)
