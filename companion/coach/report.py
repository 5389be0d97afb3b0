"""Reports as web pages of one file, with nothing in them from elsewhere: a lifter's here, a caseload's in ``caseload_page``.

Whatever is put into a page is made plain first (``tidy.plain``: no control or direction characters), then escaped; a name
nobody gave a template is an error. A lifter's page allows no script at all, the caseload's only its own, by its hash.
"""

from __future__ import annotations

import base64
import hashlib
import io
import sqlite3
from collections.abc import Mapping
from datetime import datetime
from functools import cache
from typing import Any, Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from companion.coach.report_sections import PAGE_NAME_MOST, Account, account_of
from companion.conversation.registry import Book
from companion.export.table import plain
from companion.pictures.series import Chart
from companion.screening.levels import OPEN
from companion.screening.safety import Level

__all__ = ["PAGE_NAME_MOST", "POLICY", "hash_of", "page_of", "picture_of", "rendered", "report_html", "source_of"]

POLICY: Final = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"
"""What a page may load: its own styles and pictures, nothing else."""


LONG_WORD: Final = 24
"""Characters from which on a word may break anywhere; our choice."""


def report_html(db: sqlite3.Connection, person: int, now: datetime, book: Book, for_coach: bool = True) -> str:
    """The report of one lifter as one page of HTML."""
    return page_of(account_of(db, person, now, book, for_coach))


def page_of(account: Account) -> str:
    """The page of an account: pure, and slow where there are charts, so that it can be made beside the loop."""
    charts = [(chart.title, chart.words.removeprefix("Picture: "), picture_of(chart)) for chart in account.charts]
    return rendered("report.html.jinja", {"of": account, "charts": charts, "policy": POLICY, "free": account.level is Level.GO,
                                          "open": account.level is not None and account.level.value in OPEN})


def rendered(name: str, values: Mapping[str, Any]) -> str:
    """A template's page with its styles."""
    return _environment().get_template(name).render(values, css=Markup(source_of("page.css")))


@cache
def _environment() -> Environment:
    environment = Environment(loader=PackageLoader("companion.coach"), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
                              lstrip_blocks=True, finalize=_harmless)
    environment.tests["long_worded"] = lambda text: any(len(word) > LONG_WORD for word in str(text).split(" "))
    return environment


def _harmless(value: object) -> object:
    """What is put into a page: texts made plain, what is markup already left as it is."""
    if isinstance(value, str) and not isinstance(value, Markup):
        return value if value.isprintable() else plain(value)
    return value


def source_of(name: str) -> str:
    """A file beside the templates as it is: styles, a script."""
    loader = _environment().loader
    assert loader is not None
    return loader.get_source(_environment(), name)[0]


def picture_of(chart: Chart) -> Markup:
    """A chart as the address of a picture in the page itself: SVG, its words as text."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_svg import FigureCanvasSVG

    from companion.pictures.charts import draw

    out = io.StringIO()
    with rc_context({"svg.fonttype": "none", "svg.hashsalt": chart.name}):
        FigureCanvasSVG(draw(chart)).print_svg(out, metadata={"Date": None})  # type: ignore[no-untyped-call]
    return Markup("data:image/svg+xml;base64," + base64.b64encode(out.getvalue().encode()).decode())


def hash_of(script: str) -> str:
    """How a page's policy names a script that it allows."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"
