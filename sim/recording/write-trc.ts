/**
 * A posed motion as TRC: three points a segment, in mm: `<segment>.o` its origin (the joint centre to its parent), `<segment>.x` and `<segment>.y`
 * 0.1 m from it along the segment's X (front) and Y (towards the head). Y is up. What is not known is blank.
 */
import type { PosedMotion } from './posed.ts';
import { makePosedReader } from './posed-reader.ts';

const ARM = 0.1;
const MM = 1000;
const DIGITS = 6;

/** In pieces of a frame each, the head first. Lines end in "\n". `file`: the name that the head states. */
export function* formatTrc(posed: PosedMotion, file: string): Generator<string> {
  const { body, n, t, rateHz } = posed;
  const names = body.segments.flatMap(({ name }) => [`${name}.o`, `${name}.x`, `${name}.y`]);
  const rate = Number(rateHz.toPrecision(12));
  yield `${[
    `PathFileType\t4\t(X/Y/Z)\t${file.replace(/\s+/g, ' ')}`,
    'DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\tOrigDataStartFrame\tOrigNumFrames',
    [rate, rate, n, names.length, 'mm', rate, 1, n].join('\t'),
    `Frame#\tTime\t${names.join('\t\t\t')}\t\t`,
    `\t\t${names.map((_, k) => `X${k + 1}\tY${k + 1}\tZ${k + 1}`).join('\t')}`,
    '',
  ].join('\n')}\n`;
  const reader = makePosedReader(posed);
  for (let i = 0; i < n; i++) {
    reader.read(i);
    const cells = [String(i + 1), String(Number(t[i].toFixed(9)))];
    body.segments.forEach((_, s) => {
      for (const axis of [-1, 0, 1])
        for (let k = 0; k < 3; k++) {
          const along = axis < 0 ? 0 : ARM * reader.R_WS[9 * s + 3 * k + axis];
          cells.push(cell(MM * (reader.p_WSo_W[3 * s + k] + along)));
        }
    });
    yield `${cells.join('\t')}\n`;
  }
}

const cell = (x: number): string => (Number.isFinite(x) ? String(Number(x.toFixed(DIGITS)) + 0) : '');
