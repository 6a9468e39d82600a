// Card and picture are drawn in pieces, with the page's turns between them: no piece draws more than a figure, however many there are.
import { expect, test } from 'vitest';
import { drawCard } from '../../src/paper/card.ts';
import { viewPose } from '../../src/paper/card-figures.ts';
import type { PaperFlight } from '../../src/paper/paper-flight.ts';
import { drawPicture } from '../../src/paper/picture.ts';
import { equalTimes } from '../../src/paper/picture-times.ts';
import { figureItems } from '../../src/scene/figure.ts';
import { type Pieces, runPieces } from '../../src/scene/pieces.ts';
import { sideView } from '../../src/scene/view.ts';
import { papersOf } from './flown-paper.ts';

/** Rough figures that a piece of the search for a view may try. */
const TRIED = 6;

let reads = 0;
const flown = papersOf('back-straight-full')[0].paper;
/** Work is counted by what is read of the segments' attitudes. */
const paper: PaperFlight = {
  ...flown,
  pose: (t) => {
    const posed = flown.pose(t);
    const { R_WS, ...rest } = posed.frames;
    const frames = Object.defineProperty({ ...rest }, 'R_WS', {
      get: () => {
        reads++;
        return R_WS;
      },
    }) as typeof posed.frames;
    return { ...posed, frames };
  },
};

/** Of each piece, in figures. */
function countPieces<T>(pieces: Pieces<T>): number[] {
  const counts: number[] = [];
  for (;;) {
    const before = reads;
    const { done } = pieces.next();
    counts.push((reads - before) / ofFigure);
    if (done) return counts;
  }
}
const sum = (counts: readonly number[]): number => counts.reduce((all, n) => all + n, 0);

const posed = paper.pose(0.3);
reads = 0;
figureItems(paper.staged.body, posed.frames, {
  view: sideView(1),
  scale: 100,
  anchor: posed.p_WScm_W,
  x: 0,
  y: 0,
});
const ofFigure = reads;

test('a picture of 16 poses draws a figure a piece', () => {
  const counts = countPieces(
    drawPicture({
      versions: [{ letter: 'A', flight: paper }],
      layout: 'time',
      times: equalTimes(paper, 16, 'time') ?? [],
      widthMm: 160,
      standing: 'A model.',
      foot: '',
    }),
  );
  expect(sum(counts)).toBeGreaterThan(16);
  expect(Math.max(...counts)).toBeLessThan(1.5);
});

test('a card draws a figure a piece, and its views are tried a few at a time', () => {
  const times = [0, 0.3, 0.6, paper.duration];
  const searched = countPieces(viewPose(paper, 0.3));
  expect(sum(searched)).toBeGreaterThan(3 * TRIED);
  expect(Math.max(...searched)).toBeLessThan(1.5 * TRIED);
  const counts = countPieces(
    drawCard({
      flight: paper,
      instants: times.map((t) => ({ t, word: '' })),
      figures: times.map((t) => runPieces(viewPose(paper, t))),
      name: 'Full',
      called: '',
      result: [{ text: 'lands upright' }],
      cues: [],
      room: [],
      standing: 'A model.',
      foot: '',
      product: 'Shapeflight',
    }),
  );
  expect(sum(counts)).toBeGreaterThan(6);
  expect(Math.max(...counts)).toBeLessThan(1.5);
});
