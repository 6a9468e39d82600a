/**
 * How far inputs are off in life: one standard deviation (or half a range) for each, and which go together. From it,
 * numbered samples: sample i of a seed is the same wherever and in whatever order it is drawn.
 *
 * Correlation is that of the underlying normal numbers (a Gaussian copula; with uniform inputs the correlation of the
 * inputs themselves is a little smaller). SI, radians.
 */
import { factor } from '../math/cholesky.ts';
import { FieldError } from '../math/field-error.ts';
import { normalCdf, normalQuantile } from '../math/normal.ts';
import { OUT_UNITS, outside } from '../math/out-units.ts';
import { uniformsInto } from '../math/random.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { type Correlation, usualTogether } from './error-together.ts';
import { checkInput, type Input } from './input.ts';
import { listInputs } from './inputs.ts';
import { checkErrors, type ErrorSetting, isUsual, USUAL_ERRORS, usualBy } from './usual-error.ts';

export interface SpreadPart {
  readonly input: Input;
  /** standard deviation of a normal spread, or half the width of a uniform one */
  readonly by: number;
  readonly kind: 'normal' | 'uniform';
}
export interface Spread {
  readonly parts: readonly SpreadPart[];
  readonly correlations: readonly Correlation[];
}

/** Take-off and timing of the skill as it is usually off. */
export function usualSpread(spec: SkillSpec, errors: ErrorSetting = USUAL_ERRORS): Spread {
  checkErrors(errors);
  const inputs = listInputs(spec).filter(isUsual);
  return makeSpread(
    inputs.map((input) => ({ input, by: usualBy(input, errors), kind: 'normal' })),
    usualTogether(inputs.map(({ id }) => id)),
  );
}

/** Checks; correlations that name an input which does not vary fall away. */
export function makeSpread(parts: readonly SpreadPart[], correlations: readonly Correlation[]): Spread {
  const ids = parts.map((p) => p.input.id);
  parts.forEach(({ input, by }, i) => {
    checkInput(input, input.value);
    if (!(by > 0 && Number.isFinite(by)))
      throw new FieldError(`vary.${input.id}`, outside(by, OUT_UNITS[input.unit].scale), 'a number above 0');
    if (ids.indexOf(input.id) !== i) throw new FieldError('vary', input.id, 'each input once');
  });
  const kept = correlations.filter((c) => ids.includes(c.a) && ids.includes(c.b));
  for (const { a, b, r } of kept) {
    if (a === b) throw new FieldError('correlate', a, 'two different inputs');
    if (!(Math.abs(r) <= 1)) throw new FieldError(`correlate.${a}.${b}`, r, '-1 to 1');
  }
  factorOf(ids, kept);
  return { parts, correlations: kept };
}

/**
 * What an input can take in a study. A move that starts late runs into the shape after it, which is then left at once; so
 * moves are free where a skill's own keys would be out of order.
 */
export function studyRange({ id, range }: Input): readonly [number, number] {
  if (id.endsWith('.moveStart')) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return id.endsWith('.moveTime') ? [range[0], Number.POSITIVE_INFINITY] : range;
}

function factorOf(ids: readonly string[], correlations: readonly Correlation[]): number[][] {
  const R: number[][] = ids.map((_, i) => ids.map((__, j) => (i === j ? 1 : 0)));
  for (const { a, b, r } of correlations) {
    R[ids.indexOf(a)][ids.indexOf(b)] = r;
    R[ids.indexOf(b)][ids.indexOf(a)] = r;
  }
  const L = factor(R);
  if (L.some((row) => row.some(Number.isNaN)))
    throw new FieldError(
      'correlate',
      correlations.map((c) => `${c.a} ${c.b} ${c.r}`).join(', '),
      'correlations that can hold together (a matrix without negative eigenvalues)',
    );
  return L;
}

/** Draws samples by number. */
export class Draw {
  readonly n: number;
  private readonly spread: Spread;
  private readonly L: readonly (readonly number[])[];
  private readonly u: Float64Array;
  private readonly z: Float64Array;
  private readonly seed: number;

  constructor(spread: Spread, seed: number) {
    if (!(Number.isSafeInteger(seed) && seed >= 0))
      throw new FieldError('seed', seed, 'a whole number from 0 to 9007199254740991');
    this.spread = spread;
    this.seed = seed;
    this.n = spread.parts.length;
    this.L = factorOf(
      spread.parts.map((p) => p.input.id),
      spread.correlations,
    );
    this.u = new Float64Array(this.n);
    this.z = new Float64Array(this.n);
  }

  /** How far off each input is, in units of its `by`: for sample `index`, counted from 0. */
  offsetsInto(index: number, out: Float64Array): void {
    const { u, z, L } = this;
    uniformsInto(this.seed, index, u);
    for (let i = 0; i < this.n; i++) z[i] = normalQuantile(u[i]);
    for (let i = 0; i < this.n; i++) {
      let sum = 0;
      for (let k = 0; k <= i; k++) sum += L[i][k] * z[k];
      out[i] = this.spread.parts[i].kind === 'normal' ? sum : 2 * normalCdf(sum) - 1;
    }
  }

  /** Values of the inputs; held inside the range of each. */
  valuesInto(index: number, out: Float64Array): void {
    this.offsetsInto(index, out);
    this.spread.parts.forEach(({ input, by }, i) => {
      const [low, high] = studyRange(input);
      out[i] = Math.max(low, Math.min(high, input.value + by * out[i]));
    });
  }
}
