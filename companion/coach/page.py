"""Self-contained HTML pages from templates.

Every value is made plain (``table.plain``: no control or direction characters), then escaped; a missing one is an error. No
script runs except one that the page's policy allows by its hash.
"""

from __future__ import annotations

import base64
import hashlib
import io
from collections.abc import Mapping
from functools import cache
from typing import Any, Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from companion.export.table import plain
from companion.pictures.series import Chart

POLICY: Final = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"
"""Content security policy: a page may load its own styles and pictures, nothing else."""

LONG_WORD: Final = 24
"""Characters beyond which a word may break anywhere; our choice."""


def rendered(name: str, values: Mapping[str, Any]) -> str:
    """Return a template rendered with these values and the styles."""
    return _environment().get_template(name).render(values, css=Markup(source_of("page.css")))


@cache
def _environment() -> Environment:
    environment = Environment(loader=PackageLoader("companion.coach"), autoescape=True, undefined=StrictUndefined, trim_blocks=True,
                              lstrip_blocks=True, finalize=_harmless)
    environment.tests["long_worded"] = lambda text: any(len(word) > LONG_WORD for word in str(text).split(" "))
    return environment


def _harmless(value: object) -> object:
    """Return a text made plain; markup and other values unchanged."""
    if isinstance(value, str) and not isinstance(value, Markup):
        return value if value.isprintable() else plain(value)
    return value


def source_of(name: str) -> str:
    """Return the source of a file beside the templates, such as styles or a script."""
    loader = _environment().loader
    assert loader is not None
    return loader.get_source(_environment(), name)[0]


def picture_of(chart: Chart) -> Markup:
    """Return a chart as a data URL: SVG, its words kept as text."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_svg import FigureCanvasSVG

    from companion.pictures.charts import draw

    out = io.StringIO()
    with rc_context({"svg.fonttype": "none", "svg.hashsalt": chart.name}):
        FigureCanvasSVG(draw(chart)).print_svg(out, metadata={"Date": None})  # type: ignore[no-untyped-call]
    return Markup("data:image/svg+xml;base64," + base64.b64encode(out.getvalue().encode()).decode())


def hash_of(script: str) -> str:
    """Return a script's hash as a content security policy names it."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"
