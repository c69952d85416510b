"""What a class has been taught, and which words that lets it read."""
