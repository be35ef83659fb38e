"""Words of checklists that are one letter from another word of checklists (common practice, no source).

`CLEAR` and `CLEAN`, `Weight` and `Height` are each what they say. A pair of which both words are listed here is no
slip of the pen; a word of which only the other is listed may be one. Plurals are listed by their singular, unless that
has less than five letters, which never count as near.
"""

from __future__ import annotations

_WORDS = """
    aboard abort about above added advice advise aided aimed aired alight align alter armed around banded banked
    beard bearing below better black blade blank bleed block blocked board boiled bonded bottle bound brake brand
    bread break breed bright brighter broad brown brushed burned bursting cable carry catch centered chain change
    changed charge charged chart check cheer chock chose clamp clasp class clean cleaned clear cleared cleat click
    clips clock close closed cloud cloudy clung coarse coast coated cocked coils cooler could course court cover
    covered crack cracked crane crank crash crept crest cruise crust cycle damage damaged dashed dated dense depart
    depth ditch docked draft drain dread dress drift drill drips drive driven drops drown dusty eight ejected
    elected enter entry erected extend extended extent falter faster fault feast fence field fight filed filled
    filter final first fitted fixed flame flare flick flight float flood flown flung flush foils folded force forth
    found frame frank freed freer front frost frosty fused gauge glare glass glide grade graft grain grant grass
    grate great green greet grips ground grown guest guide gusty hatch hatched headed heading healed heard heated
    heater heave heavy hedge height hinge hoard hoist hooked hoops house hover idled inert inland inlet insert
    inserted inside intend invert inverted inward island jacked joint knocked ladder landed landing larger latch
    latched later leaded leading leaned learned lease least leave ledge level lever light lighter limit lined
    listen loaded local locate located locked looked loops loose lower lowered lowest mainly maker manned marked
    marker master match matched matter medal metal mixed model motor mount mouth never night north noted notion
    oiled onboard onward order other outer packed padded paint panel parked party patch patched pedal phase phone
    picked piece pilot pinned pitch pitched pitot pivot place placed plain plane plate played plenty point pound
    power powered press prime primed primer print probe prone proper pulled pulse pumped punch purge purged pushed
    quick quiet quite racked radar radio raise raised range rated ratio reach reading ready receive recess record
    refit reflected refuel rejected release relieve remote remove report reset rested retract reverse right rigid
    rising river rivet roast rocked rolled ropes rotary rotate rotor rotted rough round route runway rushed rusty
    sailed scale scoop score scrap screw sealed seated second secure selected sense service setter settle shade
    shaft shake shallow shape share shark sharp sheer sheet shield shift shock shoot shore short shout showed shown
    sided sight signed single skids slack slant slave sleep sleeve slept slice slick slide slight sling slips slope
    slowed slower slowest slung small smart smell smoke smooth solid sound south space spare spark speak speed
    spent spill spine split spoil spoon sport spray spread spring spurs squat stable stack stage staged stain stair
    stake stale stall stand stare stark start started starter state stated station stator steam steel steep steer
    stern stick still sting stitch stock stone stood stool store stored storm stove stowed strain strand strap
    straw stray stream street stress strike string strip stripe strut stuck stung suction surface surge sweep sweet
    swell swept swing switch swung table taken taped tapped taxied teach tense tension tested there these thick
    thing think third those thread threat three threw throat through throw thrown thrust ticked tight tighter timed
    tired toggle torch touch tough towards towed tower trace track trade trail train trained treat trial trick
    tripped trough truck trunk trust tucked tuned tuner turned twist under union upper vented visor voice waited
    walked wanted warmed warned warped washed waste watch water waved wedge weigh weight welded wheel where which
    while white whole wider winds wiped wiper wired would wound write wrong yield
"""
REAL_WORDS = frozenset(_WORDS.split())
