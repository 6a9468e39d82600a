import { withoutSide } from '../../../sim/math/side.ts';

/** Words of posing, of the catalogue of shapes, and of work on keys. */

/** of one end or of both of a pair */
const posed: Record<string, string> = {
  hand: 'Pose the hands',
  elbow: 'Pose the elbows',
  foot: 'Pose the feet',
  knee: 'Pose the knees',
  head: 'Pose the head',
};
const shaped: Record<string, string> = {
  hand: 'Change the shape by the hands',
  elbow: 'Change the shape by the elbows',
  foot: 'Change the shape by the feet',
  knee: 'Change the shape by the knees',
  head: 'Change the shape by the head',
};

export const poseTexts = {
  ends: {
    handL: 'Left hand',
    handR: 'Right hand',
    elbowL: 'Left elbow',
    elbowR: 'Right elbow',
    footL: 'Left foot',
    footR: 'Right foot',
    kneeL: 'Left knee',
    kneeR: 'Right knee',
    head: 'Head',
  } as Record<string, string>,
  stage: 'Posing',
  front: 'Held upright: front',
  side: 'from the left',
  frontOf: (end: string) => `${end}, seen from the front`,
  sideOf: (end: string) => `${end}, seen from the left`,
  handleHint: 'Arrow keys move it 1 cm, with Shift 5 cm; with Alt the other choice of sides; Escape puts it back',
  noHandles: 'This body is a tree of its own: its joints are set in the list of angles.',
  moved: (end: string) => posed[withoutSide(end)] ?? `Pose ${end}`,
  shaped: (end: string) => shaped[withoutSide(end)] ?? `Change the shape by ${end}`,
  typed: (joint: string) => `Set ${joint}`,
  atEnd: (joint: string) => `${joint}: end of its range`,
  short: (cm: string) => `${cm} cm out of reach`,
  putBack: 'Put back as it was',
  putBackKey: 'Esc puts it back',

  switches: 'How the hand works',
  sides: { both: 'both sides', one: 'one side' },
  sidesHint: 'The other side makes the same move, seen in a mirror. Alt: the other way round while it is held',
  scope: { key: 'key here', shape: 'whole shape' },
  scopeHint: 'A key at the cursor, or the held shape changed from its beginning to its end',

  tabsLabel: 'Shapes, angles, the shape at the cursor',
  tabs: { shapes: 'Shapes', angles: 'Angles', held: 'This shape' },

  anglesAt: (s: string) => `At ${s} s.`,
  setsKey: 'A typed value sets a key here.',
  setsShape: (shape: string) => `A typed value changes ${shape} from its beginning to its end.`,
  beyond: (low: string, high: string) => `Beyond its range, ${low}° to ${high}°`,

  sortedBy: 'sorted by',
  sortings: { long: 'long axis', lateral: 'lateral', name: 'name' },
  paths: { direct: 'straight there', front: 'in front', side: 'by the side' },
  moment: 'moment, kg·m²:',
  enterLays: (s: string) => `a press adds it at ${s} s`,
  tile: (title: string, long: string, lateral: string) =>
    `Add ${title}: moment ${long} about the long axis, ${lateral} about the lateral axis`,
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
