"""The soak: items and lessons by the million, checked by code that shares none with the engine.

Run it with ``python -m tests.soak``. The checker reads raw CMUdict and our own tables as
data; it imports nothing of the package but what it is given to check.
"""
