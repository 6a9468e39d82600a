// The cues offered for every ready skill are true of its flight: held against where hands, knees and feet are, not against the angles that they are read from.
import { describe, expect, test } from 'vitest';
import { CUE_LETTERS, type Cue, cueFits, cueLines } from '../../sim/words/cue-words.ts';
import { offerPaperCues } from '../../src/paper/paper-cues.ts';
import type { PaperFlight } from '../../src/paper/paper-flight.ts';
import { papersOf, READY } from './flown-paper.ts';

type Side = 'L' | 'R';

/** The body at an instant: places in the frame of the upper trunk, m; y towards the head, x to the front. */
function bodyAt({ staged, pose }: PaperFlight, t: number) {
  const { frames } = pose(t);
  const index = (name: string): number => staged.body.segments.findIndex((segment) => segment.name === name);
  const trunk = index('upperTrunk');
  const p = frames.p_WSo_W;
  const R = frames.R_WS;
  const place = (name: string): [number, number, number] => {
    const k = index(name);
    const d = [0, 1, 2].map((i) => p[3 * k + i] - p[3 * trunk + i]);
    return [0, 1, 2].map((axis) => d.reduce((sum, v, i) => sum + v * R[9 * trunk + 3 * i + axis], 0)) as [
      number,
      number,
      number,
    ];
  };
  const between = (a: string, b: string): number => Math.hypot(...place(a).map((v, i) => v - place(b)[i]));
  const arm = (side: Side) => {
    const [hand, shoulder] = [place(`hand${side}`), place(`upperArm${side}`)];
    const length = between(`upperArm${side}`, `forearm${side}`) + between(`forearm${side}`, `hand${side}`);
    return {
      up: (hand[1] - shoulder[1]) / length,
      front: (hand[0] - shoulder[0]) / length,
      reach: between(`upperArm${side}`, `hand${side}`) / length,
    };
  };
  const leg = between('thighL', 'shankL') + between('shankL', 'footL');
  return {
    arm,
    /** 1: straight knees; and the shares of a long body */
    knee: between('thighL', 'footL') / leg,
    kneeToChest: between('shankL', 'upperTrunk') / leg,
    footToChest: between('footL', 'upperTrunk') / leg,
  };
}

/** Heights of the hand over the shoulder in arm lengths, and how straight the arm is. */
const ARMS: Readonly<Record<string, (a: { up: number; front: number; reach: number }) => boolean>> = {
  up: (a) => a.up > 0.75,
  high: (a) => a.up > 0.3 && a.up < 0.95,
  level: (a) => Math.abs(a.up) < 0.65,
  forward: (a) => Math.abs(a.up) < 0.7 && a.front > 0.3,
  low: (a) => a.up < -0.35,
  down: (a) => a.up < -0.8,
  in: (a) => a.reach < 0.87,
};

/** Twist rate without its column, rev/s: by how far it turns about the instant. */
function twistRateAt({ frames, duration }: PaperFlight, t: number): number {
  const row = Math.round((t / duration) * (frames.n - 1));
  const [a, b] = [Math.max(0, row - 2), Math.min(frames.n - 1, row + 2)];
  return Math.abs(frames.twist[b] - frames.twist[a]) / (frames.t[b] - frames.t[a]) / (2 * Math.PI);
}

/** What is wrong with the words of a cue; empty: nothing. */
function findWrong(paper: PaperFlight, { from, to, text }: Cue): string[] {
  const wrong: string[] = [];
  const check = (is: boolean, what: string): void => {
    if (!is) wrong.push(what);
  };
  const [start, end] = [bodyAt(paper, from), bodyAt(paper, to)];
  const checkArm = (side: Side, place: string): void =>
    check(ARMS[place](end.arm(side)), `${side} arm ${place}: ${JSON.stringify(end.arm(side))}`);
  for (const [, place] of text.matchAll(/Arms (?:stay )?(up|high|level|forward|low|down|in)\b/g))
    for (const side of ['L', 'R'] as const) checkArm(side, place);
  for (const [, side, place, other, otherPlace] of text.matchAll(/(Left|Right) arm (\w+)(?:, (left|right) (\w+))?/g)) {
    checkArm(side === 'Left' ? 'L' : 'R', place);
    if (other) checkArm(other === 'left' ? 'L' : 'R', otherPlace);
  }
  const [, first] = /, (left|right) arm first/.exec(text) ?? [];
  if (first) {
    const middle = bodyAt(paper, (from + to) / 2);
    const done = (side: Side): number =>
      (middle.arm(side).up - start.arm(side).up) / (end.arm(side).up - start.arm(side).up);
    check(first === 'left' ? done('L') > done('R') : done('R') > done('L'), `${first} arm first`);
  }
  if (/Tuck: knees to chest/.test(text)) check(end.kneeToChest < 0.62 && end.knee < 0.75, `tuck ${end.kneeToChest}`);
  if (/Pike/.test(text)) check(end.knee > 0.97 && end.footToChest < start.footToChest, `pike ${end.knee}`);
  if (/Open: body long/.test(text)) check(end.knee > 0.95 && end.footToChest > start.footToChest, `open ${end.knee}`);
  if (/Long and still/.test(text)) check(start.knee > 0.95 && end.footToChest > 1.2, `long ${end.footToChest}`);
  if (/Hold/.test(text)) check(Math.abs(end.footToChest - start.footToChest) < 0.05, 'hold');
  if (/Knees soft/.test(text)) check(end.knee < start.knee, 'knees soft');
  const [before, after] = [twistRateAt(paper, from), twistRateAt(paper, to)];
  if (/twist (starts|speeds up)/.test(text)) check(after > 1.3 * before && after > 0.3, `twist ${before} ${after}`);
  if (/twist (stops|slows)/.test(text)) check(after < 0.6 * before, `twist ${before} ${after}`);
  return wrong;
}

describe.each(READY)('%s', (id) => {
  test('its cues are in the flight, one after the other, true, and have place on a card', () => {
    for (const { paper, name } of papersOf(id)) {
      const cues = offerPaperCues(paper, true);
      expect(cues.length, name).toBeLessThanOrEqual(3);
      let last = 0;
      for (const cue of cues) {
        expect(cue.from, name).toBeGreaterThanOrEqual(last - 1e-9);
        expect(cue.to, name).toBeGreaterThan(cue.from);
        expect(cue.to, name).toBeLessThanOrEqual(paper.duration + 1e-9);
        last = cue.to;
        expect(cueFits(cue.text), cue.text).toBe(true);
        expect(findWrong(paper, cue), `${name}: ${cue.text}`).toEqual([]);
      }
    }
  });
});

test('the full twist is offered as a coach would say it', () => {
  const [{ paper }] = papersOf('back-straight-full');
  const [into, hold, out] = offerPaperCues(paper, true).map(({ text }) => text);
  expect(into).toBe('Arms in, left arm first. The twist starts.');
  expect(hold).toBe('Long and still. Arms stay in.');
  expect(out).toMatch(/^Right arm high, left level\. The twist slows\.$/);
});

test('left and right changed over would be found', () => {
  const [{ paper }] = papersOf('back-straight-full');
  const cues = offerPaperCues(paper, true);
  const swapped = { ...cues[0], text: cues[0].text.replace('left', 'right') };
  expect(findWrong(paper, swapped)).not.toEqual([]);
  expect(findWrong(paper, { ...cues[0], text: 'Arms up.' })).not.toEqual([]);
  expect(findWrong(paper, { ...cues[1], text: 'The twist stops.' })).not.toEqual([]);
});

test.each([
  ['Long and still. Arms stay in.', ['Long and still.', 'Arms stay in.']],
  ['Right arm up, left arm down, together.', ['Right arm up, left', 'arm down, together.']],
  ['Hold the tuck.', ['Hold the tuck.']],
  ['', []],
])('"%s" is broken where it is read', (text, lines) => {
  expect(cueLines(text)).toEqual(lines);
});

test('what is too long for two lines does not fit', () => {
  expect(cueFits('Rise first, then bring both arms in, and look at the wall in front')).toBe(false);
  expect(cueFits('m'.repeat(CUE_LETTERS + 1))).toBe(false);
});
