"""The reference of the bench: the same plant as a mixed-integer problem of the strong form, given to scipy's HiGHS."""
import json
import sys
import time

import numpy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix

with open(sys.argv[1]) as file:
    plant = json.load(file)

began = time.perf_counter()
types = plant["types"]
cost = [each["keeping"] for each in types]
rows, columns, values, low, high = [], [], [], [], []
row = 0
for need in plant["requirements"]:
    pieces = len(need["points"])
    first = len(cost)
    for index, way in enumerate(need["ways"]):
        (k,) = way["parts"]
        cost.append(pieces * (way["beside"] + types[k]["price"]))
        rows += [row, row]
        columns += [first + index, k]
        values += [1.0, -1.0]
        low.append(-numpy.inf)
        high.append(0.0)
        row += 1
    count = len(need["ways"])
    rows += [row] * count
    columns += range(first, first + count)
    values += [1.0] * count
    low.append(1.0)
    high.append(1.0)
    row += 1
matrix = coo_matrix((values, (rows, columns)), shape=(row, len(cost))).tocsr()
integral = numpy.zeros(len(cost))
integral[: len(types)] = 1
found = milp(
    cost,
    constraints=LinearConstraint(matrix, low, high),
    bounds=Bounds(0, 1),
    integrality=integral,
    options={"time_limit": plant["seconds"], "mip_rel_gap": 0},
)
seconds = time.perf_counter() - began
print(
    json.dumps(
        {
            "seconds": seconds,
            "proven": bool(found.status == 0),
            "cost": None if found.x is None else float(found.fun),
            "gap": None if found.x is None else float(found.mip_gap),
        }
    )
)
