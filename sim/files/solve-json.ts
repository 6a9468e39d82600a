/** The answer to a target as JSON: degrees and revolutions, names with their unit, null for what is not defined. */

import type { Body } from '../body/body.ts';
import { DEG } from '../math/angles.ts';
import { jsonText } from '../math/json-text.ts';
import { OUT_UNITS } from '../math/out-units.ts';
import type { JointShare } from '../measure/joint-peaks.ts';
import type { Obstacle } from '../search/nearest-miss.ts';
import type { ResultUnit } from '../search/result.ts';
import type { SearchProblem, Solution, Term } from '../search/solution.ts';
import type { Answer } from '../search/solve.ts';
import { linesOf } from './beyond-json.ts';
import { CAUTION, COMPARED } from './caution.ts';
import type { Provenance } from './provenance.ts';
import { verdictJson } from './verdict-json.ts';

const number = (x: number): number | null => (Number.isFinite(x) ? x : null);

/** How the margins of a solve were made, and anything said about a search for the widest. */
interface MarginMade {
  /** flights with the usual errors; 0: no margins */
  readonly tries: number;
  /** the reflex in words */
  readonly balance: string;
  readonly forgiving?: object;
}

/** `unitOf`: unit of a result by its id. */
export function formatAnswerJson(
  problem: SearchProblem,
  answer: Answer,
  body: Body,
  unitOf: (result: string) => ResultUnit,
  provenance: Provenance,
  margin?: MarginMade,
): string {
  const { nearest } = answer;
  const out = {
    format: 'shapeflight-solve',
    version: 1,
    provenance,
    title: problem.spec.title,
    seed: answer.seed,
    fits: answer.fits,
    flights: answer.flights,
    starts: { drawn: answer.draws, notFlown: answer.unflown },
    notKept: answer.notKept,
    touching: answer.touching,
    complete: answer.isComplete,
    ...(margin && margin.tries > 0 ? { margin } : {}),
    vary: problem.unknowns.map(({ input, from, to, fromSource, toSource }) => {
      const { suffix, scale } = OUT_UNITS[input.unit];
      return { input: input.id, unit: suffix, from: from * scale, to: to * scale, fromSource, toSource };
    }),
    solutions: answer.solutions.map((s) => solutionOf(problem, s, body, unitOf)),
    nearest: nearest
      ? {
          ...solutionOf(problem, nearest, body, unitOf),
          obstacles: nearest.obstacles.map((o) => obstacleOf(o, unitOf, problem.spec.catch ? 'caught' : 'held')),
        }
      : null,
    caution: CAUTION,
    compared: COMPARED,
  };
  return `${jsonText(out)}\n`;
}

function solutionOf({ unknowns }: SearchProblem, s: Solution, body: Body, unitOf: (id: string) => ResultUnit): object {
  return {
    values: Object.fromEntries(
      unknowns.map(({ input }, j) => {
        const { suffix, scale } = OUT_UNITS[input.unit];
        return [`${input.id}_${suffix}`, s.values[j] * scale];
      }),
    ),
    met: s.off <= 1,
    ...(s.held === undefined ? {} : { held: s.held }),
    terms: s.terms.map((t) => termOf(t, unitOf)),
    broken: s.broken,
    verdict: verdictJson(s.verdict),
    cost: {
      momentumKgM2PerS: s.cost.momentum,
      peakSpeed: s.cost.speed ? jointOf(s.cost.speed, body) : null,
      peakTorque: s.cost.torque ? jointOf(s.cost.torque, body) : null,
      margin: s.cost.margin ?? null,
      ...(s.cost.marginFault === undefined ? {} : { marginFault: s.cost.marginFault }),
      ...(s.cost.notCompared ? { notCompared: linesOf(s.cost.notCompared) } : {}),
      cautions: s.cost.cautions.map((c) => ({
        kind: c.kind,
        angle: body.angles[c.angle].name,
        atS: c.t,
        ...(c.kind === 'range'
          ? { valueDeg: c.value * OUT_UNITS.rad.scale, limitDeg: c.limit * OUT_UNITS.rad.scale }
          : c.kind === 'speed'
            ? { valueDegPerS: c.value * DEG, knownDegPerS: c.limit * DEG }
            : { valueNm: c.value, knownNm: c.limit }),
        source: c.source,
      })),
    },
  };
}

function termOf({ wish, value, met }: Term, unitOf: (id: string) => ResultUnit): object {
  const { suffix, scale } = OUT_UNITS[unitOf(wish.result)];
  return {
    result: wish.result,
    unit: suffix,
    wanted: wish.value * scale,
    within: wish.tolerance * scale,
    reached: number(value * scale),
    met,
  };
}

/** The limit is where a caution begins. */
const jointOf = (peak: JointShare, body: Body): object => ({
  angle: body.angles[peak.angle].name,
  atS: peak.t,
  ...(peak.kind === 'speed'
    ? { valueDegPerS: peak.value * DEG, knownDegPerS: peak.known * DEG }
    : { valueNm: peak.value, knownNm: peak.known }),
  shareOfLimit: peak.share,
  source: peak.source,
});

function obstacleOf(o: Obstacle, unitOf: (id: string) => ResultUnit, wanted: 'held' | 'caught'): object {
  if (o.kind === 'wish') return { kind: 'wish', ...termOf(o.term, unitOf), missInTolerances: o.off };
  if (o.kind === 'limit') return { kind: 'limit', limit: o.limit };
  if (o.kind === 'ending') return { kind: 'ending', wanted };
  if (o.kind === 'touch') return { kind: 'touch', solid: o.solid };
  const { suffix, scale } = OUT_UNITS[o.unknown.input.unit];
  return {
    kind: 'bound',
    input: o.unknown.input.id,
    side: o.side,
    value: o.value * scale,
    unit: suffix,
    source: o.source,
  };
}
