"""What is wrong with an `allow`."""
