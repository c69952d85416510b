"""The page for the teacher: parse, call, render; no logic of its own."""
