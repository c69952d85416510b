"""Pages of the documentation that are made from the code when it is built."""
