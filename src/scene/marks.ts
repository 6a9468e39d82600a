/** Small signs on the stage: the mass centre, arrows, wedges. px, y down. */
import type { DrawItem, Points, Token } from './scene.ts';

const arc = (x: number, y: number, r: number, from: number, to: number, steps: number): number[] => {
  const out: number[] = [];
  for (let i = 0; i <= steps; i++) {
    const a = from + ((to - from) * i) / steps;
    out.push(x + r * Math.cos(a), y + r * Math.sin(a));
  }
  return out;
};

/** Radius of the mass centre's mark, px: it is no broader than a trunk where the figure is small. */
export const centreRadius = (pxPerM: number): number => Math.min(5, Math.max(2.6, 0.075 * pxPerM));

/** The mass centre: a quartered disc. */
export function massCentreMark(x: number, y: number, r: number, hit?: string): DrawItem[] {
  const quarter = (from: number): Points => Float32Array.from([x, y, ...arc(x, y, r, from, from + Math.PI / 2, 6)]);
  return [
    { kind: 'circle', x, y, r: r + 1, fill: 'air', ...(hit ? { hit, reach: 12 } : {}) },
    { kind: 'fill', contours: [quarter(-Math.PI / 2), quarter(Math.PI / 2)], fill: 'ink' },
    { kind: 'circle', x, y, r, stroke: 'ink', width: 1.6, data: { mark: 'massCentre' } },
  ];
}

function head(x: number, y: number, angle: number, size: number, fill: Token): DrawItem {
  const at = (a: number, r: number): number[] => [x + r * Math.cos(angle + a), y + r * Math.sin(angle + a)];
  return { kind: 'fill', contours: [Float32Array.from([x, y, ...at(2.7, size), ...at(-2.7, size)])], fill };
}

export function straightArrow(x0: number, y0: number, x1: number, y1: number, stroke: Token, name: string): DrawItem[] {
  const angle = Math.atan2(y1 - y0, x1 - x0);
  const back = 5;
  return [
    {
      kind: 'line',
      points: Float32Array.from([x0, y0, x1 - back * Math.cos(angle), y1 - back * Math.sin(angle)]),
      stroke,
      width: 2,
      data: { arrow: name },
    },
    head(x1, y1, angle, 9, stroke),
  ];
}

/** A turning arrow about a point; `sweep` > 0 runs clockwise on the screen. rad. */
export function turningArrow(
  x: number,
  y: number,
  r: number,
  middle: number,
  sweep: number,
  stroke: Token,
  name: string,
): DrawItem[] {
  const from = middle - sweep / 2;
  const to = middle + sweep / 2;
  const tip = to + (Math.sign(sweep) * 4) / r;
  return [
    {
      kind: 'line',
      points: Float32Array.from(arc(x, y, r, from, to, 24)),
      stroke,
      width: 2,
      data: { arrow: name, clockwise: sweep > 0 ? 1 : 0 },
    },
    head(x + r * Math.cos(tip), y + r * Math.sin(tip), tip + (Math.sign(sweep) * Math.PI) / 2, 9, stroke),
  ];
}

/** A flat ring round an axis that points along `axis` (screen angle); `left` draws the near side running that way. */
export function ringArrow(x: number, y: number, r: number, axis: number, sign: number, stroke: Token): DrawItem[] {
  const points: number[] = [];
  const cos = Math.cos(axis);
  const sin = Math.sin(axis);
  const put = (a: number): [number, number] => {
    // across the axis the ring is seen in full, along it foreshortened
    const across = r * Math.sin(a);
    const along = -0.3 * r * Math.cos(a);
    return [x + along * cos - across * sin, y + along * sin + across * cos];
  };
  for (let i = 0; i <= 30; i++) points.push(...put(sign * (-0.62 * Math.PI + (1.24 * Math.PI * i) / 30)));
  const n = points.length;
  const angle = Math.atan2(points[n - 1] - points[n - 3], points[n - 2] - points[n - 4]);
  return [
    { kind: 'line', points: Float32Array.from(points), stroke, width: 2, data: { arrow: 'twist', sign } },
    head(points[n - 2] + 3 * Math.cos(angle), points[n - 1] + 3 * Math.sin(angle), angle, 8, stroke),
  ];
}

/** An arrow seen from its end: a ring with a dot (towards the eye) or a cross (away). */
export function endOnArrow(x: number, y: number, r: number, towards: boolean, stroke: Token, name: string): DrawItem[] {
  const d = r * 0.64;
  const inner: DrawItem = towards
    ? { kind: 'circle', x, y, r: Math.max(1.5, r * 0.3), fill: stroke }
    : {
        kind: 'segments',
        points: Float32Array.from([x - d, y - d, x + d, y + d, x - d, y + d, x + d, y - d]),
        stroke,
        width: 1.6,
      };
  return [
    { kind: 'circle', x, y, r, fill: 'air', stroke, width: 1.6, data: { arrow: name, towards: towards ? 1 : 0 } },
    inner,
  ];
}

/** Two lines from a point and the tint between them; angles on the screen, rad. */
export function wedge(
  x: number,
  y: number,
  length: number,
  is: number,
  wanted: number,
  tint: Token,
  stroke: Token,
  name: string,
): DrawItem[] {
  const at = (a: number, r = length): number[] => [x + r * Math.cos(a), y + r * Math.sin(a)];
  const line = (a: number, dash?: readonly [number, number]): DrawItem => ({
    kind: 'line',
    points: Float32Array.from([x, y, ...at(a)]),
    stroke,
    width: 1.6,
    ...(dash ? { dash } : {}),
    data: { wedge: name, line: dash ? 'wanted' : 'is' },
  });
  return [
    { kind: 'fill', contours: [Float32Array.from([x, y, ...arc(x, y, length, wanted, is, 10)])], fill: tint },
    line(wanted, [4, 3]),
    line(is),
  ];
}

/** A dashed level at the height of the mass centre, to read its height from. */
export const levelGuide = (from: number, to: number, y: number): DrawItem => ({
  kind: 'line',
  points: Float32Array.from([from, y, to, y]),
  stroke: 'ink-3',
  width: 1,
  dash: [2, 3],
  data: { guide: 'level' },
});
