"""What stops a command: the outside world, or a request that cannot be met. Shown as a sentence, exit code 2."""

from __future__ import annotations


class CannotRun(Exception):  # noqa: N818  # it is not an error of anything here
    """`message` says what is, `advice` what to do; either is one sentence."""

    def __init__(self, message: str, advice: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.advice = advice


def because(error: OSError) -> str:
    """The reason of the outside world in plain words, without a number or a path."""
    return (error.strerror or "it cannot be reached").lower()
