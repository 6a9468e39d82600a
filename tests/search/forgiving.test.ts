/** The most forgiving answer: against a problem whose answer is known, and on a preset. */
import { describe, expect, it } from 'vitest';
import {
  Evaluator,
  type ForgivingProblem,
  findForgiving,
  findInput,
  findResult,
  forgivingSteps,
  makeUnknown,
  ownAim,
  parseSkill,
  shareOfTries,
} from '../../sim/index.ts';
import { casesOf } from '../corpus.ts';
import * as R from '../oracles/reference.ts';
import { fileOf, shelf } from '../skill/load.ts';
import { rigidSkill, takeoffWith } from './problems.ts';

describe('the widest margin', () => {
  // one somersault of a rigid body: h T = 2 pi A leaves one of the two free, and the margin says which is best
  const spec = rigidSkill(R.S1_DOWN, {
    takeoff: takeoffWith({ momentum: { kind: 'vector', h_Scm_W: [0, 0, 60] } }),
    end: { kind: 'duration', duration: 1.6 },
  });
  const BEST = 1.3; // s
  const problem: ForgivingProblem = {
    spec,
    wishes: [{ result: 'somersaults', value: 1, tolerance: 1e-3 }],
    unknowns: [makeUnknown(spec, 'takeoff.h.z', [20, 160]), makeUnknown(spec, 'end.duration', [0.6, 3])],
    answers: 2,
    fits: 3,
    draws: 6,
    margin: (at) => -Math.abs((at.end.kind === 'duration' ? at.end.duration : 0) - BEST),
  };
  /** s; measured 2e-4 after 60 moves */
  const FOUND = 5e-3;

  it('is found along the answers, with the target met all the way', () => {
    const { best, answer, kept, met } = findForgiving(problem, { rounds: 60 });
    const [h, T] = best?.values ?? [];
    expect(Math.abs(T - BEST)).toBeLessThan(FOUND);
    expect((h * T) / (2 * Math.PI * R.S1_DOWN.A)).toBeCloseTo(1, 3);
    expect(best?.cost.margin).toBeGreaterThan(answer.solutions[0].cost.margin ?? 0);
    expect(met).toBeGreaterThan(40);
    expect(kept).toBeGreaterThan(3);
  });

  it('is the same for the same seed, and another way with another', () => {
    const find = (seed: number) => findForgiving({ ...problem, seed }, { rounds: 8 });
    expect(find(3)).toEqual(find(3));
    expect(find(4).best?.values).not.toEqual(find(3).best?.values);
  });

  it('stops where it is asked to, with what it has', () => {
    const steps = forgivingSteps(problem, { rounds: 50 });
    let s = steps.next();
    while (!s.done) s = steps.next(s.value.round >= 2);
    expect(s.value.isComplete).toBe(false);
    expect(s.value.rounds).toBeLessThan(5);
    expect(s.value.best?.terms.every((t) => t.met)).toBe(true);
  });

  it('of a target that is not met is none', () => {
    const held = { ...problem, unknowns: [makeUnknown(spec, 'takeoff.h.z', [1, 2])] };
    const { best, answer, rounds } = findForgiving(held, { rounds: 5 });
    expect(best).toBeUndefined();
    expect(answer.nearest).toBeDefined();
    expect(rounds).toBe(0);
  });
});

it('a double twist: the moves never lose margin, and the answer is flown as it says', () => {
  const aim = ownAim(parseSkill(fileOf('back-straight-double'), shelf));
  const TRIES = casesOf(20, 6);
  const margin: ForgivingProblem['margin'] = (spec) => shareOfTries(spec, TRIES).share;
  const unknowns = ['takeoff.h.z', 'block:2.start', 'block:4.start'].map((id) => makeUnknown(aim.spec, id));
  const { best, answer } = findForgiving({ ...aim, unknowns, margin, answers: 1, fits: 2 }, { rounds: 2 });
  if (!best) throw new Error('no answer');
  expect(best.cost.margin).toBeGreaterThanOrEqual(answer.solutions[0].cost.margin ?? 1);
  expect(best.cost.margin).toBe(margin(best.spec));
  const outcome = new Evaluator(best.spec, []).outcomeAt([]);
  for (const { wish, value } of best.terms) expect(findResult(wish.result).get(outcome)).toBeCloseTo(value, 9);
  best.values.forEach((v, j) => {
    expect(findInput(best.spec, unknowns[j].input.id).value).toBeCloseTo(v, 9);
  });
});
