/** What is said of a filming plan, the same for shell, page and paper. */
import type { PartName } from '../filming/filmed-body.ts';
import type { HiddenJoint, JointName, JointSide } from '../filming/hidden-joints.ts';
import type { FilmingPlan } from '../filming/plan.ts';

export interface FilmingNumbers {
  metres(m: number): string;
  /** of what moves between two pictures */
  step(m: number): string;
}

export const PLAIN_FILMING: FilmingNumbers = {
  metres: (m) => `${trim(m, 2)} m`,
  step: (m) => `${(100 * m).toFixed(m < 0.1 ? 1 : 0)} cm`,
};

const trim = (x: number, most: number): string => String(Number(x.toFixed(most)));

interface FilmingRun {
  readonly text: string;
  readonly isStrong?: true;
}
const strong = (text: string): FilmingRun => ({ text, isStrong: true });

/** What is fastest in the picture at its fastest: hands and feet together where both are as fast. */
interface FastestPart {
  readonly t: number;
  readonly part: PartName;
  readonly isPair: boolean;
  readonly metres: number;
  readonly pixels: number;
  readonly degrees: number; // rad
  readonly blur: number;
  readonly skew: number;
}

/** Of a pair as fast as this, one is not named alone. */
const AS_FAST = 0.98;

/** At one row of the plan; undefined of a body without hands, feet and head. */
export function fastestAt({ steps, parts, t }: FilmingPlan, row: number): FastestPart | undefined {
  const part = parts[steps.fastest[row]];
  if (part === undefined) return undefined;
  const at = (name: PartName): number => parts.length * row + parts.indexOf(name);
  const mate =
    part === 'head' ? undefined : parts.find((other) => other !== part && other.slice(0, 4) === part.slice(0, 4));
  const j = at(part);
  return {
    t: t[row],
    part,
    isPair: mate !== undefined && steps.pixels[at(mate)] >= AS_FAST * steps.pixels[j],
    metres: steps.metres[j],
    pixels: steps.pixels[j],
    degrees: steps.degrees[j],
    blur: steps.blur[row],
    skew: steps.skew[row],
  };
}

/** Where it is fastest of all. */
export const fastestOf = (plan: FilmingPlan): FastestPart | undefined => fastestAt(plan, plan.steps.most.row);

const PART_WORDS: Readonly<Record<PartName, string>> = {
  handL: 'left hand',
  handR: 'right hand',
  footL: 'left foot',
  footR: 'right foot',
  head: 'head',
};

/** "the feet", "the left hand" */
export function wordPart({ part, isPair }: Pick<FastestPart, 'part' | 'isPair'>): string {
  if (!isPair) return PART_WORDS[part];
  return part.startsWith('hand') ? 'hands' : 'feet';
}

/** "2.8", "23" */
export const wordPixels = (px: number): string => (px < 10 ? px.toFixed(1) : px.toFixed(0));

/** "At 120 frames a second from 8.5 m, the feet move 8 cm and 23 pixels a frame, blurred by 3." */
export function wordFilming(plan: FilmingPlan, numbers = PLAIN_FILMING): FilmingRun[] {
  const { framesHz, away } = plan.camera;
  const from = [
    { text: 'At ' },
    strong(`${trim(framesHz, 2)} frames a second`),
    { text: ' from ' },
    strong(numbers.metres(away)),
  ];
  const fast = fastestOf(plan);
  if (!fast) return [...from, { text: '.' }];
  return [
    ...from,
    { text: `, the ${wordPart(fast)} ${fast.isPair ? 'move' : 'moves'} ` },
    strong(numbers.step(fast.metres)),
    { text: ' and ' },
    strong(`${wordPixels(fast.pixels)} pixels`),
    { text: ' a frame, blurred by ' },
    strong(wordPixels(fast.blur)),
    { text: '.' },
  ];
}

/** Runs as one line. */
export const plainRuns = (runs: readonly FilmingRun[]): string => runs.map(({ text }) => text).join('');

/** Farther than this between two pictures a limb cannot be followed (judgement), m. */
const FAR_STEP = 0.2;
/** More than this in the picture a joint cannot be marked to 1 cm (judgement), px. */
const MUCH_BLUR = 6;

/** What would spoil the film, worst first; none: nothing does. */
export function wordFilmingFaults(plan: FilmingPlan, numbers = PLAIN_FILMING): string[] {
  const { picture, camera, holdsFrom } = plan;
  const out: string[] = [];
  const [first, ...more] = picture.leaves;
  if (first) {
    const who = first.limb === 'head' || first.limb === 'body' ? `${first.limb} leaves` : `${first.limb} leave`;
    const edges = joined([first, ...more].map(({ edge }) => edge));
    const room =
      holdsFrom === undefined
        ? 'no distance would hold all of it: look at the middle of the flight'
        : `${numbers.metres(holdsFrom)} would hold all of it`;
    out.push(`The ${who} the picture at the ${edges}, first at ${first.t.toFixed(2)} s; ${room}.`);
  }
  const fast = fastestOf(plan);
  if (fast && fast.metres > FAR_STEP)
    out.push(
      `${trim(camera.framesHz, 2)} frames a second: the ${wordPart(fast)} ${fast.isPair ? 'move' : 'moves'} ${numbers.step(fast.metres)} between two.`,
    );
  if (fast && fast.blur > MUCH_BLUR)
    out.push(
      `The shutter smears the ${wordPart(fast)} over ${wordPixels(fast.blur)} pixels; a shorter one needs more light.`,
    );
  return out;
}

const joined = (list: readonly string[]): string =>
  list.length < 2 ? list.join('') : `${list.slice(0, -1).join(', ')} and ${list[list.length - 1]}`;

export const ONE_CAMERA = 'One camera gives tilt only through the count of twists.';
export const ASK_FIRST = 'Ask everyone in view before you film.';

const SIDES: Readonly<Record<JointSide, string>> = { L: 'left', R: 'right' };
/** "right shoulder" */
export const wordJoint = ({ joint, side }: { readonly joint: JointName; readonly side: JointSide }): string =>
  `${SIDES[side]} ${joint}`;

/** "half of the time", "12 % of the time" */
export const wordShare = (share: number): string => {
  const percent = Math.round(100 * share);
  if (share === 0) return 'never';
  if (percent >= 100) return 'all of the time';
  return percent >= 48 && percent <= 52 ? 'half of the time' : `${Math.max(1, percent)} % of the time`;
};

/** The joint that is hidden longest. */
export const mostHidden = (hidden: readonly HiddenJoint[]): HiddenJoint | undefined =>
  hidden.reduce<HiddenJoint | undefined>((most, one) => (one.share > (most?.share ?? 0) ? one : most), undefined);

/** "1/1000 s" */
export const wordShutter = (s: number): string => {
  const part = 1 / s;
  return s < 0.5 && Math.abs(part - Math.round(part)) < 0.005 * part ? `1/${Math.round(part)} s` : `${trim(s, 5)} s`;
};

/** "read line by line in 8 ms", "read all at once" */
export const wordLines = (s: number): string =>
  s === 0 ? 'read all at once' : `read line by line in ${trim(1000 * s, 1)} ms`;

/** m along and across the flight, to half a metre outward: four marks on the floor about all of the room. */
export const marksOf = ({ room }: FilmingPlan): readonly [along: number, across: number] => {
  const out = (k: number): number => Math.ceil(2 * (room.high[k] - room.low[k]) - 1e-9) / 2;
  return [out(0), out(2)];
};

/** Along the flight, across it, and from the floor up, m. */
export const roomSize = ({ room, stand }: FilmingPlan): readonly [number, number, number] => [
  room.high[0] - room.low[0],
  room.high[2] - room.low[2],
  room.high[1] - stand.floorY,
];
