"""``python -m phonodrill``."""

from phonodrill.cli.main import main

main()
