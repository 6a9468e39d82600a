/**
 * The name of a change of shape, as a short list of known moves: what arms, hips, knees and spine did between two poses.
 * By named angles of the human; a body without these names moves 'joints'. Poses: one value for each Body angle, rad.
 */

import type { Body } from '../body/body.ts';
import { RAD } from '../math/angles.ts';

export type MoveWord =
  | 'armsIn'
  | 'armsOut'
  | 'armsUp'
  | 'armsDown'
  | 'armsApart'
  | 'armsLevel'
  | 'armsRound'
  | 'armsAdjust'
  | 'armsBend'
  | 'armsStretch'
  | 'tuck'
  | 'pike'
  | 'open'
  | 'arch'
  | 'legsApart'
  | 'legsTogether'
  | 'legsSplit'
  | 'legsCircle'
  | 'kneesBend'
  | 'kneesStretch'
  | 'hipsBend'
  | 'hipsStraighten'
  | 'round'
  | 'straighten'
  | 'sideBend'
  | 'turnTrunk'
  | 'head'
  | 'feet'
  | 'joints';

/** Changes smaller than this have no word, rad. */
const SMALL = 8 * RAD;
/** Hips bent beyond this are a tuck or a pike, knees beyond it a tuck; less than OPEN is open. */
const BENT = 75 * RAD;
const OPEN = 60 * RAD;
/** Hips bent less than this have nothing to open. */
const FOLDED = 35 * RAD;
/** Arms of one height are up or down beyond these, and in with elbows bent so far. */
const HIGH = 135 * RAD;
const LOW = 45 * RAD;
const ELBOW = 60 * RAD;
/** Left and right that differ by more than this stand apart. */
const APART = 30 * RAD;

type Pose = ArrayLike<number>;

export function findMoves(body: Body, moving: readonly number[], before: Pose, after: Pose): MoveWord[] {
  const index = new Map(body.angles.map((a, i) => [a.name, i]));
  if (!index.has('shoulderElevationL') || !index.has('hipFlexionL')) return moving.length > 0 ? ['joints'] : [];
  const at = (pose: Pose, name: string): number => pose[index.get(name) ?? -1] ?? 0;
  const mean = (pose: Pose, name: string): number => (at(pose, `${name}L`) + at(pose, `${name}R`)) / 2;
  const gap = (pose: Pose, name: string): number => Math.abs(at(pose, `${name}L`) - at(pose, `${name}R`));
  const change = (name: string): number => mean(after, name) - mean(before, name);
  const moves = (pattern: RegExp): boolean => moving.some((a) => pattern.test(body.angles[a].name));
  const out: MoveWord[] = [];

  if (moves(/^(shoulder|elbow)/)) {
    const apart = gap(after, 'shoulderElevation') - gap(before, 'shoulderElevation');
    // how far the hands stand from the body's long axis, in arm lengths, by the elevation and the bend of the elbow
    const width = (pose: Pose): number =>
      ['L', 'R'].reduce(
        (sum, s) =>
          sum + Math.abs(Math.sin(at(pose, `shoulderElevation${s}`))) * Math.cos(at(pose, `elbowFlexion${s}`) / 2),
        0,
      ) / 2;
    const wider = width(after) - width(before);
    const higher = change('shoulderElevation');
    if (apart > APART) out.push('armsApart');
    else if (apart < -APART) {
      const height = mean(after, 'shoulderElevation');
      if (mean(after, 'elbowFlexion') > ELBOW) out.push('armsIn');
      else out.push(height < LOW ? 'armsDown' : height > HIGH ? 'armsUp' : 'armsLevel');
    } else if (wider < -0.2) out.push('armsIn');
    else if (wider > 0.2) out.push('armsOut');
    if (
      Math.abs(apart) <= APART &&
      Math.abs(higher) > APART &&
      (Math.abs(wider) <= 0.2 || Math.abs(higher) > 3 * APART)
    )
      out.push(higher > 0 ? 'armsUp' : 'armsDown');
    if (out.length === 0) {
      const bend = change('elbowFlexion');
      if (bend > SMALL) out.push('armsBend');
      else if (bend < -SMALL) out.push('armsStretch');
      else
        out.push(
          moving.some((a) => /^shoulder/.test(body.angles[a].name) && Math.abs(after[a] - before[a]) > SMALL)
            ? 'armsRound'
            : 'armsAdjust',
        );
    }
  }
  const arms = out.length;
  if (moves(/^(hipFlexion|kneeFlexion)/)) {
    const hips = change('hipFlexion');
    const knees = change('kneeFlexion');
    const [hip, knee] = [mean(after, 'hipFlexion'), mean(after, 'kneeFlexion')];
    const split = gap(after, 'hipFlexion') - gap(before, 'hipFlexion');
    if (split > APART) out.push('legsSplit');
    else if (hips > SMALL && hip > BENT) out.push(knee > BENT ? 'tuck' : 'pike');
    else if (hips < -SMALL && hip < -SMALL) out.push('arch');
    else if (hips < -SMALL && hip - hips < FOLDED) out.push('hipsStraighten');
    else if (hips < -SMALL && (hip < OPEN || knees < -SMALL || hips < -APART)) out.push('open');
    else if (hips > SMALL) out.push('hipsBend');
    else if (knees > SMALL) out.push('kneesBend');
    else if (knees < -SMALL) out.push('kneesStretch');
  }
  if (moves(/^hipAbduction/)) {
    const wide = change('hipAbduction');
    if (wide > SMALL) out.push('legsApart');
    else if (wide < -SMALL) out.push('legsTogether');
    // out and back again
    else if (out.length === arms) out.push('legsCircle');
  }
  if (moves(/^(lumbar|thoracic)/)) {
    const of = (pose: Pose, what: string): number => at(pose, `lumbar${what}`) + at(pose, `thoracic${what}`);
    const bend = of(after, 'Flexion') - of(before, 'Flexion');
    const side = of(after, 'SideBend') - of(before, 'SideBend');
    const turn = of(after, 'Turn') - of(before, 'Turn');
    const named = out.length > arms;
    if (Math.abs(side) > SMALL) out.push('sideBend');
    if (Math.abs(turn) > SMALL) out.push('turnTrunk');
    // the back rounds and straightens with a tuck, a pike, an arch: no word of its own
    if (!named && Math.abs(bend) > SMALL)
      out.push(of(after, 'Flexion') < -SMALL ? 'arch' : bend > 0 ? 'round' : 'straighten');
  }
  // legs first where they bend or open: they change more than the arms do
  const big: readonly MoveWord[] = ['tuck', 'pike', 'open'];
  out.sort((a, b) => Number(big.includes(b)) - Number(big.includes(a)));
  if (out.length === 0 && moves(/^neck/)) out.push('head');
  if (out.length === 0 && moves(/^ankle/)) out.push('feet');
  if (out.length === 0 && moving.length > 0) out.push('joints');
  return out;
}
