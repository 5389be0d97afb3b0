"""The clinic by command, from the project's root: ``python -m tests.clinic [LIFTERS]`` (2,000 if not said) prints the README's table,
``python -m tests.clinic minutes [LIFTERS]`` the minutes that the bot tells."""

from __future__ import annotations

import sys

from tests.clinic.rounds import figures, minutes, table, visits

words = [word for word in sys.argv[1:] if not word.isdecimal()]
lifters = next((int(word) for word in sys.argv[1:] if word.isdecimal()), 2_000)
decided = list(visits(lifters, "screen"))
if words == ["minutes"]:
    sys.stdout.write(f"screen\n{minutes(decided)}\n\nfull screen\n{minutes(list(visits(lifters)))}\n")
else:
    sys.stdout.write(table(figures(visits(lifters)), decided) + "\n")
