"""Pages for the terminal: rules, names, runs, loads; and drawings."""
