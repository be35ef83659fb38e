"""Short digests of bytes, without all that `hashlib` imports."""

from __future__ import annotations

try:
    from _blake2 import blake2b  # the part of `hashlib` that is needed
except ImportError:  # another Python than CPython
    from hashlib import blake2b

SIZE = 16


def digest(data: bytes) -> str:
    """Thirty-two hexadecimal digits: enough that no two contents are taken for each other by chance."""
    made: str = blake2b(data, digest_size=SIZE).hexdigest()
    return made
