import { GALLON_L, MMBTU_KWH, type UnitSystem } from '../../lib/units/format.ts';

const BTU_KWH = MMBTU_KWH / 1e6;
const CUBIC_FOOT_M3 = 0.028316846592;
const TON_T = 0.90718474;

/** A column of heating values: its head, what a printed figure is turned by, and its decimals. */
export interface HeatColumn {
  head: string;
  times: number;
  decimals: number;
}

/** Columns of gas, propane, oil and pellets; sources print Btu, so the US columns are their own figures. */
export const heatColumns = (u: UnitSystem): readonly [HeatColumn, HeatColumn, HeatColumn, HeatColumn] =>
  u === 'us'
    ? [
        { head: 'gas, Btu/ft³', times: 1, decimals: 0 },
        { head: 'propane, Btu/gal', times: 1, decimals: 0 },
        { head: 'No. 2 oil, Btu/gal', times: 1, decimals: 0 },
        { head: 'pellets, Btu/short ton', times: 1, decimals: 0 },
      ]
    : [
        { head: 'gas, kWh/m³', times: BTU_KWH / CUBIC_FOOT_M3, decimals: 3 },
        { head: 'propane, kWh/L', times: BTU_KWH / GALLON_L, decimals: 4 },
        { head: 'No. 2 oil, kWh/L', times: BTU_KWH / GALLON_L, decimals: 4 },
        { head: 'pellets, kWh/t', times: BTU_KWH / TON_T, decimals: 0 },
      ];

/** The unit that emission factors are told by, and what a printed kg a MMBtu is turned by. */
export const emissionUnit = (u: UnitSystem): { head: string; times: number } =>
  u === 'us' ? { head: 'kg CO₂ a MMBtu', times: 1 } : { head: 'kg CO₂ a MWh', times: 1000 / MMBTU_KWH };
