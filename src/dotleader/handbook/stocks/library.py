"""The stocks that are known by name, in the language itself: to be taken, copied and changed.

ISO 838: two holes of 6 mm, 80 mm apart, 12 mm from the edge. Three holes of the United States: 4.25 in apart on
letter, 2.75 in on half letter. Seven and six rings: the gaps of the organisers that are sold, which no standard
gives. Not standardised, and common practice without a source: the width of American holes (9/32 in), their
distance from the edge (1/2 in), and two of them 2.75 in apart in an upper edge. Six rings take the holes of loose
leaves in JIS Z 8303: 6 mm, 6.5 mm from the edge (read in a printer's summary). Whoever has another punch measures it.
What fits a kneeboard: A5, half letter, and a quarter of letter (common practice, no source).
"""

from __future__ import annotations

LIBRARY = """\
stock A4
  leaf .................. A4
  holes ................. 2, 80 mm apart, 6 mm wide, 12 mm from edge
  paper ................. A4

stock A5
  leaf .................. A5
  holes ................. 2, 80 mm apart, 6 mm wide, 12 mm from edge
  paper ................. A4

stock A5, six rings
  leaf .................. A5
  holes ................. 6, 19 + 19 + 70 + 19 + 19 mm apart, 6 mm wide, 6.5 mm from edge
  paper ................. A4

stock A5, bound at top
  leaf .................. A5
  holes ................. 2, 80 mm apart, 6 mm wide, 12 mm from edge
  bound at .............. top
  paper ................. A4

stock A5, no holes
  leaf .................. A5
  holes ................. none
  paper ................. A4

stock A6
  leaf .................. A6
  holes ................. 2, 80 mm apart, 6 mm wide, 12 mm from edge
  paper ................. A4

stock 95 x 171 mm, six rings
  leaf .................. 95 x 171 mm
  holes ................. 6, 19 + 19 + 51 + 19 + 19 mm apart, 6 mm wide, 6.5 mm from edge
  paper ................. A4

stock letter
  leaf .................. Letter
  holes ................. 3, 4.25 in apart, 9/32 in wide, 1/2 in from edge
  paper ................. Letter

stock letter, seven rings
  leaf .................. Letter
  holes ................. 7, 1 + 1 + 2.25 + 2.25 + 1 + 1 in apart, 9/32 in wide, 1/2 in from edge
  paper ................. Letter

stock half letter
  leaf .................. half letter
  holes ................. 3, 2.75 in apart, 9/32 in wide, 1/2 in from edge
  paper ................. Letter

stock half letter, seven rings
  leaf .................. half letter
  holes ................. 7, 1 + 1 + 3/4 + 3/4 + 1 + 1 in apart, 9/32 in wide, 1/2 in from edge
  paper ................. Letter

stock half letter, bound at top
  leaf .................. half letter
  holes ................. 2, 2.75 in apart, 9/32 in wide, 1/2 in from edge
  bound at .............. top
  paper ................. Letter

stock half letter, no holes
  leaf .................. half letter
  holes ................. none
  paper ................. Letter

stock 6 x 9 in pouch
  leaf .................. 5.75 x 8.75 in
  pouch ................. 6 x 9 in
  film .................. 5 mil
  holes ................. 4, 40 mm apart, 6 mm wide, 12 mm from edge
  paper ................. Letter

stock kneeboard, A5
  leaf .................. A5
  holes ................. none
  bound at .............. top
  paper ................. A4

stock kneeboard, half letter
  leaf .................. half letter
  holes ................. none
  bound at .............. top
  paper ................. Letter

stock kneeboard, quarter letter
  leaf .................. 4.25 x 5.5 in
  holes ................. none
  bound at .............. top
  paper ................. Letter

stock folded card, A6
  leaf .................. A6
  holes ................. none
  folded ................ once
  paper ................. A4

stock folded card, A5
  leaf .................. A5
  holes ................. none
  folded ................ once
  paper ................. A4

stock folded card, quarter letter
  leaf .................. 4.25 x 5.5 in
  holes ................. none
  folded ................ once
  paper ................. Letter

stock folded card, half letter
  leaf .................. half letter
  holes ................. none
  folded ................ once
  paper ................. Letter
"""
"""Each block a stock. The names are what `stock NAME` takes."""

ALSO_CALLED = {
    "A4, two holes": "A4",
    "A5, two holes": "A5",
    "A6, two holes": "A6",
    "letter, three holes": "letter",
    "half letter, three holes": "half letter",
    "6 x 9 in pouch, four holes": "6 x 9 in pouch",
    "5.75 x 8.75 in": "6 x 9 in pouch",
    "5.75 x 8.75 in leaf in 6 x 9 in pouch": "6 x 9 in pouch",
    "A5, top bound": "A5, bound at top",
    "top-bound card": "A5, bound at top",
    "half letter, top bound": "half letter, bound at top",
    "kneeboard width": "kneeboard, half letter",
    "folded card": "folded card, A6",
    "single folded card": "folded card, A6",
    "A5 folded to A6": "folded card, A6",
    "A4 folded to A5": "folded card, A5",
    "half letter folded to quarter letter": "folded card, quarter letter",
    "letter folded to half letter": "folded card, half letter",
}
