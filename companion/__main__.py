"""``python -m companion`` is ``companion``."""

from companion.cli import main

main()
