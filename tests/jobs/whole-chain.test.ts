// The job of a whole skill: all legs on one ruler and in one frame, with what each contact and flight was.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { parseAthlete, type SkillFile } from '../../sim/index.ts';
import type { WholeProgress, WholeResult } from '../../src/jobs/kinds/whole-data.ts';
import { makePool } from '../../src/jobs/pool.ts';
import { boardTable, twoBounces } from '../chain/files.ts';
import { fileOf, shelf } from '../skill/load.ts';
import { startClonedPort } from './cloned-port.ts';

const pool = makePool(startClonedPort, { workers: 1 });
afterAll(() => pool.close());

async function askWhole(file: SkillFile): Promise<WholeResult> {
  const said: WholeProgress[] = [];
  const { athlete: a } = file;
  const athlete = 'ref' in a ? parseAthlete(athletes[a.ref]) : a;
  await pool.run('whole', { file, athlete, shapes: shelf.shapes }, { onProgress: (p) => void said.push(p) }).done;
  const [first] = said;
  if (first.kind !== 'whole') throw new Error('no whole');
  return first.result;
}

/** m that hands or feet may drift on their place through a contact, and the mass centre with them */
const JOINS = 0.05;

describe.each([
  ['board and table', boardTable, ['flight', 'contact', 'flight']],
  ['two bounces', twoBounces, ['flight', 'contact', 'flight']],
  ['one giant', () => fileOf('giant-double-straight'), ['swing', 'flight', 'landing']],
  ['one vault', () => fileOf('vault-handspring-half'), ['contact', 'flight']],
] as const)('%s', (_, make, kinds) => {
  let whole: WholeResult;
  beforeAll(async () => {
    whole = await askWhole(make());
  });

  test('its phases follow each other without a gap, from the first time to the last', () => {
    const { phases, from, to } = whole;
    expect(phases.slice(0, kinds.length).map(({ kind }) => kind)).toEqual(kinds);
    expect(phases[0].from).toBeCloseTo(from, 12);
    expect(phases[phases.length - 1].to).toBeCloseTo(to, 12);
    phases.slice(1).forEach((phase, i) => {
      expect(phase.from).toBeCloseTo(phases[i].to, 12);
    });
  });

  test('its rows ascend through all of them, and each is of the phase that its time is in', () => {
    const { t, phase } = whole.columns;
    for (let i = 0; i < t.length; i++) {
      if (i > 0) expect(t[i]).toBeGreaterThanOrEqual(t[i - 1]);
      const { from, to } = whole.phases[phase[i]];
      expect(t[i]).toBeGreaterThan(from - 1e-9);
      expect(t[i]).toBeLessThan(to + 1e-9);
    }
    expect(new Set(phase).size).toBe(whole.phases.length);
  });

  test('no force acts in the air, and the mass centre goes on where a leg hands over', () => {
    const { t, phase, weights } = whole.columns;
    for (let i = 0; i < t.length; i++) if (whole.phases[phase[i]].kind === 'flight') expect(weights[i]).toBe(0);
    const { poses } = whole;
    for (let i = 1; i < poses.t.length; i++) {
      if (poses.t[i] - poses.t[i - 1] > 1e-9) continue;
      const step = [0, 1, 2].map((k) => poses.p_WScm_W[3 * i + k] - poses.p_WScm_W[3 * (i - 1) + k]);
      expect(Math.hypot(...step)).toBeLessThan(JOINS);
    }
  });

  test('each contact has its card, each leg its flight, and only the last an end', () => {
    for (const span of whole.phases)
      if (span.kind === 'contact') {
        const { contact } = whole.legs[span.leg];
        expect(contact?.on).toBe(span.on);
        expect(contact?.time).toBeCloseTo(span.to - span.from, 12);
        expect(contact?.course?.entry).toBe(span.leg > 0 ? 'flight' : 'assumed');
      }
    whole.legs.forEach((leg, k) => {
      expect(leg.end !== undefined).toBe(k === whole.legs.length - 1);
      expect(leg.facing * leg.flight.leaves[0]).toBeCloseTo(leg.vx, 12);
    });
  });
});
