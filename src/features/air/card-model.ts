/** A card for each phase of a chain, as plain words: what a contact took and gave, what a flight was, what ends it. A value that does not exist is a dash. */
import type { SkillVerdict } from '../../../sim/index.ts';
import { wordDown, wordLanded, wordVerdict } from '../../../sim/words/verdict-words.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import type { ContactResult, LandingOutcome, LegResult } from '../../jobs/kinds/leg-data.ts';
import type { PhaseSpan, WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber } from '../../ui/units.ts';
import { cardTexts as t } from './card-texts.ts';

interface CardRow {
  readonly name: string;
  readonly value: string;
  /** under the value: a range, what it is of */
  readonly under?: string;
  readonly hue?: 'som' | 'twist';
}
export interface Card {
  readonly kind: 'contact' | 'flight' | 'end';
  readonly leg: number;
  readonly from: number;
  readonly to: number;
  readonly name: string;
  readonly aside: string;
  /** large, first */
  readonly head?: string;
  readonly rows: readonly CardRow[];
  readonly notes: readonly string[];
  /** what could not be */
  readonly faults: readonly string[];
  readonly isOpen?: true;
}

const DASH = '–';
const DEG = 180 / Math.PI;
const weights = (n: number): string => t.weights(formatNumber(n, 1));
const signed = (n: number, decimals: number): string => `${n >= 0 ? '+' : '−'}${formatNumber(Math.abs(n), decimals)}`;

interface Range {
  readonly low: number;
  readonly high: number;
  readonly basis: string;
}
/** "usual 0.10 to 0.14"; nothing for a load that is compared with nothing. */
function wordRange(range: Range | undefined, decimals: number): string | undefined {
  if (!range) return undefined;
  const basis = t.bases[range.basis] ?? range.basis;
  const [low, high] = [range.low, range.high].map((v) => formatNumber(v, decimals));
  return Number.isFinite(range.low) && range.low !== 0 ? t.range(low, high, basis) : t.upTo(high, basis);
}

function peakRow({ report, course }: ContactResult): CardRow {
  const detail = report?.contact;
  if (detail?.bed) return { name: t.peak, value: weights(detail.bed.peak), under: t.spring };
  if (!detail) return { name: t.peak, value: course ? weights(course.peak.up) : DASH };
  const { mean, peak } = detail;
  const [low, high] = peak.up;
  const factors = [low, high].map((v) => formatNumber(v / mean.up, 2).replace(/\.?0+$/, ''));
  const span = high - low < 0.05 ? formatNumber(low, 1) : `${formatNumber(low, 1)} – ${formatNumber(high, 1)}`;
  return { name: t.peak, value: t.weights(span), under: t.factor(factors[0], factors[1]) };
}

function faultsOf({ course }: ContactResult): string[] {
  return (course?.faults ?? []).map(({ kind, value }) => {
    const size =
      kind === 'turns'
        ? `${formatNumber(value * DEG, 0)}°`
        : kind === 'slips'
          ? formatNumber(value, 1)
          : kind === 'comesOff'
            ? `${formatNumber(value, 0)} N`
            : say('length', value);
    return t.faults[kind](size);
  });
}

function contactCard(span: PhaseSpan, leg: LegResult, contact: ContactResult): Card {
  const { course, report } = contact;
  const detail = report?.contact;
  const ranges =
    detail?.loadsCompared === false ? { ...report?.ranges, meanUp: undefined, work: undefined } : report?.ranges;
  const work = course?.work ?? detail?.work;
  const brought = course?.brought ?? detail?.brought;
  const isBack = leg.vx * (course?.gave.v_W[0] ?? 0) < 0;
  const rows: CardRow[] = [
    { name: t.time, value: `${formatNumber(contact.time, 2)} s`, ...under(wordRange(ranges?.time, 2)) },
    {
      name: t.mean,
      value: weights(contact.bodyWeights),
      ...under(
        detail
          ? [
              t.upBack(formatNumber(detail.mean.up, 1), formatNumber(detail.mean.along, 1), isBack),
              wordRange(ranges?.meanUp, 1),
            ]
              .filter(Boolean)
              .join('; ')
          : undefined,
      ),
    },
    peakRow(contact),
    {
      name: t.work,
      value: work === undefined ? DASH : `${signed(work, 1)} J/kg`,
      ...under(brought === undefined ? undefined : t.arrived(formatNumber(brought, 1))),
    },
    { name: t.turns, value: say('momentum', Math.abs(contact.angularImpulse)) },
    ...(course?.depth ? [{ name: t.depth, value: say('length', course.depth) }] : []),
  ];
  const notes = (course?.unknowns ?? []).flatMap((one) => (t.unknowns[one] ? [t.unknowns[one]] : []));
  const entry = course ? t.entries[course.entry] : '';
  return {
    kind: 'contact',
    leg: span.leg,
    from: span.from,
    to: span.to,
    name: t.where[contact.on] ?? contact.on,
    aside: contact.by === 'hands' ? t.hands : t.limbs.feet,
    rows,
    notes: [...notes, ...(entry ? [entry] : [])],
    faults: faultsOf(contact),
  };
}

const under = (text: string | undefined): Pick<CardRow, 'under'> => (text ? { under: text } : {});

/** "0.39 twists of 0.5" where it was missed, else what was flown. */
export function turnedRows({ verdict }: Pick<LegResult, 'verdict'>): CardRow[] {
  const { flown, missed } = verdict;
  if (flown.somersaults === undefined) return [{ name: t.turned, value: DASH }];
  const rows: CardRow[] = [];
  if (flown.somersaults >= 0.05)
    rows.push({
      name: t.turned,
      value: `${say('turns', flown.somersaults, 2)}`,
      under: t.somersaults(flown.somersaultWord),
      hue: 'som',
    });
  const miss = missed.find((one) => one.kind === 'twists');
  if ((flown.twists ?? 0) >= 0.05)
    rows.push({
      name: '',
      value:
        miss?.kind === 'twists'
          ? t.twistsOf(sayNumber('turns', miss.done, 2), formatNumber(miss.wanted, 1))
          : t.twists(sayNumber('turns', flown.twists ?? 0, 2)),
      hue: 'twist',
    });
  return rows.length > 0 ? rows : [{ name: t.turned, value: t.noTurn }];
}

function flightCard(span: PhaseSpan, leg: LegResult): Card {
  const { flight } = leg;
  const [along, up] = [Math.abs(flight.leaves[0]), flight.leaves[1]];
  return {
    kind: 'flight',
    leg: span.leg,
    from: span.from,
    to: span.to,
    name: t.flight,
    aside: '',
    head: `${formatNumber(span.to - span.from, 2)} s`,
    rows: turnedRows(leg),
    notes: [
      t.moveAlong(say('speed', along, 1), say('speed', Math.abs(up), 1), up < 0),
      t.turning(say('momentum', flight.momentum)),
      t.rises(say('length', flight.top)),
    ],
    faults: [],
  };
}

function endCard(whole: WholeResult): Card | undefined {
  const k = whole.legs.length - 1;
  const leg = whole.legs[k];
  if (!leg.end || leg.end === 'open') return undefined;
  const { landing, flight } = leg;
  const report = landing?.kind === 'landed' ? landing.report : undefined;
  const [along, , down] = [Math.abs(flight.arrives[0]), 0, Math.abs(flight.arrives[1])];
  const unjudged = report && wordUnjudged(leg.verdict, report.ending.kind === 'tooFast');
  const isOpen = landing !== undefined && landing.kind !== 'landed';
  const rows: CardRow[] = report
    ? [
        { name: t.peak, value: weights(report.filteredPeak.bodyWeights), under: t.overTenMs },
        { name: t.mean, value: report.brakeTime ? weights(report.meanBodyWeights) : DASH },
      ]
    : leg.end === 'landing'
      ? [
          { name: t.time, value: DASH },
          { name: t.mean, value: DASH },
          { name: t.peak, value: DASH },
        ]
      : [];
  return {
    kind: 'end',
    leg: k,
    from: leg.touchdown,
    to: whole.to,
    // on a bed with a mat over it the landing is what was computed, not the next bounce
    name: report ? t.ends.landing : t.ends[leg.end],
    aside: '',
    head: unjudged ? t.impactOnly : wordHead(leg.verdict, landing),
    rows,
    notes: [t.comesDown(say('speed', down, 1), say('speed', along, 1)), ...(unjudged ? [unjudged] : [])],
    faults: [],
    ...(isOpen ? { isOpen: true } : {}),
  };
}

/** Forces of the impact are computed, and its ending is not: why; undefined where it is judged. */
function wordUnjudged({ ending }: SkillVerdict, isFast: boolean): string | undefined {
  if (isFast) return t.tooFast;
  return ending.kind === 'landed' ? undefined : t.endingNotJudged;
}

function wordHead(verdict: SkillVerdict, landing: LandingOutcome | undefined): string {
  if (landing?.kind === 'notOnFeet') return wordDown(landing.part);
  if (verdict.ending.kind === 'landed') return wordLanded(verdict.ending);
  const said = wordVerdict({ ...verdict, missed: [] }, PAGE_NUMBERS);
  return said.split(/[,;:] /).at(-1) ?? said;
}

export function cardsOf(whole: WholeResult): readonly Card[] {
  const cards = whole.phases.flatMap((span): Card[] => {
    const leg = whole.legs[span.leg];
    if (span.kind === 'contact' && leg.contact) return [contactCard(span, leg, leg.contact)];
    return span.kind === 'flight' ? [flightCard(span, leg)] : [];
  });
  const end = endCard(whole);
  return end ? [...cards, end] : cards;
}
