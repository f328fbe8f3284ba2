"""Checksums of the unscrambled Sobol' sequence, from an independent implementation.

    python3 tests/published/sobol_sums.py > tests/published/sobol_sums.txt

Needs scipy. For each of 48 dimensions: the sum over the first 4,096 points of (i + 1) times the point as a
32-bit integer, where i is the place of the point in scipy's order (Gray code).
"""

import numpy as np
import scipy
from scipy.stats import qmc

points = qmc.Sobol(48, scramble=False, bits=32).random_base2(12)
whole = (points * 2**32).astype(np.uint64)
places = np.arange(1, 4097, dtype=np.uint64)
print(f"# Written by sobol_sums.py with scipy {scipy.__version__}: one weighted sum for each dimension.")
for dimension in range(48):
    print((places * whole[:, dimension]).sum())
