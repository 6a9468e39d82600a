/** Dismounts off a rail by the trade's name, with what is flown after the release beside it. */
import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import {
  buildSkill,
  calcFrames,
  flyWhole,
  frameTimes,
  loadContact,
  namedOffRail,
  parseSkill,
  summarize,
  verdictOf,
  wordVerdict,
} from '../../sim/index.ts';

const contact = await loadContact();

test('giants into a double straight are called one, and what is flown is said', () => {
  const whole = flyWhole(buildSkill(parseSkill(skills['giant-double-straight'], { athletes, shapes })), contact);
  const { flight, skill } = whole;
  const frames = calcFrames(flight, frameTimes(flight.duration, 120));
  const summary = summarize(flight, frames, skill.target);
  const verdict = namedOffRail(verdictOf(whole, summary), true, summary, frames);
  expect(wordVerdict(verdict)).toMatch(/^(.*\. )?Double straight, 1\.\d\d somersaults backward flown, /);
  expect(namedOffRail(verdictOf(whole, summary), false, summary, frames).flown.trade).toBeUndefined();
});
