"""A new test is two files: in a copy of the tree, everything else finds it without being touched."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent / "new_test"
ID = "seated_hip_rotation"
PLACES = (f"companion/screening/protocols/{ID}.py", f"flows/{ID}.py")
OPENING = (ROOT / "demo_scripts" / "short_screen.txt").read_text(encoding="utf-8")

SAFETY = (*["tap No"] * 6, "tap 0", "tap No")
WARM_UP = ("tap No", "tap Start", "tap Done", "tap Start")
LIVED = ("tap One test", "full screen", *["tap Leave this one out"] * 5, "tap Go on", *SAFETY, *WARM_UP,
         "tap Ready", "20", "22", "tap Stop for today", "results")
"""The menu, then the tests before it on the route left out, then it, short of the line on both sides."""


def conversation() -> str:
    """Mara's first evening as far as the menu, then the new test."""
    opening = [line for line in OPENING.splitlines() if line.startswith(("begin", "Mara:"))]
    met = opening[:opening.index("Mara: tap Find out why my back rounds")]
    return "\n".join([*met, *(f"Mara: {words}" for words in LIVED)]) + "\n"


@pytest.fixture(scope="module")
def lived(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What is said and written in a tree that has the two files more and nothing else."""
    tree = tmp_path_factory.mktemp("tree")
    for folder in ("companion", "flows"):
        shutil.copytree(ROOT / folder, tree / folder)
    shutil.copy(ROOT / "pyproject.toml", tree)
    for name, place in zip(("protocol.py", "flow.py"), PLACES, strict=True):
        shutil.copy(HERE / name, tree / place)
    (tree / "play.txt").write_text(conversation(), encoding="utf-8")
    done = subprocess.run([sys.executable, str(HERE / "lived.py"), "play.txt", "c.sqlite"], cwd=tree, capture_output=True, text=True,
                          timeout=60, env={"PYTHONPATH": str(tree), "PATH": ""}, check=False)
    assert done.returncode == 0, done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def line_with(said: list[str], words: str) -> str:
    """The first message that has these words."""
    return next((message for message in said if words in message), "")


def test_it_is_in_the_menu(lived):
    assert "[Seated hip rotation]" in line_with(lived["said"], "Which test?")


def test_it_has_its_place_in_the_full_screen_which_has_one_more_by_it(lived):
    assert "At most 11 left" in line_with(lived["said"], "squat look, about")
    assert line_with(lived["said"], "seated hip rotation, about").startswith(
        "Next: seated hip rotation, about 4 minutes. At most 6 left.")


def test_its_flow_is_sound_and_its_words_start_it(lived):
    assert lived["faults"] == []
    assert lived["command"] == ID


def test_its_safety_gates_and_warm_up_come_before_it(lived):
    said = lived["said"]
    order = [said.index(line_with(said, words)) for words in ("bladder", "Heavy squats or deadlifts", "Sit on a high chair")]
    assert order == sorted(order)


def test_it_changes_a_ruling_and_the_results_say_so(lived):
    assert lived["rulings"] == [["not_tested", ""], ["too_close", "hip"]]  # a range alone: no changed squat agrees
    told = line_with(lived["said"], "Length: too close to call")
    assert "Left: seated hip rotation 20°, clearly under the 30° line (our cautious choice)" in told


def test_it_is_in_the_report_with_its_line_its_error_and_its_source(lived):
    page = re.sub(r"<[^>]+>", " ", lived["report"])
    words = " ".join(page.split())
    for wanted in ("Seated hip rotation, left", "enough for a test of the house: 20°, clearly under", "3° standard error of measurement",
                   "Seated hip rotation by level: error 3° a reading made up"):
        assert wanted in words, wanted


def test_it_has_a_chart(lived):
    assert lived["chart"].startswith("Picture: Seated hip rotation, over time. Left: 20° on 2 Mar 2026")
    assert "Left: 20° on 2 Mar 2026; within 11.7 to 28.3°" in lived["report"]


def test_it_is_in_the_exports(lived):
    rows = [row for row in lived["csv"].splitlines() if f",{ID}," in row]
    assert any(",left,left,20,20" in row and ",deg,ok,level," in row for row in rows)
    resources = [entry["resource"] for entry in json.loads(lived["fhir"])["entry"]]
    seen = [one for one in resources if one["resourceType"] == "Observation" and ID in one["code"]["coding"][0]["code"]]
    assert [one["valueQuantity"]["value"] for one in seen] == [20, 22]
    assert any(one["resourceType"] == "Questionnaire" and one["title"] == "Seated hip rotation" for one in resources)


def test_the_how_to_is_these_two_files():
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    how = guide.partition("**A test.**")[2].partition("\n**")[0]
    assert 0 < len(how.split()) <= 120
    assert "companion/screening/protocols/" in how
    assert "flows/" in how
    assert "tests/house/new_test/" in how
