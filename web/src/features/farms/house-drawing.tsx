import { useRef } from 'react';
import { useWidth } from '../../components/charts/use-width.ts';
import type { UnitSystem } from '../../lib/units/format.ts';
import { HousePlan } from './house-plan.tsx';
import { HouseSection } from './house-section.tsx';
import type { Point } from './outline.ts';

export interface DrawnHouse {
  ridgeM: number;
  sideWallM: number;
  overallWidthM: number;
  lengthM: number;
  curtainHeightM: number;
  filmGapM: number;
  roofFilms: number;
  bays: number;
  profile: readonly Point[];
}

export interface Losses {
  roofKwh: number;
  sideWallsKwh: number;
  endWallsKwh: number;
  perimeterKwh: number;
  airKwh: number;
  solarUsedKwh: number;
  demandKwh: number;
}

export interface DrawingProps {
  house: DrawnHouse;
  standing: Losses;
  chosen?: Losses | undefined;
  withFoam: boolean;
  withCurtain: boolean;
  units: UnitSystem;
}

/** Cross-section and plan to scale from the house's own dimensions, at one unit a pixel so that the figures stay readable on a phone. */
export function HouseDrawing(props: DrawingProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const { standing: s, house } = props;
  const narrow = width < 520;
  const margin = narrow ? 46 : 126;
  const scale = Math.min((width - 2 * margin) / house.overallWidthM, 300 / house.ridgeM);
  const most = Math.max(s.roofKwh, s.sideWallsKwh, s.endWallsKwh, s.airKwh, s.perimeterKwh, s.solarUsedKwh, 1);
  // one rule for all arrows of both pictures: so many pixels a kWh
  const perKwh = Math.min(110, Math.max(36, (house.overallWidthM * scale) / 5)) / most;
  return (
    <div ref={frame}>
      <HouseSection {...props} width={width} scale={scale} perKwh={perKwh} narrow={narrow} />
      <HousePlan {...props} width={width} sectionScale={scale} perKwh={perKwh} narrow={narrow} />
    </div>
  );
}
