"""Drying films by another hand: the equations written anew in Python, integrated by SciPy's implicit Runge-Kutta (Radau).

Pure liquids and activity models are read from the outside tables, not from Lacbench; what Lacbench assumes of the resin
is written out below. Run with `python3 scripts/reference/drying.py > test/check-values/evaporation/drying-reference.json`
(NumPy and SciPy).
"""
import csv
import json
import sys
from math import exp, hypot, log, log10, log1p, sqrt
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import solve_ivp

TABLES = Path(__file__).resolve().parents[2] / "test" / "check-values" / "solutions"
R, SIGMA, P = 8.314462618, 5.670374419e-8, 101325.0
NAMES = {
    "ethanol": "ethanol", "methanol": "methanol", "isopropanol": "2-propanol", "n-propanol": "1-propanol",
    "n-butanol": "1-butanol", "mek": "MEK", "water": "water",
}


def table(name):
    return {r["name"]: r for r in csv.DictReader((TABLES / name).open())}


PRESSURES, PURE, DIFFUSION = table("vapor_pressure.csv"), table("pure_components.csv"), table("diffusion_in_air.csv")
MODELS = json.loads((TABLES / "activity_models.json").read_text())
PSYCHRO = json.loads((TABLES / "psychrometrics.json").read_text())
# what the tables of molecules leave out
GROUPS = {
    "unifac_modified_dortmund": {"1-propanol": "1 CH3 2 CH2 1 OH_primary", "1-butanol": "1 CH3 3 CH2 1 OH_primary"},
    "unifac_original": {"MEK": "1 CH3 1 CH2 1 CH3CO"},
}
INTERACTION = {"ethanol": 0.4, "methanol": 0.4, "isopropanol": 0.5, "n-propanol": 0.45, "n-butanol": 0.5, "mek": 0.9, "water": 2.0}
GLASS = {"ethanol": 97, "methanol": 103, "isopropanol": 117, "n-propanol": 98, "n-butanol": 112, "mek": 100, "water": 136}


def water_saturation(t):
    c = PSYCHRO["hyland_wexler_over_water_0_200C"]["C"]
    return exp(c[0] / t + c[1] + c[2] * t + c[3] * t * t + c[4] * t**3 + c[5] * log(t))


class Liquid:
    def __init__(self, name):
        row = PURE[NAMES[name]]
        self.name = name
        self.m = float(row["molar_mass_g_mol"]) / 1e3
        self.cp = float(row["cp_liquid_25C_J_mol_K"])
        self.cold, self.hot = float(row["hvap_25C_kJ_mol"]) * 1e3, float(row["hvap_at_bp_kJ_mol"]) * 1e3
        self.tb = float(row["normal_boiling_point_C"]) + 273.15
        self.d = float(DIFFUSION[NAMES[name]]["D_25C_fuller_cm2_s"])
        self.c = [float(PRESSURES[NAMES[name]][f"dippr101_C{k}"]) for k in range(1, 6)]

    def pressure(self, t):
        if self.name == "water":
            return water_saturation(t)
        c = self.c
        return exp(c[0] + c[1] / t + c[2] * log(t) + c[3] * t ** c[4])

    def latent(self, t):
        return self.cold + (self.hot - self.cold) * (t - 298.15) / (self.tb - 298.15)


class Unifac:
    """ln gamma by sums over groups, as the papers write them."""

    def __init__(self, names):
        old = any(NAMES[n] not in MODELS["unifac_modified_dortmund"]["molecules"] | GROUPS["unifac_modified_dortmund"] for n in names)
        key = "unifac_original" if old else "unifac_modified_dortmund"
        model = MODELS[key]
        molecules = model["molecules"] | GROUPS[key]
        texts = [molecules[NAMES[n]].split() for n in names]
        counts = [dict(zip(t[1::2], map(int, t[0::2]))) for t in texts]
        self.groups = sorted({g for c in counts for g in c})
        self.nu = np.array([[c.get(g, 0) for g in self.groups] for c in counts], float)
        size = [model["groups"][g] for g in self.groups]
        self.big_q = np.array([s["Q"] for s in size])
        self.r = self.nu @ np.array([s["R"] for s in size])
        self.q = self.nu @ self.big_q
        self.power = 1.0 if old else 0.75
        self.main = [s["main"] for s in size]
        self.a = model["a_K"] if old else model["abc"]

    def psi(self, t):
        def one(m, n):
            if m == n:
                return 1.0
            a = self.a[f"{m}-{n}"]
            a = a if isinstance(a, list) else [a, 0, 0]
            return exp(-(a[0] + a[1] * t + a[2] * t * t) / t)

        return np.array([[one(m, n) for n in self.main] for m in self.main])

    def group_gamma(self, amounts, psi):
        theta = self.big_q * amounts / (self.big_q @ amounts)
        mean = theta @ psi
        return self.big_q * (1 - np.log(mean) - psi @ (theta / mean))

    def ln_gamma(self, x, t):
        x = x / x.sum()
        powered = self.r**self.power
        v = powered / (x @ powered)
        shape = (self.r / (x @ self.r)) / (self.q / (x @ self.q))
        size = 1 - v + np.log(v) - 5 * self.q * (1 - shape + np.log(shape))
        psi = self.psi(t)
        mixed = self.group_gamma(x @ self.nu, psi)
        pure = [self.group_gamma(nu, psi) for nu in self.nu]
        return size + np.array([nu @ (mixed - p) for nu, p in zip(self.nu, pure)])


def heat_transfer(ta, speed, length):
    nu = 1.458e-6 * ta**1.5 / (ta + 110.4) / (P * 0.0289652 / (R * ta))
    k = 2.64638e-3 * ta**1.5 / (ta + 245.4 * 10 ** (-12 / ta))
    re, pr = speed * length / nu, 0.71
    laminar = 0.664 * sqrt(re) * pr ** (1 / 3)
    turbulent = 0.037 * re**0.8 * pr / (1 + 2.443 * re**-0.1 * (pr ** (2 / 3) - 1)) if re > 0 else 0
    draught, quarter = hypot(laminar, turbulent) * k / length, length / 4

    def h(ratio):
        ra = 9.80665 * hypot(ratio - 1, 1e-3) * quarter**3 * pr / nu**2
        return (draught**3 + (0.52 * ra**0.2 * k / quarter) ** 3) ** (1 / 3)

    return h


def moisture(t, h):
    poly = lambda c: c[0] + c[1] * t + c[2] * t * t
    e = json.loads((TABLES / "wood_emc.json").read_text())
    w, kh, k1, k2 = poly(e["W"]), poly(e["K"]) * h, poly(e["K1"]), poly(e["K2"])
    return 18 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))


def board(thickness, density, t_wood, ta, rh):
    m = moisture(ta - 273.15, rh)
    g = density / (1000 * (1 + m))
    k = g * (0.1941 + 0.4064 * m) + 0.01864
    c = 1e3 * ((0.1031 + 0.003867 * t_wood + 4.19 * m) / (1 + m) + 100 * m * (-0.06191 + 2.36e-4 * t_wood - 0.0133 * m))
    dx = thickness * 0.6 / (1.6**10 - 1) * 1.6 ** np.arange(10)
    middle = np.concatenate([[dx[0] / 2], (dx[1:] + dx[:-1]) / 2])
    return dx * density * c, k / middle


def dry(case):
    liquids = [Liquid(n) for n in case["film"]["components"]]
    n0, v = np.array(case["film"]["moles"]), np.array(case["film"]["molarVolumes"])
    vr, mr = case["film"]["resinVolume"], case["film"]["resinMass"]
    air, wood = case["air"], case["wood"]
    ta, rh = air["temperature"], air["relativeHumidity"]
    unifac, h_of = Unifac([l.name for l in liquids]), heat_transfer(ta, air["speed"], case["length"])
    m, cp, count = np.array([l.m for l in liquids]), np.array([l.cp for l in liquids]), len(liquids)
    y_out = rh * water_saturation(ta) / P
    outside = np.array([y_out if l.name == "water" else 0.0 for l in liquids])
    gas_out = 0.0289652 + y_out * (0.0180153 - 0.0289652)
    transfer = np.array([(l.d / Liquid("water").d) ** (2 / 3) for l in liquids]) / (1006 * 0.0289652)
    chi = np.array([INTERACTION[l.name] for l in liquids])
    capacity, conductance = board(wood["thickness"], wood["density"], wood["temperature"], ta, rh) if wood else (np.zeros(0), [])

    def rates(_, y):
        n, t, w = y[:count], y[count], y[count + 1 :]
        present = np.maximum(n, 1e-30)
        total, liquid = present.sum(), present @ v
        thick, phi = liquid + vr, vr / (liquid + vr)
        hold = 1.0
        if vr > 0:
            hold = (1 - phi) * np.exp(phi * (v * (total / liquid - 1 / 8.3e-4) + chi - v * (chi @ present) / thick))
        each = np.exp(unifac.ln_gamma(present, t)) * hold * np.array([l.pressure(t) for l in liquids]) / (P * total)
        ys = each * n
        inside = 0.0
        if vr > 0:
            decades = 7 * np.sqrt(v / 5.84e-5) * phi**3
            d = 1e-9 * 10**-decades * exp(-6e4 / R * (1 / t - 1 / 293.15))
            inside = each * thick**2 / (3 * d)
        gas = 0.0289652 + ys @ (m - 0.0289652)
        h, s = h_of(gas / gas_out * ta / t), ys.sum()
        drift = log1p((s - y_out) / (1 - s)) / (s - y_out) if abs(s - y_out) > 1e-12 else 1 / (1 - s)
        flux = (ys - outside) / (1 / (h * transfer * drift) + inside)
        heat = h * (ta - t) - flux @ np.array([l.latent(t) for l in liquids])
        if case["radiation"]:
            heat += 0.9 * SIGMA * (ta**4 - t**4)
        dw = np.zeros(len(w))
        if len(w):
            down = np.array([conductance[0] * (t - w[0]), *(conductance[1:] * (w[:-1] - w[1:])), 0.0])
            dw = (down[:-1] - down[1:]) / capacity
            heat -= down[0]
        return np.concatenate([-flux, [heat / (n @ cp + mr * 1500)], dw])

    above = 9 * 51.6 / (17.44 - 9)

    def touch(_, y):
        w = np.maximum(y[:count], 0) * m
        glass = (w.sum() + mr) / ((w / np.array([GLASS[l.name] for l in liquids])).sum() + mr / 318)
        return above - (y[count] - glass)

    start = np.concatenate([n0, [case["liquidTemperature"]], np.full(len(capacity), wood["temperature"] if wood else 0.0)])
    run = solve_ivp(rates, (0, case["times"][-1]), start, method="Radau", rtol=1e-9, atol=1e-12, t_eval=case["times"],
                    events=[touch] if vr > 0 else None)
    assert run.success, run.message
    return {
        "masses": (run.y[:count].T * m).tolist(),
        "temperatures": run.y[count].tolist(),
        "touchDry": float(run.t_events[0][0]) if vr > 0 else None,
    }


if __name__ == "__main__":
    cases = json.loads((TABLES.parent / "evaporation" / "drying-cases.json").read_text())
    out = {"made": f"scripts/reference/drying.py, SciPy {scipy.__version__}, Radau, rtol 1e-9", "cases": {}}
    for name, case in cases.items():
        out["cases"][name] = dry(case)
        print(name, file=sys.stderr)
    print(json.dumps(out, indent=1))
