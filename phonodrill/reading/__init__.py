"""What letters and sounds are good for: words to read, pairs, passages, spellings of a sound."""
