"""The house's arrows run one way, and the documents show those that are there."""

from __future__ import annotations

from collections import defaultdict

from tests.house import arrows


def test_no_modules_import_each_other_in_a_circle():
    graph: dict[str, set[str]] = defaultdict(set)
    for one in arrows.imports():
        graph[one.source].add(one.target)
    found = arrows.circle(graph)
    places = [one.place for one in arrows.imports() if (one.source, one.target) in set(zip(found[1:], found, strict=False))]
    assert not found, f"edit one of {', '.join(places)}: {' imports '.join(reversed(found))}"


def test_no_rooms_import_each_other_in_a_circle():
    found = arrows.circle(arrows.rooms())
    places = [one.place for one in arrows.imports()
              if (arrows.room_of(one.source), arrows.room_of(one.target)) in set(zip(found[1:], found, strict=False))]
    assert not found, f"edit one of {', '.join(places)}: {' imports '.join(reversed(found))}"


def test_developers_md_shows_the_arrows_that_are_there():
    written = (arrows.ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert arrows.drawn() in written, "DEVELOPERS.md: run `python -m tests.house.arrows`"


def test_companion_has_at_most_three_loose_modules_beside_its_two_entries():
    loose = {path.stem for path in (arrows.ROOT / "companion").glob("*.py")} - {"__init__", "__main__"}
    assert len(loose) <= 3, f"move one of companion/{', '.join(sorted(loose))} into a room"
