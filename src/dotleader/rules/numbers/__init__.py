"""Numbers: typed, declared, and how they stand to each other."""
