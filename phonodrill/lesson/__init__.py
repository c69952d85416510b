"""The whole lesson: planned, composed, checked, written and read again."""
