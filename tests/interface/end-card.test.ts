// The card of what ends a skill: what it is called, and what it says of forces whose ending is not judged.
import { expect, test } from 'vitest';
import type { SkillVerdict } from '../../sim/index.ts';
import { cardsOf } from '../../src/features/air/card-model.ts';
import type { WholeResult } from '../../src/jobs/kinds/whole-data.ts';

const verdict = (ending: SkillVerdict['ending']): SkillVerdict =>
  ({ ending, flown: {}, missed: [], basis: 'none' }) as never;
/** One leg that ends; only what the card reads. */
const cardOf = (end: string, ending: SkillVerdict['ending'], how?: string) => {
  const report = { filteredPeak: { bodyWeights: 7.53 }, meanBodyWeights: 4.2, brakeTime: 0.1, ending: { kind: how } };
  const leg = {
    end,
    touchdown: 1,
    flight: { arrives: [1, -4, 0] },
    verdict: verdict(ending),
    ...(how ? { landing: { kind: 'landed', report } } : {}),
  };
  return cardsOf({ legs: [leg], phases: [], to: 2 } as unknown as WholeResult)[0];
};
const notComputed = { kind: 'notComputed', why: { kind: 'fast', turning: 60, limit: 40 } } as SkillVerdict['ending'];

test('forces of an impact are not under words that say that nothing is computed', () => {
  const fast = cardOf('landing', notComputed, 'tooFast');
  expect(fast.head).toBe('first impact only');
  expect(fast.rows[0]).toEqual({ name: 'Peak, upward', value: '7.5 body weights', under: 'over 10 ms' });
  expect(fast.notes).toContain('it turns too fast for its ending to be judged');
  expect(cardOf('landing', { kind: 'landed', how: 'stands', t: 0.5 }, 'stands').head).toBe('stands');
  // nothing was run: no number, and it is said
  expect(cardOf('landing', notComputed).rows.map(({ value }) => value)).toEqual(['–', '–', '–']);
});

test('a mat that takes in the landing after a bed is a landing, not the next bounce', () => {
  const bounce = { kind: 'bounces', travel: -0.4, bend: 0 } as const;
  const mat = cardOf('bounce', bounce, 'stands');
  expect([mat.name, mat.head]).toEqual(['Landing', 'first impact only']);
  expect(mat.notes).toContain('its ending is not judged');
  expect(cardOf('bounce', bounce).name).toBe('Next bounce');
});
