/** The span of releases whose flights are caught, from the low rail to the high one. */
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/start-room.ts';
import { calcCatch, placeCatch } from '../../sim/skill/catch.ts';
import type { CatchAsk } from '../../sim/skill/catch-ask.ts';
import { makeHandsLook } from '../../sim/skill/catch-watch.ts';
import { calcCatchWindow } from '../../sim/skill/catch-window.ts';
import { flySkill } from '../../sim/skill/flyer.ts';
import { launch } from '../../sim/skill/launch.ts';
import type { Skill } from '../../sim/skill/skill.ts';
import { DEG, G, gymnast, twoGiants } from '../contact/swings.ts';

const overhead = gymnast.angles.map((a) =>
  a.name.startsWith('shoulderElevation') ? 175 * DEG : a.name.startsWith('shoulderPlane') ? 90 * DEG : 0,
);
const skill: Skill = {
  title: '',
  body: gymnast,
  gravity: G,
  schedule: { base: overhead, blocks: [], keys: [], sampled: [], smoothing: { kind: 'gcv' } },
  start: {
    kind: 'swing',
    swing: {
      rail: 'unevenLow',
      sense: 'backward',
      start: twoGiants.start,
      moves: twoGiants.moves,
      release: { at: 'angle', angle: 455 * DEG },
      late: 0,
      duration: 6,
    },
  },
  end: { kind: 'duration', duration: 1.1 },
};
const launched = launch(skill, contact);
const { swing, barX } = launched.launch;
if (!swing) throw new Error('a swing');
const flight = flySkill(launched);
// a rail where the hands are half a second after the release: under the low one, at no norm's height
const AT = 0.5;
const hands = makeHandsLook(flight, { x: barX, y: 0 })(AT).left;
const rails = { ...contact, getRail: (id: string) => ({ ...contact.getRail(id), height: hands.y }) };
const ask: CatchAsk = {
  rail: 'unevenHigh',
  along: hands.x,
  hands: 'both',
  gap: 0.05,
  closing: 4,
  armsStiffness: 15_000,
};
const window = calcCatchWindow(launched, swing, ask, rails, { count: 21 });
/** m: what the coarser flights of a study move a hand by; measured 3e-8 */
const STUDY = 1e-6;

describe('the window of a catch', () => {
  it('the planned release is the flight of the skill', () => {
    const planned = window.tries.find((one) => Math.abs(one.late) < 1e-12);
    const { spec, left } = placeCatch(launched, ask);
    const { outcome } = calcCatch(flight, spec, rails, left);
    expect(left).toBeUndefined();
    expect(outcome.kind).toBe('caught');
    expect(Math.abs((planned?.gap ?? Number.NaN) - outcome.moment.gap)).toBeLessThan(STUDY);
  });

  it('ends where the farther hand comes to the asked gap, and its end is named by what fails there', () => {
    const { span, ends, tries } = window;
    if (!span) throw new Error('no window');
    for (const { late, gap, meets } of tries) {
      expect(meets).toBe(gap <= 0.05);
      if (late < span.from - 1e-3 || late > span.to + 1e-3) expect(meets).toBe(false);
    }
    const [early] = ends;
    if (early?.kind !== 'missed') throw new Error(early?.kind);
    expect(early.ways[0]).toBe('over');
    expect(early.moment.gap).toBeGreaterThan(0.05);
    expect(early.moment.gap).toBeLessThan(0.06);
    // hands still meet the rail where what was looked at ends: the window may be wider
    expect([span.isOpen, ends[1]]).toEqual([[false, true], undefined]);
  });

  it('of a skill whose flights are cut at the catch is the same', () => {
    // a rail at the height of the low one, where the hands come down to it
    const look = makeHandsLook(flight, { x: barX, y: contact.getRail('unevenLow').height });
    let [above, below] = [0.1, AT];
    while (below - above > 1e-9) {
      const t = (above + below) / 2;
      if (look(t).left.y > 0) above = t;
      else below = t;
    }
    const low: CatchAsk = { ...ask, rail: 'unevenLow', along: look(above).left.x };
    const cut = launch({ ...skill, catch: low }, contact);
    expect(flySkill(cut).duration).toBeLessThan(AT);
    const options = { from: -0.004, to: 0.004, count: 3 };
    const [one, other] = [cut, launched].map((s) => calcCatchWindow(s, swing, low, contact, options));
    expect(one.tries.map(({ gap }) => gap)).toEqual(other.tries.map(({ gap }) => gap));
    expect(one.tries[1].meets).toBe(true);
  });

  it('a speed that is not allowed ends it as too fast', () => {
    const speeds = window.tries.flatMap(({ outcome, meets }) =>
      meets && outcome ? [Math.abs(outcome.moment.along)] : [],
    );
    const closing = (Math.min(...speeds) + Math.max(...speeds)) / 2;
    const slow = calcCatchWindow(launched, swing, { ...ask, closing }, rails, { count: 21 });
    expect(slow.ends.map((end) => end?.kind)).toContain('tooFast');
    if (!slow.span || !window.span) throw new Error('no window');
    expect(slow.span.to - slow.span.from).toBeLessThan(window.span.to - window.span.from);
  });

  it('where no release is caught there is none, and the least gap of each is still said', () => {
    const far = calcCatchWindow(launched, swing, { ...ask, along: ask.along + 1.5 }, rails, { count: 5 });
    expect(far.span).toBeUndefined();
    expect(far.tries.every(({ gap }) => gap > 0.05)).toBe(true);
  });

  it('the rail that is let go does not count as caught while the hands leave it', () => {
    const same = calcCatchWindow(launched, swing, { ...ask, rail: 'unevenLow', along: 0 }, contact, { count: 3 });
    for (const { outcome } of same.tries) expect(outcome?.moment.t).toBeGreaterThanOrEqual(0.15);
  });
});
