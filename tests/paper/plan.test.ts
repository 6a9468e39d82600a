// The filming plan on paper: what it says is what the plan says, and everything is on the page.
import { expect, it } from 'vitest';
import { CAUTION, calcFrames, frameTimes } from '../../sim/index.ts';
import { makePaperFlight } from '../../src/paper/paper-flight.ts';
import { drawPlan } from '../../src/paper/plan-page.ts';
import { filmedOf, flightOf, planOf } from '../filming/filmed.ts';

it('has the sentence, the room, whom to ask and the caution, in black and grey', () => {
  const flight = flightOf('back-straight-full');
  const frames = calcFrames(flight, frameTimes(flight.duration, 120));
  const apparatus = { pieces: [] } as unknown as Parameters<typeof makePaperFlight>[0]['apparatus'];
  const page = drawPlan({
    plan: planOf(filmedOf(flight)),
    flight: makePaperFlight({ flight, frames, apparatus }),
    name: 'Back full',
    standing: CAUTION,
  });
  expect([page.widthMm, page.heightMm]).toEqual([297, 210]);
  const words = page.svg.replace(/<\/?tspan[^>]*>/g, '');
  for (const text of [
    'Back full',
    '120 frames a second',
    '8.5 m',
    '2.6 × 1.6 × 3.1 m',
    'Ask everyone in view before you film.',
    CAUTION.slice(0, 60),
  ])
    expect(words).toContain(text);
  for (const [, r, g, b] of page.svg.matchAll(/#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/g))
    expect([g, b]).toEqual([r, r]);
});
