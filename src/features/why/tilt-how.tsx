/** How the tilt came about: which part took angular momentum about which axis, and what the shape then did by itself. */
import { createMemo, For } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import type { TiltMechanism } from '../../engine/account.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { accountTexts as a } from './words.ts';

/** Less than this is nothing to a reader, deg. */
const NOTHING = 0.3;
/** Parts that are named. */
const MOST = 3;

/** `sign`: of the whole tilt, so that + goes with it. */
export function TiltHow(props: { mechanism: TiltMechanism; sign: number }) {
  const lines = createMemo(() => {
    const { start, parts, byLean, byBreathing } = props.mechanism;
    const along = (v: number): number => v * DEG * props.sign;
    const signed = (v: number): string => `${along(v) > 0 ? '+' : ''}${formatNumber(along(v), 1)}°`;
    const matters = (v: number): boolean => Math.abs(along(v)) >= NOTHING;
    return [
      ...(matters(start) ? [a.atStart(signed(start))] : []),
      ...parts
        .filter((p) => matters(p.turned))
        .slice(0, MOST)
        .map((p) =>
          a.takes(
            a.groups[p.group as keyof typeof a.groups],
            say('momentum', Math.abs(p.momentum)),
            a.axes[p.axis],
            formatNumber(p.t, 2),
            signed(p.turned),
          ),
        ),
      ...(matters(byLean) ? [a.byLean(signed(byLean))] : []),
      ...(matters(byBreathing) ? [a.byBreathing(signed(byBreathing))] : []),
    ];
  });
  return (
    <ul class="tilt-how" aria-label={a.howTitle}>
      <For each={lines()}>{(line) => <li>{line}</li>}</For>
    </ul>
  );
}
