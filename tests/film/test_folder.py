"""A film lies in a folder of its own while it is read, which is gone with its process at the latest at the next start."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

from companion.film.folder import film_folder, remove_left_over

KILLED = """
import os, pathlib
from companion.film.folder import film_folder
with film_folder() as folder:
    pathlib.Path(folder, "film").write_bytes(b"somebody squats")
    print(folder, flush=True)
    os.kill(os.getpid(), 9)
"""


def test_what_a_killed_process_left_is_deleted_and_what_is_being_read_stays(tmp_path, monkeypatch):
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    left = subprocess.run([sys.executable, "-c", KILLED], env={**os.environ, "TMPDIR": str(tmp_path)}, stdout=subprocess.PIPE, text=True)
    assert left.returncode == -9
    other = tmp_path / "companion-film-notes"
    other.mkdir()
    with film_folder() as mine:
        assert Path(left.stdout.strip(), "film").exists()
        assert remove_left_over() == 1
        assert not Path(left.stdout.strip()).exists()
        assert Path(mine).exists()
        assert remove_left_over() == 0
    assert other.exists()
    assert not Path(mine).exists()
