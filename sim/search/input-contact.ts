/** Inputs of a contact whose force is known, and of how the athlete comes to it. SI and radians; forces in body weights. */
import { RAD } from '../math/angles.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { KnownContact } from '../skill/start-spec.ts';
import type { Input } from './input.ts';
import { startInput } from './start-input.ts';

const input = startInput<KnownContact>('contact', (spec, by) =>
  spec.start.kind === 'contact' ? { ...spec, start: { ...spec.start, contact: by(spec.start.contact) } } : spec,
);

export function listContactInputs({ start }: SkillSpec): Input[] {
  if (start.kind !== 'contact') return [];
  const { contact } = start;
  const { given, v_WScm_W, h_Scm_W } = contact;
  const force =
    (name: 'bodyWeights' | 'lean' | 'across' | 'freeTurn') =>
    (c: KnownContact, v: number): KnownContact => ({ ...c, given: { ...c.given, [name]: v } });
  const place =
    (name: 'x' | 'z') =>
    (c: KnownContact, v: number): KnownContact => ({
      ...c,
      given: { ...c.given, place: { ...c.given.place, [name]: v } },
    });
  const before =
    (name: 'v_WScm_W' | 'h_Scm_W', k: number) =>
    (c: KnownContact, v: number): KnownContact => {
      const out: [number, number, number] = [c[name][0], c[name][1], c[name][2]];
      out[k] = v;
      return { ...c, [name]: out };
    };
  return [
    // the place's own time is known to the contact room alone
    ...(contact.time === undefined
      ? []
      : [input('time', 'time of the contact', 's', contact.time, [0.005, 2], 0.005, (c, v) => ({ ...c, time: v }))]),
    input(
      'force',
      'mean force, in body weights',
      'bodyWeights',
      given.bodyWeights,
      [0, 50],
      0.02,
      force('bodyWeights'),
    ),
    input('lean', 'lean of the force, backward +', 'rad', given.lean, [-90 * RAD, 90 * RAD], RAD, force('lean')),
    input(
      'across',
      'force across, in body weights, to the right +',
      'bodyWeights',
      given.across,
      [-10, 10],
      0.01,
      force('across'),
    ),
    input(
      'place.along',
      'place of the contact, ahead of the mass centre +',
      'm',
      given.place.x,
      [-2, 2],
      0.005,
      place('x'),
    ),
    input('place.across', 'place of the contact, to the right +', 'm', given.place.z, [-2, 2], 0.005, place('z')),
    input(
      'freeTurn',
      'turning by friction about the vertical',
      'kgM2PerS',
      given.freeTurn,
      [-100, 100],
      0.1,
      force('freeTurn'),
    ),
    input(
      'speedAlong',
      'speed along before the contact, forward +',
      'mPerS',
      v_WScm_W[0],
      [-15, 15],
      0.05,
      before('v_WScm_W', 0),
    ),
    input('speedUp', 'upward speed before the contact', 'mPerS', v_WScm_W[1], [-20, 20], 0.05, before('v_WScm_W', 1)),
    input(
      'speedAcross',
      'speed across before the contact, to the right +',
      'mPerS',
      v_WScm_W[2],
      [-15, 15],
      0.05,
      before('v_WScm_W', 2),
    ),
    ...(['x', 'y', 'z'] as const).map((axis, k) =>
      input(
        `h.${axis}`,
        `momentum before the contact, about ${['the front-back axis of the world', 'the vertical, to the left +', 'the lateral axis, backward +'][k]}`,
        'kgM2PerS',
        h_Scm_W[k],
        [-1000, 1000],
        0.3,
        before('h_Scm_W', k),
      ),
    ),
  ];
}
