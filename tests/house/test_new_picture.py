"""A new picture is a function of its name and its name in a step: tried in a copy of the tree."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]

ADDED = '''

def film_low() -> Drawing:
    """Sitting low on the chair."""
    return Drawing("somebody low in a squat, seen from the side.", (seen(squat(1, 24, 5), "Low", ""),))
'''
LOOK = """
from pathlib import Path
from companion.base.clock import SystemClock
from companion.conversation.flow import Known
from companion.pictures.cache import drawn
from companion.pictures.poses import pose
from companion.verify.check import faults
from companion.verify.domains import Ways
from companion.verify.proof import prove
from flows.catalogue import BOOK

drawing, now = pose("film_low"), SystemClock().now()
assert drawing and drawn(drawing, "png")[:8] == b"\\x89PNG\\r\\n\\x1a\\n"
assert BOOK["film"].stops["video"].picture == drawing.name
ways = Ways(BOOK, BOOK["film"], Known({"today": now.date().isoformat()}, now))
assert not faults(ways, prove(ways))
"""


def edited(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert text.count(old) == 1, f"{path}: {old}"
    path.write_text(text.replace(old, new), "utf-8")


def test_a_picture_added_as_the_how_to_says_is_drawn_and_asked_for(tmp_path: Path):
    for folder in ("companion", "flows"):
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=shutil.ignore_patterns("__pycache__"))
    module = tmp_path / "companion/pictures/squats.py"
    module.write_text(module.read_text("utf-8") + ADDED, "utf-8")
    edited(tmp_path / "flows/film.py", "            Media()),", '            Media(), picture="film_low"),')
    done = subprocess.run([sys.executable, "-c", LOOK], cwd=tmp_path, capture_output=True, text=True, timeout=60, check=False,
                          env={"PYTHONPATH": str(tmp_path), "PATH": ""})
    assert done.returncode == 0, done.stderr


def test_every_how_to_names_the_test_that_carries_it_out():
    guide = (ROOT / "DEVELOPERS.md").read_text("utf-8").partition("## How to add")[2].partition("\n## ")[0]
    named = {word for word in guide.replace("`", " ").split() if word.startswith("tests/")}
    assert {"tests/house/test_new_protocol.py", "tests/reminders/test_new_kind.py", "tests/export/test_registry.py",
            "tests/house/test_new_picture.py"} <= named
    assert [name for name in named if not (ROOT / name).exists()] == []
