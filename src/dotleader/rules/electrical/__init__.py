"""The electrical system: what is on against what feeds it, and each circuit by itself."""
