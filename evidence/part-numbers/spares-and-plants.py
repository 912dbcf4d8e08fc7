"""Spares by scipy.stats.poisson, and least costs of random plants by scipy.optimize.milp, which runs its own HiGHS."""
import json
import pathlib
import platform

import numpy
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix
from scipy.stats import poisson

spares = [
    {"mean": mean, "level": level, "spares": int(poisson.ppf(level, mean)), "atMost": float(poisson.cdf(int(mean), mean))}
    for mean in (0.01, 0.0513, 0.05, 0.2, 1.0, 2.5, 7.3, 40.0, 333.0, 1200.0)
    for level in (0.8, 0.9, 0.95, 0.99, 0.999)
]

random = numpy.random.default_rng(20261125)


def plant(points, transducers, mounts, ways_each, keeping):
    """Ways of two part numbers each; no spares, no stock: the cost is keeping of types, prices and what is beside."""
    types = [
        {"price": float(random.integers(20, 500)), "keeping": float(random.integers(keeping // 2, keeping * 3 // 2))}
        for _ in range(transducers + mounts)
    ]
    needs = []
    for _ in range(points):
        pairs = {
            (int(random.integers(transducers)), transducers + int(random.integers(mounts))) for _ in range(ways_each)
        }
        needs.append(
            {
                "points": int(random.integers(1, 6)),
                "ways": [{"parts": list(pair), "beside": float(random.integers(0, 100))} for pair in sorted(pairs)],
            }
        )
    return {"types": types, "needs": needs}


def least(case):
    types, needs = case["types"], case["needs"]
    cost = [each["keeping"] for each in types]
    rows, columns, values, low, high = [], [], [], [], []
    row = 0
    for need in needs:
        first = len(cost)
        for way in need["ways"]:
            cost.append(need["points"] * (way["beside"] + sum(types[k]["price"] for k in way["parts"])))
        for k in sorted({k for way in need["ways"] for k in way["parts"]}):
            for index, way in enumerate(need["ways"]):
                if k in way["parts"]:
                    rows.append(row), columns.append(first + index), values.append(1.0)
            rows.append(row), columns.append(k), values.append(-1.0)
            low.append(-numpy.inf), high.append(0.0)
            row += 1
        for index in range(len(need["ways"])):
            rows.append(row), columns.append(first + index), values.append(1.0)
        low.append(1.0), high.append(1.0)
        row += 1
    matrix = coo_matrix((values, (rows, columns)), shape=(row, len(cost))).tocsr()
    found = milp(
        cost, constraints=LinearConstraint(matrix, low, high), bounds=Bounds(0, 1), integrality=numpy.ones(len(cost)),
        options={"mip_rel_gap": 0},
    )
    assert found.success, found.message
    return float(found.fun)


plants = [plant(*size) for size in ((12, 6, 3, 5, 300), (40, 12, 5, 8, 900), (80, 20, 6, 10, 2000), (150, 30, 6, 10, 4000))]
for each in plants:
    each["least"] = least(each)

result = {
    "versions": {"python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__},
    "spares": spares,
    "plants": plants,
}
pathlib.Path(__file__).with_suffix(".json").write_text(json.dumps(result) + "\n")
