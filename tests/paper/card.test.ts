// The card: one scale for its figures, nothing cut, nothing smaller than can be read at arm's length, no name unless it was asked for.
import { expect, test } from 'vitest';
import { type CardInput, cueHasRoom, drawCard, LEAST_SIZE, mostPoints } from '../../src/paper/card.ts';
import { viewPose } from '../../src/paper/card-figures.ts';
import { chooseInstants } from '../../src/paper/card-instants.ts';
import { isBeyondLatin, PER_MM } from '../../src/paper/page-svg.ts';
import { offerPaperCues } from '../../src/paper/paper-cues.ts';
import { runPieces } from '../../src/scene/pieces.ts';
import { papersOf } from './flown-paper.ts';
import { textsIn } from './svg-figures.ts';

const STANDING =
  'A model, not coaching advice. New skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.';
const ROOM = [
  'Arms in: 0.04 s sooner or later.',
  'Speed up: 0.1 m/s more or less.',
  'Sideways lean at take-off: 0.3 degrees.',
];

function inputOf(id: string): CardInput {
  const all = papersOf(id);
  const { paper } = all[all.length - 1];
  const cues = offerPaperCues(paper, true);
  const instants = chooseInstants(cues, { ...paper, start: 'take-off', end: 'landing', touches: [true, true] });
  return {
    flight: paper,
    instants,
    figures: instants.map(({ t }) => runPieces(viewPose(paper, t))),
    name: 'Back somersault, straight, full twist',
    called: '4 2 /, difficulty 0.7',
    result: [
      { text: '1.00', weight: 650 },
      { text: ' somersault backward, 1.00 twist to the left, 0.94 s in the air, lands on the feet, upright' },
    ],
    cues,
    room: ROOM,
    standing: STANDING,
    foot: 'Filled limbs with two bands are the left side.',
    product: 'Shapeflight',
  };
}

const full = inputOf('back-straight-full');
const LONG = {
  ...full,
  name: 'High bar: giant swings into a double back somersault, straight, with two twists, by the first group of the afternoon',
  called: '8 2 / (difficulty 1.6), double back somersault, straight, full in the second',
  result: [
    {
      text: '1.52 somersaults of 2, 1.00 twist of 2: 360° short, tilted 12°, head to the left; 1.04 s in the air, 43° short of the lean wanted: lands on the hands, in the model, as if the bed did not give',
    },
  ],
  caution:
    'Lower back works at 156 N·m at 0.37 s; compared with 125 N·m, the most that a measured adult of the same mass and height reached at that speed.',
};
const WIDE = {
  ...full,
  cues: full.cues.map((cue) => ({ ...cue, text: 'KEEP BOTH ARMS WHERE THEY ARE, LOOK AT THE MAT.' })),
};

test.each([
  ['as it is', full],
  ['with a long name, a missed result and a caution', LONG],
  ['with cues in capitals', WIDE],
  ['with nothing known of the room', { ...full, room: [] }],
  ['with a name', { ...full, who: 'Ilse Marrow of the Gymnastics Club of Lower Fernbridge' }],
])('%s: every line is on the card, none over another, none under 7 pt', (_, input) => {
  const { svg, widthMm, heightMm } = runPieces(drawCard(input));
  expect([widthMm, heightMm]).toEqual([210, 148]);
  const lines = textsIn(svg);
  expect(lines.length).toBeGreaterThan(18);
  for (const { text, size, left, right, y } of lines) {
    expect(size, text).toBeGreaterThanOrEqual(LEAST_SIZE);
    expect((size / PER_MM / 25.4) * 72, text).toBeGreaterThanOrEqual(7);
    expect(left, text).toBeGreaterThanOrEqual(59);
    expect(right, text).toBeLessThanOrEqual(1181);
    expect(y, text).toBeLessThan(heightMm * PER_MM - 12);
  }
  for (const [i, a] of lines.entries())
    for (const b of lines.slice(i + 1)) {
      const isBeside = a.right <= b.left + 1 || b.right <= a.left + 1;
      // from the top of the small letters to the baseline
      const isUnder = Math.abs(a.y - b.y) >= 0.72 * (a.y > b.y ? a.size : b.size);
      expect(isBeside || isUnder, `${a.text} | ${b.text}`).toBe(true);
    }
});

test('what is not known of the room is left out; the caution is always there', () => {
  const words = (input: CardInput): string =>
    textsIn(runPieces(drawCard(input)).svg)
      .map(({ text }) => text)
      .join(' ');
  expect(words(full)).toContain('Room for error.');
  const without = words({ ...full, room: [] });
  expect(without).not.toContain('Room for error');
  for (const said of [words(full), without, words(LONG)]) {
    expect(said).toContain('A model, not coaching advice.');
    expect(said).toContain('come first.');
  }
  expect(words(LONG)).toContain('Caution. Lower back works at 156 N·m');
});

test('no name is in it, unless it was asked for', () => {
  expect(textsIn(runPieces(drawCard(full)).svg).map(({ text }) => text)).toContain('No name in it.');
  const named = runPieces(drawCard({ ...full, who: 'Ilse Marrow' })).svg;
  expect(named).toContain('Name in it: Ilse Marrow.');
  expect(named).not.toContain('No name in it.');
});

test('figures: four, of one scale, on the floor at both ends, in the order of their times', () => {
  const { svg } = runPieces(drawCard(full));
  const figures = [...svg.matchAll(/<g data-figure="([\d.]+)">(.*?)<\/g>/gs)].map(([, t, inner]) => ({
    t: Number(t),
    points: [...inner.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
  }));
  expect(figures.map(({ t }) => t)).toEqual(full.instants.map(({ t }) => Number(t.toFixed(4))));
  const extent = (k: 0 | 1, i: number): [number, number] => {
    const all = figures[i].points.map((p) => p[k]);
    return [Math.min(...all), Math.max(...all)];
  };
  for (const i of [0, 3]) expect(Math.abs(extent(1, i)[1] - 504)).toBeLessThan(2);
  for (let i = 0; i < 3; i++) expect(extent(0, i)[1]).toBeLessThan(extent(0, i + 1)[0]);
  for (let i = 0; i < 4; i++) {
    expect(extent(1, i)[0]).toBeGreaterThanOrEqual(186);
    expect(extent(1, i)[1]).toBeLessThanOrEqual(506);
  }
});

test('each figure is turned, upright as it is, until both arms are seen', () => {
  for (const { view } of full.figures) {
    expect(view.up).toEqual([0, 1, 0]);
    expect(Math.hypot(...view.toward)).toBeCloseTo(1, 9);
    // the flight still goes to the right
    expect(-view.right[0]).toBeGreaterThan(0.5);
  }
  expect(full.figures.some(({ view }) => Math.abs(view.right[2]) > 0.3)).toBe(true);
});

test('a code is drawn point by point, and one with more points than a telephone reads is known', () => {
  const code = { size: 89, path: 'M0 0h1v1h-1z' };
  const { svg } = runPieces(drawCard({ ...full, code }));
  const [, x, y, point] =
    /<path transform="translate\(([\d.]+) ([\d.]+)\) scale\(([\d.]+)\)" d="M0 0h1v1h-1z"/.exec(svg) ?? [];
  // 30 mm, to the right margin, over the words under it
  expect(Number(point) / PER_MM).toBeCloseTo(30 / 89, 3);
  expect(Number(x) + 89 * Number(point)).toBeCloseTo(1180, 0);
  expect(Number(y) + 89 * Number(point)).toBeLessThan(785);
  expect(textsIn(svg).map(({ text }) => text)).toContain('Opens this skill.');
  expect(textsIn(runPieces(drawCard(full)).svg).map(({ text }) => text)).not.toContain('Opens this skill.');
  expect(30 / mostPoints()).toBeGreaterThanOrEqual(0.33);
  expect(mostPoints()).toBeGreaterThanOrEqual(89);
});

test('a cue too long or too broad for its column has no room', () => {
  expect(cueHasRoom(WIDE.cues[0].text)).toBe(true);
  expect(cueHasRoom('W'.repeat(25))).toBe(false);
  expect(cueHasRoom('Bring both arms in, hold them there, and look for the mat')).toBe(false);
});

test('letters of other alphabets are known to need their own file', () => {
  expect(isBeyondLatin('Zażółć')).toBe(true);
  expect(isBeyondLatin('Åse Größe 1 × 2')).toBe(false);
});
