"""The documents tell the truth: their conversation is a played one, their modules and settings exist."""

import re
from pathlib import Path

from companion.base.settings import SETTING_NAMES

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_the_readmes_conversation_is_in_the_script_it_names():
    script = (ROOT / "demo_scripts" / "short_screen.txt").read_text(encoding="utf-8")
    quoted = [line for block in re.findall(r"```\n(Bot: .*?)```", README, re.S) for line in block.splitlines()]
    assert len(quoted) >= 8
    for line in quoted:
        assert line in script, line


def test_every_setting_stands_in_the_readme():
    for name in SETTING_NAMES:
        assert f"`{name}`" in README


def test_every_module_and_folder_that_developers_md_names_exists():
    for line in re.findall(r"^  ?([\w/. ]+?)(?:  +\S.*)?$", DEVELOPERS.split("```")[1], re.M):
        for name in line.split():
            if name.endswith((".py", "/")) and name != "companion/":
                assert any(ROOT.glob(f"**/{name.rstrip('/')}")), name


def test_every_package_of_the_companion_stands_in_developers_md():
    for package in (ROOT / "companion").iterdir():
        if (package / "__init__.py").exists():
            assert f"{package.name}/" in DEVELOPERS, package.name


def test_the_top_level_holds_the_design_card_and_nothing_else():
    allowed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "companion", "flows", "tests", "demo_scripts"}
    built = {"build", "squat_companion.egg-info"}
    assert {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} - built <= allowed
