"""
Independent answers for the machine room, by other ways than the formulas there:

bearings   rigid bodies that do not slip: the centre of an element moves with the mean of its two contact points, its
           spin follows from the surface speed at the inner contact; passages of elements past a spot on each ring are
           counted over a long time.
trains     gear and belt networks: ratios multiplied along the path from the reference, in Python fractions; planetary
           stages by the Willis equation.
slip       line frequency at which a shaft reaches a speed under a torque law, by a bracketing root finder.
planets    rims that roll on each other without teeth: speeds at the contacts give the carrier and the spin of a planet,
           passages of planets past a mark on sun and ring are counted; windows by stepping turn by turn; assembly by
           laying cosine teeth into each other; the orders at one place of a held ring by adding up passing planets and
           taking a Fourier transform.
networks   planetary stages that share shafts, by least squares in floating point.
cranks     the exact motion of a slider crank, differentiated twice in its Fourier series.
meetings   pressure between running and standing blades: node diameters counted in the Fourier transform of a product of
           two combs.

Run: /usr/bin/python3 evidence/machine/kinematics.py   (writes kinematics.json beside it)
"""

import json
import math
import random
from fractions import Fraction
from pathlib import Path

import numpy as np
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


def rims(sun, planet, ring, planets, sun_speed, ring_speed, seconds=50_000.0):
    """Rolling rims: no tooth count but as a radius."""
    sun_radius, planet_radius, ring_radius = sun / 2, planet / 2, ring / 2
    inner, outer = sun_speed * sun_radius, ring_speed * ring_radius
    centre = (inner + outer) / 2
    carrier = centre / (sun_radius + planet_radius)
    spin = (outer - centre) / planet_radius
    return {
        "carrier": carrier,
        "planet": spin,
        "planetSpin": abs(spin - carrier),
        "mesh": abs(sun_speed - carrier) * sun,
        "sunFault": passages(planets, sun_speed - carrier, seconds),
        "ringFault": passages(planets, ring_speed - carrier, seconds),
        "counted_over": seconds,
    }


def first_return(wheel, passing):
    """Turns until tooth 0 of a wheel that rolls past `passing` teeth a turn meets tooth 0 again, stepped one by one."""
    place, turns = 0, 0
    while True:
        turns += 1
        place = (place + passing) % wheel
        if place == 0:
            return turns


def wrapped(angle):
    return math.remainder(angle, 2 * math.pi)


def planets_go_in(sun, planet, ring, planets):
    """Cosine teeth. The first planet is laid into ring and sun; every other is laid into the ring and tried at the sun."""
    def turned(at):
        return at - (ring * at - math.pi) / planet

    def at_sun(at, shift):
        return wrapped(sun * at + shift + planet * (at + math.pi - turned(at)) - math.pi)

    shift = -at_sun(0.0, 0.0)
    return all(abs(at_sun(2 * math.pi * k / planets, shift)) < 1e-6 for k in range(planets))


def orders_at_ring(ring, planets, harmonic, samples=8192):
    """Planets passing one place of the ring, each louder while it is near; the strongest orders of the sum."""
    turn = 2 * math.pi * np.arange(samples) / samples
    total = np.zeros(samples)
    for k in range(planets):
        place = turn + 2 * math.pi * k / planets
        total += np.exp(8 * (np.cos(place) - 1)) * np.cos(harmonic * ring * place)
    lines = np.abs(np.fft.rfft(total))
    return [int(order) for order in np.flatnonzero(lines > lines.max() * (1 - 1e-6))]


def planet_sets():
    rows = []
    for _ in range(60):
        sun, planet = random.randint(13, 60), random.randint(13, 60)
        ring = sun + 2 * planet
        planets = random.randint(2, 6)
        sun_speed = random.uniform(-30, 30)
        ring_speed = random.choice([0.0, random.uniform(-30, 30)])
        rows.append(
            {
                "teeth": {"sun": sun, "planet": planet, "ring": ring, "planets": planets},
                "sunSpeed": sun_speed,
                "ringSpeed": ring_speed,
                **rims(sun, planet, ring, planets, sun_speed, ring_speed),
                "planetWindow": first_return(planet, ring),
                "sunWindow": first_return(sun, ring),
                "goIn": planets_go_in(sun, planet, ring, planets),
                "orders": [orders_at_ring(ring, planets, harmonic) for harmonic in (1, 2, 3)],
            }
        )
    return rows


def networks():
    """Stages on a common pool of shafts, kept where the speeds of all shafts follow from the first."""
    kept = []
    while len(kept) < 40:
        count = random.randint(2, 3)
        pool = [f"s{index}" for index in range(random.randint(3, 2 * count))]
        stages = []
        for _ in range(count):
            sun, planet = random.randint(13, 40), random.randint(13, 40)
            roles = random.sample(pool, 3)
            if random.random() < 0.5:
                roles[random.randrange(3)] = "fixed"
            stages.append({"sun": sun, "planet": planet, "ring": sun + 2 * planet, "roles": roles})
        used = {role for stage in stages for role in stage["roles"]}
        if not set(pool) <= used:
            continue
        rows = []
        for stage in stages:
            row = dict.fromkeys(pool, 0.0)
            for role, factor in zip(stage["roles"], (stage["sun"], -(stage["sun"] + stage["ring"]), stage["ring"])):
                if role != "fixed":
                    row[role] += factor
            rows.append([row[shaft] for shaft in pool])
        matrix = np.array(rows)
        if matrix.shape[0] != len(pool) - 1 or np.linalg.cond(matrix[:, 1:]) > 1e6:
            continue
        others = np.linalg.solve(matrix[:, 1:], -matrix[:, 0])
        if np.abs(others).min() < 1e-6:
            continue
        kept.append({"shafts": pool, "stages": stages, "ratios": [1.0, *others.tolist()]})
    return kept


def cranks(samples=4096):
    rows = []
    for _ in range(20):
        radius = random.uniform(0.02, 0.3)
        rod = radius * random.uniform(3, 6)
        speed = random.uniform(2, 30)
        angle = 2 * math.pi * np.arange(samples) / samples
        place = radius * np.cos(angle) + np.sqrt(rod**2 - (radius * np.sin(angle)) ** 2)
        series = np.fft.rfft(place) / samples * 2
        omega = 2 * math.pi * speed
        rows.append(
            {
                "radius": radius,
                "rod": rod,
                "speed": speed,
                "first": abs(series[1]) * omega**2,
                "second": abs(series[2]) * (2 * omega) ** 2,
            }
        )
    return rows


def blade_meetings(samples=512):
    """Comb of the runner, turned step by step, times comb of the guide vanes: node diameters of the first multiples."""
    rows = []
    for running, standing in ((6, 24), (9, 20), (13, 20), (7, 20), (17, 13), (5, 6), (16, 20)):
        found = []
        place = 2 * math.pi * np.arange(samples) / samples
        for m in range(1, 5):
            for n in range(1, 5):
                product = np.cos(m * running * place) * np.cos(n * standing * place)
                lines = np.abs(np.fft.rfft(product))
                found.append({"m": m, "n": n, "nodes": int(np.flatnonzero(lines > lines.max() / 10)[0])})
        rows.append({"running": running, "standing": standing, "fewest": min(each["nodes"] for each in found), "all": found})
    return rows


answers = {
    "by": "evidence/machine/kinematics.py",
    "versions": {"scipy": scipy.__version__, "numpy": np.__version__},
    "bearings": bearings(),
    "gearTrains": gear_trains(),
    "planetaryStages": planetary_stages(),
    "slips": slips(),
    "planetSets": planet_sets(),
    "networks": networks(),
    "cranks": cranks(),
    "bladeMeetings": blade_meetings(),
}
Path(__file__).with_name("kinematics.json").write_text(json.dumps(answers, indent=1) + "\n")
