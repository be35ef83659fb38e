"""Names that lead somewhere, and what is declared and led to by nothing."""
