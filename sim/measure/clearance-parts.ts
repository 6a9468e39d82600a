/** The volumes of a body that may meet something, with the words of people for them. */
import type { Body, DrawShape } from '../body/body.ts';
import { onceFor } from '../math/once-for.ts';
import { sideOf, withoutSide } from '../math/side.ts';
import { boundOf } from './rod-depth.ts';

export interface PartVolume {
  readonly shape: DrawShape;
  /** 'toes': of both sides, or in the middle */
  readonly word: string;
  /** 'left toes' */
  readonly sideWord: string;
  /** fingers or toes that bend as they lie on what they leave */
  readonly gives: boolean;
}

export interface PartSegment {
  readonly segment: number;
  readonly volumes: readonly PartVolume[];
  /** a ball round all of them, in the segment frame: its centre, its radius, and how far it reaches from the segment's origin, m */
  readonly centre_S: readonly [number, number, number];
  readonly radius: number;
  readonly reach: number;
  /** moves off with the hands, or with the feet, as they leave what they held or rested on */
  readonly leavesWith?: 'hands' | 'feet';
}

/** By the segment's name without its side: the words of its volumes in their order, the last for all that follow; one and both. */
const WORDS: Readonly<Record<string, readonly (readonly [one: string, both: string])[]>> = {
  pelvis: [['hips', 'hips']],
  middleTrunk: [['waist', 'waist']],
  upperTrunk: [['upper body', 'upper body']],
  head: [
    ['neck', 'neck'],
    ['head', 'head'],
  ],
  upperArm: [['upper arm', 'upper arms']],
  forearm: [['forearm', 'forearms']],
  hand: [['hand', 'hands']],
  thigh: [['thigh', 'thighs']],
  shank: [['shin', 'shins']],
  foot: [
    ['heel', 'heels'],
    ['foot', 'feet'],
    ['toes', 'toes'],
  ],
};

export const getParts = onceFor((body: Body): readonly PartSegment[] =>
  body.segments.flatMap((s, segment): PartSegment[] => {
    // a body without drawn volumes is what may touch the ground
    const drawn: readonly DrawShape[] =
      s.shapes.length > 0
        ? s.shapes
        : body.contacts
            .filter((c) => c.segment === segment)
            .map(({ p_BoC_B: p, radius }) => ({ kind: 'capsule', a_B: p, b_B: p, radiusA: radius, radiusB: radius }));
    if (drawn.length === 0) return [];
    const stem = withoutSide(s.name);
    const words = (body.neutralHuman ? WORDS[stem] : undefined) ?? [[s.name, s.name]];
    const side = { L: 'left ', R: 'right ', '': '' }[(body.neutralHuman && sideOf(s.name)) || ''];
    const bounds = drawn.map(boundOf);
    const centre_S = [0, 1, 2].map(
      (k) => (Math.min(...bounds.map((b) => b[k] - b[3])) + Math.max(...bounds.map((b) => b[k] + b[3]))) / 2,
    ) as [number, number, number];
    const radius = Math.max(
      ...bounds.map((b) => Math.hypot(b[0] - centre_S[0], b[1] - centre_S[1], b[2] - centre_S[2]) + b[3]),
    );
    const leavesWith = ['hand', 'forearm'].includes(stem)
      ? 'hands'
      : ['foot', 'shank'].includes(stem)
        ? 'feet'
        : undefined;
    return [
      {
        segment,
        volumes: drawn.map((shape, i) => {
          const [one, both] = words[Math.min(i, words.length - 1)];
          return { shape, word: both, sideWord: side + one, gives: stem === 'hand' && i > 0 };
        }),
        centre_S,
        radius,
        reach: Math.hypot(...centre_S) + radius,
        ...(leavesWith ? { leavesWith } : {}),
      },
    ];
  }),
);
