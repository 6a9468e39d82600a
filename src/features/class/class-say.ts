/** What is said of the answers of a class: names and times as they are shown. Names come from anywhere. */
import type { ClassCell, ClassRow, KeyValue } from '../../../sim/index.ts';
import { wordGuess, wordTimes } from '../../../sim/words/class-words.ts';
import { isolated } from '../../ui/names.ts';
import { tableTexts as t } from './table-words.ts';

export const nameOfRow = ({ worksheet }: Pick<ClassRow, 'worksheet'>): string =>
  isolated(worksheet.student?.name ?? t.noName);

/** "9:58", by the clock it was locked by; with the day where a class locked on more than one. */
export function wordTime(lockedAt: string, hasDays: boolean): string {
  const time = lockedAt.slice(11, 16).replace(/^0(?=\d:)/, '');
  if (!hasDays) return time;
  const [, month, day] = lockedAt.slice(0, 10).split('-').map(Number);
  return `${day} ${MONTHS[month - 1] ?? ''} ${time}`;
}
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

export const hasDays = (rows: readonly { readonly lockedAt?: string }[]): boolean =>
  new Set(rows.flatMap(({ lockedAt }) => lockedAt?.slice(0, 10) ?? [])).size > 1;

/** The number of a cell without the unit that its heading says already. */
export function valueIn(cell: ClassCell & { kind: 'number' }, unit: string): string {
  const text = cell.text.trim();
  return unit !== '' && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}

/** Beside a number that is off: a guess, or how many times. */
export function noteOf(cell: ClassCell): string {
  if (cell.kind === 'unread') return t.unread;
  if (cell.kind !== 'number' || !cell.isOff) return '';
  return cell.guess ? wordGuess(cell.guess) : cell.ratio === undefined ? '' : wordTimes(cell.ratio);
}

export const wordKey = (key: KeyValue | undefined): string =>
  !key ? '' : 'missing' in key ? t.noValue : `${key.figures} ${key.unit.name}`.trim();

/** "answers-10-blue.csv": by the class, where all have the same, else by the title. */
export function csvName(rows: readonly ClassRow[], title: string): string {
  const classes = new Set(rows.map(({ worksheet }) => worksheet.student?.class?.trim() ?? ''));
  const [only = ''] = classes.size === 1 ? classes : [];
  const part = (only || title)
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}+/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  return `answers${part ? `-${part}` : ''}.csv`;
}
