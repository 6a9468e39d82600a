/** What is said of a recording, the same for shell and page. */
import type { RecordingQuality, RecordingStudy, RefusalReason } from '../fit/recording-study.ts';

/** Best published agreement of such a model with filmed flights: Yeadon, Atha & Hales 1990, J Biomech 23:85 (from memory). */
export const BEST_PUBLISHED = { somersaultRev: 0.04, tiltDeg: 7, twistRev: 0.12 } as const;
export const BEST_SOURCE = 'Yeadon, Atha & Hales 1990, J Biomech 23:85';

export const ONE_RECORDING =
  'This is one recording, and its own joint angles steer the model: it tests the mechanics, not the schedule.';

const REFUSALS: Readonly<Record<RefusalReason, (q: RecordingQuality, value: number) => string>> = {
  gravity: ({ g, gError }) =>
    `the fitted g is ${g.toFixed(1)} ± ${(2 * gError).toFixed(1)} m/s2 and must be 9.81: ${g > 9.81 ? '' : 'not in the air, '}a wrong clock (times × ${Math.sqrt(g / 9.81).toFixed(2)} would make it 9.81) or a wrong unit (lengths × ${(9.81 / g).toFixed(2)})?`,
  momentum: (_, value) =>
    `its angular momentum changes by ${Math.round(100 * value)} % in the air, and must stay the same`,
  parabola: (_, value) => `its mass centre is ${Math.round(1000 * value)} mm off a parabola`,
  gap: (_, value) => `a gap of ${value.toFixed(2)} s is too long to fill`,
  short: (_, value) => `it is in the air for ${value.toFixed(2)} s only`,
  unmapped: () => 'not enough of it is known on the body',
};

/** One sentence each; none: good enough for a test. */
const wordRefusals = (quality: RecordingQuality): readonly string[] =>
  quality.refusals.map(({ reason, value }) => REFUSALS[reason](quality, value));

/** In one line: good enough for a test, or not and why. */
export const wordRecordingVerdict = (quality: RecordingQuality): string =>
  quality.refusals.length === 0 ? 'Good enough for a test' : `Not a test: ${wordRefusals(quality).join('; ')}`;

/** Single series give false alarms, so of forty one or two are always said to repeat. */
const REPEATING = 0.25;

/** Whether noise that repeats is the recording's: in more than a quarter of the angles that move. */
export function isNoiseRepeating({ smoothing, isSeen }: Pick<RecordingStudy, 'smoothing' | 'isSeen'>): boolean {
  const moved = smoothing.filter(({ weight }, k) => isSeen[k] && weight > 0);
  return moved.filter(({ isCorrelated }) => isCorrelated).length > REPEATING * moved.length;
}
