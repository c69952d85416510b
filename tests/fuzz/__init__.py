"""Long runs of random input on what teachers write: ``python -m tests.fuzz --help``."""
