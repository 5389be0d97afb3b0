"""What the end of a run says of tests that were not run."""

from tests.coach.test_report_page import pytestmark
from tests.conftest import not_run


def test_page_tests_without_a_browser_are_counted_and_it_is_said_how_to_get_them() -> None:
    reason = pytestmark.kwargs["reason"]
    assert not_run([reason, reason]) == [
        "NOT RUN: 2 tests, since there is no Chromium at /usr/bin/chromium. Install Chromium (on Debian and Ubuntu: apt install "
        "chromium), so that it is at /usr/bin/chromium."]
    assert not_run([]) == []
