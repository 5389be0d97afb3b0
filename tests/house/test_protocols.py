"""A Protocol stands where several things fit one port, never to hide that two modules need each other."""

from __future__ import annotations

import ast

from tests.house.source import modules

PORTS = {"companion/port.py", "companion/channels/pictures.py", "companion/base/clock.py"}
"""A channel's sender, taker and outbox, where pictures come from, and the clock: of each there are several."""


def test_every_protocol_is_a_port():
    found = [f"{path}:{node.lineno}: make {node.name} a frozen record, or pass the functions that are needed"
             for path, tree in modules("companion", "flows") if path not in PORTS
             for node in ast.walk(tree) if isinstance(node, ast.ClassDef) and any("Protocol" in ast.unparse(base) for base in node.bases)]
    assert found == []
