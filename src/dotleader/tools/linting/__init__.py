"""What a lint finds in everything that was named; mending, accepting and telling it."""
