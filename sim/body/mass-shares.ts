/**
 * Share of each segment in the mass of the body, by sex and age. Adults: de Leva 1996 (deleva.ts). Children: Jensen 1986
 * (J Biomech 19:359), boys of 4 to 15 years, straight lines in age, read in an open table of the coefficients; a line of
 * its index that gives the head -0.114 a year is a misprint of -1.14. Trunk thirds as de Leva has them. From 15 to 18 years
 * the one goes over into the other, straight (our judgement: the two studies cut the body at other places).
 */
import { DELEVA, PAIRED, SEGMENT_KINDS, type SegmentKind, type Sex } from './deleva.ts';

/** Of one limb, a share of the body; all segments add up to 1. */
type MassShares = Readonly<Record<SegmentKind, number>>;

/** Years between which Jensen's lines hold, and from which the adult's table does. */
export const JENSEN_AGES: readonly [number, number] = [4, 15];
export const ADULT_AGE = 18;

type Jensen = 'head' | 'trunk' | Exclude<SegmentKind, 'head' | 'upperTrunk' | 'middleTrunk' | 'lowerTrunk'>;
/** Per cent of the body: at birth on the line, and a year. */
const LINES: Readonly<Record<Jensen, readonly [number, number]>> = {
  head: [23.76, -1.14],
  trunk: [42.1, -0.03],
  upperArm: [2, 0.1],
  forearm: [1.7, 0],
  hand: [1.3, -0.03],
  thigh: [6.6, 0.37],
  shank: [4.1, 0.1],
  foot: [2.1, 0],
};

const countOf = (kind: SegmentKind): number => (PAIRED.includes(kind) ? 2 : 1);

export function massShares(sex: Sex, age?: number): MassShares {
  const adult = normalised((kind) => DELEVA[sex].rows[kind].mass);
  if (age === undefined || age >= ADULT_AGE) return adult;
  const [least, most] = JENSEN_AGES;
  const child = childShares(sex, Math.max(least, Math.min(most, age)));
  if (age <= most) return child;
  const grown = (age - most) / (ADULT_AGE - most);
  return normalised((kind) => (1 - grown) * child[kind] + grown * adult[kind]);
}

function childShares(sex: Sex, age: number): MassShares {
  const { rows } = DELEVA[sex];
  const trunk = rows.upperTrunk.mass + rows.middleTrunk.mass + rows.lowerTrunk.mass;
  const line = (kind: Jensen): number => LINES[kind][0] + LINES[kind][1] * age;
  return normalised((kind) => {
    if (kind === 'upperTrunk' || kind === 'middleTrunk' || kind === 'lowerTrunk')
      return (line('trunk') * rows[kind].mass) / trunk;
    return line(kind);
  });
}

/** Tables that round do not sum up: de Leva's women to 99.99 %, Jensen's lines to 100.1 to 101.2. */
function normalised(of: (kind: SegmentKind) => number): MassShares {
  const sum = SEGMENT_KINDS.reduce((total, kind) => total + of(kind) * countOf(kind), 0);
  return Object.fromEntries(SEGMENT_KINDS.map((kind) => [kind, of(kind) / sum])) as MassShares;
}
