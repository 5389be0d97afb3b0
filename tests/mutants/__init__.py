"""Mutants: every guard of the files that keep people safe, flipped or taken out one at a time, and whether a test misses it.

``python -m tests.mutants`` (see README.md beside this file).
"""
