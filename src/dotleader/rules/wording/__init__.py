"""What is said and how."""
