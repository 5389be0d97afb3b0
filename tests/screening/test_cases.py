"""Twelve lifters, each decided by hand from the evidence table, go through the screening and come out the same."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from companion.screening.about import About
from companion.screening.conclusion import conclude
from companion.screening.screen import screen_from
from tests.screening.build import rows
from tests.table import each_row

CASES: dict[str, dict[str, Any]] = tomllib.loads((Path(__file__).parent / "cases.toml").read_text("utf-8"))


@each_row("case", CASES.values(), ids=CASES.keys())
def test_a_lifter_is_judged_as_by_hand(case: dict[str, Any]):
    log = [row for day, (flow, said) in enumerate(case.items()) if isinstance(said, dict) for row in rows(flow, said, run=flow, day=day,
           method=str(said.get("method", "")))]
    found = conclude(screen_from(log), About(height=178, sex="man", load=120, bar="high", usual_depth="below", years=5), pain=0)
    decided = {name: found.verdict(name).ruling.value for name in ("length", "strength", "control") if name in case}
    assert decided == {name: case[name] for name in decided}, case["because"]
    assert found.part == case["part"], case["because"]
    assert found.overall == case.get("overall", found.overall), case["because"]
    if side := case.get("side"):
        assert found.verdict("length").side == side
