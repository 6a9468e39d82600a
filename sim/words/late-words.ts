/** What one late hand gives, in plain lines for the command line. Its texts in one place, ready for translation. */
import { DEG, REV } from '../math/angles.ts';
import type { LateDose } from '../skill/late-dose.ts';
import { type NumberWords, PLAIN_NUMBERS } from './verdict-words.ts';

const ms = (s: number): string => (1000 * s).toFixed(1);
const deg = (rad: number): string => (Math.abs(rad) * DEG).toFixed(0);

const LATE_WORDS = {
  title: (hand: string) => `The ${hand} hand later: twists done, and tilt at the end`,
  held: 'ms held on',
  filed: 'arms as filed',
  equal: 'arms equal',
  own: 'as it is',
  dose: (twists: string, side: string, tilt: string) => `${twists}${side && ` ${side}`}, ${tilt} deg`,
  unknown: 'could not be flown',
};

/** What half a millisecond is worth near the time that the skill has. */
export const wordGrain = ({ held, grain: { filed, equal } }: LateDose, n: NumberWords = PLAIN_NUMBERS): string =>
  `Half a millisecond more or less near ${ms(held)} ms is ${n.angle(filed)} of twist${equal === undefined ? '' : ` (arms equal: ${n.angle(equal)})`}: no word on its twist is finer.`;

/** Less is no twist to speak of, rad. */
const LEAST = 0.005 * REV;
const sideOf = (twist: number): string => (Math.abs(twist) < LEAST ? '' : twist > 0 ? 'left' : 'right');

/** What other times of the late hand give, as lines of text. */
export function formatLateDose(dose: LateDose): string {
  const w = LATE_WORDS;
  const say = (d: LateDose['rows'][number]['equal']): string =>
    !d
      ? ''
      : Number.isFinite(d.twist)
        ? w.dose((Math.abs(d.twist) / REV).toFixed(2), sideOf(d.twist), deg(d.tilt))
        : w.unknown;
  const rows = [
    [w.held, w.filed, dose.rows[0].equal ? w.equal : ''],
    ...dose.rows.map((r) => [ms(r.held), say(r.filed), say(r.equal), r.held === dose.held ? w.own : '']),
  ];
  const widths = [0, 1, 2].map((k) => Math.max(...rows.map((r) => r[k].length)));
  const table = rows.map((r) =>
    `  ${r[0].padStart(widths[0])}  ${r[1].padEnd(widths[1])}  ${r[2].padEnd(widths[2])}  ${r[3] ?? ''}`.trimEnd(),
  );
  return `${[w.title(dose.hand), ...table, wordGrain(dose)].join('\n')}\n`;
}
