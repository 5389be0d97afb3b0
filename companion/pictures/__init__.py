"""Drawings of every test and drill, and charts of what came of them, from the project's own geometry."""
