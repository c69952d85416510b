"""Letters tied to sounds: correspondences, alignment, what is taught, what can be read."""
