/** A name of a joint or a marker in words: "Subject:LeftForeArm", "l_forearm", "LForearm" are all left, forearm. */
import type { BodySide } from '../math/side.ts';

export interface NameWords {
  readonly side: BodySide | undefined;
  /** small letters and digits, without the side */
  readonly words: readonly string[];
  /** the words in one */
  readonly whole: string;
}

const SIDES: Readonly<Record<string, BodySide>> = { left: 'L', l: 'L', right: 'R', r: 'R' };
/** names of bones with the side's letter before them */
const LETTERED =
  /^(l|r)(femur|tibia|foot|toes|humerus|radius|wrist|hand|clavicle|collar|thigh|shin|calf|knee|ankle|hip|shoulder|elbow|arm|forearm|upperarm|lowerarm|upleg|leg|uparm|lowarm)$/;
const LONGEST = 100;

/** What is before a colon names the subject, not the part. */
export function readName(name: string): NameWords {
  const own = name.slice(-LONGEST).split(':').pop() ?? '';
  const parts = own
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replace(/([A-Z]+)([A-Z][a-z])/g, '$1 $2')
    .split(/[^A-Za-z0-9]+/)
    .filter((w) => w !== '')
    .map((w) => w.toLowerCase());
  let side: BodySide | undefined;
  const words: string[] = [];
  for (const part of parts) {
    const found = Object.hasOwn(SIDES, part) ? SIDES[part] : undefined;
    if (found && !side) {
      side = found;
      continue;
    }
    const joined = side ? null : (/^(left|right)(.+)$/.exec(part) ?? LETTERED.exec(part));
    if (joined) {
      side = SIDES[joined[1]];
      words.push(joined[2]);
    } else words.push(part);
  }
  return { side, words, whole: words.join('') };
}
