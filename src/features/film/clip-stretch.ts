/** Another stretch of a long clip on the ruler: what lies on both stays, what lies on the one before comes back with it. */
import type { ClipMeasured } from '../../../sim/index.ts';
import type { ClipSpan } from '../../clip/clip-source.ts';

/** `from`: s of the file. */
export const stretchOf = ({ name, bytes }: { readonly name: string; readonly bytes: number }, from: number): string =>
  `${name} ${bytes} ${from}`;

/** `known`: what was measured when it was on the ruler last. `isSome`: something is left on the stretch before. */
export function onStretch(
  { marks, posed, ...rest }: ClipMeasured,
  before: Pick<ClipSpan, 'stamps'>,
  now: Pick<ClipSpan, 'stamps'>,
  known?: ClipMeasured,
): { readonly measuring: ClipMeasured; readonly isSome: boolean } {
  const stamps = [...now.stamps];
  const stay = <T extends { readonly frame: number }>(list: readonly T[]): T[] =>
    list.flatMap((one) => {
      const frame = stamps.indexOf(before.stamps[one.frame]);
      return frame < 0 ? [] : [{ ...one, frame }];
    });
  const [stayed, posedThere] = [stay(marks), stay(posed)];
  return {
    measuring: {
      ...rest,
      marks: stayed.length > 0 ? stayed : (known?.marks ?? []),
      posed: posedThere.length > 0 ? posedThere : (known?.posed ?? []),
    },
    isSome: stayed.length < marks.length || posedThere.length < posed.length,
  };
}
