"""Where the sun stands by the library ephem: lines "time latitude longitude" in, "bearing elevation refracted" out, in degrees."""
import math
import sys

import ephem

UNIX_EPOCH = ephem.Date("1970/1/1 00:00:00")

for line in sys.stdin:
    time, latitude, longitude = line.split()
    angles = []
    for pressure in (0, 1010):
        here = ephem.Observer()
        here.lat, here.lon = latitude, longitude
        here.pressure, here.temp = pressure, 10
        here.date = UNIX_EPOCH + float(time) / 86400
        sun = ephem.Sun(here)
        angles.append((math.degrees(sun.az), math.degrees(sun.alt)))
    print(repr(angles[0][0]), repr(angles[0][1]), repr(angles[1][1]))
