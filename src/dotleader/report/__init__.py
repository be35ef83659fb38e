"""Findings to what is read: `full` for people, `brief` and `json_list` for programs. Knows only `source`."""
