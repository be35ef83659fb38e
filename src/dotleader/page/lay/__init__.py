"""Cards, prose and tables laid out, each by itself, in a frame that knows no left and right."""
