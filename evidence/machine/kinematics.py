"""
Independent answers for the machine room, by other ways than the formulas there:

bearings   rigid bodies that do not slip: the centre of an element moves with the mean of its two contact points, its
           spin follows from the surface speed at the inner contact; passages of elements past a spot on each ring are
           counted over a long time.
trains     gear and belt networks: ratios multiplied along the path from the reference, in Python fractions; planetary
           stages by the Willis equation.
slip       line frequency at which a shaft reaches a speed under a torque law, by a bracketing root finder.

Run: /usr/bin/python3 evidence/machine/kinematics.py   (writes kinematics.json beside it)
"""

import json
import math
import random
from fractions import Fraction
from pathlib import Path

import scipy
from scipy.optimize import brentq

random.seed(20816)


def rolling(n, d, pitch, angle, inner, outer, seconds=20_000.0):
    inner_radius = pitch / 2 - d / 2 * math.cos(angle)
    outer_radius = pitch / 2 + d / 2 * math.cos(angle)
    inner_surface = inner * inner_radius
    outer_surface = outer * outer_radius
    centre = (inner_surface + outer_surface) / 2
    cage = centre / (pitch / 2)
    spin = (inner - cage) * inner_radius / (d / 2)
    return {
        "cage": abs(cage),
        "outerRing": passages(n, outer - cage, seconds),
        "innerRing": passages(n, inner - cage, seconds),
        "elementSpin": abs(spin),
        "counted_over": seconds,
    }


def passages(n, relative, seconds):
    """Elements past a spot on a ring that turns so much faster than the cage, counted and divided by the time."""
    return math.floor(abs(relative) * seconds * n) / seconds


def bearings():
    rows = []
    for _ in range(60):
        n = random.randint(5, 30)
        ratio = random.uniform(0.08, 0.9) * math.sin(math.pi / n)
        pitch = random.uniform(0.02, 1.2)
        angle = random.choice([0.0, math.radians(random.uniform(5, 60))])
        inner = random.uniform(-60, 60)
        outer = random.choice([0.0, random.uniform(-60, 60)])
        row = {"elements": n, "elementDiameter": ratio * pitch, "pitchDiameter": pitch, "contactAngle": angle}
        rows.append({"row": row, "inner": inner, "outer": outer, **rolling(n, ratio * pitch, pitch, angle, inner, outer)})
    return rows


def shown(fraction):
    return f"{fraction.numerator}/{fraction.denominator}"


def gear_trains():
    trains = []
    for _ in range(40):
        count = random.randint(2, 8)
        ratios = {"s0": Fraction(1)}
        links = []
        for index in range(1, count):
            before = f"s{random.randrange(index)}"
            shaft = f"s{index}"
            z1, z2 = random.randint(11, 120), random.randint(11, 120)
            internal = random.random() < 0.3
            backwards = random.random() < 0.5
            ratios[shaft] = ratios[before] * Fraction(z1, z2) * (1 if internal else -1)
            link = (before, shaft, z1, z2) if not backwards else (shaft, before, z2, z1)
            links.append({"from": link[0], "to": link[1], "driving": link[2], "driven": link[3], "internal": internal})
        random.shuffle(links)
        trains.append({"shafts": list(ratios), "links": links, "ratios": {k: shown(v) for k, v in ratios.items()}})
    return trains


def planetary_stages():
    """(n_sun - n_carrier)/(n_ring - n_carrier) = -z_ring/z_sun; any one member held, any other driven."""
    stages = []
    for _ in range(30):
        sun = random.randint(13, 40)
        planet = random.randint(13, 60)
        ring = sun + 2 * planet
        basic = Fraction(-ring, sun)
        held = random.choice(["sun", "carrier", "ring"])
        driven = random.choice([each for each in ["sun", "carrier", "ring"] if each != held])
        other = next(each for each in ["sun", "carrier", "ring"] if each not in (held, driven))
        speeds = {held: Fraction(0), driven: Fraction(1)}
        if other == "sun":
            speeds["sun"] = speeds["carrier"] + basic * (speeds["ring"] - speeds["carrier"])
        elif other == "ring":
            speeds["ring"] = speeds["carrier"] + (speeds["sun"] - speeds["carrier"]) / basic
        else:
            speeds["carrier"] = (speeds["sun"] - basic * speeds["ring"]) / (1 - basic)
        stages.append({"sun": sun, "ring": ring, "held": held, "driven": driven, "other": other, "ratio": shown(speeds[other])})
    return stages


def slips():
    rows = []
    for law, power in (("constant", 0), ("linear", 1), ("quadratic", 2)):
        for _ in range(8):
            pairs = random.randint(1, 6)
            rated = random.choice([50.0, 60.0])
            slip = random.uniform(0.005, 0.05) * rated / pairs
            speed = random.uniform(0.3, 0.95) * (rated / pairs - slip)
            gap = lambda f: f / pairs - slip * (f / rated) ** power - speed
            line = brentq(gap, 1e-6, rated, xtol=1e-13, rtol=1e-14)
            rows.append({"law": law, "pairs": pairs, "rated": rated, "slip": slip, "speed": speed, "line": line})
    return rows


answers = {
    "by": "evidence/machine/kinematics.py",
    "versions": {"scipy": scipy.__version__},
    "bearings": bearings(),
    "gearTrains": gear_trains(),
    "planetaryStages": planetary_stages(),
    "slips": slips(),
}
Path(__file__).with_name("kinematics.json").write_text(json.dumps(answers, indent=1) + "\n")
