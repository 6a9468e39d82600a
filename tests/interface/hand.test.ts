// A hand that asks for more than joints can: no task of the page flies more than two flights, and what it settles on is what was found.
import { createRoot } from 'solid-js';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import type { Engine } from '../../src/engine/engine.ts';
import { posing } from '../../src/engine/pose.ts';
import { useHand } from '../../src/features/pose/hand.ts';
import type { LimbWay } from '../../src/features/pose/limb-work.ts';
import { findTooFast, MOST } from '../../src/features/pose/pace.ts';
import { readyEngine } from './ready-engine.ts';

const skill = skills['arms-in-spin'] as SkillFile;
/** between arms out and arms in, s */
const AT = 0.35;
let engine: Engine;
let dispose = (): void => {};
let flights = 0;

vi.mock('../../src/app/page.ts', async (original) => {
  const real = await original<typeof import('../../src/app/page.ts')>();
  // for a page without components: who asks for a kept state has the page itself
  return { ...real, keptState: (make: unknown) => make };
});

beforeAll(async () => {
  engine = await readyEngine();
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('matchMedia', () => ({ matches: false }));
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterAll(() => vi.unstubAllGlobals());
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  dispose();
});

function openHand() {
  const fly: Engine['fly'] = (file, from) => {
    flights++;
    return engine.fly(file, from);
  };
  const keeper: Services['keeper'] = {
    kept: undefined,
    write: async () => true,
    leave: () => {},
    check: async () => {},
    watch: () => {},
  };
  const services = {
    flying: { ...engine, fly },
    posing,
    presets: { first: skill, standIn: skill, shapes, skills: [], athletes: [] },
    keeper,
    tools: [],
  } as unknown as Services;
  return createRoot((end) => {
    dispose = end;
    const page: Page = createPage(services);
    page.cursor.set(AT);
    const hand = (useHand as unknown as (page: Page) => ReturnType<typeof useHand>)(page);
    return { page, hand };
  });
}

/** The left arm's hand led by so many px to the athlete's left and up. */
const way = (left: number, up: number): LimbWay => ({
  by: (share) => [share * left, -share * up],
  pxPerM: 100,
  view: { right: [0, 0, -1], up: [0, 1, 0], toward: [1, 0, 0] },
  other: false,
});
/** Lowered to the thigh: more than the shoulders can in the time of the move. */
const FAST = way(-40, -30);
/** Raised: within what they can. */
const FREE = way(24, 26);

const counted = (run: () => unknown): number => {
  const before = flights;
  run();
  return flights - before;
};
/** Runs the tasks that wait, one by one, for so long; the flights of each. */
function runTasks(ms: number): number[] {
  const until = Date.now() + ms;
  const found: number[] = [];
  while (vi.getTimerCount() > 0 && Date.now() < until)
    found.push(
      counted(() => {
        vi.advanceTimersToNextTimer();
      }),
    );
  return found;
}

describe('a limb that lags behind the hand', () => {
  test('moves fly two flights at most, and what is near enough is found a flight a task when the hand rests', () => {
    const { page, hand } = openHand();
    const gesture = hand.begin('handL');
    for (const share of [0.3, 0.6, 0.9, 1]) {
      const part = way(-40 * share, -30 * share);
      expect(counted(() => gesture.move(part))).toBeLessThanOrEqual(2);
    }
    expect(hand.shown()?.tooFast?.times).toBeGreaterThan(MOST);
    const tasks = runTasks(2000);
    expect(Math.max(...tasks)).toBe(1);
    expect(tasks.length).toBeGreaterThan(3);
    const cautions = page.flight.result().cautions;
    expect(findTooFast(cautions, engine.fly(skill).cautions)).toEqual([]);
    // what is drawn is the flight's own again
    expect(hand.shown()?.angles).toBeUndefined();
    gesture.settle();
    expect(page.doc.isHeld()).toBe(false);
    expect(page.doc.history().done).toHaveLength(1);
  });

  test('the limb follows at once by geometry while the place is looked for', () => {
    const { page, hand } = openHand();
    const gesture = hand.begin('handL');
    gesture.move(FREE);
    // as far the other way is too fast: one flight says so, and where it is not is looked for
    expect(counted(() => gesture.move(FAST))).toBe(1);
    const now = hand.shown()?.angles ?? [];
    expect(now).not.toEqual(posing.anglesAt(page.flight.result(), AT));
    const tasks = runTasks(100);
    expect(tasks.length).toBeGreaterThan(2);
    expect(Math.max(...tasks)).toBe(1);
    // then the flight has it
    expect(hand.shown()?.angles).toBeUndefined();
    gesture.move(FAST);
    gesture.abandon();
    expect(page.doc.isHeld()).toBe(false);
    expect(runTasks(2000).every((n) => n === 0)).toBe(true);
    expect(page.doc.file()).toEqual(skill);
  });

  test('let go on its way it settles a few tasks later, as one step, at the place that the joints can reach', () => {
    const { page, hand } = openHand();
    const gesture = hand.begin('handL');
    gesture.move(way(-20, -15));
    gesture.move(FAST);
    expect(counted(() => gesture.settle())).toBeLessThanOrEqual(1);
    expect(page.doc.isHeld()).toBe(true);
    expect(Math.max(...runTasks(300))).toBeLessThanOrEqual(1);
    expect(page.doc.isHeld()).toBe(false);
    expect(hand.active()).toBe(false);
    expect(page.doc.history().done).toHaveLength(1);
    const settled = page.doc.file();
    expect(findTooFast(engine.fly(settled).cautions, engine.fly(skill).cautions)).toEqual([]);
    page.doc.undo();
    expect(page.doc.file()).toEqual(skill);
  });

  test('where it settles depends on where the hand is let go, not on how often the page could judge on the way', () => {
    const settledBy = (steps: number, pauseMs: number): number[] => {
      const { page, hand } = openHand();
      const gesture = hand.begin('handL');
      for (let i = 1; i <= steps; i++) {
        // a hand that goes about before it comes there
        const wander = i < steps ? 9 * Math.sin(i) : 0;
        gesture.move(way((-40 * i) / steps + wander, (-30 * i) / steps - wander));
        runTasks(pauseMs);
      }
      gesture.settle();
      runTasks(500);
      const angles = posing.anglesAt(page.flight.result(), AT);
      dispose();
      return angles;
    };
    const [first, ...others] = [settledBy(3, 0), settledBy(30, 0), settledBy(30, 40), settledBy(3, 400)];
    expect(first).not.toEqual(posing.anglesAt(engine.fly(skill), AT));
    for (const one of others) expect(one).toEqual(first);
  });

  test.each([
    ['undo', (page: Page) => page.doc.undo(), 0],
    ['an edit', (page: Page) => page.doc.edit({ ...page.doc.file(), title: 'Other' }, 'title'), 2],
    ['another gesture', (page: Page) => page.doc.begin(), 1],
  ])('what is asked of the document before it settles comes after it: %s', (_name, ask, steps) => {
    const { page, hand } = openHand();
    const gesture = hand.begin('handL');
    gesture.move(FAST);
    gesture.settle();
    expect(page.doc.isHeld()).toBe(true);
    ask(page);
    expect(page.doc.history().done).toHaveLength(steps);
    if (steps === 0) expect(page.doc.file()).toEqual(skill);
  });

  test('put back while it is still judged, it is back and stays so', () => {
    const { page, hand } = openHand();
    const gesture = hand.begin('handL');
    gesture.move(way(-20, -15));
    gesture.move(FAST);
    gesture.settle();
    expect(hand.putBack()).toBe(true);
    for (const waits of [0, 1000]) {
      runTasks(waits);
      expect(page.doc.isHeld()).toBe(false);
      expect(page.doc.file()).toEqual(skill);
      expect(hand.shown()).toBeUndefined();
    }
  });

  test('a limb that does not lag settles in the task that lets go, without another flight', () => {
    const { page, hand } = openHand();
    const gesture = hand.begin('handL');
    expect(counted(() => gesture.move(FREE))).toBe(1);
    expect(hand.shown()?.tooFast).toBeUndefined();
    expect(counted(() => gesture.settle())).toBe(0);
    expect(page.doc.isHeld()).toBe(false);
    expect(page.doc.history().done).toHaveLength(1);
  });
});
