"""The command `dotleader`, and `python -m dotleader`."""

from __future__ import annotations

import _signal  # type: ignore[import-not-found]  # the half of `signal` that costs no import
import gc
import os
import sys
from collections.abc import Sequence

INTERRUPTED = 130


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and return its exit code. Without `arguments` they are those of the process, which is then ours.

    0 fine; 1 the answer is no; 2 could not run; 130 interrupted. Nobody sees a traceback unless `DOTLEADER_DEBUG` is
    set.
    """
    owner = arguments is None and _signal.getsignal(_signal.SIGINT) is _signal.default_int_handler
    if owner:
        _signal.signal(_signal.SIGINT, _interrupted)
    gc.set_threshold(100_000, 20, 20)  # little of what a run makes goes in circles; looking for it took a thirtieth
    if owner and sys.argv[1:2] == ["lint"]:
        gc.disable()  # none of what a lint makes does: in a book of 100,000 lines the looking took an eleventh of it
    try:
        code = _run(sys.argv[1:] if arguments is None else arguments)
    except KeyboardInterrupt:
        code = INTERRUPTED
    except Exception as fault:
        if _debugging():
            raise
        _apologise(fault)
        code = 2
    if owner:
        from dotleader.tools.ending import asked_to_end  # noqa: PLC0415

        _signal.signal(_signal.SIGINT, _interrupted)
        code = asked_to_end() or code
    return code


def _interrupted(_number: int, _frame: object) -> None:
    """End at once. No exception: some get lost, in an import or when a module is taken away.

    `dotleader.tools.ending` says what is done while something is being written.
    """
    os._exit(INTERRUPTED)


def _run(arguments: Sequence[str]) -> int:
    # Imported here so that a fault while importing ends like any other.
    from dotleader.tools.cannot_run import CannotRun, because  # noqa: PLC0415
    from dotleader.tools.saying import complain, ready_streams  # noqa: PLC0415

    ready_streams()
    try:
        if arguments and arguments[0] == "lint":
            from dotleader.tools.caching.remembered import again  # noqa: PLC0415

            return again(arguments, _command)
        return _command(arguments)
    except CannotRun as trouble:
        complain(trouble.message, trouble.advice)
    except OSError as error:  # the outside world where nobody expected it: the working folder is gone, say
        if _debugging():
            raise
        if _is_nowhere():
            complain(
                "The folder that this was started in is no longer there.",
                "Change into another one: `cd ..`, or `cd` and its path.",
            )
        else:
            about = f" It is about `{error.filename}`." if error.filename else ""
            complain(f"The system says: {because(error)}.{about}")
    return 2


def _command(arguments: Sequence[str]) -> int:
    from dotleader.tools.command_line import run  # noqa: PLC0415  # takes several times as long as an answer kept

    return run(arguments)


def _is_nowhere() -> bool:
    """Whether the working folder was taken away."""
    try:
        os.getcwd()  # noqa: PTH109  # pathlib is not at hand here, and takes long to import
    except OSError:
        return True
    return False


def _debugging() -> bool:
    return os.environ.get("DOTLEADER_DEBUG", "") not in ("", "0")


def _apologise(fault: Exception) -> None:
    if sys.stderr is None:
        return
    said = " ".join(f"{type(fault).__name__}: {fault}".split())
    sys.stderr.write(
        f"dotleader: This is a fault of dotleader itself ({said}).\n"
        "  Please report it with the command, the source and what DOTLEADER_DEBUG=1 adds to this message.\n"
    )


if __name__ == "__main__":
    sys.exit(main())
