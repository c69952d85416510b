"""One file a command: from plain values to a checked result, for command line and page alike."""
