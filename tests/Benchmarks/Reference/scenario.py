"""The bare loop of a study in NumPy: savings by season, cumulated, discounted, the season of payback counted.

Argument: a folder with the problem as raw arrays. Each line read from standard input names a way, "options" or "products"; the problem is reckoned whole, its
results are written beside it, and the seconds it took are printed.
"""
import json
import os
import sys
import time

import numpy as np

TILE, MONTHS = 64, 12
folder = sys.argv[1]
with open(os.path.join(folder, "sizes.json"), encoding="utf-8") as file:
    sizes = json.load(file)
options, paths, seasons, winters = (sizes[name] for name in ("options", "paths", "seasons", "winters"))


def read(name, kind=np.float64):
    return np.fromfile(os.path.join(folder, name), kind)


# by option, winter and month; by path, season and month
load = read("load").reshape(options // TILE, winters, MONTHS, TILE).transpose(0, 3, 1, 2).reshape(options, winters, MONTHS).copy()
price = read("price").reshape(paths, seasons, MONTHS)
winter = read("winter", np.uint8).reshape(paths, seasons)
outlay, discount = read("outlay"), read("discount")


def settle(saving, cost):
    """Present value summed over the paths, and the paths that pay back in each season (0 = never), of one option."""
    cumulated = np.cumsum(saving, axis=1)
    paid = cumulated >= cost
    season = np.where(paid.any(axis=1), paid.argmax(axis=1) + 1, 0)
    return (saving @ discount).sum(), np.bincount(season, minlength=seasons + 1)


def by_option():
    """Option by option: the load of every path's winters, times the price, summed over the months."""
    for o in range(options):
        yield settle((load[o][winter] * price).sum(axis=2), outlay[o])


def by_products():
    """A tile of options at a time, a matrix product a winter."""
    cells = [np.flatnonzero(winter.ravel() == w) for w in range(winters)]
    flat = price.reshape(-1, MONTHS)
    prices = [flat[cell].T.copy() for cell in cells]
    for tile in range(0, options, TILE):
        saving = np.empty((TILE, paths * seasons))
        for w in range(winters):
            saving[:, cells[w]] = load[tile:tile + TILE, w] @ prices[w]
        for o in range(TILE):
            yield settle(saving[o].reshape(paths, seasons), outlay[tile + o])


for line in sys.stdin:
    start = time.perf_counter()
    found = list(by_option() if line.strip() == "options" else by_products())
    seconds = time.perf_counter() - start
    np.array([present for present, _ in found]).tofile(os.path.join(folder, "present"))
    np.array([counts for _, counts in found], dtype=np.int32).tofile(os.path.join(folder, "counts"))
    print(seconds, flush=True)
