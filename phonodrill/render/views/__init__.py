"""From results to documents: what is shown of each kind of result, one file a kind."""
