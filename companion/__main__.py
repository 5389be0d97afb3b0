"""``python -m companion`` is ``companion``."""

from companion.cli.main import main

main()
