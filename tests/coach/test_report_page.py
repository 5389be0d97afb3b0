"""The pages in a real browser: axe, narrow and wide, light and dark, by keyboard, on paper."""

from __future__ import annotations

from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest

from companion.coach.caseload_page import caseload_html
from companion.coach.report import report_html
from companion.export.pdf import NoPdf, write_pdf
from companion.record import coaching, people
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.coach.caseload_rows import NOW as CASELOAD_NOW
from tests.coach.caseload_rows import record
from tests.coach.caseload_world import populate
from tests.coach.made_up import NOW, START, a_lifter, opened
from tests.coach.test_report import LONG, group_of

CHROMIUM = Path("/usr/bin/chromium")
# A machine without a browser can still run the rest; CI installs one, so there nothing is left out.
pytestmark = pytest.mark.skipif(not CHROMIUM.exists(), reason="there is no Chromium at /usr/bin/chromium")

FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync"]
NAMES = ("report", "caseload", "long", "empty")
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture(scope="module")
def pages(tmp_path_factory) -> dict[str, Path]:
    """A report, a whole one, a caseload, a report full of words without a break, one of somebody without an answer, and the whole one
    without its log."""
    folder = tmp_path_factory.mktemp("pages")
    db = opened(folder / "companion.sqlite")
    few, whole = a_lifter(db, screens=2, days=5), a_lifter(db, name="Maren Oakes")
    long = a_lifter(db, name=f"X{LONG[1:]}", note=LONG, goal=LONG, screens=1, days=3)
    empty = people.add_person(db, "terminal", "new", "new", START)
    made = {"report": report_html(db, few, NOW, BOOK), "whole": report_html(db, whole, NOW, BOOK),
            "caseload": caseload_html(db, group_of(db), NOW), "long": report_html(db, long, NOW, BOOK),
            "empty": report_html(db, empty, NOW, BOOK), "brief": report_html(db, whole, NOW, BOOK, with_log=False)}
    paths = {name: folder / f"{name}.html" for name in made}
    for name, page in made.items():
        paths[name].write_text(page, encoding="utf-8")
    return paths


@pytest.fixture(scope="module")
def browser() -> Iterator[object]:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        one = playwright.chromium.launch(executable_path=str(CHROMIUM), args=FLAGS)
        yield one
        one.close()


@pytest.fixture
def shown(browser, pages):
    """Opens a page of a name, at a width and in a scheme; a page that asks for anything but itself fails its test."""
    contexts, asked = [], []

    def opens(name: str, width: int = 390, scheme: str = "light", script: bool = True):
        context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme, java_script_enabled=script)
        contexts.append(context)
        one = context.new_page()
        one.set_default_timeout(5000)
        one.on("request", lambda request: asked.append(request.url))
        one.on("pageerror", lambda error: asked.append(str(error)))
        one.on("console", lambda message: asked.append(message.text))
        one.goto(pages[name].as_uri())
        return one

    yield opens
    for context in contexts:
        context.close()
    assert [one for one in asked if not one.startswith(("file://", "data:"))] == []


@pytest.mark.parametrize(("name", "width", "scheme"), [
    ("report", 390, "light"), ("long", 390, "dark"), ("caseload", 1280, "light"), ("empty", 1280, "dark"),
    *((("report", 1280, "dark"), ("caseload", 390, "dark"), ("empty", 390, "light")) if BY_NIGHT else ())])
def test_axe_finds_nothing(shown, name, width, scheme):
    page = shown(name, width, scheme)
    page.evaluate(files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8"))
    found = page.evaluate("tags => axe.run(document, {runOnly: {type: 'tag', values: tags}, resultTypes: ['violations']})", TAGS)
    assert [(one["id"], node["target"], node["failureSummary"]) for one in found["violations"] for node in one["nodes"]] == []
    assert {"color-contrast", "heading-order", "td-headers-attr"} & {one["id"] for one in found["passes"]}


@pytest.mark.parametrize("name", NAMES)
def test_a_page_never_scrolls_sideways(shown, name):
    page = shown(name)
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert page.evaluate("""Math.max(...[...document.querySelectorAll('main *:not(.out-of-sight):not(thead *):not(thead)')]
            .map((one) => one.getBoundingClientRect().right))""") <= width


def test_charts_turn_dark_with_the_page_and_stay_light_on_paper(shown):
    """By a filter, whose inks tests/pictures/test_ink.py holds."""
    page, filters = shown("report", 390, "dark"), []
    for medium in ("screen", "print"):
        page.emulate_media(media=medium)
        filters.append(page.evaluate("getComputedStyle(document.querySelector('figure img')).filter"))
    light = shown("report").evaluate("getComputedStyle(document.querySelector('figure img')).filter")
    assert (*filters, light) == ("invert(1) hue-rotate(180deg)", "none", "none")


def test_words_are_large_enough_on_a_phone(shown):
    page = shown("report")
    sizes = page.evaluate("[...document.querySelectorAll('main *')].map((one) => parseFloat(getComputedStyle(one).fontSize))")
    assert min(sizes) >= 13


def test_the_first_tab_leads_to_the_content(shown):
    page = shown("report", 1280)
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    assert page.evaluate("document.activeElement.getBoundingClientRect().left") >= 0
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"


def test_a_narrow_table_is_still_a_table_for_a_screen_reader(shown):
    tree = shown("report").get_by_role("table", name="Squat days, the newest first").aria_snapshot()
    assert 'columnheader "Hurt"' in tree
    assert 'rowheader "Mon 16 Feb 2026"' in tree
    assert 'cell "62.5 kg"' in tree  # its label is for eyes only: the column's head has been read out


def names_in(page) -> list[str]:
    return page.evaluate("[...document.querySelectorAll('#caseload tbody th')].map((one) => one.textContent)")


@pytest.mark.parametrize("width", [390, 1280])
def test_the_caseload_is_sorted_by_keyboard(shown, width):
    page = shown("caseload", width)
    assert names_in(page) == ["Lifter 2", "Lifter 0", "Lifter 1"]
    button = page.get_by_role("button", name="Lifter", exact=True)
    button.focus()
    page.keyboard.press("Enter")
    assert names_in(page) == ["Lifter 0", "Lifter 1", "Lifter 2"]
    assert button.locator("xpath=..").get_attribute("aria-sort") == "ascending"
    assert page.get_by_role("status").inner_text() == "Sorted by Lifter, ascending."
    page.keyboard.press("Space")
    assert names_in(page) == ["Lifter 2", "Lifter 1", "Lifter 0"]
    page.get_by_role("button", name="Group").press("Enter")
    assert names_in(page)[0] == "Lifter 2"
    assert button.locator("xpath=..").get_attribute("aria-sort") == "none"


def test_without_script_the_caseload_is_whole_and_offers_no_dead_button(shown):
    page = shown("caseload", script=False)
    assert names_in(page) == ["Lifter 2", "Lifter 0", "Lifter 1"]
    assert page.get_by_role("button").count() == 0


def pages_of(path: Path) -> int:
    return path.read_bytes().count(b"/Type /Page\n")


def test_a_report_prints_on_a4_and_on_letter_at_the_same_size(pages, tmp_path):
    for paper in ("A4", "letter"):
        write_pdf(pages["whole"].read_text(encoding="utf-8"), tmp_path / f"{paper}.pdf", str(CHROMIUM), paper)
    a4, letter = (pages_of(tmp_path / f"{paper}.pdf") for paper in ("A4", "letter"))
    assert 10 < a4 <= letter <= a4 * 1.25  # shrunk to fit, the wider paper would take fewer
    assert b"/MediaBox [0 0 594.95" in (tmp_path / "A4.pdf").read_bytes()
    assert b"/MediaBox [0 0 612 792]" in (tmp_path / "letter.pdf").read_bytes()
    assert b"/StructTreeRoot" in (tmp_path / "A4.pdf").read_bytes()


@pytest.mark.parametrize("paper", ["A4", "letter"] if BY_NIGHT else ["letter"])
def test_without_its_log_a_report_is_two_printed_pages(pages, tmp_path, paper):
    write_pdf(pages["brief"].read_text(encoding="utf-8"), tmp_path / "brief.pdf", str(CHROMIUM), paper)
    assert pages_of(tmp_path / "brief.pdf") == 2


def test_what_is_not_printed_without_the_log_is_on_the_screen_and_the_paper_says_so(shown):
    page = shown("brief", 1280)
    rest, said = page.locator(".rest").first, page.locator(".on-paper")
    assert (rest.is_visible(), said.is_visible()) == (True, False)
    page.emulate_media(media="print")
    assert (rest.is_visible(), said.is_visible()) == (False, True)
    for kept in ("#summary", "#safety", "#measured", "#charts", "#squat-days", ".caution"):
        assert page.locator(kept).first.is_visible()


def test_a_page_that_takes_too_long_is_given_up(pages, tmp_path):
    with pytest.raises(NoPdf, match="took longer"):
        write_pdf(pages["report"].read_text(encoding="utf-8"), tmp_path / "x.pdf", str(CHROMIUM), seconds=0.01)


def test_no_row_and_no_chart_is_cut_between_printed_pages(shown):
    page = shown("report", 700)
    page.emulate_media(media="print")
    kept = page.evaluate("""['tr', 'figure', 'dl > div'].map((name) => [...document.querySelectorAll(name)]
        .every((one) => getComputedStyle(one).breakInside === 'avoid'))""")
    assert kept == [True, True, True]
    heads = page.evaluate("[...document.querySelectorAll('thead')].map((one) => getComputedStyle(one).display)")
    assert set(heads) == {"table-header-group"}


def test_what_is_new_of_25_lifters_is_one_a4_page(browser, tmp_path):
    with record(tmp_path) as room:
        populate(room, 25)
        for n, sam in enumerate(coaching.lifters_of(room.db, room.coach)):
            room.results(sam, 0.1)
            room.find(sam, "retest.change", ("better", "worse")[n % 2], 0.1, "knee to wall, left: 3 cm more than before, which is beyond "
                      "measurement error (just under 3 cm).")
        path = tmp_path / "caseload.html"
        path.write_text(caseload_html(room.db, room.coach, CASELOAD_NOW), encoding="utf-8")
    page = browser.new_page(viewport={"width": 680, "height": 994})  # A4 within its margins, at 96 dots an inch
    page.goto(path.as_uri())
    page.emulate_media(media="print")
    box = page.locator("section.sheet").bounding_box()
    assert page.locator("section.sheet tbody tr").count() == 25
    assert box["y"] + box["height"] <= 994
    assert page.locator("section.sheet").evaluate("one => getComputedStyle(one).breakAfter") == "page"
    page.close()


def test_somebody_new_is_in_the_browser_too(shown):
    assert shown("empty").get_by_role("heading", level=1).inner_text() == "Report on new"
