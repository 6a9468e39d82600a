/**
 * A body as an MJCF model (the XML of the open MuJoCo physics engine): a witness for our numbers, and a way out of here.
 * Y is up; the root floats on a free joint, one hinge for each of ours, in the same order and under the same name. The
 * looks carry no mass and touch nothing. Hinges have no limits: ours only warn. The format has no rods and no points:
 * their zero moments are written as the least it takes.
 */
import { calcEigen3 } from '../math/eigen3.ts';
import { quatOfMatInto } from '../math/rot.ts';
import type { Body, DrawShape, Segment } from './body.ts';

/** `gravity` in m/s^2, downward positive. `about`: names and texts that the model carries along, as where it is from. */
export function formatMjcf(
  body: Body,
  gravity: number,
  about: readonly (readonly [name: string, text: string])[] = [],
): string {
  const lines = [
    '<?xml version="1.0" encoding="utf-8"?>',
    `<mujoco model=${quoted(body.name)}>`,
    '  <!-- A model, not coaching advice: new skills only with a qualified coach, progressions, spotting and matting;',
    '       local and federation rules come first. Tapered volumes are drawn with their mean radius. -->',
    '  <compiler angle="radian" autolimits="false" inertiafromgeom="false" balanceinertia="false"/>',
    `  <option gravity="0 ${number(-gravity)} 0"/>`,
    ...(about.length > 0
      ? [
          '  <custom>',
          ...about.map(([name, text]) => `    <text name=${quoted(name)} data=${quoted(text)}/>`),
          '  </custom>',
        ]
      : []),
    '  <worldbody>',
    ...bodyLines(body, 0, '    '),
    '  </worldbody>',
    '</mujoco>',
  ];
  return `${lines.join('\n')}\n`;
}

function bodyLines(body: Body, i: number, indent: string): string[] {
  const s = body.segments[i];
  const inner = `${indent}  `;
  const place = i === 0 ? [0, body.standingRootHeight ?? 0, 0] : s.p_PoBo_P;
  return [
    `${indent}<body name=${quoted(s.name)} pos="${numbers(place)}">`,
    ...(i === 0 ? [`${inner}<freejoint name="root"/>`] : []),
    ...s.hinges.map(
      (h) => `${inner}<joint name=${quoted(h.name)} type="hinge" pos="0 0 0" axis="${numbers(h.axis)}"/>`,
    ),
    `${inner}${inertial(s)}`,
    ...s.shapes.map((shape) => `${inner}${geom(shape)}`),
    ...body.contacts
      .filter((c) => c.segment === i)
      .map(
        (c) => `${inner}<site name=${quoted(c.name)} pos="${numbers(c.p_BoC_B)}" size="${number(drawn(c.radius))}"/>`,
      ),
    ...body.segments.flatMap((child, k) => (child.parent === i ? bodyLines(body, k, inner) : [])),
    `${indent}</body>`,
  ];
}

/** MJCF wants a positive size of everything it draws, m. */
const LEAST_SIZE = 1e-4;
/** And a principal moment above 1e-15 kg m^2 of everything that moves: of the segment's own largest, else absolute. */
const LEAST_SHARE = 1e-12;
const LEAST_MOMENT = 1e-14;

const drawn = (size: number): number => Math.max(size, LEAST_SIZE);

function inertial(s: Segment): string {
  const { values: found, R } = calcEigen3(s.I_BBcm_B);
  const least = Math.max(LEAST_MOMENT, LEAST_SHARE * Math.max(...found));
  const values = found.map((x) => Math.max(x, least));
  const quat = [0, 0, 0, 0];
  quatOfMatInto(R, 0, quat, 0);
  return `<inertial pos="${numbers(s.p_BoBcm_B)}" quat="${numbers(quat)}" mass="${number(s.mass)}" diaginertia="${numbers(values)}"/>`;
}

function geom(shape: DrawShape): string {
  const looks = 'contype="0" conaffinity="0" mass="0"';
  if (shape.kind === 'ellipsoid')
    return `<geom type="ellipsoid" pos="${numbers(shape.centre_B)}" size="${numbers(shape.radii.map(drawn))}" ${looks}/>`;
  const { a_B: a, b_B: b } = shape;
  const radius = number(drawn((shape.radiusA + shape.radiusB) / 2));
  if (Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) < LEAST_SIZE)
    return `<geom type="sphere" pos="${numbers(a)}" size="${radius}" ${looks}/>`;
  return `<geom type="capsule" fromto="${numbers(a)} ${numbers(b)}" size="${radius}" ${looks}/>`;
}

/** Shortest decimal that reads back as the same number; no minus on zero. */
const number = (x: number): string => String(x === 0 ? 0 : x);
const numbers = (v: readonly number[]): string => v.map(number).join(' ');

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const quoted = (text: string): string => `"${text.replace(CONTROL, ' ').replace(/[&<>"]/g, (c) => ESCAPES[c])}"`;
/** Characters that XML 1.0 cannot hold. */
const CONTROL = /[^\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;
