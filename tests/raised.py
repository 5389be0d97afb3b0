"""The bot after an update in which a text of consent has a new version."""

from __future__ import annotations

import sys
from dataclasses import replace
from functools import cache
from importlib import import_module
from types import ModuleType

import pytest

from companion.conversation.registry import bind

NEWS = "answers are kept for two years."


@cache
def raised(*whose: str) -> ModuleType:
    """The catalogue of flows as it would be with the next version of these texts ("lifter", "coach")."""
    before = {name: sys.modules.pop(name) for name in list(sys.modules) if name == "flows" or name.startswith("flows.")}
    try:
        consent = import_module("flows.consent")
        for of in whose:
            text = getattr(consent, f"{of.upper()}_TEXT")
            says = text.says.replace("May I", "They stay for two years. May I")
            setattr(consent, f"{of.upper()}_TEXT", replace(text, version=text.version + 1, says=says, new=NEWS))
        consent.DUE = consent.LIFTER_TEXT.due | consent.COACH_TEXT.due  # type: ignore[attr-defined]
        catalogue = import_module("flows.catalogue")
        catalogue.BOOK = bind(catalogue.flows(), home="home", pain="pain", link=catalogue.LINK)  # type: ignore[attr-defined]
        catalogue.CATALOGUE = replace(catalogue.CATALOGUE, book=catalogue.BOOK)  # type: ignore[attr-defined]
        return catalogue
    finally:
        for name in [name for name in sys.modules if name == "flows" or name.startswith("flows.")]:
            del sys.modules[name]
        sys.modules.update(before)


def update(patch: pytest.MonkeyPatch, *whose: str) -> None:
    """From now on the companion is that one."""
    patch.setattr("companion.app.service.CATALOGUE", raised(*whose).CATALOGUE)
