/**
 * How the skill of a code is put together: when it is bent, where the twist begins and ends. A code that twists in every somersault of a straight body twists
 * throughout; a bent one twists off the bed, bends and twists out of the kick-out.
 */
import type { DraftSpec } from './draft-spec.ts';

export interface DraftForm {
  readonly kind: 'jump' | 'plain' | 'throughout' | 'early' | 'late' | 'both';
  /** half twists off the bed or floor, and out of the kick-out */
  readonly early: number;
  readonly late: number;
  readonly bend?: 'tuck' | 'pike';
  /** rev */
  readonly twists: number;
}

export function formOf({ somersaults, halfTwists, shape, landing }: DraftSpec): DraftForm {
  const total = halfTwists.reduce((a, b) => a + b, 0);
  const bend = shape === 'straight' ? {} : { bend: shape };
  const first = halfTwists[0] ?? 0;
  const rest = total - first;
  const make = (kind: DraftForm['kind'], early: number, late: number): DraftForm => ({
    kind,
    early,
    late,
    ...bend,
    twists: total / 2,
  });
  if (somersaults === 0) return make('jump', total, 0);
  if (total === 0) return make('plain', 0, 0);
  if (halfTwists.length === 1) {
    // into the water head first there is no room for a twist after the bend
    if (shape !== 'straight' && landing !== 'headFirst') return make('late', 0, total);
    return shape === 'straight' ? make('throughout', total, 0) : make('early', total, 0);
  }
  if (rest === 0) return make('early', first, 0);
  if (first === 0 && rest === halfTwists[halfTwists.length - 1]) return make('late', 0, rest);
  return shape === 'straight' ? make('throughout', total, 0) : make('both', first, rest);
}
