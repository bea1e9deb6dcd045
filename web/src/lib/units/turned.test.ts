import { expect, it } from 'vitest';
import { turnedDegrees, turnedFiring, turnedFuel, turnedHeat, turnedLength, turnedPerArea, turnedPower, turnedPrice } from './turned.ts';

// factors: foot 0.3048 m, US gallon 3.785411784 L (NIST Special Publication 811, appendix B), million Btu 293.0711 kWh
it.each([
  ['30 ft', turnedLength('30', 'us', 'si'), '9.144'],
  ['9.144 m', turnedLength('9.144', 'si', 'us'), '30'],
  ['60 F', turnedDegrees('60', 'us', 'si'), '15.56'],
  ['20 C', turnedDegrees('20', 'si', 'us'), '68'],
  ['300,000 Btu/h', turnedPower('300,000', 'us', 'si'), '87.92'],
  ['100 kW', turnedPower('100', 'si', 'us'), '341214'],
  ['250 kBtu/h', turnedFiring('250', 'us', 'si'), '73.27'],
  ['100 MMBtu', turnedHeat('100', 'us', 'si'), '29.307'],
  ['$10 a ft²', turnedPerArea('10', 'us', 'si'), '107.639'],
  ['4,120 gal', turnedFuel('4,120', 'gal', 'L'), '15595.9'],
  ['1000 L', turnedFuel('1000', 'L', 'gal'), '264.2'],
  ['100 therm', turnedFuel('100', 'therm', 'kWh'), '2930.7'],
  ['2930.7 kWh', turnedFuel('2930.7', 'kWh', 'therm'), '100'],
  ['$2.35 a gal', turnedPrice('2.35', 'gal', 'L'), '0.6208'],
  ['units that do not stand for each other', turnedFuel('5', 'gal', 'kWh'), '5'],
  ['nothing', turnedLength('', 'us', 'si'), ''],
  ['no number', turnedLength('thirty', 'us', 'si'), 'thirty'],
])('turns %s', (_, is, should) => expect(is).toBe(should));
