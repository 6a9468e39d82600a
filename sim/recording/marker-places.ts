/**
 * Where usual markers sit on the body. Names are the trade's (skin markers by short names as LASI, joint centres by whole words as left knee);
 * places are judgement, in the segment's frame at a stature of 1.62 m, and are only where the search for the real ones begins
 * (calibrate-points.ts). In the neutral pose palms point forward, so the thumb side of a wrist and the outer side of an elbow lie outward.
 */

import type { Body } from '../body/body.ts';
import type { BodySide } from '../math/side.ts';
import type { Triple } from '../math/vec3.ts';
import { readName } from './name-words.ts';

/** How far the real place may lie from the usual one, m: a skin marker, a joint centre; of points written by us, not at all. */
export const SKIN = 0.03;
const CENTRE = 0.01;

interface MarkerPlace {
  readonly segment: string;
  readonly at_B: Triple;
  /** m; 0: exact */
  readonly within: number;
  /** at the centre of a joint */
  readonly isCentre: boolean;
}

interface Row {
  readonly names: RegExp;
  readonly on: string;
  readonly sided: boolean;
  /** forward, m */
  readonly x?: number;
  /** along Y, share of the segment's length and m */
  readonly y?: readonly [share: number, metres: number];
  /** outward of the segment's line, m */
  readonly out?: number;
  /** from a hip or shoulder joint in the trunk instead of the segment's origin */
  readonly from?: 'thigh' | 'upperArm';
  readonly isCentre?: boolean;
}

const skin = (
  names: RegExp,
  on: string,
  sided: boolean,
  x: number,
  y: readonly [number, number],
  out = 0,
  from?: Row['from'],
): Row => ({ names, on, sided, x, y, out, ...(from ? { from } : {}) });
const centre = (names: RegExp, on: string, y: readonly [number, number], from?: Row['from']): Row => ({
  names,
  on,
  sided: true,
  y,
  isCentre: true,
  ...(from ? { from } : {}),
});

const ROWS: readonly Row[] = [
  skin(/^(fhd|fronthead|headfront)$/, 'head', true, 0.085, [0.68, 0], 0.06),
  skin(/^(bhd|backhead|headback|rearhead)$/, 'head', true, -0.085, [0.68, 0], 0.06),
  skin(/^(ear|tragus)$/, 'head', true, 0, [0.5, 0], 0.075),
  skin(/^eye$/, 'head', true, 0.085, [0.55, 0], 0.035),
  skin(/^(head|tophead|headtop|vertex|ariel)$/, 'head', false, 0, [1, 0.005]),
  skin(/^nose$/, 'head', false, 0.115, [0.48, 0]),
  skin(/^(c7|cv7)$/, 'upperTrunk', false, -0.06, [1, 0]),
  skin(/^(t10|tv10|t8|tv8)$/, 'upperTrunk', false, -0.1, [0.1, 0]),
  skin(/^(clav|ij|sternalnotch|jugularnotch|suprasternale)$/, 'upperTrunk', false, 0.055, [0.86, 0]),
  skin(/^(strn|px|xiphoid|sternum)$/, 'upperTrunk', false, 0.11, [0.1, 0]),
  skin(/^(bak|back|scap|scapula)$/, 'upperTrunk', true, -0.1, [0.55, 0], 0.07),
  skin(/^(fsh|fsho|shoulderfront)$/, 'upperTrunk', true, 0.05, [0, 0.01], -0.005, 'upperArm'),
  skin(/^(bsh|bsho|shoulderback)$/, 'upperTrunk', true, -0.055, [0, 0.01], -0.005, 'upperArm'),
  skin(/^(sho|acr|acromion|shoulderlat|shouldertop)$/, 'upperTrunk', true, 0, [0, 0.035], 0.012, 'upperArm'),
  skin(/^(fwt|waistfront)$/, 'pelvis', true, 0.08, [0, 0.1], 0.11),
  skin(/^(mwt|waistside)$/, 'pelvis', true, 0, [0, 0.1], 0.15),
  skin(/^(bwt|waistback)$/, 'pelvis', true, -0.1, [0, 0.1], 0.06),
  skin(/^(asi|asis|iasd)$/, 'pelvis', true, 0.08, [0, 0.085], 0.12),
  skin(/^(psi|psis|ipsd)$/, 'pelvis', true, -0.09, [0, 0.09], 0.045),
  skin(/^(sacr|sacral|sacrum|vsacral|vsac)$/, 'pelvis', false, -0.1, [0, 0.085]),
  skin(/^(gtr|troc|trochanter|greatertrochanter)$/, 'thigh', true, 0, [0, 0], 0.085),
  skin(/^(upa|upperarm|arm|bicep)$/, 'upperArm', true, 0, [-0.5, 0], 0.045),
  skin(/^(elb|elbl|elblat|elbowlat|elbowlateral|lelb|hle|epicondylelateral)$/, 'upperArm', true, 0, [-1, 0], 0.04),
  skin(/^(elm|iel|elbm|elbmed|elbowmed|elbowmedial|melb|hme|epicondylemedial)$/, 'upperArm', true, 0, [-1, 0], -0.04),
  skin(/^(fra|frm|farm|forearm)$/, 'forearm', true, 0, [-0.5, 0], 0.035),
  skin(/^(wra|owr|wrr|wristrad|wristradius|wristradial|rsp)$/, 'forearm', true, 0, [-1, 0], 0.03),
  skin(/^(wrb|iwr|wru|wristuln|wristulna|wristulnar|usp)$/, 'forearm', true, 0, [-1, 0], -0.03),
  skin(/^(fin|finger|knuckle|hand|mc3|hm3)$/, 'hand', true, -0.014, [-0.46, 0]),
  skin(/^(thi|thigh|thighlat|thi1)$/, 'thigh', true, 0, [-0.5, 0], 0.078),
  skin(/^(kne|knel|kneelat|kneelateral|lkne|fle|kneeoutside)$/, 'thigh', true, 0, [-1, 0], 0.052),
  skin(/^(knm|kni|knem|kneemed|kneemedial|mkne|fme|kneeinside)$/, 'thigh', true, 0, [-1, 0], -0.052),
  skin(/^(tib|shn|shin|shank|shanklat|tib1)$/, 'shank', true, 0, [-0.5, 0], 0.048),
  skin(/^(ank|ankl|anklelat|anklelateral|lank|fal|lmal|ankleoutside)$/, 'shank', true, 0, [-1, 0], 0.036),
  skin(/^(anm|ankm|anklemed|anklemedial|mank|tam|mmal|med|ankleinside)$/, 'shank', true, 0, [-1, 0], -0.036),
  skin(/^(hee|hel|heel|fcc|calc|calcaneus)$/, 'foot', true, -0.06, [0, -0.035]),
  skin(/^(toe|toe2|mt2|toetip|bigtoe|halluxtip)$/, 'foot', true, 0.125, [0, -0.03]),
  skin(/^(mt5|mth5|toe5|vmh|toelat|smalltoe)$/, 'foot', true, 0.09, [0, -0.035], 0.045),
  skin(/^(mt1|mth1|toe1|fmh|toemed)$/, 'foot', true, 0.105, [0, -0.035], -0.03),
  centre(/^(hip|hipcentre|hipcenter|hipjoint|hjc|hipjc)$/, 'pelvis', [0, 0], 'thigh'),
  centre(/^(knee|kneecentre|kneecenter|kneejoint|kjc|kneejc)$/, 'thigh', [-1, 0]),
  centre(/^(ankle|anklecentre|anklecenter|anklejoint|ajc|anklejc)$/, 'shank', [-1, 0]),
  centre(
    /^(shoulder|shouldercentre|shouldercenter|shoulderjoint|sjc|shoulderjc|gh)$/,
    'upperTrunk',
    [0, 0],
    'upperArm',
  ),
  centre(/^(elbow|elbowcentre|elbowcenter|elbowjoint|ejc|elbowjc)$/, 'upperArm', [-1, 0]),
  centre(/^(wrist|wristcentre|wristcenter|wristjoint|wjc|wristjc)$/, 'forearm', [-1, 0]),
  { names: /^(midhip|hipmid|hipcentre|pelvis|root)$/, on: 'pelvis', sided: false, y: [0, 0], isCentre: true },
  { names: /^(neck|cervicale)$/, on: 'upperTrunk', sided: false, y: [1, 0], isCentre: true },
];

/** Where the points of our own files are (write-trc.ts), m. */
const OWN_REACH = 0.1;

/** By the name alone; undefined where it says nothing. */
export function placeOfMarker(name: string, body: Body): MarkerPlace | undefined {
  const own = /^(\w+)\.([oxy])$/.exec(name);
  if (own && body.segments.some((s) => s.name === own[1])) {
    const reach = (letter: string): number => (own[2] === letter ? OWN_REACH : 0);
    return { segment: own[1], at_B: [reach('x'), reach('y'), 0], within: 0, isCentre: own[2] === 'o' };
  }
  const { side, whole } = readName(name);
  const found = bySideLetter(name.split(':').pop() ?? '') ?? findRow(side, whole);
  return found && placeOn(body, found.row, found.side);
}

interface FoundRow {
  readonly row: Row;
  readonly side: BodySide | undefined;
}

function findRow(side: BodySide | undefined, whole: string): FoundRow | undefined {
  const row = ROWS.find((r) => r.sided === (side !== undefined) && r.names.test(whole));
  return row && { row, side };
}

/** Short names are of markers on the skin (LASI, rkne); a hip of such a name is its trochanter. */
const SKIN_OF: Readonly<Record<string, string>> = {
  hip: 'troc',
  shoulder: 'sho',
  elbow: 'elb',
  wrist: 'wra',
  knee: 'kne',
  ankle: 'ank',
};

function bySideLetter(own: string): FoundRow | undefined {
  const [, letter, part] = /^([lr])([a-z0-9]+)$/i.exec(own) ?? [];
  if (!letter || !part) return undefined;
  const word = part.toLowerCase();
  return findRow(letter.toLowerCase() === 'l' ? 'L' : 'R', (Object.hasOwn(SKIN_OF, word) && SKIN_OF[word]) || word);
}

function placeOn(body: Body, row: Row, side: BodySide | undefined): MarkerPlace {
  const segment = row.on === 'pelvis' || row.on === 'upperTrunk' || row.on === 'head' ? row.on : `${row.on}${side}`;
  const { values } = body.segments.find((s) => s.name === segment) ?? {};
  const k = (body.stature ?? 1.62) / 1.62;
  const outward = side === 'L' ? -1 : 1;
  const base = row.from
    ? (body.segments.find((s) => s.name === `${row.from}${side}`)?.p_PoBo_P ?? [0, 0, 0])
    : [0, 0, 0];
  const [share, metres] = row.y ?? [0, 0];
  return {
    segment,
    at_B: [
      base[0] + k * (row.x ?? 0),
      base[1] + share * (values?.length ?? 0) + k * metres,
      base[2] + outward * k * (row.out ?? 0),
    ],
    within: row.isCentre ? CENTRE : SKIN,
    isCentre: row.isCentre === true,
  };
}
