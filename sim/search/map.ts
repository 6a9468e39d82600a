/**
 * A map: two inputs against any results, on a grid of values. Row j holds one value of the second input; rows stand alone,
 * so they may be computed anywhere and drawn as they come.
 */
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, outside } from '../math/out-units.ts';
import type { BalanceSpec } from '../skill/balance.ts';
import type { Contact } from '../skill/contact-room.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { checkInput, type Input } from './input.ts';
import { distanceIn, type Window } from './margin-window.ts';
import type { Result } from './result.ts';
import { wordFault } from './sample.ts';
import { SampleFlyer } from './sample-fly.ts';

interface MapAxis {
  readonly input: Input;
  readonly from: number;
  readonly to: number;
  /** number of values, ends included */
  readonly count: number;
}

export interface MapSpec {
  readonly spec: SkillSpec;
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly results: readonly Result[];
  /** the window that each place is judged by; left out: not judged */
  readonly window?: Window;
  readonly balance?: BalanceSpec;
  /** where the skill has a swing or a known contact */
  readonly contact?: Contact | undefined;
}

export interface MapRow {
  readonly row: number;
  /** (results x columns), NaN where it cannot be flown */
  readonly values: Float64Array;
  /** distance from the middle of the window in half widths (columns); empty without a window */
  readonly distance: Float64Array;
  /** what stopped a flight, by column */
  readonly faults: Readonly<Record<number, string>>;
}

const MOST = 2000;
/** Built skills kept: rows and columns come back to the same keys. */
const KEPT = 256;

function checkMap({ x, y, results }: MapSpec): void {
  for (const [name, axis] of [
    ['x', x],
    ['y', y],
  ] as const) {
    checkInput(axis.input, axis.from, `${name}.${axis.input.id}`);
    checkInput(axis.input, axis.to, `${name}.${axis.input.id}`);
    if (axis.from === axis.to)
      throw new FieldError(
        `${name}.${axis.input.id}`,
        outside(axis.to, OUT_UNITS[axis.input.unit].scale),
        'an end that is not the start',
      );
    if (!(Number.isInteger(axis.count) && axis.count >= 2 && axis.count <= MOST))
      throw new FieldError(`${name}.count`, axis.count, `a whole number from 2 to ${MOST}`);
  }
  if (x.input.id === y.input.id) throw new FieldError('y', y.input.id, 'another input than that of x');
  if (results.length === 0) throw new FieldError('results', 'nothing', 'at least one result');
}

/** Value `i` of an axis, in SI and radians; the last is its end to the bit. */
export const axisValue = ({ from, to, count }: MapAxis, i: number): number =>
  i === count - 1 ? to : from + ((to - from) * i) / (count - 1);

export class Mapper {
  readonly map: MapSpec;
  readonly flyer: SampleFlyer;

  constructor(map: MapSpec) {
    checkMap(map);
    this.map = map;
    this.flyer = new SampleFlyer(map.spec, [map.x.input, map.y.input], { ...map, keeps: KEPT });
  }

  run(row: number): MapRow {
    const { x, y, results, window: bounds } = this.map;
    const n = x.count;
    const values = new Float64Array(results.length * n).fill(Number.NaN);
    const distance = new Float64Array(bounds ? n : 0).fill(Number.POSITIVE_INFINITY);
    const faults: Record<number, string> = {};
    const at = [0, axisValue(y, row)];
    for (let i = 0; i < n; i++) {
      at[0] = axisValue(x, i);
      try {
        const outcome = this.flyer.outcomeAt(at);
        results.forEach((r, k) => {
          values[k * n + i] = r.get(outcome);
        });
        if (bounds)
          distance[i] = distanceIn(
            bounds,
            bounds.map((b) => b.result.get(outcome)),
          ).distance;
      } catch (error) {
        faults[i] = wordFault(error);
      }
    }
    return { row, values, distance, faults };
  }
}
