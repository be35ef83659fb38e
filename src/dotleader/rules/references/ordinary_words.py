"""Words of checklists that are near one another by chance (common practice, no source).

`Fuel sump` is two letters from `Fuel pumps` and means another thing. A word that is listed here is taken for no slip.
"""

from __future__ import annotations

_WORDS = """
    aft air arm audio bag bags band bank bar base bay belt belts block blocks bolt bolts book boot boots bowl box boxes
    cable cables cap caps cell chart charts chock chocks clamp clip clips clock cock code codes coil cold cool core
    cover covers cowl cowls crank cup dial dials door doors drain drains drop fan fans film filter filters fin fins
    flag flags flame flare float floats floor flow fore fork form frame front fuse fuses gate gates grip ground guard
    hand hatch hatches head heat heel high hinge hinges hook hooks horn hose hoses hub inlet inner intake jack keel key
    keys knob lamp lamps latch latches lead leads leaf left level lever lift line lines lock locks log loop low main
    map maps mark marks mask masks mast mat mats mike mirror mode moist mount nav near night nose oil outer outlet
    pack pad pads pane panel panels pass path pedal pedals pilot pin pins pipe pipes pitch pitot plate plates plug
    plugs port prop props pump pumps race rack radar radio rail rails ramp range rate rear ring rings rod rods roll
    root rope rudder screen screens screw screws seal seals seat seats shaft shell shelf side sight sink skid skin slat
    slats sleeve slot spar spark spray stand starboard start station stem step steps stick stop stops strap straps strut
    struts sump sumps suit sun switch tail tank tanks tap taps tape tie ties time timer tip tips toe tow tower tray
    trim tube tubes valve valves vane vanes vent vents vest vests view vise visor watch weight wheel wheels wick wind
    window wing wings wire wires yaw yoke
"""
ORDINARY_WORDS = frozenset(_WORDS.split())
