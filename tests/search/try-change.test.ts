/** Something to try: what is offered is flown as it is said, brings no caution, and makes no fall of a landing. Of ready skills, whatever each is. */
import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import * as contact from '../../sim/contact/index.ts';
import { type SkillVerdict, type TryChange, tryChangeSteps, updateSkill } from '../../sim/index.ts';
import { makeFlyer } from '../../sim/skill/flyer.ts';
import { judgeFlight } from '../../sim/skill/judge-flight.ts';
import { causeOfFix, wordCause } from '../../sim/words/cause-words.ts';
import { PLAIN_NUMBERS, wordVerdict } from '../../sim/words/verdict-words.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { isWhole } from '../corpus.ts';
import { fileOf, skillOf, specOf } from '../skill/load.ts';

/** These have something to try, the first by a large change, the second by a small one alone; others may have nothing: with 0.02 s a somersault that lands is a fall. */
const OFFERED = ['arms-in-spin', 'back-tuck'];
/** of the ready skills, counted when the sizes were chosen */
const LEAST_OFFERED = 24;
const ids = isWhole ? Object.keys(skills) : [...OFFERED, 'trampoline-full', 'trampoline-double-tuck', 'cat-turn'];
const engine = makeEngine({ athletes, shapes });

function look(id: string): TryChange | undefined {
  const steps = tryChangeSteps(specOf(fileOf(id)), contact);
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

/** What is asked of joints, limbs and take-off beyond what is usual, as the page says it. */
const cautionsOf = (result: FlightResult): string[] => [
  ...result.cautions.map(({ kind, angle }) => `${kind} ${angle}`),
  ...engine.overlaps(result).map(({ limb, through }) => `${limb} in ${through}`),
  ...result.takeoffCautions.map(({ caution }) => caution.kind),
];

const FALLS = /falls|on the (hands|knees|seat|back|head)|hands down|sits down|lands on|flat/;
const falls = (verdict: SkillVerdict): boolean =>
  FALLS.test(wordVerdict(verdict, PLAIN_NUMBERS)) || verdict.ending.kind === 'down';

let offered = 0;

describe.each(ids)('%s', (id) => {
  const file = fileOf(id);
  const spec = specOf(file);
  const found = look(id);
  if (found) offered++;
  it.runIf(OFFERED.includes(id))('has something to try', () => {
    expect(found).toBeDefined();
  });
  it.runIf(found)(
    'what is tried comes to what was said of it, by another way: its file, flown and judged again',
    async () => {
      if (!found) return;
      const tried = updateSkill(file, spec, found.spec);
      const skill = skillOf(tried);
      const verdict = judgeFlight(skill, makeFlyer().fly(skill), contact);
      expect(wordVerdict(verdict, PLAIN_NUMBERS)).toBe(wordVerdict(found.after, PLAIN_NUMBERS));
      await Promise.all([engine.ready(file), engine.ready(tried)]);
      const [before, after] = [engine.fly(file), engine.fly(tried)];
      const count = ({ outline }: FlightResult): string => (outline[found.of] ?? Number.NaN).toFixed(2);
      expect(count(before)).toBe((found.before.flown[found.of] ?? Number.NaN).toFixed(2));
      expect(count(after)).toBe((found.after.flown[found.of] ?? Number.NaN).toFixed(2));
      // it is seen
      expect(count(after)).not.toBe(count(before));
      const had = new Set(cautionsOf(before));
      expect(cautionsOf(after).filter((one) => !had.has(one))).toEqual([]);
      if (!falls(found.before)) expect(falls(found.after)).toBe(false);
      // it is said as a coach would say it
      const cue = wordCause(
        causeOfFix(found.step, [0, 0], (shape) => shapes[shape]?.word ?? shape, undefined),
        'cue',
        PLAIN_NUMBERS,
      );
      expect(cue).toMatch(
        /^(Hold|Open|Go into|Move to) .* 0\.\d\d s (longer|earlier|later)$|^Hips \d+ deg more (bent|open) in /,
      );
    },
  );
});

it.runIf(isWhole)('most ready skills have something to try', () => {
  expect(offered).toBeGreaterThanOrEqual(LEAST_OFFERED);
});
