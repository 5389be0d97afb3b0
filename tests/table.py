"""Many short rows as one test that tells of every row that fails: as tests of their own, thousands take longer to be kept than to run."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path
from traceback import extract_tb
from typing import Any


def each_row(names: str | tuple[str, ...], rows: Iterable[Any],
             ids: Callable[[Any], object] | Iterable[str] | None = None) -> Callable[[Callable[..., None]], Callable[[], None]]:
    """As ``pytest.mark.parametrize``, but one test for all."""
    called, every = tuple(name.strip() for name in names.split(",")) if isinstance(names, str) else names, list(rows)
    given = [dict(zip(called, row if len(called) > 1 else (row,), strict=True)) for row in every]
    told = [", ".join(f"{name}={value!r}" for name, value in row.items()) for row in given] if ids is None else [
        "-".join(str(ids(value)) for value in row.values()) for row in given] if callable(ids) else list(ids)

    def of(check: Callable[..., None]) -> Callable[[], None]:
        def test() -> None:
            assert given, "no rows"
            wrong = [f"{label}: {failed}" for label, row in zip(told, given, strict=True) if (failed := failing(partial(check, **row)))]
            assert not wrong, "\n".join((f"{len(wrong)} of {len(given)} rows fail", *wrong))

        test.__name__, test.__doc__, test.__module__ = check.__name__, check.__doc__, check.__module__
        return test

    return of


def failing(check: Callable[[], None]) -> str:
    """The line that fails and why, or nothing."""
    try:
        check()
    except Exception as error:  # whatever it is: the rows after it are looked at too
        last = extract_tb(error.__traceback__)[-1]
        return f"{Path(last.filename).name}:{last.lineno} {last.line}\n    {type(error).__name__}: {error}"
    return ""
