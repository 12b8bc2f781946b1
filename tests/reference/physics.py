#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Holds the physics against general-purpose libraries and methods that share nothing with it.

  * Whole lines and trees, random, seeded: friction by fluids.friction.Churchill_1977, fittings by
    fluids.fittings.Darby3K, sharp turbulent steps by fluids.fittings.diffuser_sharp, all else from the formulas of
    docs/physics.md written down anew here; flows by scipy.optimize.brentq on the source's pressure, from the loads
    upward, where the library solves downward from the source.
  * Drains that run full: friction by fluids.friction.friction_factor (Hagen-Poiseuille; Clamond on Colebrook).
  * Drains: Poisson's equation on the wetted segment by a Galerkin method with Legendre polynomials, where
    the library has an integral and a polynomial; turbulent ones by fluids' friction factor.
  * Water: density, viscosity and boiling by iapws (IAPWS-95, IAPWS 2008, IF97).
  * Oil: the equation of ASTM D341 written down anew.

Usage: physics.py DRIVER. Prints one line a subject and a count; exit 1 if a point disagrees.
"""
import math
import random
import subprocess
import sys

import numpy
from fluids.fittings import Darby3K, diffuser_sharp
from fluids.friction import Churchill_1977, friction_factor
from iapws import IAPWS95, IAPWS97
from scipy.optimize import brentq

G = 9.80665
DARBY = {
    "elbow-90": "Elbow, 90°, threaded, standard, (r/D = 1)",
    "elbow-90-long": "Elbow, 90°, threaded, long radius, (r/D = 1.5)",
    "elbow-45": "Elbow, 45°, threaded standard, (r/D = 1)",
    "tee-branch": "Tee, Through-branch, (as elbow), threaded, (r/D = 1)",
    "tee-branch-drilled": "Tee, Through-branch, (as elbow), flanged, (r/D = 1)",
    "tee-run": "Tee, Run-through, threaded, (r/D = 1)",
}


class Asker:
    """Collects questions, asks the driver once, and hands back its answers in order."""

    def __init__(self, driver):
        self.driver, self.questions = driver, []

    def ask(self, *words):
        self.questions.append(" ".join(w if isinstance(w, str) else repr(float(w)) for w in words))
        return len(self.questions) - 1

    def answers(self):
        text = "\n".join(self.questions) + "\n"
        done = subprocess.run([self.driver], input=text, capture_output=True, text=True, check=True)
        lines = done.stdout.splitlines()
        assert len(lines) == len(self.questions), "the driver left questions unanswered"
        return [[float(x) for x in line.split()] if line != "refused" else None for line in lines]


class Tally:
    def __init__(self):
        self.passed = self.failed = 0

    def subject(self, name, pairs, part):
        """pairs: (label, ours, reference); every |ours - reference| must be within part of the reference."""
        worst, bad = 0.0, 0
        for label, ours, reference in pairs:
            off = abs(ours - reference) / abs(reference) if reference else abs(ours)
            if not off <= part:  # NaN is a failure
                bad += 1
                if bad <= 5:
                    print(f"  {name}: {label}: {ours!r} against {reference!r}")
            worst = max(worst, off)
        self.passed += len(pairs) - bad
        self.failed += bad
        print(f"{name}: {len(pairs)} points, worst {worst:.2g}, allowed {part:.2g}")


# ---- losses ------------------------------------------------------------------------------------

def friction(reynolds, rough):
    """The reference library's powers overflow at Re 1e-8, which only the search for a flow ever sees."""
    return Churchill_1977(reynolds, rough) if reynolds > 1e-6 else 64 / reynolds


def blend(reynolds, laminar, turbulent):
    share = min(max((reynolds - 2000.0) / 2000.0, 0.0), 1.0)
    return (1.0 - share) * laminar + share * turbulent


def creeping(reynolds, ratio):
    return 6.0 * math.pi * (1.0 - ratio) / (reynolds * (1.0 + reynolds / 12.0))


def contraction(ratio, reynolds):
    return blend(reynolds, 0.28 * (1 - ratio) + creeping(reynolds, ratio), 0.5 * (1 - ratio) ** 0.75)


def expansion(ratio, reynolds):
    borda = diffuser_sharp(Di1=math.sqrt(ratio), Di2=1.0) if ratio > 0 else 1.0
    return blend(reynolds, 2 - 8 / 3 * ratio + 2 / 3 * ratio ** 2 + creeping(reynolds, ratio), borda)


def hole(ratio, reynolds):
    """0.5 <= L/d <= 20."""
    y, join = math.sqrt(ratio / reynolds), 13.74 / 128
    k = 64 * y * y + 2.28 if y >= join else 13.74 * y + 2.28 - 64 * join * join
    return k + 12 * math.pi / (reynolds * (1 + reynolds / 12))


seen = {"laminar": 0, "between": 0, "turbulent": 0}  # pipes in solved lines


def line_loss(before, pieces, liquid, roughness, flow):
    """Pa along the pieces; each is (kind, bore, length, count)."""
    if flow <= 0:
        return 0.0
    density, viscosity = liquid

    def loss(k_of, bore, part=1.0):
        velocity = flow * part / (math.pi / 4 * bore ** 2)
        reynolds = density * velocity * bore / viscosity
        return k_of(reynolds) * density * velocity ** 2 / 2

    def wide(piece):
        return piece[0] in ("chamber", "holes", "restrictor")

    total = 0.0
    for piece in pieces:
        kind, bore, length, count = piece
        if before is not None and not (wide(before) and wide(piece)):
            if wide(before):
                total += loss(lambda re: contraction(0.0, re), bore)
            elif wide(piece):
                total += loss(lambda re: expansion(0.0, re), before[1])
            elif bore < before[1]:
                total += loss(lambda re: contraction((bore / before[1]) ** 2, re), bore)
            elif bore > before[1]:
                total += loss(lambda re: expansion((before[1] / bore) ** 2, re), before[1])
        if kind == "pipe":
            total += loss(lambda re: friction(re, roughness / bore) * length / bore, bore)
        elif kind in DARBY:
            total += loss(lambda re: Darby3K(NPS=max(0.5, bore / 0.0254), Re=re, name=DARBY[kind]), bore)
        elif wide(piece) and kind != "chamber":
            total += loss(lambda re: hole(length / bore, re), bore, 1.0 / count)
        before = piece
    return total


# ---- trees, solved from the loads upward -------------------------------------------------------

def load_pressure(load, liquid, flow):
    q, p, mu, rho, share = load
    return share * p * liquid[1] * flow / (mu * q) + (1 - share) * p * liquid[0] * flow ** 2 / (rho * q * q)


def start_pressure(branch, before, liquid, roughness, flow, found):
    """Pressure at the start of a branch that carries flow; found gets (flow, end, loss) in walking order."""
    place = len(found)
    found.append(None)
    pieces, last = branch["pieces"], branch["pieces"][-1] if branch["pieces"] else before
    if "load" in branch:
        end = load_pressure(branch["load"], liquid, flow)
    else:
        end = split_pressure(branch, last, liquid, roughness, flow, found)
    loss = line_loss(before, pieces, liquid, roughness, flow)
    found[place] = (flow, end, loss)
    return end + loss + liquid[0] * G * branch["rise"]


def split_pressure(branch, last, liquid, roughness, flow, found):
    """Two live arms: the share of the first for which both ask for the same pressure."""
    first, second = branch["arms"]

    def difference(share):
        return (start_pressure(first, last, liquid, roughness, share * flow, []) -
                start_pressure(second, last, liquid, roughness, (1 - share) * flow, []))

    share = brentq(difference, 0.0, 1.0, xtol=1e-15, rtol=1e-14)
    node = start_pressure(first, last, liquid, roughness, share * flow, found)
    start_pressure(second, last, liquid, roughness, (1 - share) * flow, found)
    return node


def solve(trunk, liquid, roughness, source):
    def difference(log_flow):
        return start_pressure(trunk, None, liquid, roughness, math.exp(log_flow), []) - source

    found = []
    start_pressure(trunk, None, liquid, roughness, math.exp(brentq(difference, -32.0, -1.0, xtol=1e-14)), found)
    return found


def words_of(branch):
    out = [branch["rise"], len(branch["pieces"])]
    for kind, bore, length, count in branch["pieces"]:
        out += [kind, bore, length, count]
    if "load" in branch:
        return out + ["load", *branch["load"]]
    out += ["split", len(branch["arms"])]
    for arm in branch["arms"]:
        out += words_of(arm)
    return out


def log_uniform(rng, low, high):
    return math.exp(rng.uniform(math.log(low), math.log(high)))


def random_pieces(rng, plain):
    """plain: one bore and no ends, so that every loss is the reference library's own."""
    bore = log_uniform(rng, 0.002, 0.02)
    pieces = [] if plain else [("chamber", 0, 0, 1)]
    for _ in range(rng.randint(1, 7)):
        if not plain:
            bore = log_uniform(rng, 0.002, 0.02)
        kind = rng.choice(["pipe", "pipe", "pipe", *DARBY] + ([] if plain else ["holes", "restrictor"]))
        length = log_uniform(rng, 0.005, 2.0)
        if kind in ("holes", "restrictor"):
            small = log_uniform(rng, 0.0005, 0.004)
            pieces.append((kind, small, small * rng.uniform(0.5, 20.0), rng.randint(1, 4) if kind == "holes" else 1))
        else:
            pieces.append((kind, bore, length if kind == "pipe" else 0.0, 1))
    return pieces + ([] if plain else [("chamber", 0, 0, 1)])


def random_load(rng):
    return [log_uniform(rng, 0.2, 20) / 60000, rng.uniform(1e5, 5e5), log_uniform(rng, 0.003, 0.03),
            rng.uniform(750, 950), rng.choice([0.0, 0.5, 1.0, rng.random()])]


def random_tree(rng, plain, split):
    trunk = {"rise": rng.uniform(-0.5, 0.5), "pieces": random_pieces(rng, plain)}
    if not split:
        trunk["load"] = random_load(rng)
        return trunk
    # level arms: no oil is asked to run backward from one into the other
    trunk["arms"] = [{"rise": 0.0, "pieces": random_pieces(rng, plain), "load": random_load(rng)} for _ in range(2)]
    return trunk


def count_regimes(trunk, liquid, solved):
    for branch, (flow, _, _) in zip([trunk, *trunk.get("arms", [])], solved):
        for kind, bore, _, _ in branch["pieces"]:
            if kind == "pipe":
                reynolds = 4 * liquid[0] * flow / (math.pi * bore * liquid[1])
                seen["laminar" if reynolds < 2000 else "between" if reynolds < 4000 else "turbulent"] += 1


def check_trees(asker, rng, count, plain, split):
    cases = []
    for _ in range(count):
        trunk = random_tree(rng, plain, split)
        liquid = (rng.uniform(780, 920), log_uniform(rng, 0.0008, 20.0))
        roughness, source = rng.choice([0.0, 1.5e-6, 1e-5]), log_uniform(rng, 2e4, 9e5)
        cases.append((asker.ask("tree", *liquid, roughness, source, *words_of(trunk)), trunk, liquid, roughness, source))

    def pairs(answers):
        out = []
        for index, trunk, liquid, roughness, source in cases:
            ours = answers[index]
            solved = solve(trunk, liquid, roughness, source)
            count_regimes(trunk, liquid, solved)
            for i, (flow, end, loss) in enumerate(solved):
                out.append((f"case {index} flow {i}", ours[3 * i], flow))
                out.append((f"case {index} pressure {i}", ours[3 * i + 1], end))
                # a loss that is a sliver of the pressure is known to the pressure's digits only
                out.append((f"case {index} loss {i}", source + ours[3 * i + 2], source + loss))
        return out
    return pairs


# ---- drains -------------------------------------------------------------------------------------

def galerkin_star(depth, degree=18, points=80):
    """Flow of unit drive and viscosity in a pipe of bore 1 filled to depth, free surface flat and without shear."""
    nodes, weights = numpy.polynomial.legendre.leggauss(points)
    # along y from the bottom: y = -1/2 + depth * s^2 resolves the narrow bottom
    s, ws = (nodes + 1) / 2, weights / 2
    y = -0.5 + depth * s ** 2
    half = numpy.sqrt(numpy.maximum(0.25 - y ** 2, 0))
    x = half[:, None] * nodes[None, :]
    area = (ws * depth * 2 * s * half)[:, None] * weights[None, :]
    yy = numpy.broadcast_to(y[:, None], x.shape)
    wall, wall_x, wall_y = 0.25 - x ** 2 - yy ** 2, -2 * x, -2 * yy
    reach = half.max()
    u, v = x / reach, (yy + 0.5) / depth * 2 - 1
    legendre = numpy.polynomial.legendre
    basis, basis_x, basis_y = [], [], []
    for i in range(0, degree + 1, 2):  # even in x
        ci = [0] * i + [1]
        px, dx = legendre.legval(u, ci), legendre.legval(u, legendre.legder(ci)) / reach
        for j in range(degree + 1 - i):
            cj = [0] * j + [1]
            py, dy = legendre.legval(v, cj), legendre.legval(v, legendre.legder(cj)) * 2 / depth
            basis.append(wall * px * py)
            basis_x.append(wall_x * px * py + wall * dx * py)
            basis_y.append(wall_y * px * py + wall * px * dy)
    f, fx, fy = (numpy.array(b).reshape(len(b), -1) for b in (basis, basis_x, basis_y))
    w = area.ravel()
    stiffness = (fx * w) @ fx.T + (fy * w) @ fy.T
    load = f @ w
    return float(load @ numpy.linalg.lstsq(stiffness, load, rcond=1e-13)[0])


def check_stars(asker, depths):
    asked = [(asker.ask("star", d), d) for d in depths]

    def pairs(answers):
        return [(f"depth {d}", answers[i][0], galerkin_star(d)) for i, d in asked]
    return pairs


def check_full(asker, rng, count):
    """Drains that run full, laminar or turbulent: Darcy and Weisbach, the friction factor not the library's own."""
    cases = []
    for _ in range(count):
        density, viscosity = rng.uniform(780, 900), log_uniform(rng, 0.0004, 0.4)
        flow = log_uniform(rng, 5e-6, 4e-4)
        pipes = [(rng.uniform(0.008, 0.025), rng.uniform(0.02, 0.6)) for _ in range(rng.randint(1, 5))]
        words = [word for pipe in pipes for word in pipe]
        cases.append((asker.ask("full", density, viscosity, flow, len(pipes), *words), density, viscosity, flow, pipes))

    def pairs(answers):
        out = []
        for index, density, viscosity, flow, pipes in cases:
            reynolds = [4 * density * flow / (math.pi * bore * viscosity) for bore, _ in pipes]
            if any(1900 < re < 5000 for re in reynolds):
                continue
            loss = sum(friction_factor(re, 0) * length / bore * density / 2 * (4 * flow / (math.pi * bore ** 2)) ** 2
                       for re, (bore, length) in zip(reynolds, pipes))
            out.append((f"case {index}", answers[index][0], loss))
        return out
    return pairs


def check_drains(asker, rng, count):
    """Any regime: what is carried at the depth found, by Darcy's equation with fluids' friction factor."""
    cases = []
    for _ in range(count):
        density, viscosity = rng.uniform(780, 900), log_uniform(rng, 0.0008, 0.4)
        bore, slope = rng.uniform(0.008, 0.03), math.radians(rng.uniform(2, 90))
        full = math.pi / 256 * G * math.sin(slope) * bore ** 4 * density / viscosity
        flow = min(full * rng.uniform(0.01, 2.2), 0.004)
        cases.append((asker.ask("drain", density, viscosity, bore, slope, flow), density, viscosity, bore, slope, flow))

    def pairs(answers):
        out = []
        for index, density, viscosity, bore, slope, flow in cases:
            fill, velocity, reynolds, _ = answers[index]
            if fill > 0.86 or 1900 < reynolds < 4000:
                continue
            phi = math.acos(1 - 2 * fill)
            area, perimeter = (phi - math.sin(phi) * math.cos(phi)) / 4 * bore ** 2, phi * bore
            out.append((f"case {index} velocity", velocity, flow / area))
            if reynolds <= 1900:
                drive = G * math.sin(slope) * density / viscosity * bore ** 4
                out.append((f"case {index} laminar flow", flow, galerkin_star(fill, 14, 60) * drive))
            else:
                factor = Churchill_1977(reynolds, 0.0)
                out.append((f"case {index} turbulent flow", flow,
                            area * math.sqrt(8 * G * area / perimeter * math.sin(slope) / factor)))
        return out
    return pairs


# ---- liquids ------------------------------------------------------------------------------------

def check_water(asker):
    asked = [(asker.ask("water", t), t) for t in range(20, 131, 10)]

    def density(answers):
        return [(f"{t} C", answers[i][0], IAPWS95(T=t + 273.15, P=0.3).rho) for i, t in asked]

    def viscosity(answers):
        return [(f"{t} C", answers[i][1], IAPWS95(T=t + 273.15, P=0.3).mu) for i, t in asked]
    def fall(answers):  # over 10 K: it drives what goes round by itself
        warm = [(i, t, answers[i][0], IAPWS95(T=t + 273.15, P=0.3).rho) for i, t in asked if t >= 40]
        return [(f"{a[1]} to {b[1]} C", a[2] - b[2], a[3] - b[3]) for a, b in zip(warm, warm[1:])]
    return density, viscosity, fall


def check_boiling(asker):
    asked = [(asker.ask("boils", cap), cap) for cap in (0.0, 3e4, 7e4, 1e5, 1.1e5, 1.5e5, 3e5)]

    def pairs(answers):
        return [(f"{cap} Pa", answers[i][0], IAPWS97(P=(101325 + cap) / 1e6, x=0).T - 273.15) for i, cap in asked]
    return pairs


def check_oil(asker, rng, count):
    cases = []
    for _ in range(count):
        kv100, t = rng.uniform(4, 26), rng.uniform(-20, 180)
        kv40 = kv100 * rng.uniform(4, 10)
        cases.append((asker.ask("oil", kv40, kv100, 870, t), kv40, kv100, t))

    def pairs(answers):
        out = []
        for index, kv40, kv100, t in cases:
            def loglog(v):
                return math.log10(math.log10(v + 0.7))
            # the straight line through both points over log T
            share = (math.log10(t + 273.15) - math.log10(313.15)) / (math.log10(373.15) - math.log10(313.15))
            w = loglog(kv40) + share * (loglog(kv100) - loglog(kv40))
            out.append((f"case {index}", answers[index][0], 10 ** (10 ** w) - 0.7))
        return out
    return pairs


def main():
    rng, asker, tally = random.Random(20240229), Asker(sys.argv[1]), Tally()
    subjects = [
        ("lines, pipes and fittings only", check_trees(asker, rng, 150, True, False), 1e-8),
        ("lines with steps, holes and chambers", check_trees(asker, rng, 150, False, False), 1e-8),
        ("trees of two loads", check_trees(asker, rng, 60, False, True), 1e-7),
        # past half full the corners spoil the method's convergence, from below
        ("flow in pipes up to half full", check_stars(asker, [0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5]), 2e-6),
        ("flow in pipes more than half full", check_stars(asker, [0.55, 0.6, 0.65, 0.7]), 2e-4),
        ("drains in any regime", check_drains(asker, rng, 120), 0.02),
        ("drains that run full", check_full(asker, rng, 120), 0.02),
        ("oil viscosity", check_oil(asker, rng, 100), 1e-9),
        ("boiling water", check_boiling(asker), 1e-5),
    ]
    density, viscosity, fall = check_water(asker)
    subjects += [("density of water", density, 4e-4), ("viscosity of water", viscosity, 0.01),
                 ("fall of water's density", fall, 0.035)]
    answers = asker.answers()
    for name, pairs, part in subjects:
        tally.subject(name, pairs(answers), part)
    print("pipes in those lines: " + ", ".join(f"{count} {name}" for name, count in seen.items()))
    if min(seen.values()) < 20:
        print("the random lines miss a regime")
        tally.failed += 1
    print(f"{tally.passed} passed, {tally.failed} failed")
    return 1 if tally.failed or tally.passed < 1000 else 0


if __name__ == "__main__":
    sys.exit(main())
