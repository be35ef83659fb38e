"""What has to be the same in several places."""
