"""The picture page in a real browser: axe, a narrow phone and a wide screen, light and dark."""

from __future__ import annotations

from importlib.resources import files
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from companion.cli.catalogue import picture_uses
from companion.pictures import contact_sheet
from companion.pictures.charts import png
from companion.pictures.contact_sheet import write_sheet
from tests.coach.test_report_page import TAGS, browser, pytestmark  # noqa: F401 a fixture, and the mark of what needs a browser
from tests.pictures.test_charts import leg_raise


@pytest.fixture(scope="module")
def page_file(tmp_path_factory) -> Path:
    dot = BytesIO()
    Image.new("RGB", (390, 390), "#FBFAF7").save(dot, "PNG")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(contact_sheet, "drawn", lambda drawing, ending: dot.getvalue())
        patch.setattr(contact_sheet, "png", lambda chart: dot.getvalue())
        folder = tmp_path_factory.mktemp("sheet")
        write_sheet(folder, picture_uses())
    return folder / "index.html"


@pytest.mark.parametrize(("width", "scheme"), [(360, "light"), (360, "dark"), (1280, "dark")])
def test_axe_finds_nothing_on_the_picture_page_and_it_fits(browser, page_file, width, scheme):  # noqa: F811
    context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme)
    page = context.new_page()
    page.goto(page_file.as_uri())
    page.evaluate(files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8"))
    found = page.evaluate("tags => axe.run(document, {runOnly: {type: 'tag', values: tags}, resultTypes: ['violations']})", TAGS)
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    fits = page.evaluate("document.documentElement.scrollWidth") <= width
    context.close()
    assert [(one["id"], node["target"]) for one in found["violations"] for node in one["nodes"]] == []
    assert {"color-contrast", "image-alt", "region", "page-has-heading-one"} <= {one["id"] for one in found["passes"]}
    assert fits
    assert (ground == "rgb(255, 255, 255)") == (scheme == "light")


def test_a_chart_is_opaque_so_that_a_dark_page_does_not_show_through():
    image = Image.open(BytesIO(png(leg_raise([0, 28]))))
    assert image.convert("RGBA").getextrema()[3] == (255, 255)
