"""Activity coefficients by another program: the open library `thermo`, with its own parameter tables.

Run with `python3 scripts/reference/unifac.py > test/check-values/evaporation/unifac.csv` (thermo 0.6.1).
"""
import itertools
import thermo
from thermo.unifac import DOUFIP2006, DOUFSG, UFIP, UFSG, UNIFAC

DORTMUND = {
    "ethanol": {1: 1, 2: 1, 14: 1}, "isopropanol": {1: 2, 3: 1, 81: 1}, "n-propanol": {1: 1, 2: 2, 14: 1},
    "methanol": {15: 1}, "n-butanol": {1: 1, 2: 3, 14: 1}, "n-heptane": {1: 2, 2: 5}, "water": {16: 1},
}
ORIGINAL = {
    "ethanol": {1: 1, 2: 1, 14: 1}, "isopropanol": {1: 2, 3: 1, 14: 1}, "methanol": {15: 1}, "acetone": {1: 1, 18: 1},
    "mek": {1: 1, 2: 1, 18: 1}, "mibk": {1: 2, 2: 1, 3: 1, 18: 1}, "ethyl-acetate": {1: 1, 2: 1, 21: 1},
    "n-butyl-acetate": {1: 1, 2: 3, 21: 1}, "n-heptane": {1: 2, 2: 5}, "water": {16: 1},
}


def gammas(groups, t, xs, version):
    names = {"version": 1, "interaction_data": DOUFIP2006, "subgroups": DOUFSG} if version == 1 else {
        "version": 0, "interaction_data": UFIP, "subgroups": UFSG}
    return UNIFAC.from_subgroups(T=t, xs=xs, chemgroups=groups, **names).gammas()


print("components,t_C,x,gammas,made")
made = f"thermo {thermo.__version__}"
for version, table in ((1, DORTMUND), (0, ORIGINAL)):
    ketones = {"acetone", "mek", "mibk", "ethyl-acetate", "n-butyl-acetate"}
    sets = [list(p) for p in itertools.combinations(table, 2)] + [["ethanol", "isopropanol", "methanol", "water"]]
    if version == 0:
        sets = [s for s in sets if ketones & set(s)] + [["ethanol", "isopropanol", "mek", "water"], ["ethanol", "mibk", "ethyl-acetate", "water"]]
    for names in sets:
        for t in (10.0, 40.0):
            weights = range(1, len(names) + 1)
            xs = [w / sum(weights) for w in weights]
            g = gammas([table[n] for n in names], t + 273.15, xs, version)
            cell = lambda values: " ".join(f"{v:.9g}" for v in values)
            print(f"{' '.join(names)},{t:g},{cell(xs)},{cell(g)},{made}")
