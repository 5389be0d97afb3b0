"""Drawings of every test and drill, and charts of the results, from the project's own geometry."""
