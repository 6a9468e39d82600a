/** Segments, points and joint angles of a flight as CSV: one row an instant, SI and radians. Every column: docs/frames.md. */
import type { Body } from '../body/body.ts';
import type { SegmentFrames } from '../measure/segment-frames.ts';
import { nameCell, numberCell, originLines, type TableStyle } from './table-style.ts';

const XYZ = ['x', 'y', 'z'];

/** In pieces of a row each, where it is from and the names first. Lines end in "\n". */
export function* formatSegments(frames: SegmentFrames, body: Body, style: TableStyle = {}): Generator<string> {
  const groups: { names: string[]; data: Float64Array; width: number; from: number }[] = [];
  const add = (data: Float64Array, all: number, index: number, names: string[]): void => {
    groups.push({ names, data, width: all * names.length, from: index * names.length });
  };
  const { segments, contacts, angles } = body;
  add(frames.t, 1, 0, ['t']);
  add(
    frames.p_WScm_W,
    1,
    0,
    XYZ.map((k) => `com${k}`),
  );
  segments.forEach(({ name }, s) => {
    const named = (quantity: string): string[] => XYZ.map((k) => `${name}_${quantity}${k}`);
    add(frames.p_WBo_W, segments.length, s, named('p'));
    add(
      frames.quat_WB,
      segments.length,
      s,
      ['w', ...XYZ].map((k) => `${name}_q${k}`),
    );
    add(frames.p_WBcm_W, segments.length, s, named('com'));
  });
  contacts.forEach(({ name }, c) => {
    add(
      frames.p_WC_W,
      contacts.length,
      c,
      XYZ.map((k) => `point_${name}_${k}`),
    );
  });
  angles.forEach(({ name }, a) => {
    add(frames.angles, angles.length, a, [`angle_${name}_rad`]);
    add(frames.angleRates, angles.length, a, [`angle_rate_${name}_rad_s`]);
    add(frames.angleAccelerations, angles.length, a, [`angle_acceleration_${name}_rad_s2`]);
  });
  const names = groups.flatMap((group) => group.names.map((name) => nameCell(name, style)));
  yield `${originLines(style)}${names.join(',')}\n`;
  for (let i = 0; i < frames.n; i++) {
    const cells = groups.flatMap(({ names: of, data, width, from }) =>
      of.map((_, k) => numberCell(data[width * i + from + k], style)),
    );
    yield `${cells.join(',')}\n`;
  }
}
