/** Unit, range and step of what is turned before and after the air. */
import type { QuantityKind } from '../../ui/units.ts';
import { contactTexts } from './words.ts';

export interface RowScale {
  readonly unit: string;
  readonly quantity?: QuantityKind;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly decimals: number;
}

const { units } = contactTexts;

const scale = (unit: string, [min, max]: readonly [number, number], step: number, decimals: number): RowScale => ({
  unit,
  min,
  max,
  step,
  decimals,
});

export const SCALES = {
  nudge: scale('°/s', [1, 60], 1, 0),
  release: scale('°', [-60, 150], 0.5, 1),
  moveDeg: scale('°', [-60, 220], 1, 0),
  moveAtDeg: scale('°', [-180, 180], 1, 0),
  moveAtS: scale('s', [0, 20], 0.01, 2),
  late: scale(units.ms, [-80, 80], 1, 0),
  lateFor: scale(units.ms, [0.5, 100], 0.1, 1),
  times: scale(units.times, [0.3, 3], 0.05, 2),
  alongBefore: { ...scale('m/s', [-9, 9], 0.1, 2), quantity: 'speed' },
  upBefore: { ...scale('m/s', [-10, 5], 0.1, 2), quantity: 'speed' },
  spinBefore: { ...scale('kg·m²/s', [-120, 120], 1, 1), quantity: 'momentum' },
  time: scale('s', [0.05, 0.6], 0.005, 3),
  weights: scale(units.bw, [0.2, 15], 0.05, 2),
  lean: scale('°', [-60, 60], 0.5, 1),
  ahead: { ...scale('m', [-1, 1], 0.01, 2), quantity: 'length' },
  free: { ...scale('kg·m²/s', [-12, 12], 0.1, 1), quantity: 'momentum' },
  apart: { ...scale('m', [-5, 5], 0.01, 2), quantity: 'length' },
  gap: { ...scale('m', [0.01, 0.1], 0.005, 3), quantity: 'length' },
  closing: { ...scale('m/s', [0.1, 10], 0.1, 1), quantity: 'speed' },
  knee: { ...scale('°', [0, 110], 1, 0), quantity: 'angle' },
  stiffness: scale(units.times, [0.2, 4], 0.05, 2),
  effort: scale('', [0.2, 1], 0.05, 2),
  eccentric: scale(units.times, [1, 2], 0.05, 2),
  delay: scale(units.ms, [0, 200], 5, 0),
} satisfies Record<string, RowScale>;
