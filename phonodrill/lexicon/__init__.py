"""The compiled word store: made once at install time, then only read."""
