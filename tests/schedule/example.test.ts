/** The worked example of docs/schedule.md, row by row. */
import { expect, it } from 'vitest';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import { armsPose, DEG, shoulderBody } from './shoulder-body.ts';
import { ANCHORS, angleAt, at, block, key, makeSpec } from './specs.ts';

const ROWS = [
  [0.1, 0, 0, 0, 0],
  [0.2, 0, 90, 0, 0],
  [0.35, 90, 90, 0, 0],
  [0.6, 180, 90, 0, 50],
  [0.7, 180, 0, -180, 0],
  [0.85, 90, 0, -90, 0],
  [1, 0, 0, 0, 0],
];

it('the worked example of the documentation is what the schedule does', () => {
  const blocks = [
    block('hang', 0, 0.2, armsPose(0, 0)),
    block('up', 0.5, 0.7, armsPose(0, 180), 'front'),
    { ...block('down', 0, 0, armsPose(0, 0), 'side'), from: at(-0.2, 'touchdown'), to: at(0, 'touchdown') },
  ];
  const s = compileSchedule(shoulderBody, makeSpec({ blocks, keys: [key('elbowFlexionR', 0.6, 50)] }), ANCHORS);
  for (const [t, elevation, plane, turn, elbow] of ROWS) {
    expect(angleAt(s, 'shoulderElevationR', t)[0] / DEG).toBeCloseTo(elevation, 9);
    expect(angleAt(s, 'shoulderPlaneR', t)[0] / DEG).toBeCloseTo(plane, 9);
    expect(angleAt(s, 'shoulderTurnR', t)[0] / DEG).toBeCloseTo(turn, 9);
    expect(angleAt(s, 'elbowFlexionR', t)[0] / DEG).toBeCloseTo(elbow, 9);
  }
  [0.2, 0.5, 0.6, 0.7, 1].forEach((t, i) => {
    expect(s.breaks[i]).toBeCloseTo(t, 12);
  });
  expect(s.breaks.length).toBe(5);
});
