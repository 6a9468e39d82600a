/** The command "fix": cues that land a skill, written as a skill that flies so; what has nothing to fix, and bad input. */
import { rmSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import type { SkillFile } from '../../sim/index.ts';
import { isWhole } from '../corpus.ts';
import { fileOf } from '../skill/load.ts';
import { makeFolder, run } from './run.ts';

/** Its tuck held far too long. */
const past = structuredClone(fileOf('back-tuck')) as SkillFile;
const [flight] = past.phases;
if (flight.kind !== 'flight' || !flight.takeoff?.momentum || !('straightSomersaults' in flight.takeoff.momentum))
  throw new Error('back-tuck states its rotation in straight somersaults');
Object.assign(flight.takeoff.momentum, {
  straightSomersaults: flight.takeoff.momentum.straightSomersaults * 1.08,
});
const { folder, at } = makeFolder({
  'past.json': past,
  'aimless.json': { ...structuredClone(past), target: undefined },
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('fix', () => {
  it('says a cue and what it would come to, and writes the skill that comes to it', async () => {
    const said = await run('fix', at('past.json'), '--out', at('fixed.json'));
    expect(said.err).toBe('');
    expect(said.code).toBe(0);
    const [, cue, then] = /\n1 {2}(.+)\n {3}then: (.+)\n/.exec(said.out) ?? [];
    expect(cue).toMatch(/0\.\d\d s|\d+ deg|\d+ %/);
    expect(said.out).toMatch(/not coaching advice/);
    expect((await run('fly', at('fixed.json'))).out).toContain(then);
    expect((await run('fix', at('fixed.json'))).out).toContain('lands already; nothing is written');
  });

  it('refuses a way that there is not', async () => {
    // how many there are is another search
    if (isWhole) {
      const none = await run('fix', at('past.json'), '--way', '9');
      expect(none.code).toBe(2);
      expect(none.err).toMatch(/allowed: 1 to [1-4]$/m);
    }
    expect((await run('fix', at('past.json'), '--way', 'two')).err).toContain('allowed: 1 to 9');
  });

  it('needs a target', async () => {
    const said = await run('fix', at('aimless.json'));
    expect(said.code).toBe(2);
    expect(said.err).toContain('states no target');
  });
});
