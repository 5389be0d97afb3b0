"""The command line, as a person runs it."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from companion.base.settings import BadSettings, read_settings
from companion.cli.main import main

ROOT = Path(__file__).parents[2]
WELCOME = "Yes, keep them\nyes\ncm and kg\nUTC\nyes\n"


@pytest.fixture
def run(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name in ("COMPANION_TOKEN", "COMPANION_DATABASE", "COMPANION_API_URL"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    return lambda *words, **more: CliRunner().invoke(main, words, **more)


def test_help_explains_every_command(run):
    shown = run("--help").output
    for command in ("chat", "run", "play", "flows", "log"):
        assert f"\n  {command} " in shown
    for name in ("COMPANION_TOKEN", "COMPANION_DATABASE", "COMPANION_API_URL"):
        assert name in shown


def test_every_command_stands_in_the_readme():
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for command in main.commands:
        assert f"`companion {command}" in readme


def test_piped_chat_reads_one_reply_a_line_and_ends_well(tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "companion", "chat", "--database", str(tmp_path / "c.sqlite")], input="yes\n2\n",
        capture_output=True, text=True, cwd=ROOT, timeout=60, check=False)
    assert done.returncode == 0, done.stderr
    assert "Are you 18 or over?" in done.stdout
    assert "\x1b" not in done.stdout
    assert not done.stderr


def test_a_chat_resumes_where_it_was(run, tmp_path):
    file = str(tmp_path / "c.sqlite")
    run("chat", "--database", file, "--as", "lena", input=WELCOME + "about me\n170\n")
    again = run("chat", "--database", file, "--as", "lena", input="")
    assert again.exit_code == 0
    assert again.output.startswith("What do you weigh?")


def test_an_export_written_over_an_older_file_is_its_owners_only(run, tmp_path):
    file, out = str(tmp_path / "c.sqlite"), tmp_path / "lena.csv"
    run("chat", "--database", file, "--as", "lena", input=WELCOME + "about me\n170\n")
    out.write_text("old")
    out.chmod(0o644)
    assert run("export", "lena", "--database", file, "--out", str(out)).exit_code == 0
    assert out.stat().st_mode & 0o777 == 0o600
    assert "170" in out.read_text()


def test_the_log_is_a_table_or_json_lines(run, tmp_path):
    file = str(tmp_path / "c.sqlite")
    run("chat", "--database", file, "--as", "lena", input=WELCOME + "about me\n170 cm\n")
    table = run("log", "--database", file, "--as", "lena")
    assert "170 cm" in table.output
    rows = [json.loads(line) for line in run("log", "--database", file, "--as", "lena", "--json").output.splitlines()]
    assert (rows[-1]["flow"], rows[-1]["key"], rows[-1]["value"], rows[-1]["unit"]) == ("about_you", "height", 170, "cm")


def test_a_log_of_nobody_says_who_there_is(run, tmp_path):
    file = str(tmp_path / "c.sqlite")
    run("chat", "--database", file, "--as", "lena", input=WELCOME)
    told = run("log", "--database", file, "--as", "zoe")
    assert told.exit_code == 2
    assert "lena" in told.stderr
    run("chat", "--database", file, "--as", "\x1b]0;mine\x07\u202e", input=WELCOME)  # people on Telegram name themselves
    told = run("log", "--database", file, "--as", "zoe").stderr
    assert "mine" in told
    assert not set("\x1b\x07\u202e") & set(told)


@pytest.mark.parametrize("words", [("run",), ("log",), ("flows", "nothing"), ("--settings", "none.toml", "log")])
def test_what_can_not_be_done_is_one_line_and_exit_code_2(run, words):
    told = run(*words)
    assert told.exit_code == 2
    assert told.stderr.count("\n") == 1
    assert "Traceback" not in told.stderr


def test_a_token_that_is_none_is_one_line_without_the_token(run, monkeypatch):
    monkeypatch.setenv("COMPANION_TOKEN", "not a token")
    told = run("run")
    assert told.exit_code == 2
    assert "not a token" not in told.stderr
    assert "Traceback" not in told.stderr


def test_flows_are_listed_and_sound(run):
    told = run("flows")
    assert told.exit_code == 0
    assert "knee_to_wall" in told.output


def test_settings_come_from_the_environment_over_the_file(tmp_path):
    file = tmp_path / "s.toml"
    file.write_text('COMPANION_TOKEN = "1:a"\nCOMPANION_DATABASE = "/tmp/file.sqlite"\n')
    settings = read_settings({"COMPANION_DATABASE": "/tmp/other.sqlite", "COMPANION_API_URL": "http://127.0.0.1:8081/"}, file)
    assert (settings.token, str(settings.database), settings.api_url) == ("1:a", "/tmp/other.sqlite", "http://127.0.0.1:8081")
    assert "1:a" not in repr(settings)


def test_settings_that_make_no_sense_are_refused(tmp_path):
    for url in ("127.0.0.1", "ftp://127.0.0.1", "http://", "http://[::1", "http://127.0.0.1:99999", "http://127.0.0.1:port"):
        with pytest.raises(BadSettings, match="with a host"):
            read_settings({"COMPANION_API_URL": url})
    for months in ("0", "-3", "1.5", "a year", "1000"):
        with pytest.raises(BadSettings, match="whole number of months"):
            read_settings({"COMPANION_KEEP_MONTHS": months})
    assert [read_settings({"COMPANION_KEEP_MONTHS": months}).keep_months for months in ("", "1", " 24 ")] == [None, 1, 24]
    bad = tmp_path / "bad.toml"
    bad.write_text("= nonsense")
    with pytest.raises(BadSettings, match="not TOML"):
        read_settings({}, bad)


def test_a_whole_caseload_is_written_with_a_report_a_lifter_linked_from_it(run, tmp_path):
    run("chat", input=WELCOME)
    made = run("report", "--all", "pages")
    assert made.exit_code == 0, made.output
    assert made.output.strip() == "pages/caseload.html"
    (report,) = (tmp_path / "pages").glob("report-*.html")
    assert f'<a href="{report.name}">' in (tmp_path / "pages" / "caseload.html").read_text(encoding="utf-8")
    assert 'id="log"' not in report.read_text(encoding="utf-8")
    assert run("report", "--all", "pages", "--caseload").exit_code != 0


def test_a_part_of_the_log_is_asked_for_by_name_and_a_wrong_one_is_refused(run, tmp_path):
    run("chat", input=WELCOME)
    assert run("report", "--number", "1", "--log", "--only", "welcome", "--out", "p.html").exit_code == 0
    assert "Only welcome" in (tmp_path / "p.html").read_text(encoding="utf-8")
    for asked in (("--log", "--only", "wellcome"), ("--only", "welcome")):
        told = run("report", "--number", "1", *asked)
        assert (told.exit_code, "--only goes with --log" in told.stderr) == (2, True)
