"""A folder of every picture for visual review, with a page that shows them at a phone's width."""

from __future__ import annotations

import html
from collections.abc import Mapping, Sequence
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Final

from companion.channels.pictures import Picture
from companion.pictures.cache import drawn, ending_of
from companion.pictures.charts import png
from companion.pictures.drawing import Drawing
from companion.pictures.poses import poses
from companion.pictures.series import ChartOwner, all_charts, chart_of
from companion.pictures.your_squat import your_squat
from companion.screening.about import About
from companion.screening.protocols.hip_fold import HipFold
from companion.screening.protocols.knee_to_wall import KneeToWall
from companion.screening.screen import LoggedAnswer, screen_of

BEGAN: Final = datetime(2026, 3, 2, 18, tzinfo=UTC)
"""First day of the invented lifter whose charts are shown."""
SHOWN: Final = 360
"""Width on the page in pixels, of a narrow phone."""
PAGE: Final = """<!doctype html><html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>Every picture</title><style>
:root{{color-scheme:light dark}}body{{margin:0;font:14px sans-serif;color:#1F2A37;background:#FFFFFF}}
@media(prefers-color-scheme:dark){{body{{color:#E8EDF2;background:#17212B}}img[src^=chart]{{filter:invert(1) hue-rotate(180deg)}}}}
header,main{{padding:0 8px}}main{{display:flex;flex-wrap:wrap;gap:16px}}figure{{margin:0;width:{width}px;max-width:100%}}
img{{max-width:100%;height:auto}}figcaption{{overflow-wrap:anywhere}}</style></head>
<body><header><h1>Every picture</h1><p>{count} pictures, {width} pixels wide as on a phone.</p></header>
<main>{figures}</main></body></html>"""
SAMPLE_DAYS: Final = {"one": (0,), "gaps": (0, 14, 28, 150, 171), "forty": tuple(range(0, 280, 7))}


def write_sheet(folder: Path, uses: Mapping[str, Sequence[str]]) -> int:
    """Write every pose, every chart of an invented lifter, and ``index.html``; return the number of pictures.

    Under each is the short caption of a chat; the full description is its alt text, so that a screen reader says it once.
    ``uses``: the steps that send or share a picture, by its name.
    """
    folder.mkdir(parents=True, exist_ok=True)
    found = [(f"{one.name}.{ending}", drawn(one, ending), one.words) for one in _drawings() for ending in (ending_of(one, video=False),)]
    for days, when in SAMPLE_DAYS.items():
        for name in all_charts():
            if chart := chart_of(name, _made_up(when), ChartOwner("1", steps=_steps(when))):
                found.append((f"{name}_{days}.png", png(chart), chart.words))
    shown = []
    for file, data, words in found:
        (folder / file).write_bytes(data)
        caption = Picture(folder / file, data, words).caption
        steps = ", ".join(uses.get(file.partition(".")[0], ()))
        shown.append(f'<figure><img src="{file}" width="{SHOWN}" alt="{html.escape(words)}"><figcaption><b>{file}</b><br>'
                     f"{html.escape(caption)}{f'<br>At {html.escape(steps)}' if steps else ''}</figcaption></figure>")
    (folder / "index.html").write_text(PAGE.format(count=len(found), width=SHOWN, figures="\n".join(shown)), encoding="utf-8")
    return len(found)


def _drawings() -> list[Drawing]:
    own = your_squat(screen_of(KneeToWall(method="tape", left_1=9.0, right_1=11.0),
                               HipFold(left_first="back", left_pinch="no", left_angle=108.0, right_first="back", right_pinch="no",
                                       right_angle=112.0)), About(height=178.0, mass=80.0))
    return [*poses().values(), *([own] if own else [])]


def _steps(days: tuple[int, ...]) -> tuple[tuple[date, str], ...]:
    """Return invented depth steps: gradually deeper, with a step back now and then."""
    bands = ("well_above", "a_little_above", "parallel", "below")
    return tuple(((BEGAN + timedelta(days=day)).date(), bands[min(3, n // 6 + (n % 5 != 3))]) for n, day in enumerate(days))


def _made_up(days: tuple[int, ...]) -> list[LoggedAnswer]:
    """The log of nobody: what has a chart, on so many days."""
    rows: list[LoggedAnswer] = []

    def add(flow: str, run: str, key: str, value: float | str, at: datetime, method: str = "", placement: str = "") -> None:
        """Add one answer."""
        rows.append(LoggedAnswer(flow, run, key, value, "ok", "done", method, placement, at))

    bands = ("well_above", "a_little_above", "parallel", "below")
    for n, day in enumerate(days):
        at, run, wave = BEGAN + timedelta(days=day), str(n + 1), (n * 7) % 5 - 2
        add("leg_raise", run, "method", "level", at)
        add("leg_raise", run, "left_level", float(round(62 + 0.05 * day + wave)), at, "level_own", "shin")
        add("leg_raise", run, "right_level", float(round(71 + 0.04 * day - wave)), at, "level_own", "shin")
        for side in ("left", "right"):
            add("leg_raise", run, f"{side}_lean", "short", at)
        add("knee_to_wall", run, "method", "tape", at)
        for side, start in (("left", 8.5), ("right", 11.5)):
            add("knee_to_wall", run, f"{side}_1", round(start + 0.012 * day + 0.2 * wave, 1), at, "tape")
        add("squat_look", run, "plain_rounds", "clearly", at)
        add("squat_look", run, "plain_depth", bands[min(day // 60, 3)], at)
        add("safety_check", run, "pain", float(max(0, 2 - day // 60)), at)
        if n % 4 == 2:
            add("pain", run, "bad", 4.0, at)
        if not n:
            add("trial", "0", "join", "yes", at)
        add("squat_day", f"d{run}", "lot", "draw", at)
        add("squat_day", f"d{run}", "load", 80.0, at)
        back = "moved" if n % 5 == 3 else "cant_tell" if n % 7 == 6 else "still"
        for key, said in (("felt", float(4 + wave)), ("back", back), ("hurt", "yes" if n % 16 == 9 else "no"), ("kept", "kept"),
                          ("seen_by", "film")):
            add("squat_after", f"a{run}", key, said, at)
    return rows
