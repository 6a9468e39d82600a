/** Skills held straight: sensing noise by number, who needs the range of the reflex, and how shares fall with the delay. */
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import {
  DEFAULT_BALANCE,
  flySkill,
  needsReflexRange,
  parseSkill,
  rangeBalance,
  shareOf,
  usualStudy,
  wordBalance,
} from '../../sim/index.ts';
import { distances } from '../../sim/search/sample.ts';
import { type StudyRequest, StudyRunner } from '../../sim/search/span.ts';
import { isWhole, someOf } from '../corpus.ts';
import { fileOf, launchedOf, presetIds, shelf } from '../skill/load.ts';

const specOf = (id: string) => parseSkill(fileOf(id), shelf);
const straight = usualStudy(specOf('former/back-straight'));
const balanced = (delay: number, seed = 1): StudyRequest => ({ ...straight, balance: rangeBalance(delay, seed) });
const runnerOf = (request: StudyRequest): StudyRunner => new StudyRunner(request);

describe('sensing noise', () => {
  it('of a sample is that of its number: spans are those of the whole, bit for bit', () => {
    const whole = runnerOf(balanced(0.15)).samples(0, 5).results;
    const other = runnerOf(balanced(0.15));
    const late = other.samples(3, 5).results;
    const early = other.samples(0, 3).results;
    expect([...early, ...late]).toEqual([...whole]);
  });

  it('changes what is flown, otherwise under another seed; none of it is none', () => {
    const { noise: _, ...quiet } = rangeBalance(0.15, 1);
    const still = { ...straight, balance: { ...quiet, noise: { twist: 0, rate: 0, seed: 1 } } };
    const results = [balanced(0.15), balanced(0.15, 2), { ...straight, balance: quiet }, still].map((request) => [
      ...runnerOf({ ...request, seed: 1 }).samples(0, 1).results,
    ]);
    expect(results[0]).not.toEqual(results[1]);
    expect(results[0]).not.toEqual(results[2]);
    expect(results[3]).toEqual(results[2]);
  });

  it('is not in the skill as it is, and is said', () => {
    expect(runnerOf(balanced(0.15)).now()).toEqual(runnerOf(balanced(0.15, 9)).now());
    expect(wordBalance(rangeBalance(0.15, 1))).toMatch(/delay 0\.15 s, sensing noise 2 deg of twist and 5 deg\/s/);
    expect(wordBalance(DEFAULT_BALANCE)).not.toMatch(/noise/);
  });
});

it('skills that fall into a twist they are not to have need the range; others do not', () => {
  const fallen = ['back-straight', 'double-back-straight'];
  const needs = [...new Set([...fallen, ...someOf(presetIds, 6)])].filter((id) => {
    const spec = specOf(id);
    return needsReflexRange(flySkill(launchedOf(spec)), usualStudy(spec, 1, contact));
  });
  expect(needs).toEqual(fallen);
});

it('the longer the delay the fewer land, and all more than the open loop', { timeout: 60_000 }, () => {
  const TRIES = 60;
  const share = (request: StudyRequest): number => {
    const runner = runnerOf(request);
    return shareOf(distances(runner.study.window, runner.samples(0, TRIES)), TRIES).share;
  };
  // measured with 200 tries: 0.10, 0.345, 0.23, 0.14
  const shares = (isWhole ? [0.1, 0.15, 0.2] : [0.1, 0.2]).map((delay) => share(balanced(delay)));
  if (isWhole) shares.push(share(straight));
  for (let i = 1; i < shares.length; i++) expect(shares[i - 1]).toBeGreaterThan(shares[i]);
});
