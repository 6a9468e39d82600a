/** Cautions in the words that page, command line and files share: what is asked for, then what it was compared with. */

import type { Body } from '../body/body.ts';
import { CHILD_MOMENTS } from '../body/body-build.ts';
import { ADULT_AGE } from '../body/mass-shares.ts';
import { DEG } from '../math/angles.ts';
import { own } from '../math/own.ts';
import type { Caution } from './cautions.ts';
import { isCompared, MOST_TIMES } from './known-strength.ts';

export interface Said {
  readonly title: string;
  readonly detail: string;
}

/** Angle without its side: its action towards + and towards -, one limb that moves, several of them. */
const WORDS: Readonly<Record<string, readonly [string, string, string, string]>> = {
  neckFlexion: ['neck bend', 'neck arch', 'neck', 'necks'],
  neckSideBend: ['neck side bend', 'neck side bend', 'neck', 'necks'],
  neckTurn: ['neck turn', 'neck turn', 'neck', 'necks'],
  thoracicFlexion: ['chest bend', 'chest arch', 'chest', 'chests'],
  thoracicSideBend: ['chest side bend', 'chest side bend', 'chest', 'chests'],
  thoracicTurn: ['chest turn', 'chest turn', 'chest', 'chests'],
  lumbarFlexion: ['waist bend', 'waist arch', 'waist', 'waists'],
  lumbarSideBend: ['waist side bend', 'waist side bend', 'waist', 'waists'],
  lumbarTurn: ['waist turn', 'waist turn', 'waist', 'waists'],
  shoulderPlane: ['arm sweep forward', 'arm sweep back', 'arm', 'arms'],
  shoulderElevation: ['arm raise', 'arm lowering', 'arm', 'arms'],
  shoulderTurn: ['arm turn in', 'arm turn out', 'arm', 'arms'],
  elbowFlexion: ['elbow bend', 'elbow stretch', 'forearm', 'forearms'],
  forearmPronation: ['forearm turn', 'forearm turn', 'forearm', 'forearms'],
  wristFlexion: ['wrist bend', 'wrist stretch', 'hand', 'hands'],
  hipFlexion: ['hip bend', 'hip stretch', 'thigh', 'thighs'],
  hipAbduction: ['leg spread', 'leg closing', 'thigh', 'thighs'],
  hipTurn: ['leg turn in', 'leg turn out', 'thigh', 'thighs'],
  kneeFlexion: ['knee bend', 'knee stretch', 'shank', 'shanks'],
  anklePlantarFlexion: ['toe point', 'toe pull', 'foot', 'feet'],
};

const upper = (words: string): string => words[0].toUpperCase() + words.slice(1);
const whole = (x: number): string => Math.abs(x).toFixed(0);

/** `both`: said of left and right at once. */
export function wordCaution(body: Body, c: Caution, both = false): Said {
  const { name, mirror } = body.angles[c.angle];
  const sided = mirror !== c.angle;
  const words = own(WORDS, sided ? name.slice(0, -1) : name) ?? [name, name, name, name];
  const side = sided && !both ? (name.endsWith('L') ? 'left ' : 'right ') : '';
  const action = upper(side + words[c.value >= 0 ? 0 : 1]);
  if (c.kind === 'range')
    return {
      title: `${action} goes ${whole((c.value - c.limit) * DEG)}° beyond the end of its range.`,
      detail: `${(c.value * DEG).toFixed(0)}° here; the range ends at ${(c.limit * DEG).toFixed(0)}°.`,
    };
  if (c.kind === 'speed')
    return {
      title: `${upper(both ? words[3] : side + words[2])} ${both ? 'move' : 'moves'} faster than ${words[3]} are known to.`,
      detail: `${whole(c.value * DEG)} °/s here; fastest known ${whole(c.limit * DEG)} °/s.`,
    };
  return {
    title: `${action} asks for ${wordTimes(Math.abs(c.value) / c.limit)} the strength known for this joint.`,
    detail: [wordWhose(body, c), ...(c.isExtrapolated ? [BEYOND_WORDS] : []), ...(c.inTuck ? [TUCK_WORDS] : [])].join(
      ' ',
    ),
  };
}

/** Of an angle that no strength was measured at. */
const BEYOND_WORDS = 'The angle lies beyond those measured: two fifths of the best is taken there, our judgement.';
/** Of a tuck that is held. */
const TUCK_WORDS = "In a tuck the hands on the shins carry part of this; the model's hands carry nothing.";

const wordTimes = (times: number): string =>
  times > MOST_TIMES ? `more than ${MOST_TIMES} times` : `${times.toFixed(1)} times`;

function wordWhose(body: Body, c: Caution): string {
  const sex = body.angles[c.angle].strength?.[0].sex;
  switch (c.set) {
    case 'adults':
      return `Compared with adult ${sex === 'female' ? 'women' : 'men'}, measured, scaled by mass and stature.`;
    case 'gymnast':
      return 'Compared with one elite man, measured, scaled by mass.';
    case 'memory':
      return 'Compared with young adults, from memory, scaled by mass.';
    default:
      return 'Compared with our judgement: nothing measured was found for this joint.';
  }
}

/** When, and for a torque how much: what a line of text adds. */
export function wordInstant(c: Caution): string {
  const at = `At ${c.t.toFixed(3)} s`;
  if (c.kind !== 'torque') return `${at}.`;
  const when = c.over ? `From ${c.over[0].toFixed(3)} to ${c.over[1].toFixed(3)} s, in the mean` : at;
  return `${when}: ${whole(c.value)} N·m; known ${whole(c.limit)} at that angle and speed.`;
}

/** For ages that nothing is known of; undefined where the athlete is compared, or has no age. */
export function wordNotCompared(body: Body): Said | undefined {
  if (body.age === undefined || isCompared(body)) return undefined;
  const young = body.age < ADULT_AGE ? `inertia known to ${CHILD_MOMENTS} %; ` : '';
  return {
    title: `${Math.floor(body.age)} years old: ${young}loads are shown, not judged.`,
    detail: 'No measured strength is known for this age, so nothing is compared.',
  };
}
