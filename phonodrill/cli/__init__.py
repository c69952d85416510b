"""The command line: parse, call, render; no logic."""
