"""The clinic by command, from the project's root: ``python -m tests.clinic [LIFTERS]`` (2,000 if not said) prints the README's table,
``python -m tests.clinic minutes [LIFTERS]`` the minutes that the bot tells. Two processes share the lifters."""

from __future__ import annotations

import sys

from tests.clinic.rounds import both_routes, figures, minutes, table

if __name__ == "__main__":
    lifters = next((int(word) for word in sys.argv[1:] if word.isdecimal()), 2_000)
    full, decided = both_routes(lifters)
    if "minutes" in sys.argv:
        sys.stdout.write(f"screen\n{minutes(decided)}\n\nfull screen\n{minutes(full)}\n")
    else:
        sys.stdout.write(table(figures(full), decided) + "\n")
