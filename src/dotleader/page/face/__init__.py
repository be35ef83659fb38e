"""Laid-out cards placed on leaves, dressed as faces, and told apart by digests."""
