import { sideOf, withoutSide } from '../../../sim/math/side.ts';

/** Words of posing, of the catalogue of shapes, and of work on keys. */

const limbs: Readonly<Record<string, string>> = { arm: 'arm', leg: 'leg' };

/** "left arm", "both arms", "head". */
export function wordLimb(limb: string, both = false): string {
  const part = limbs[withoutSide(limb)];
  if (!part) return 'head';
  return both ? `both ${part}s` : `${sideOf(limb) === 'L' ? 'left' : 'right'} ${part}`;
}

/** Joints by the angle that is at its end. */
const joints: readonly (readonly [RegExp, string])[] = [
  [/^shoulder/, 'shoulder'],
  [/^(elbow|forearm)/, 'elbow'],
  [/^hip/, 'hip'],
  [/^knee/, 'knee'],
  [/^neck/, 'neck'],
];
const wordJointAt = (angle: string): string => joints.find(([own]) => own.test(angle))?.[1] ?? 'back';

export const poseTexts = {
  stage: 'The athlete, limb by limb',
  front: 'Body shape, from the front',
  side: 'from the left',
  limbIn: { front: '', side: ', seen from the left' } as Readonly<Record<string, string>>,
  grabAny: 'Grab any limb',
  larger: 'Larger',
  noHandles: 'This body is a tree of its own: its joints are set in the list of angles.',
  moved: (limb: string) => `Turn ${limb} for a moment`,
  shaped: (limb: string) => `Turn ${limb}`,
  gave: (s: number) => `Give the move ${s.toFixed(2)} s more`,
  typed: (joint: string) => `Set ${joint}`,
  raised: (limb: string, from: string, to: string) => `${limb === 'head' ? 'bent' : 'raised'} ${from}° → ${to}°`,
  rate: 'rate',
  spoken: (limb: string, deg: string, turns: string) =>
    `${limb === 'head' ? 'bent' : 'raised'} ${deg} degrees${turns ? `, ${turns}` : ''}`,
  endOf: (angle: string) => `the ${wordJointAt(angle)} ends here`,
  atDeg: (limb: string, deg: string) => `${limb}, ${deg}°`,
  fasterThan: (angle: string) =>
    /^(shoulder|elbow|forearm|wrist)/.test(angle)
      ? 'Faster than these arms can'
      : /^(hip|knee|ankle)/.test(angle)
        ? 'Faster than these legs can'
        : 'Faster than this back can',
  giveMore: (s: number) => `Give it ${s.toFixed(2)} s more`,
  noMore: (s: string) => `Up to ${s} s more does not help.`,
  choose: 'Which limb?',
  putBackLimb: (limb: string) => `Put ${limb.startsWith('both') ? limb : `the ${limb}`} back Esc`,
  putBackShort: 'Put back',
  short: (cm: string) => `${cm} cm out of reach`,
  putBack: 'Put back as it was',
  inMove: 'The body is moving here: a change is for this moment.',

  switches: 'How the hand works',
  sides: { both: 'both sides', one: 'one side' },
  sidesHint: 'The other side makes the same move, seen in a mirror. Alt: the other way round while it is held',
  scope: { shape: 'whole shape', key: 'just this moment' },
  scopeHint: 'The pose at this moment alone, or the held shape from its beginning to its end',

  tabsLabel: 'Shapes, angles, the shape at the cursor',
  tabs: { shapes: 'Shapes', angles: 'Angles', held: 'This shape' },

  anglesAt: (s: string) => `At ${s} s.`,
  setsKey: 'A typed value changes this moment alone.',
  setsShape: (shape: string) => `A typed value changes ${shape} from its beginning to its end.`,
  beyond: (low: string, high: string) => `Beyond its range, ${low}° to ${high}°`,

  sortedBy: 'sorted by',
  sortings: { long: 'long axis', lateral: 'lateral', name: 'name' },
  paths: { direct: 'straight there', front: 'in front', side: 'by the side' },
  moment: 'spread of the mass, kg·m²:',
  enterLays: (s: string) => `a press adds it at ${s} s`,
  tile: (title: string, long: string, lateral: string) =>
    `Add ${title}: mass spread ${long} from the long axis, ${lateral} from the lateral axis`,
  keep: 'keep this pose',
  keepIt: 'Keep',
  notNow: 'Not now',
  nameIt: 'Name of the shape',
  newName: (n: number) => `My shape ${n}`,
  notKept: 'This browser refuses to store the shape. It is kept in the file once it is added.',
  forget: (title: string) => `Forget ${title}`,
  between: (value: string, below: string | undefined, above: string | undefined) =>
    `${value} ${below && above ? `between ${below} and ${above}` : below ? `more than ${below}` : `less than ${above ?? ''}`}`,
  toRuler: (title: string) => `${title}: to the ruler`,
  layHere: (title: string, s: string) => `${title} at ${s} s`,

  noShape: 'There is no shape here. Add one from the list of shapes.',
  heldNow: 'held at the cursor',
  movingNow: 'the body moves into it',
  wholeAt: 'Moved whole, from',
  hands: 'Hands',
  holds: { free: 'free', shin: 'on the shins', behindKnee: 'behind the knees' },
  whichHand: 'which',
  whichHands: { both: 'both', L: 'left', R: 'right' },
  handsOf: (shape: string) => `Change the hands in ${shape}`,
  reaches: (side: 'L' | 'R', on: 'shin' | 'behindKnee') =>
    `${side === 'L' ? 'Left' : 'Right'} hand stays ${on === 'shin' ? 'on the shin' : 'behind the knee'}.`,
  gap: (side: 'L' | 'R', cm: string, on: 'shin' | 'behindKnee') =>
    `${side === 'L' ? 'Left' : 'Right'} hand stays ${cm} cm short of ${on === 'shin' ? 'the shin' : 'the knee'}.`,
  openLanes: 'Open into joint lanes',
  openHint: 'Keys of each joint take the place of the shape. Arms led in front or by the side keep their way within 2°',
  openedTitle: (shape: string) => `Open ${shape} into joint lines`,
} as const;
