/**
 * A numbered study: sample i of a seed is one skill with its inputs off as the spread says, flown and read. Samples stand
 * alone, so a span of them can be computed anywhere; tables of spans put end to end are the table of the whole.
 */
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, outside } from '../math/out-units.ts';
import { uniformsInto } from '../math/random.ts';
import type { BalanceSpec } from '../skill/balance.ts';
import type { Contact } from '../skill/contact-room.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { checkWindow, distanceIn, type Window } from './margin-window.ts';
import { SampleFlyer } from './sample-fly.ts';
import { Draw, type Spread } from './sample-spread.ts';

export interface Study {
  readonly spec: SkillSpec;
  readonly spread: Spread;
  readonly window: Window;
  readonly seed: number;
  readonly balance?: BalanceSpec;
  /** where the skill has a swing or a known contact */
  readonly contact?: Contact | undefined;
}

/** Samples from `from` on, row by row; results in the order of the window, NaN where the sample could not be flown. */
export interface SampleTable {
  readonly from: number;
  readonly n: number;
  readonly values: Float64Array; // (n x inputs)
  readonly results: Float64Array; // (n x window)
  /** what stopped a flight, for the samples that have it */
  readonly faults: Readonly<Record<number, string>>;
}

export class Sampler {
  readonly study: Study;
  readonly flyer: SampleFlyer;
  private readonly draw: Draw;

  constructor(study: Study) {
    checkWindow(study.window);
    this.study = study;
    this.draw = new Draw(study.spread, study.seed);
    this.flyer = new SampleFlyer(
      study.spec,
      study.spread.parts.map((p) => p.input),
      study,
    );
  }

  /** Samples `from` up to, not including, `to`; counted from 0. */
  run(from: number, to: number): SampleTable {
    checkSpan(from, to);
    const { window: bounds } = this.study;
    const width = this.draw.n;
    const n = to - from;
    const values = new Float64Array(n * width);
    const results = new Float64Array(n * bounds.length).fill(Number.NaN);
    const faults: Record<number, string> = {};
    for (let i = 0; i < n; i++) {
      const row = values.subarray(width * i, width * (i + 1));
      this.draw.valuesInto(from + i, row);
      try {
        const outcome = this.flyer.outcomeAt(row, from + i);
        for (let k = 0; k < bounds.length; k++) results[bounds.length * i + k] = bounds[k].result.get(outcome);
      } catch (error) {
        faults[from + i] = wordFault(error);
      }
    }
    return { from, n, values, results, faults };
  }
}

/** What a variant cannot be flown for; a fault of ours goes on. */
export function wordFault(error: unknown): string {
  if (error instanceof Error && error.constructor !== TypeError && error.constructor !== ReferenceError)
    return error.message;
  throw error;
}

function checkSpan(from: number, to: number): void {
  const whole = (x: number): boolean => Number.isSafeInteger(x) && x >= 0;
  if (!whole(from) || !whole(to) || from > to)
    throw new FieldError('span', `${from} to ${to}`, 'two whole numbers from 0 on, the first not above the second');
}

/** Spans that follow each other, as one table. */
export function joinTables(tables: readonly SampleTable[]): SampleTable {
  const sorted = [...tables].sort((a, b) => a.from - b.from);
  const n = sorted.reduce((sum, t) => sum + t.n, 0);
  const join = (pick: (t: SampleTable) => Float64Array): Float64Array => {
    const out = new Float64Array(sorted.reduce((sum, t) => sum + pick(t).length, 0));
    let at = 0;
    for (const t of sorted) {
      out.set(pick(t), at);
      at += pick(t).length;
    }
    return out;
  };
  let next = sorted[0]?.from ?? 0;
  for (const t of sorted) {
    if (t.from !== next) throw new FieldError('span', `${t.from}`, `${next}: spans follow each other without gaps`);
    next += t.n;
  }
  return {
    from: sorted[0]?.from ?? 0,
    n,
    values: join((t) => t.values),
    results: join((t) => t.results),
    faults: Object.assign({}, ...sorted.map((t) => t.faults)),
  };
}

/** How far a number may be from the one drawn: machines differ in the last digits of sines and logarithms. */
const DRAWN = 1e-9;

/** Refuses samples that are not those of this study: of another skill, another seed, other errors. */
export function checkDrawn({ spread, seed }: Study, { from, n, values }: SampleTable): void {
  const draw = new Draw(spread, seed);
  const own = new Float64Array(draw.n);
  for (let i = 0; i < n; i++) {
    draw.valuesInto(from + i, own);
    spread.parts.forEach(({ input, by }, j) => {
      const reported = values[draw.n * i + j];
      if (!(Math.abs(reported - own[j]) <= DRAWN * (Math.abs(own[j]) + by)))
        throw new FieldError(
          `sample ${from + i} ${input.id}`,
          outside(reported, OUT_UNITS[input.unit].scale),
          `${outside(own[j], OUT_UNITS[input.unit].scale)}, which this skill, seed ${seed} and these errors give`,
        );
    });
  }
}

/**
 * Numbers of `count` samples: the first, the last, and others that depend on what all rows say, so that a row changed
 * afterwards changes which ones are looked at.
 */
export function pickSamples({ from, n, results }: SampleTable, seed: number, count: number): number[] {
  if (count >= n) return Array.from({ length: n }, (_, i) => from + i);
  let hash = seed >>> 0;
  for (const x of new Uint32Array(results.slice().buffer)) hash = Math.imul(hash ^ x, 0x01000193) >>> 0;
  const picked = new Set([0, n - 1]);
  const u = new Float64Array(1);
  for (let i = 0; picked.size < count; i++) {
    uniformsInto(hash, i, u);
    picked.add(Math.min(n - 1, Math.floor(u[0] * n)));
  }
  return [...picked].sort((a, b) => a - b).map((i) => from + i);
}

/** Angles (rad), turns and times of one sample flown twice are nearer than this on any machine; measured 0 on one. */
const FLOWN = 1e-6;

/** Refuses samples that do not come out as these, flown again, do: of another skill, or with another reflex. */
export function checkFlown({ window: bounds }: Study, reported: SampleTable, again: SampleTable): void {
  const m = bounds.length;
  for (let i = 0; i < again.n; i++)
    bounds.forEach(({ result }, k) => {
      const was = reported.results[m * (again.from + i - reported.from) + k];
      const is = again.results[m * i + k];
      const same = Number.isNaN(is) ? Number.isNaN(was) : Math.abs(was - is) <= FLOWN;
      if (!same)
        throw new FieldError(
          `sample ${again.from + i} ${result.id}`,
          outside(was, OUT_UNITS[result.unit].scale),
          `${outside(is, OUT_UNITS[result.unit].scale)}, which this skill (with --balance as it is given) comes to`,
        );
    });
}

/** Distance of each sample from the middle of the window, in half widths. */
export function distances(bounds: Window, table: SampleTable): Float64Array {
  const out = new Float64Array(table.n);
  const m = bounds.length;
  for (let i = 0; i < table.n; i++) out[i] = distanceIn(bounds, table.results.subarray(m * i, m * (i + 1))).distance;
  return out;
}
