/** What is on the print sheet: the lines of text, the picture, the table at the key instants; in the units that are set. */

import type { Frames } from '../../sim/index.ts';
import { DEG, REV } from '../../sim/math/angles.ts';
import { sentence } from '../../sim/words/verdict-words.ts';
import type { PrintedPicture, PrintPictures, PrintRequest } from '../pictures/print-input.ts';
import { sayDay } from '../ui/dates.ts';
import { inWords } from '../ui/names.ts';
import { formatNumber, formatTick, soften } from '../ui/numbers.ts';
import { type QuantityKind, say, sayNumber, toShown, unitOf, unitSystem } from '../ui/units.ts';
import type { Page } from './page.ts';
import { niceTop } from './plot/pen.ts';
import { calcPlace, readAt } from './plot/readout.ts';
import { wordCaution } from './say/caution-words.ts';
import { wordNames } from './say/code-words.ts';
import { wordTakeoff } from './say/say-flight.ts';
import { sayLikelihood } from './say/say-likelihood.ts';
import { speakVerdict } from './say/sentence-words.ts';
import { printTexts } from './sheet-words.ts';
import { wholeStateOf } from './whole-state.ts';
import { texts } from './words.ts';

const t = printTexts;
/** A4 on its side less the margins, CSS px. */
export const PAGE_WIDTH = 1031;
const AIR = 236;
const MOST_INSTANTS = 8;
const LONGEST_TITLE = 30;
/** Instants nearer than this are one column, s. */
const SAME = 0.025;

interface PrintedInstant {
  readonly t: number;
  readonly name: string;
}
interface TableRow {
  readonly name: string;
  readonly unit: string;
  readonly cells: readonly string[];
}
export interface PrintContent {
  readonly skill: string;
  readonly who: string;
  readonly dated: string;
  readonly sentence: string;
  /** of a landing that was run, as a sentence; or empty */
  readonly likelihood: string;
  readonly takeoff: string;
  readonly caution: string;
  readonly code: string;
  readonly picture: PrintedPicture;
  readonly instants: readonly PrintedInstant[];
  readonly rows: readonly TableRow[];
  readonly key: string;
}

export function makeContent(page: Page, ports: PrintPictures, date: Date): PrintContent {
  const { flight, doc } = page;
  const result = flight.result();
  const { frames, file } = result;
  const athlete = doc.athlete();
  const size = athlete.kind === 'human' ? [say('length', athlete.statureM), say('mass', athlete.massKg, 0)] : [];
  const whole = wholeStateOf(page);
  const cautions = whole.cautions();
  const likely = sayLikelihood(whole);
  const instants = listInstants(page);
  const drawn = ports.draw(result, makeRequest(page));
  const picture = { ...drawn, markup: ports.sheetOrigin(result) + drawn.markup };
  return {
    skill: inWords(file.title) || texts.untitled,
    who: [inWords(athlete.name), athlete.club && inWords(athlete.club), ...size].filter(Boolean).join(', '),
    dated: t.version('A', sayDay(date)),
    sentence: speakVerdict(whole.verdict()),
    likelihood: likely && sentence(likely),
    takeoff: wordTakeoff(page),
    caution: [
      ...(result.notCompared ? [result.notCompared.title, result.notCompared.detail] : []),
      ...cautions.slice(0, 1).map(wordCaution),
      ...(cautions.length > 1 ? [`${t.more(cautions.length - 1)}.`] : []),
    ].join(' '),
    code: wordNames(result.names),
    picture,
    instants,
    rows: makeRows(frames, instants),
    key: picture.isCompressed ? t.keyCompressed : t.key,
  };
}

/** Take-off, where each shape is reached and left, landing; the highest point where there is room. */
function listInstants(page: Page): PrintedInstant[] {
  const { flight } = page;
  const { outline } = flight.result();
  const T = outline.duration;
  const end =
    outline.verdict.ending.kind === 'inAir'
      ? t.atLanding.ends
      : outline.inverted
        ? t.atLanding.enters
        : t.atLanding.lands;
  const spans = flight.spans();
  const wanted: PrintedInstant[] = [
    { t: 0, name: t.start },
    { t: T, name: end },
    ...spans.flatMap((span, i) => {
      const next = spans[i + 1];
      return [
        // a long title would make the column wide: the word of its move replaces it
        { t: span.from, name: span.title.length > LONGEST_TITLE ? t.reached(soften(span.word)) : soften(span.title) },
        ...(next ? [{ t: span.to, name: t.begins(soften(next.word)) }] : []),
      ];
    }),
    { t: outline.apex, name: t.apex },
  ];
  const chosen: PrintedInstant[] = [];
  for (const one of wanted) {
    if (one.t < 0 || one.t > T || chosen.length >= MOST_INSTANTS) continue;
    if (chosen.every((other) => Math.abs(other.t - one.t) >= SAME)) chosen.push(one);
  }
  return chosen.sort((a, b) => a.t - b.t);
}

/** Unsigned in the direction in which the flight as a whole turns; against it is negative. */
const wayOf = (column: Float64Array): number => {
  const defined = column.filter((v) => !Number.isNaN(v));
  return (defined.at(-1) ?? 0) < (defined[0] ?? 0) ? -1 : 1;
};

/** `hasMass`: moments are among them, which with the height give the mass. */
export function makeRows(f: Frames, instants: readonly PrintedInstant[], hasMass = true): TableRow[] {
  const ts = wayOf(f.twist);
  const ss = wayOf(f.somersault);
  const row = (
    name: string,
    q: QuantityKind,
    read: (place: ReturnType<typeof calcPlace>) => number,
    decimals?: number,
  ): TableRow => ({
    name,
    unit: q === 'length' && unitOf(q) === 'ft' ? '' : unitOf(q),
    cells: instants.map((one) => {
      const v = read(calcPlace(f, one.t));
      return Number.isNaN(v) ? '–' : sayNumber(q, v, decimals);
    }),
  });
  const r = t.rows;
  return [
    row(r.twistRate, 'rate', (p) => (readAt(f.twistRate, p) / REV) * ts),
    row(r.somersaultRate, 'rate', (p) => (readAt(f.somersaultRate, p) / REV) * ss),
    row(r.twistDone, 'turns', (p) => ((readAt(f.twist, p) - f.twist[0]) / REV) * ts),
    row(r.somersaultDone, 'turns', (p) => ((readAt(f.somersault, p) - f.somersault[0]) / REV) * ss),
    row(r.tilt, 'angle', (p) => Math.abs(readAt(f.tilt, p)) * DEG, 1),
    ...(hasMass
      ? [
          row(r.long, 'moment', (p) => readAt(f.moments, p, 3, 2)),
          row(r.lateral, 'moment', (p) => readAt(f.moments, p, 3, 0)),
        ]
      : []),
    row(r.height, 'length', (p) => readAt(f.p_WScm_W, p, 3, 1)),
  ];
}

/** `width`: of the picture, px; letters keep their size. */
export function makeRequest({ flight }: Page, width = PAGE_WIDTH, hasMass = true): PrintRequest {
  return {
    width,
    airHeight: AIR,
    marks: unitSystem().lengthMarks,
    seconds: (s) => `${formatNumber(s, 2)} s`,
    spans: flight.spans().map(({ title, word, from, to }) => ({ title, word, from, to })),
    plots: makePlots(flight.result().frames, hasMass),
  };
}

/** Rates, and where the mass goes too the moment about the long axis. */
export function makePlots(f: Frames, hasMass = true): PrintRequest['plots'] {
  const rate = toShown('rate', 1 / REV);
  const twist = f.twistRate.map((v) => v * rate * wayOf(f.twist));
  const somersault = f.somersaultRate.map((v) => v * rate * wayOf(f.somersault));
  const moment = Float64Array.from({ length: f.n }, (_, i) => toShown('moment', f.moments[3 * i + 2]));
  const most = (...columns: Float64Array[]): number => {
    let top = 0;
    for (const column of columns) for (const v of column) if (v > top) top = v;
    return top;
  };
  const rateTop = niceTop(Math.max(most(twist, somersault), toShown('rate', 0.5)));
  const dip = most(
    twist.map((v) => -v),
    somersault.map((v) => -v),
  );
  const rateLow = dip > 0.06 * rateTop ? -niceTop(dip) : 0;
  const momentTop = niceTop(most(moment));
  const tick = (value: number) => ({ value, text: formatTick(value) });
  return [
    {
      unit: unitOf('rate'),
      top: rateTop,
      low: rateLow,
      height: 62,
      ticks: [tick(rateTop), tick(0), ...(rateLow < 0 ? [tick(rateLow)] : [])],
      curves: [
        { name: t.twist, values: twist, width: 2.2 },
        { name: t.somersault, values: somersault, width: 1 },
      ],
    },
    ...(hasMass
      ? [
          {
            unit: unitOf('moment'),
            top: momentTop,
            low: 0,
            height: 34,
            ticks: [tick(momentTop), tick(0)],
            curves: [{ name: t.moment, values: moment, width: 2.2 }],
          },
        ]
      : []),
  ];
}
