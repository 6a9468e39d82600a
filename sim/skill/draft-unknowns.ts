/** What the search of a draft may change, within what range, and from where it starts. SI, radians; times in s from take-off. */
import { RAD } from '../math/angles.ts';
import type { DraftForm } from './draft-form.ts';
import { type Lifted, mostMomentum, mostPush, siteOf } from './draft-limits.ts';
import type { DraftSpec } from './draft-spec.ts';

type DraftValue =
  /** angular momentum over m h^2 */
  | 'momentum'
  | 'up'
  /** angle of the momentum from the level: the uneven push */
  | 'push'
  /** how unlike the arms come down: 0 alike, 1 one by the side, the other in front */
  | 'throw'
  /** the arms are wrapped by, and until */
  | 'wrap'
  | 'open'
  /** the twist off the bed is over, and the bend begins */
  | 'shut'
  | 'kick'
  /** arms apart at the kick-out, and as the wrap is opened */
  | 'apart'
  | 'level';
export type DraftValues = Readonly<Partial<Record<DraftValue, number>>>;

export interface DraftUnknown {
  readonly name: DraftValue;
  readonly low: number;
  readonly high: number;
  /** in the order in which they are tried */
  readonly starts: readonly number[];
}

/** Angular momentum over m h^2 times the air time for each somersault: a start for the search. */
const NEED = { tuck: 0.17, pike: 0.21, straight: 0.35 } as const;

/** The wrap begins to be opened so long before touchdown at the latest, s. */
const OPENED = 0.35;
/** Arms at a kick-out, from level: one up, one down by as much; less where they wrap for a full, whose arms have little time. */
const widestOf = (late: number): number => (late === 2 ? 76 : 86) * RAD;

export function listUnknowns(spec: DraftSpec, form: DraftForm, T: number, lifted?: Lifted): DraftUnknown[] {
  const { somersaults } = spec;
  const { kind, early, late, bend } = form;
  const most = mostMomentum(spec, lifted);
  const need = (somersaults / T) * (NEED[bend ?? 'straight'] + (bend && kind !== 'plain' ? 0.05 : 0));
  const { from, to } = siteOf(spec);
  const one = (name: DraftValue, low: number, high: number, ...starts: number[]): DraftUnknown => ({
    name,
    low,
    high,
    starts,
  });
  const up = one('up', 0, 13, (9.81 * T) / 2 - (from - to) / T);
  const push = mostPush(form, lifted);
  if (kind === 'jump') return [up, ...(early > 0 ? [one('momentum', 0, 0.05, (early * 0.012) / T)] : [])];
  const list = [one('momentum', 0.01, most, Math.min(0.95 * most, need), Math.min(0.97 * most, 1.25 * need)), up];
  if (kind === 'plain') return list;
  if (kind === 'late') list.push(one('push', -push, push, 0, push / 2));
  else list.push(one('push', 0, push, 0.3 * push, 0.8 * push), one('throw', -0.5, 1, 0.3, 0.9));
  // before an entry the arms have time to come together
  const widestLevel = (spec.surface === 'water' ? 80 : 62) * RAD;
  const level = (wide: boolean): DraftUnknown =>
    one('level', wide ? -widestLevel : -45 * RAD, wide ? widestLevel : 45 * RAD, 0, 30 * RAD, -30 * RAD);
  if (kind === 'throughout') {
    list.push(one('open', 0.4 * T, T - OPENED, T - OPENED - 0.03, T - OPENED - 0.09), level(false));
    if (spec.halfTwists.length > 1) list.push(one('wrap', 0.3, Math.max(0.4, 0.65 * T), 0.32, 0.5 * T, 0.38 * T));
    return list;
  }
  if (kind === 'early' || kind === 'both') {
    const shut = Math.min(0.5, 0.8 / somersaults) * T;
    list.push(one('shut', 0.3, (kind === 'early' ? 0.5 : 0.6) * T, shut, 1.15 * shut, 0.85 * shut));
  }
  if (kind === 'early') return [...list, level(true)];
  const kick = (spec.halfTwists.length > 1 ? (somersaults - 0.8) / somersaults : 0.42) * T;
  const widest = widestOf(late);
  const lastKick = T - 0.75 - (late >= 2 ? 0.3 : 0);
  return [
    ...list,
    one('kick', 0.25 * T, lastKick, kick, 1.05 * kick, 0.93 * kick),
    one('apart', -widest, widest, 40 * RAD, 65 * RAD, -40 * RAD, -65 * RAD, 10 * RAD),
    one('open', 0.45 * T, T - (late === 1 ? 0.47 : 0.42), T - 0.5, T - 0.58),
    level(late === 1),
  ];
}
