/**
 * What a body looks like: parts made of blobs. The human's contours are ours, anchored to the joints and the stature of the
 * body (lengths below are those of a 1.62 m athlete and scale with it); no physics is taken from them. Any other tree is
 * drawn from its own shapes. Segment frames: X anterior, Y towards the head, Z right.
 */
import type { Body, Vec3 } from '../../sim/index.ts';
import { addHead } from './head-look.ts';
import { addArm, addLeg } from './limb-look.ts';
import { type Look, LookBuilder, mix } from './look.ts';

const looks = new WeakMap<Body, Look>();

export function getLook(body: Body): Look {
  let look = looks.get(body);
  if (!look) {
    look = isHuman(body) ? makeHumanLook(body) : makePlainLook(body);
    looks.set(body, look);
  }
  return look;
}

const LIMBS = ['upperArm', 'forearm', 'hand', 'thigh', 'shank', 'foot'];
const HUMAN = ['pelvis', 'middleTrunk', 'upperTrunk', 'head', ...['L', 'R'].flatMap((s) => LIMBS.map((n) => n + s))];

function isHuman(body: Body): boolean {
  const names = new Set(body.segments.map((segment) => segment.name));
  return body.stature !== undefined && HUMAN.every((name) => names.has(name));
}

function makePlainLook(body: Body): Look {
  const build = new LookBuilder();
  body.segments.forEach((segment, k) => {
    const hulls: number[][] = [];
    const probes: number[] = [];
    for (const shape of segment.shapes) {
      if (shape.kind === 'capsule') {
        const { a_B: a, b_B: b, radiusA: ra, radiusB: rb } = shape;
        hulls.push([build.add(k, a, ra), build.add(k, b, rb)]);
        for (const f of [0, 0.25, 0.5, 0.75, 1]) probes.push(build.add(k, mix(a, b, f), ra + (rb - ra) * f));
      } else {
        hulls.push([build.add(k, shape.centre_B, shape.radii)]);
        probes.push(build.add(k, shape.centre_B, Math.min(...shape.radii)));
      }
    }
    if (hulls.length === 0) return;
    const tone = segment.side === 'centre' ? 'trunk' : segment.side;
    build.parts.push({ name: segment.name, chain: segment.name, tone, segment: k, hulls, probes });
  });
  return {
    ...build,
    neckline: [],
    spine: [],
    chest: -1,
    index: new Map(body.segments.map((segment, k) => [segment.name, k])),
    human: false,
  };
}

function makeHumanLook(body: Body): Look {
  const index = new Map(body.segments.map((segment, k) => [segment.name, k]));
  const at = (name: string): number => index.get(name) ?? 0;
  const joint = (name: string): Vec3 => body.segments[at(name)].p_PoBo_P;
  const stature = body.stature ?? 1.62;
  const k = stature / 1.62;
  // girth follows mass per length, gently: the figure stays a sign, not a portrait
  const g = k * Math.min(1.18, Math.max(0.92, Math.sqrt(body.mass / stature / (54 / 1.62)) * 0.6 + 0.4));
  const build = new LookBuilder();

  // heights of the spine's joints and of the shoulders above mid-hip, neutral pose
  const lumbarY = joint('middleTrunk')[1];
  const thoracicY = lumbarY + joint('upperTrunk')[1];
  const shoulderZ = Math.abs(joint('upperArmR')[2]);
  const shoulderY = thoracicY + joint('upperArmR')[1];
  const hipZ = Math.abs(joint('thighR')[2]);
  const f = shoulderY / 0.445;
  /** a trunk blob at a height above mid-hip (drawn for a shoulder height of 0.445) in the segment that carries it */
  const trunkBlob = (x: number, height: number, z: number, r: Vec3 | number): number => {
    const y = height * f;
    const name = y < lumbarY * 0.9 ? 'pelvis' : y < thoracicY ? 'middleTrunk' : 'upperTrunk';
    const from = name === 'pelvis' ? 0 : name === 'middleTrunk' ? lumbarY : thoracicY;
    return build.add(at(name), [x * g, y - from, z], r);
  };
  const oval = (depth: number, height: number, width: number): Vec3 => [depth * g, height * f, width];
  const w = shoulderZ / 0.163;
  const hw = (0.4 * hipZ) / 0.082 + 0.6 * g;
  const pelvis = trunkBlob(-0.004, 0.02, 0, oval(0.094, 0.098, 0.146 * hw));
  const seats = [-1, 1].map((s) => trunkBlob(-0.036, -0.03, s * 0.066 * hw, oval(0.078, 0.088, 0.076 * hw)));
  const waist = trunkBlob(0.002, 0.158, 0, oval(0.075, 0.075, 0.108 * g));
  const ribs = trunkBlob(0.012, 0.29, 0, oval(0.094, 0.105, 0.5 * (0.13 * g + 0.13 * w)));
  const chest = trunkBlob(0.012, 0.375, 0, oval(0.099, 0.085, 0.146 * w));
  const line = trunkBlob(-0.008, 0.44, 0, oval(0.062, 0.046, 0.16 * w));
  const nape = trunkBlob(-0.012, 0.476, 0, oval(0.044, 0.03, 0.066 * g));
  const trunkProbes: number[] = [];
  for (const [height, width, r] of [
    [-0.01, 0.06, 0.09],
    [0.1, 0.05, 0.078],
    [0.2, 0.04, 0.076],
    [0.31, 0.055, 0.085],
    [0.41, 0.075, 0.07],
  ]) {
    for (const s of [-1, 0, 1]) trunkProbes.push(trunkBlob(0, height, s * width * w, r * g));
  }
  const neckline = [
    [0.058, 0.47, -0.052],
    [0.098, 0.418, -0.026],
    [0.108, 0.372, 0],
    [0.098, 0.418, 0.026],
    [0.058, 0.47, 0.052],
  ].map(([x, y, z]) => trunkBlob(x, y, z * w, 0));
  const spine = [
    [-0.056, 0.462],
    [-0.084, 0.38],
    [-0.08, 0.28],
    [-0.07, 0.17],
    [-0.088, 0.055],
  ].map(([x, y]) => trunkBlob(x, y, 0, 0));
  build.parts.push({
    name: 'trunk',
    chain: 'trunk',
    tone: 'trunk',
    segment: at('upperTrunk'),
    hulls: [
      [pelvis, waist],
      [pelvis, ...seats],
      [waist, ribs],
      [ribs, chest],
      [chest, line],
      [line, nape],
    ],
    probes: trunkProbes,
  });

  const headY = thoracicY + joint('head')[1];
  const headTop = stature - (body.standingRootHeight ?? 0.845 * k) - headY;
  const head = addHead(build, {
    head: at('head'),
    trunk: at('upperTrunk'),
    neck: [-0.012 * k, shoulderY + 0.012 * f - thoracicY, 0],
    top: headTop,
    k,
  });
  for (const side of ['L', 'R'] as const) addArm(build, body, at, side, { g, k });
  for (const side of ['L', 'R'] as const) addLeg(build, body, at, side, { g, k });
  return { ...build, neckline, spine, chest: at('upperTrunk'), head, index, human: true };
}
