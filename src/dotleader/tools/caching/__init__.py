"""What is kept between two runs, and when it may be used again."""
