"""The pages a coach reads: what is in them, and that nothing a lifter wrote is active in them."""

from __future__ import annotations

import os
import re
import select
import stat
from datetime import timedelta
from html.parser import HTMLParser
from pathlib import Path
from unicodedata import category

import pytest
from jinja2 import UndefinedError
from markupsafe import Markup

from companion.coach.caseload_page import caseload_html
from companion.coach.page import rendered
from companion.coach.report import report_html
from companion.coach.report_sections import report_content
from companion.conversation.effects import Alert, Find
from companion.export import pdf
from companion.record import coaching, people
from companion.record.caseload import all_caseload_rows
from flows.catalogue import BOOK
from tests.by_night import BY_NIGHT
from tests.coach.made_up import NOW, START, ZONE, Kept, a_lifter, opened
from tests.coach.rows import NASTY
from tests.rows import keep

EVIL = ("<script>alert(1)</script>", "\"' onmouseover='alert(1)' x=\"", "</style></title></table><img src=x onerror=alert(1)>",
        "\u202eevil\u202c", "\x00\x1b[31m\x07", "half \ud83d emoji", "{{ of.__class__ }}{% raw %}", "javascript:alert(1)", *NASTY)
LONG = "W" * 4096
INLINE = ("bdi", "strong", "span", "a")


class Seen(HTMLParser):
    """What a browser would see: each element with its attributes, its text, and how deep headings go."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.text, self.headings, self._inside = "", [], []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))
        self._inside.append(tag)
        self.text += "" if tag in INLINE else " "
        if tag in ("h1", "h2", "h3", "h4", "h5", "h6"):
            self.headings.append(int(tag[1]))

    def handle_endtag(self, tag):
        self.text += "" if tag in INLINE else " "
        while self._inside and self._inside.pop() != tag:
            pass

    def handle_data(self, data):
        if "style" not in self._inside and "script" not in self._inside:
            self.text += data

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]

    @property
    def words(self) -> str:
        return " ".join(self.text.split())


def shape(page: str) -> list[tuple[str, ...]]:
    """The elements and the names of their attributes: what no text may change."""
    return [(tag, *sorted(attributes)) for tag, attributes in Seen(page).elements]


def nothing_active(page: str, scripts: int = 0) -> None:
    seen = Seen(page)
    assert len(seen.all("script")) == scripts
    assert not [name for _, attributes in seen.elements for name in attributes if name.startswith("on")]
    assert not {tag for tag, _ in seen.elements} & {"iframe", "object", "embed", "form", "link", "base", "svg"}
    for tag, attributes in seen.elements:
        for name in ("src", "href"):
            assert (attributes.get(name) or "#").startswith(("#", "data:image/svg+xml;base64,")), (tag, attributes)
    assert not [one for one in page if category(one) in ("Cc", "Cf", "Cs", "Zl", "Zp") and one != "\n"]
    page.encode("utf-8")


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    db = opened(tmp_path_factory.mktemp("report") / "companion.sqlite")
    return db, a_lifter(db)


@pytest.fixture(scope="module")
def page(made):
    db, person = made
    return report_html(db, person, NOW, BOOK)


@pytest.fixture
def file(tmp_path: Path):
    return opened(tmp_path / "companion.sqlite")


def section(page: str, name: str) -> str:
    """The words of one section."""
    return Seen(page.split(f'aria-labelledby="{name}">')[1].split("</section>")[0]).words


def test_the_summary_says_what_is_likely_what_is_ruled_out_by_what_and_what_was_not_tested(page):
    words = section(page, "summary")
    assert "Strength ○ ruled out" in words
    assert ("Speaks against it On film, your back rounds no earlier under load than without (at 90 kg) "
            "(squat look; strong; common practice)") in words
    assert "Not tested, so open: rock back, bird dog" in words
    assert "The bird dog was stopped for pain: it counts as not tested." in words
    assert "Home tests can't show the shape of bones or joints, and they are no diagnosis." in words


def test_an_overruled_finding_stands_beside_the_computed_one(page):
    words = section(page, "summary")
    assert "Control ○ ruled out Overruled: open overruled by coach Rune Aldersgate, 29 Mar 2026, 19:00." in words
    assert "Reason: seen in person: she loses it when tired" in words
    assert "A coach sees it differently: control is open." in words
    assert "Open control, by a coach (the tests: ruled out)" in words


def test_after_a_day_that_was_closed_safety_says_that_a_new_check_comes_first_and_every_alert(page):
    words = section(page, "safety")
    assert "Now: closed until a new safety check: none has passed since a day that was closed." in words
    assert "no load today, which has lapsed since; no check has passed after it" in words
    assert "8 Mar 2026, 18:07 no load today something hurt (A small pain" in words


@pytest.mark.parametrize(("level", "words"), [("clinician", "closed until a clinician"), ("emergency", "closed: sent to emergency care")])
def test_a_closed_level_is_marked_and_said(file, level, words):
    one = Kept(file, people.add_person(file, "terminal", "ida", "ida", START))
    one.find(safety__level=level)
    page = report_html(file, one.person, NOW, BOOK)
    assert words in section(page, "safety")
    assert 'class="caution shut"' in page
    assert f"Nothing in this plan opens any work. The safety level now: {words}" in section(page, "plan")


def test_the_load_over_the_limit_is_a_line_of_the_summary(file):
    one = Kept(file, people.add_person(file, "terminal", "ida", "ida", START))
    one.find(load__limit="112")
    for day, load in ((2, 137.0), (4, 110.0), (6, 152.0)):
        one.on(day)
        one.run("squat_after", {"done": "yes", "back": "still", "kept": "kept", "hurt": "no", "load": load})
    assert "Load lifted over the load limit on 2 of the last 3 squat days, by up to 40 kg" in section(
        report_html(file, one.person, NOW, BOOK), "summary")


def test_while_pain_stands_unanswered_the_report_says_so_and_opens_nothing(file):
    one = Kept(file, people.add_person(file, "terminal", "ida", "ida", START))
    one.run("pain", {"bad": 6.0}, ending=None)
    one.find(safety__level="go")
    page = report_html(file, one.person, NOW, BOOK)
    assert "Now: closed: something hurt, and the questions about it are still open." in section(page, "safety")
    assert 'class="caution shut"' in page


def test_an_open_level_warns_of_nothing_in_the_plan(file):
    one = Kept(file, people.add_person(file, "terminal", "ida", "ida", START))
    one.find(safety__level="go")
    page = report_html(file, one.person, NOW, BOOK)
    assert "opens any work" not in section(page, "plan")
    assert "caution shut" not in page


def test_each_side_has_its_number_its_lines_its_error_and_its_change(page):
    words = section(page, "measured")
    assert "Leg raise, left 76.5° mean of 76°, 77° by level own, shin, on 18 Mar 2026" in words
    assert "clearly over the 70° line (common practice)" in words
    assert "least change that is not error" in words
    assert "Since 5 Jan 2026: The difference of 1 cm is within measurement error" in words
    assert "Heels raised yes below parallel 1 step later" in words


def test_every_chart_has_its_text_twin(page):
    pictures = Seen(page).all("img")
    assert len(pictures) == 7
    assert all((one["alt"] or "").startswith("Chart: ") for one in pictures)
    assert page.count("<figcaption>") == 7
    for words in ("The last 12 squat days: load within",
                  "Leg raise, over time. Left: 63.5° on 5 Jan 2026", "Pain, 0 to 10, over time", "something hurt: 3 on 8 Mar 2026",
                  "Movement felt in the lower back", "Depth to keep to, after each squat day, over time"):
        assert words in section(page, "charts")


def test_a_chart_keeps_its_words_as_text(page):
    import base64

    first = next(one["src"] for one in Seen(page).all("img"))
    drawing = base64.b64decode(first.split(",")[1]).decode()
    assert ">Leg raise</text>" in drawing
    assert "<script" not in drawing


def test_squat_days_stand_the_newest_first_with_what_hurt_and_the_lot(page):
    words = section(page, "squat-days")
    assert "Sun 8 Mar 2026 65 kg depth kept still (on film) yes drill first, felt 2 of 10" in words
    assert words.index("24 Mar 2026") < words.index("8 Mar 2026") < words.index("31 Jan 2026")
    assert "a film or photo is in the chat" in words
    assert "Priming trial: Can't tell yet" in words


def test_plan_reminder_acts_and_looks_are_there(page):
    assert "Tuesday at 18:00, Friday at 07:00" in section(page, "plan")
    assert "Goal, as written 100 kg for five, deep & steady" in section(page, "plan")
    assert "Test again Mon 20 Apr 2026, 10:00 Europe/Berlin" in section(page, "plan")
    assert "Rune Aldersgate pin depth parallel film of Tuesday" in section(page, "coaching")
    assert "Rune Aldersgate numbers" in section(page, "coaching")


def test_a_coachs_depth_holds_until_a_later_squat_day_moves_it(made, file):
    glance = dict(report_content(*made, NOW, BOOK).glance)
    assert glance["Depth to keep to"] == (
        "parallel (set by coach Rune Aldersgate: film of Tuesday; since 29 Mar); from the tests: a little above parallel")
    one = Kept(file, people.add_person(file, "terminal", "ida", "ida", START))
    one.find(depth__keep="parallel", outcome__at=START.isoformat())
    one.on(3)
    one.find(depth__step="a_little_above")
    one.find(depth__keep="parallel")  # the results were looked at again
    assert dict(report_content(file, one.person, NOW, BOOK).glance)["Depth to keep to"] == (
        "a little above parallel (after the last squat day: because of the answers; since 8 Jan)")


def test_a_correction_is_visible_with_what_it_replaced(made, page):
    db, person = made
    first, back, again = [row[0] for row in db.execute(
        "select id from answers where person = ? and key = 'right_level' order by id limit 3", (person,))]
    old, new = [row[0] for row in db.execute("select raw from answers where id in (?, ?) order by id", (first, again))]
    words = section(page, "answers")
    assert f"taken back by row {back}" in words
    assert re.search(rf"takes back row {first} \({old}\b[^)]*\)+ replaced by row {again} \({new}\b", words)
    assert f"in place of row {back}" in words
    assert page.count('<tr role="row" class="gone">') == 8


def test_changed_squats_of_which_only_the_depth_was_asked_are_in_the_report(tmp_path):
    db = opened(tmp_path / "companion.sqlite")
    one = Kept(db, people.add_person(db, "terminal", "mia", "Mia", START))
    one.run("squat_look", {"seen_by": "film", "plain_rounds": "little", "plain_depth": "below", "slow_depth": "below", "heels_depth": "no",
                           "front_depth": "cant_tell", "again_depth": "below"})
    (table,) = [one for one in report_content(db, one.person, NOW, BOOK).details if one.name == "squats"]
    assert [row[:3] for row in table.rows] == [
        ("Plain", "a little", "below parallel"), ("Heels raised", "none", "no rounding"),
        ("Weight held in front", "can't tell", "not told"),
        ("Three seconds down", "yes", "below parallel"), ("Plain once more", "yes", "below parallel")]


def test_the_log_begins_with_the_newest_run(made):
    folds = report_content(*made, NOW, BOOK).log.folds
    newest = [max(int(row[0]) for row in one.rows) for one in folds]
    assert newest == sorted(newest, reverse=True)


def test_the_log_is_left_out_on_request_and_the_page_says_where_it_is(made, page):
    db, person = made
    short = report_html(db, person, NOW, BOOK, with_log=False)
    assert "rows in" in section(short, "answers")
    assert "companion report --log" in section(short, "answers")
    assert 'id="log"' not in short
    assert len(short) < len(page)


@pytest.mark.parametrize(("only", "which"), [
    ("corrections", "replaces is not null"), ("Knee to wall", "flow = 'knee_to_wall'"), ("leg_raise", "flow = 'leg_raise'"),
    ("2026-01-29", "datetime(at, '+1 hours') like '2026-01-29%'")])
def test_a_part_of_the_log_holds_its_rows_and_no_others(made, only, which):
    db, person = made
    wanted = {row[0] for row in db.execute(f"select id from answers where person = ? and {which}", (person,))}
    log = report_content(db, person, NOW, BOOK, only=only).log
    assert wanted == {int(row[0]) for one in log.folds for row in one.rows}
    assert f": {len(wanted)} of " in log.note


def test_the_log_holds_every_row(made, page):
    db, person = made
    rows = [row[0] for row in db.execute("select id from answers where person = ?", (person,))]
    for id in rows:
        assert f'<th role="rowheader" scope="row"><div><bdi>{id}</bdi></div></th>' in page
    assert f"{len(rows)} rows in" in section(page, "answers")


def test_what_a_question_lists_is_shown_with_it(page):
    assert "bladder Any of these, now or lately? New trouble with bladder or bowel" in section(page, "answers")


def test_a_lifter_in_pounds_reads_pounds_and_inches(file):
    words = Seen(report_html(file, a_lifter(file, units="imperial"), NOW, BOOK)).words
    assert "67.5 kg" not in words
    assert "149 lb" in words
    assert "How many inches from toe to wall? 8 3.1 in (tape)" in words


def test_dates_are_those_of_the_lifters_own_clock(file):
    late = Kept(file, people.add_person(file, "terminal", "ida", "ida", START), at=START.replace(hour=23))
    late.run("welcome", {"zone": ZONE})
    assert "Welcome, 6 Jan 2026, 00:00" in section(report_html(file, late.person, NOW, BOOK), "answers")


def test_somebody_without_an_answer_gets_a_page_that_says_so(file):
    person = people.add_person(file, "terminal", "ida", "ida", START)
    page = report_html(file, person, NOW, BOOK)
    for words in ("No test is done yet", "no safety check has been done yet", "Nothing has been measured yet.",
                  "There is nothing to draw yet.", "No squat day has been reported yet.", "Nothing has been answered yet."):
        assert words in Seen(page).words
    nothing_active(page)


def test_sources_carry_their_standing(page):
    words = section(page, "standing")
    assert "Leg raise: 70°, least that serves a squat rule of thumb common practice" in words
    assert "Knee to wall by tape: error" in words
    assert "Weir 2005" in words


def test_headings_go_down_one_at_a_time_and_every_head_has_a_scope(page):
    seen = Seen(page)
    assert seen.headings[0] == 1
    assert all(after - before <= 1 for before, after in zip(seen.headings, seen.headings[1:], strict=False))
    assert seen.headings.count(1) == 1
    assert all(one.get("scope") in ("col", "row", "rowgroup") for one in seen.all("th"))
    ids = [attributes["id"] for _, attributes in seen.elements if "id" in attributes]
    assert len(ids) == len(set(ids))
    targets = {(one["href"] or "")[1:] for one in seen.all("a")}
    assert targets <= set(ids)
    assert seen.all("html") == [{"lang": "en"}]


def test_a_lifters_page_has_no_script_and_allows_none(page):
    nothing_active(page)
    policy = next(one["content"] for one in Seen(page).all("meta") if one.get("http-equiv") == "Content-Security-Policy")
    assert policy.startswith("default-src 'none';")
    assert "script-src" not in policy


def report_of_somebody(file, name, text):
    """The report of a lifter whose every field holds a text, and whose coach wrote it too."""
    one = Kept(file, people.add_person(file, "terminal", "a", name, START))
    coach = people.add_person(file, "terminal", "a coach", text, START)
    coaching.make_coach(file, coach, text, START)
    coaching.link(file, one.person, coach, START)
    one.run("safety_check", {"told": text, "limits": text}, asked=text, told=text, limits=text)
    one.run("squat_look", {"plain_rounds": "clearly", "plain_depth": "parallel"}, plain_rounds=text)
    one.run("squat_after", {"back": "still", "note": text}, note=text, back=text)
    keep(file, one.person, [Alert("clinician", text), Find("safety.level", "clinician", text, text), Find("squat.goal", text),
                            Find("overruled.length", text, text, text), Find("safety.why", text)], START, ZONE)
    coaching.audit_act(file, one.person, coach, text, text, text, START)
    coaching.audit_look(file, one.person, coach, text, START)
    return report_html(file, one.person, NOW, BOOK)


def without_classes(page):
    return [(tag, *(name for name in names if name != "class")) for tag, *names in shape(page)]


@pytest.fixture(scope="module")
def shape_of_plain_text(tmp_path_factory):
    page = report_of_somebody(opened(tmp_path_factory.mktemp("plain") / "companion.sqlite"), "plain name", "plain")
    nothing_active(page)
    return without_classes(page)


@pytest.mark.parametrize("evil", [*(EVIL if BY_NIGHT else EVIL[:8] + NASTY[::3]), LONG, LONG[:4000] + "<b>", "\u202e" * 4096])
def test_no_text_of_a_lifter_is_active(file, evil, shape_of_plain_text):
    raw = evil.encode("utf-8", "replace").decode()  # SQLite keeps no half characters
    page = report_of_somebody(file, raw, raw)
    nothing_active(page)
    if raw.strip():
        assert without_classes(page) == shape_of_plain_text
    nothing_active(caseload_html(file, None, NOW), scripts=1)


def test_half_an_emoji_that_reaches_a_page_becomes_a_whole_character():
    said = rendered("parts.html.jinja", {})
    assert "<" not in said
    page = rendered("page.html.jinja", {"policy": "\ud83d<\u202e"})
    assert 'content="\ufffd&lt; "' in page


def test_a_name_nobody_gave_a_template_is_an_error():
    with pytest.raises(UndefinedError):
        rendered("page.html.jinja", {})


def test_the_lifters_own_copy_says_so(made):
    db, person = made
    assert "for the lifter" in Seen(report_html(db, person, NOW, BOOK, for_coach=False)).words


# the caseload ---------------------------------------------------------------------------------------------------


def group_of(db, count: int = 3) -> int:
    coach = people.add_person(db, "terminal", "rune", "Rune Aldersgate", START)
    coaching.make_coach(db, coach, "Rune Aldersgate", START)
    for n in range(count):
        one = Kept(db, people.add_person(db, "terminal", f"p{n}", f"Lifter {n}", START), at=NOW - timedelta(days=n))
        coaching.link(db, one.person, coach, START)
        one.run("about_you", {"height": 171.0})
        if n == count - 1:
            one.run("pain", {"where": "back", "bad": 5.0})
            keep(db, one.person, [Find("safety.level", "not_today"), Alert("not_today", "something hurt", str(one.runs))], one.at, ZONE)
    people.add_person(db, "terminal", "solo", "Solo Lifter", START)
    return coach


def test_a_caseload_has_the_most_urgent_first_and_counts_each_group(file):
    words = Seen(caseload_html(file, group_of(file), NOW)).words
    assert "no squat day yet" in words
    a_lifter(file)
    for said in ("Tue 24 Mar, 67.5 kg", "days silent", "at most 72 kg"):
        assert said in Seen(caseload_html(file, None, NOW)).words
    assert "last 12 squat days: load within 2 of 2" in Seen(caseload_html(file, None, NOW)).words
    assert words.index("Lifter 2 hurt") < words.index("Lifter 0 fine")
    assert "3 lifters, the most urgent first: 1 hurt, 2 fine." in words
    assert "Hurt: 1" in words
    assert "Fine: 2" in words
    assert "Solo" not in words


def test_the_operator_sees_every_lifter_and_no_mere_coach(file):
    group_of(file)
    words = Seen(caseload_html(file, None, NOW)).words
    assert "Caseload of everybody" in words
    assert "Solo Lifter" in words
    assert "Lifter 2 hurt" in words
    assert "Rune" not in words
    assert len(all_caseload_rows(file)) == 4


def test_a_coach_who_tests_themself_is_no_quiet_lifter_unless_somebody_coaches_them(file):
    coach = group_of(file)
    lifter = Kept(file, people.add_person(file, "terminal", "vera", "Vera Holt", START), at=NOW - timedelta(days=40))
    coaching.make_coach(file, lifter.person, "Vera Holt", START)
    lifter.run("welcome", {"adult": "yes"})
    assert "Vera Holt fine" in Seen(caseload_html(file, None, NOW)).words
    coaching.link(file, lifter.person, coach, START)
    assert "Vera Holt quiet" in Seen(caseload_html(file, None, NOW)).words


def test_a_coach_sees_nobody_who_is_not_theirs(file):
    group_of(file)
    stranger = people.add_person(file, "terminal", "nosy", "Nosy", START)
    assert "Nobody is linked yet." in Seen(caseload_html(file, stranger, NOW)).words


def test_the_caseloads_one_script_is_allowed_by_its_hash_alone(file):
    import base64
    import hashlib

    page = caseload_html(file, group_of(file), NOW)
    nothing_active(page, scripts=1)
    script = page.split("<script>")[1].split("</script>")[0]
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    assert Markup.escape(f"script-src 'sha256-{digest}'") in page


# PDF ------------------------------------------------------------------------------------------------------------


def test_without_chromium_the_error_says_what_to_do(tmp_path, monkeypatch):
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(pdf.NoPdf, match="no Chromium found: install it"):
        pdf.write_pdf("<p>", tmp_path / "x.pdf")
    with pytest.raises(pdf.NoPdf, match="there is no Chromium at"):
        pdf.write_pdf("<p>", tmp_path / "x.pdf", str(tmp_path / "none"))


def program(path: Path, lines: str) -> str:
    path.write_text(f"#!/bin/sh\n{lines}\n")
    path.chmod(0o700)
    return str(path)


def test_a_chromium_that_hangs_is_ended_with_all_it_started(tmp_path):
    hung = program(tmp_path / "hung", f"sleep 600 &\necho $! > {tmp_path}/child\nwait")
    with pytest.raises(pdf.NoPdf, match="took longer than"):
        pdf.write_pdf("<p>", tmp_path / "x.pdf", hung, seconds=0.5)
    child = int((tmp_path / "child").read_text())
    assert _gone(child)
    assert not (tmp_path / "x.pdf").exists()


def _gone(child: int) -> bool:
    """True if a process that was ended has gone within 5 s: on a busy machine the signal takes a moment."""
    try:
        handle = os.pidfd_open(child)
    except ProcessLookupError:
        return True
    try:
        return bool(select.select([handle], [], [], 5)[0])
    finally:
        os.close(handle)


@pytest.mark.parametrize(("lines", "says"), [("exit 3", "ended with code 3"), ("exit 0", "printed nothing")])
def test_a_chromium_that_fails_is_told_of_in_a_line(tmp_path, lines, says):
    with pytest.raises(pdf.NoPdf, match=says):
        pdf.write_pdf("<p>", tmp_path / "x.pdf", program(tmp_path / "bad", lines))


def test_a_pdf_is_readable_by_its_owner_only(tmp_path):
    prints = program(tmp_path / "prints", 'for one; do case $one in --print-to-pdf=*) printf "%%PDF-1.4" > "${one#*=}";; esac; done')
    pdf.write_pdf("<p>", tmp_path / "x.pdf", prints)
    assert stat.S_IMODE((tmp_path / "x.pdf").stat().st_mode) == 0o600
    assert (tmp_path / "x.pdf").read_bytes() == b"%PDF-1.4"


def test_a_page_takes_the_place_of_one_that_others_could_read(tmp_path):
    (tmp_path / "x.html").write_text("old")
    (tmp_path / "x.html").chmod(0o644)
    pdf.write_private(tmp_path / "x.html", b"new")
    assert (tmp_path / "x.html").read_bytes() == b"new"
    assert stat.S_IMODE((tmp_path / "x.html").stat().st_mode) == 0o600
    assert [one.name for one in tmp_path.iterdir()] == ["x.html"]


def test_the_printing_program_never_sees_the_bots_token(tmp_path, monkeypatch):
    monkeypatch.setenv("COMPANION_TOKEN", "123:secret")
    with pytest.raises(pdf.NoPdf):
        pdf.write_pdf("<p>", tmp_path / "x.pdf", program(tmp_path / "tells", f"env > {tmp_path}/env"))
    assert "PATH=" in (tmp_path / "env").read_text()
    assert "secret" not in (tmp_path / "env").read_text()


def test_every_section_with_numbers_answers_why_and_each_answer_is_short(made, page):
    words = {name: section(page, name) for name in ("summary", "measured", "squat-days", "plan")}
    assert "decided by: " in words["summary"]
    assert "The weights are this project's choice." in words["summary"]
    assert "The 70° line for a straight leg is what a squat is said to need at least. Common practice, no study." in words["measured"]
    assert "By tape a knee-to-wall change under 1.9 cm may be measuring error. Published: Powden 2015 Man Ther 20:524." in words["measured"]
    assert "At most 80 % of your working load" in words["plan"]
    assert "Stretches are 60 s in all for each muscle" in words["plan"]
    assert "Retest weeks = detectable change × 6 weeks" in words["plan"]
    told = report_content(*made, NOW, BOOK).whys
    assert all(answers and all(len(one.split()) <= 60 for one in answers) for about in told.values() for _, answers in about)


def test_in_inches_the_report_answers_why_in_inches(file):
    page = report_html(file, a_lifter(file, "Ines", "imperial"), NOW, BOOK)
    assert "4 in from toe to wall, heel down" in section(page, "measured")
    assert "10 cm from toe to wall" not in section(page, "measured")
