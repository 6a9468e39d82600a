// What the page says of a clip: why nothing is compared, no difference under the last figure that is said, crosses that are wrong by their names; and
// undo while crosses are in the hand.
import { createRoot } from 'solid-js';
import { expect, test } from 'vitest';
import { FieldError } from '../../sim/index.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { apartRows } from '../../src/features/film/clip-apart.ts';
import { sayMark } from '../../src/features/film/clip-marks.ts';
import { makeMeasuringPast } from '../../src/features/film/clip-past.ts';
import { wordSightFault } from '../../src/features/film/clip-sight-fault.ts';
import type { ClipDesk } from '../../src/features/film/clip-state.ts';

const NONE = {} as FlightResult;

function deskAt(is: 'before' | 'in' | 'after' | undefined, apart: object = {}): ClipDesk {
  return {
    instant: () => is && { t: 0.1, is },
    measuring: () => ({ marks: [], posed: [] }),
    times: () => ({}),
    frame: () => 3,
    room: () => ({ engine: { apart: () => apart } }),
  } as unknown as ClipDesk;
}
const how = (desk: ClipDesk): string[] => [...new Set(apartRows(desk, NONE).map((row) => row.how))];

test('before its take-off and after its landing A is said not to be in the air, not that marks are wanted', () => {
  expect(how(deskAt(undefined))).toEqual(['needs take-off and landing']);
  expect(how(deskAt('before'))).toEqual(['A has not taken off']);
  expect(how(deskAt('after'))).toEqual(['A has landed']);
});

test('no difference is named that is nothing in the figures that are said, and no ± is nothing', () => {
  const apart = (value: number, plusMinus: number) =>
    apartRows(deskAt('in', { height: { value, plusMinus } }), NONE).find(({ name }) => name === 'height');
  expect(apart(-0.004, 0.001)).toMatchObject({ said: 'the same', how: 'inferred, ± 0.01 m' });
  expect(apart(-0.08, 0.01)).toMatchObject({ said: '0.08 m lower' });
  expect(apart(0.08, 0.01)).toMatchObject({ said: '0.08 m higher' });
});

test('more than a turn is turns', () => {
  const said = [1, 4, 5, 8].map((quarters) => sayMark({ kind: 'turn', quarters }));
  expect(said).toEqual(['¼ turn', '1 turn', '1¼ turns', '2 turns']);
});

test('a cross that is wrong has the name that it has on the picture', () => {
  const said = wordSightFault(new FieldError('scale.corners[2]', '600, 601', 'at least 6 px from the line'));
  expect(said).toBe('No camera sees what is marked. Far right corner: 600, 601; wanted: at least 6 px from the line.');
  expect(wordSightFault(new FieldError('scale.posts[0].heightM', 0, '0.05 to 20 m'))).toContain('Height: 0; wanted');
});

test('undo while crosses are in the hand puts them back, and takes back no step before', () =>
  createRoot((dispose) => {
    let walks = 0;
    const past = makeMeasuringPast(
      () => {},
      () => {
        walks++;
      },
    );
    past.measure({ trueHz: 60 }, 'rate');
    past.draft({ stand: { feet: [3, 4], goesRight: true } });
    past.undoing.undo();
    expect(past.measuring()).toEqual({ marks: [], posed: [], trueHz: 60 });
    expect(walks).toBe(1);
    past.undoing.undo();
    expect(past.measuring().trueHz).toBeUndefined();
    dispose();
  }));
