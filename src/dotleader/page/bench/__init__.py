"""What is done at the bench with leaves that are cut: how a punch makes their holes."""
