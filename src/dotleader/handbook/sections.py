"""The sections of a handbook (GAMA Specification 1, revision 2, 1996); 0 is ours, for what stands before them."""

from __future__ import annotations

from types import MappingProxyType

from dotleader.handbook.cards import Kind

SECTIONS: MappingProxyType[str, str] = MappingProxyType(
    {
        "0": "Front matter",
        "1": "General",
        "2": "Limitations",
        "3": "Emergency procedures",
        "3A": "Abnormal procedures",
        "4": "Normal procedures",
        "5": "Performance",
        "6": "Weight and balance",
        "7": "Systems",
        "8": "Handling, service and maintenance",
        "9": "Supplements",
    }
)
"""In their order."""

SECTION_OF_KIND = MappingProxyType({Kind.EMERGENCY: "3", Kind.ABNORMAL: "3A", Kind.NORMAL: "4"})

TEXTS, NUMBERS = "1", "2"
"""Where texts and sources stand, and where speeds, values and gauges do."""
