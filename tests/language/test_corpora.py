"""What is called unseen shares no line with what the rules were written from."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from tests.corpus.turns import turns

CORPUS = Path(__file__).parents[1] / "corpus"
UNSEEN = sorted(path for path in CORPUS.iterdir() if "_unseen" in path.name and not path.name.startswith("turns"))
SEEN = sorted(path for path in CORPUS.iterdir() if path.suffix in (".txt", ".tsv") and "_unseen" not in path.name
              and not path.name.startswith("turns"))


def normalised(line: str) -> str:
    """Return a line without a flag before its tab, case, punctuation and spaces."""
    return re.sub(r"[\W_]+", "", line.rpartition("\t")[2].casefold())


@cache
def lines(path: Path) -> list[tuple[str, str]]:
    """Return the lines of a file, each with what it comes to."""
    return [(line, normalised(line)) for line in path.read_text("utf-8").splitlines() if line.strip() and not line.startswith("#")]


@pytest.mark.parametrize("path", UNSEEN, ids=lambda path: path.name)
def test_no_unseen_line_is_a_seen_one_or_there_twice(path: Path) -> None:
    seen = {plain: other.name for other in (*SEEN, *UNSEEN) if other != path for _, plain in lines(other)}
    found = [f"{line!r} stands in {seen[plain]}" for line, plain in lines(path) if plain in seen]
    assert not found, f"take out of {path.relative_to(CORPUS.parents[1])}: " + "; ".join(found)
    assert len({plain for _, plain in lines(path)}) == len(lines(path))


def test_no_unseen_turn_is_a_seen_one_or_there_twice() -> None:
    """The lines themselves are not shown: rules may not be written from them."""
    seen, unseen = ([normalised(f"\t{turn.text}") for turn in turns(name)] for name in ("seen", "unseen"))
    assert not set(seen) & set(unseen), f"{len(set(seen) & set(unseen))} lines in both"
    assert len(set(unseen)) == len(unseen)
    assert len(seen) + len(unseen) >= 1_500
    assert len(unseen) >= 1_500 / 3
