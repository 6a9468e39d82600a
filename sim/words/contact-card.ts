/** What one contact comes to, as labelled values with what is usual under each: for the page's card and the shell's lines. */
import { DEG } from '../math/angles.ts';
import type { CourseUnknown } from '../skill/contact-faults.ts';
import type { ContactCautionKind, ContactReport } from '../skill/contact-report.ts';
import { LOADS_NOT_COMPARED, wordContactRange, wordPlace } from './contact-words.ts';

interface CardRow {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  /** range or basis */
  readonly under: string;
}

const f = (x: number, digits = 1): string => x.toFixed(digits);
const signed = (x: number): string => `${x < 0 ? '−' : '+'}${f(Math.abs(x))}`;

const NOT_KNOWN: Readonly<Record<CourseUnknown, string>> = {
  whichHand: 'which hand made the turn is not computed',
  whichFoot: 'which foot made the turn is not computed',
  pulse:
    'how force and body go between entry and exit is assumed: peak and way go by that, and only the mean place of the force is judged',
  entry: 'how the body comes to it is not stated: it is led back from the take-off',
  boardDepth: 'how deep the board bends meanwhile is not computed',
};

/** What is not known of a contact, in sentences' parts. */
export const wordNotKnown = (unknowns: readonly CourseUnknown[]): readonly string[] =>
  unknowns.map((u) => NOT_KNOWN[u]);

/** Empty without a contact. */
export function contactCard(report: ContactReport): readonly CardRow[] {
  const { contact: c, ranges } = report;
  if (!c) return [];
  const usual = (kind: ContactCautionKind): string => {
    const range = ranges[kind];
    return range ? wordContactRange(kind, range, report) : '';
  };
  const up = usual('meanUp');
  return [
    {
      label: 'Time',
      value: f(c.time, 2),
      unit: 's',
      under: ranges.time ? wordContactRange('time', ranges.time, report, { digits: 2 }) : '',
    },
    {
      label: 'Mean force',
      value: f(Math.hypot(c.mean.up, c.mean.along)),
      unit: 'weights',
      under: `up ${f(c.mean.up)}${up && ` (${up})`}, ${c.mean.forward < 0 ? 'back' : 'forward'} ${f(c.mean.along)}`,
    },
    peakRow(report, c),
    ...(c.bed
      ? [{ label: 'Bed gives', value: f(c.bed.depth, 2), unit: 'm', under: `holds ${f(c.bed.held)} J/kg` }]
      : []),
    {
      label: 'Net work',
      value: signed(c.work),
      unit: 'J/kg',
      under: `arrived with ${f(c.brought)}${c.bed ? '; net of what the bed held' : ''}`,
    },
    { label: 'Turns it by', value: f(Math.hypot(...c.turnsBy_W), 0), unit: 'kg·m²/s', under: turnWords(c) },
  ];
}

/** Whether it adds to the rotation that was brought, or takes of it. */
function turnWords({ turnsBy_W, broughtTurning_W: brought_W }: NonNullable<ContactReport['contact']>): string {
  const brought = f(Math.hypot(...brought_W), 0);
  if (Number(brought) === 0) return '';
  return turnsBy_W[2] * brought_W[2] < 0 ? `takes it of the ${brought} brought` : `adds to the ${brought} brought`;
}

function peakRow(report: ContactReport, { peak, bed }: NonNullable<ContactReport['contact']>): CardRow {
  const { place, ranges } = report;
  const row = { label: 'Peak, upward', unit: 'weights' };
  if (bed) return { ...row, value: f(bed.peak), under: 'of one linear spring' };
  const [low, high] = peak.up;
  const value = high - low < 0.05 ? f(low) : `${f(low)} to ${f(high)}`;
  const basis = place === 'springboard' ? '2 × mean, published for boards' : '1.57 to 2.2 × mean (our judgement)';
  const known = ranges.peakUp ? `; ${wordContactRange('peakUp', ranges.peakUp, report)}` : '';
  return { ...row, value, under: `${basis}${known}` };
}

/** Lines on force, work and movement of a contact, for the shell. */
export function contactLines(report: ContactReport): string[] {
  const { out, contact: c } = report;
  if (!c) return [];
  const { course } = c;
  const moves = course
    ? `turns by ${f(Math.abs(course.turned) * DEG, 0)} deg, travels ${f(Math.abs(course.moved_W[0]), 2)} m and rises ${f(course.moved_W[1], 2)} m meanwhile`
    : '';
  return [
    `${wordPlace(report.place)}: in ${speeds(c.in)}, out ${speeds(out)}`,
    ...contactCard(report).map(
      ({ label, value, unit, under }) => `${label.toLowerCase()} ${value} ${unit}${under && ` (${under})`}`,
    ),
    ...(moves ? [moves] : []),
    ...(course ? wordNotKnown(course.unknowns) : []),
    ...(c.loadsCompared ? [] : [LOADS_NOT_COMPARED]),
  ];
}

const speeds = ({ along, up }: { readonly along: number; readonly up: number }): string =>
  `${f(along)} m/s along, ${f(Math.abs(up))} ${up < 0 ? 'down' : 'up'}`;
