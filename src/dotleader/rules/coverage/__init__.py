"""What a handbook has to have."""
