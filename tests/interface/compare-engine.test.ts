// Versions in the page: one thing done another way flies as its file does, what is held equal is, the first is the base.

import { describe, expect, it } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import { checkSkillFile, wordVerdict } from '../../sim/index.ts';
import { makeComparing } from '../../src/engine/compare.ts';
import { makeLandings } from '../../src/engine/landings.ts';
import type { Pool } from '../../src/jobs/pool.ts';
import { flightIn } from '../files/parts.ts';
import { readyEngine } from './ready-engine.ts';

/** s and revolutions, of a flight from a file of degrees against the same from radians */
const SAME = 1e-6;

const engine = await readyEngine();
/** A worker that answers with one landing, and counts what it is asked. */
let asked = 0;
const judged = { ending: { kind: 'landed', how: 'hop', direction: 'back', t: 0.4 }, basis: 'landingModel' } as const;
/** What came nearest to a rail or board, as the worker has it of the last leg. */
const nearest: unknown[] = [];
const pool = {
  run: (_job: string, _subject: unknown, { onProgress }: { onProgress: (step: unknown) => void }) => {
    asked++;
    const legs = [{ nearest: nearest[0], judged }];
    return { done: Promise.resolve().then(() => onProgress({ kind: 'whole', result: { legs } })) };
  },
} as unknown as Pool;
const comparing = makeComparing(engine, shapes, makeLandings(shapes, pool));
const title = 'A skill with a name that is longer than the forty letters of a word';

describe('the verdict on a version', () => {
  const endings = async (id: string, isOwn: boolean): Promise<string[]> => {
    const said: string[] = [];
    const result = engine.fly(skills[id]);
    for (let i = 0; i < 2; i++) {
      comparing.judge(result, isOwn, ({ ending }) =>
        said.push(ending.kind === 'notComputed' ? ending.why.kind : ending.kind),
      );
      await new Promise((done) => setTimeout(done));
    }
    return said;
  };
  it('waits for its landing, which is run once', async () => {
    asked = 0;
    expect(await endings('floor-double-tuck', true)).toEqual(['pending', 'landed', 'landed']);
    expect(asked).toBe(1);
  });
  it('says what comes near board or rail where nothing is landed on, as the headline does', async () => {
    asked = 0;
    nearest.push({ solid: 'board', part: 'feet', distance: 0.04, t: 0.5 });
    const result = engine.fly(skills['dive-forward-one-and-half-pike']);
    const said: string[] = [];
    comparing.judge(result, true, (verdict) => said.push(wordVerdict(verdict)));
    await new Promise((done) => setTimeout(done));
    nearest.pop();
    expect(asked).toBe(1);
    expect(said[1]).toMatch(/^Feet pass 4 cm from the board\. .*: enters head first/);
    expect(said[0]).toMatch(/: enters head first/);
  });
  it('without a landing, or with a take-off that no file holds, waits for nothing', async () => {
    asked = 0;
    expect(await endings('back-tuck', true)).toEqual(['touches', 'touches']);
    expect(await endings('floor-double-tuck', false)).toEqual(['heldEqual', 'heldEqual']);
    expect(asked).toBe(0);
  });
});

describe('one thing done another way', () => {
  for (const id of ['back-straight-full', 'back-tuck', 'arms-in-spin', 'dive-forward-one-and-half-pike'])
    it(`${id}: the file flies as it is shown, and is a file that opens; the skill's own stays`, () => {
      const result = engine.fly(skills[id]);
      const before = JSON.stringify(result.file);
      const offers = comparing.offers(result);
      expect(offers.length).toBeGreaterThan(0);
      for (const change of offers) {
        const other = comparing.flyChange(result, change, title);
        const flown = engine.fly(checkSkillFile(JSON.parse(JSON.stringify(other.file))));
        expect(Math.abs(flown.flight.duration - other.flight.duration)).toBeLessThan(SAME);
        expect(Math.abs((flown.outline.twists ?? 0) - (other.outline.twists ?? 0))).toBeLessThan(SAME);
        expect(Math.abs((flown.outline.somersaults ?? 0) - (other.outline.somersaults ?? 0))).toBeLessThan(SAME);
        expect(flown.file.title).toBe(title);
        expect(flown.file.athlete).toEqual(result.file.athlete);
        expect(comparing.answerChange(change, result, other).kind).not.toBe('notDefined');
      }
      expect(JSON.stringify(result.file)).toBe(before);
    });
});

describe('versions', () => {
  const a = engine.fly(skills['back-straight-full']);
  const b = engine.fly(skills['back-straight-half']);

  it('own is the flight itself; held equal is another with the same number, by the table', () => {
    expect(comparing.hold(a, b, 'own')).toBe(b);
    const row = (held: 'own' | 'momentum' | 'energy', key: string) =>
      comparing.compare([a, comparing.hold(a, b, held)], 'takeoff').find((r) => r.key === key);
    expect(row('own', 'momentum')?.words[1]).not.toBe('same');
    expect(row('momentum', 'momentum')?.words[1]).toBe('same');
    expect(row('energy', 'takeoffEnergy')?.words[1]).toBe('same');
    expect(comparing.hold(a, b, 'momentum').file).toBe(b.file);
  });

  it('differences are from the first, whichever that is', () => {
    const one = comparing.compare([a, b], 'touchdown');
    const two = comparing.compare([b, a], 'touchdown');
    one.forEach((r, i) => {
      const [x, y] = [r.differences[1], two[i].differences[1]];
      if (x !== undefined && y !== undefined) expect(x + y).toBeCloseTo(0, 12);
    });
  });

  it('changes since a version are put into words, none against itself', () => {
    expect(comparing.changes(a.file, a.file)).toEqual([]);
    const later = structuredClone(a.file);
    flightIn(later).takeoff.velocityMPerS.up += 0.2;
    expect(comparing.changes(a.file, later).map((c) => c.field)).toEqual(['phases[0].takeoff.velocityMPerS.up']);
  });
});
