"""phonodrill as it is installed: the wheel, what it carries, what it tells a type checker."""
