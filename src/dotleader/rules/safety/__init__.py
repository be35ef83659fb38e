"""What keeps a slip from hurting."""
