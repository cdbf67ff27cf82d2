#!/usr/bin/env python3
"""Writes the three finishing programs of the line sheave: plunged levels, zigzag ramp, and levels that end too high.

Part zero is the centre of the sheave's lower face. The rim (62 mm) is cut by a 6 mm cutter whose centre runs on a
circle of 34 mm radius in chords of about 0.5 mm, clockwise (climb)."""

import math
import pathlib

RIM_RADIUS, CUTTER_RADIUS = 31.0, 3.0
TOP, BLANK_TOP = 14.0, 14.3
CHORDS = 428
SIDE_FEED, PLUNGE_FEED, RAMP_FEED = 1800, 300, 1500


def at(turn, z=None, radius=RIM_RADIUS + CUTTER_RADIUS):
    """A point `turn` of the way round, clockwise from +X."""
    a = -2.0 * math.pi * turn
    x, y = radius * math.cos(a), radius * math.sin(a)
    words = f"X{round(x, 3) + 0.0:.3f} Y{round(y, 3) + 0.0:.3f}"
    return words if z is None else f"{words} Z{z:.3f}"


def head(title):
    return [
        "%",
        f"({title})",
        "(Line sheave, printed PETG. Zero: centre of the lower face.)",
        "(Dry run above the work first. Secured work, eye protection, no loose sleeves.)",
        "G21 G90 G17 G94 G40 G49 G54",
        "T1 M6 (6 mm flat, 2 flutes)",
        "S18000 M3",
        "G4 P2.0",
        "G0 Z30.000",
    ]


def tail():
    return ["G0 Z30.000", "M5", "G0 X0.000 Y60.000", "M30", "%"]


def face_top():
    """Rings from the outside in, each entered by a straight feed in from the ring before."""
    lines = ["(top face)", f"G0 {at(0.25, radius=36.0)}", "G0 Z16.000", f"G1 Z{TOP:.3f} F{PLUNGE_FEED}"]
    for radius in (32.0, 28.8, 25.6, 22.4, 19.2, 16.0, 12.8):
        lines.append(f"G1 {at(0.25, radius=radius)} F{SIDE_FEED}")
        lines.append(f"G2 {at(0.25, radius=radius)} I0.000 J{radius:.3f}")
    lines += ["G0 Z30.000"]
    return lines


def lap():
    return [at(i / CHORDS) for i in range(1, CHORDS + 1)]


def approach(feed):
    return [f"G0 {at(0.0, radius=40.0)}", "G0 Z16.000", f"G1 {at(0.0)} F{feed}"]


def leave():
    return [f"G1 {at(0.0, radius=40.0)}"]


def plunged(levels):
    lines = ["(rim, one plunge a level)"] + approach(SIDE_FEED)
    for z in levels:
        lines.append(f"G1 Z{z:.3f} F{PLUNGE_FEED}")
        lines.append(f"G1 {at(1 / CHORDS)} F{SIDE_FEED}")
        lines += lap()[1:]
    return lines + leave()


def zigzag(bottom, drop_per_lap):
    """Whole laps that descend all the way, turning back at the seam, then one level lap."""
    lines = ["(rim, zigzag ramp: whole laps descending, back and forth)"] + approach(RAMP_FEED)
    z, forward = TOP, True
    lines.append(f"G1 Z{z:.3f} F{PLUNGE_FEED}")
    first = True
    while z > bottom + 1e-9:
        end = max(bottom, z - drop_per_lap)
        for i in range(1, CHORDS + 1):
            turn = i / CHORDS if forward else 1.0 - i / CHORDS
            line = at(turn, z + (end - z) * i / CHORDS)
            lines.append(f"G1 {line} F{RAMP_FEED}" if first else line)
            first = False
        z, forward = end, not forward
    for i in range(1, CHORDS + 1):
        lines.append(at(i / CHORDS if forward else 1.0 - i / CHORDS))
    return lines + leave()


def write(name, title, body):
    path = pathlib.Path(__file__).with_name(name)
    path.write_text("\n".join(head(title) + face_top() + body + tail()) + "\n")


if __name__ == "__main__":
    full = [11.7, 9.7, 7.7, 5.7, 3.7, 1.7, -0.3]
    write("plunge.ngc", "Rim in levels, plunge entries", plunged(full))
    write("zigzag.ngc", "Rim by zigzag ramp", zigzag(-0.3, (TOP + 0.3) / 7))
    write("shallow.ngc", "Rim in levels, plunge entries, last level too high", plunged([z + 0.9 for z in full]))
