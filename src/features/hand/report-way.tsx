/** The report: pages of A4, printed or kept. */

import { createMemo, createResource, For, onCleanup } from 'solid-js';
import { sentence } from '../../../sim/words/verdict-words.ts';
import type { Page } from '../../app/page.ts';
import { clearPages, printPages, svgBlob } from '../../app/print-pages.ts';
import { wordTakeoff } from '../../app/say/say-flight.ts';
import { sayLikelihood } from '../../app/say/say-likelihood.ts';
import { PAGE_NUMBERS, speakSentence } from '../../app/say/sentence-words.ts';
import { makeRequest, makeRows } from '../../app/sheet-content.ts';
import { wholeStateOf } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import type { Versions } from '../../document/versions.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { PaperPage } from '../../paper/page-svg.ts';
import type { ReportSection } from '../../paper/report.ts';
import type { PrintPictures } from '../../pictures/print-input.ts';
import type { Pieces } from '../../scene/pieces.ts';
import { say, unitSystem } from '../../ui/units.ts';
import { makeCardState } from './card-state.ts';
import { filmSections } from './film-section.ts';
import { flyVersion } from './fly-version.ts';
import { type Later, useLater } from './later.ts';
import { saveSvg } from './paper-out.ts';
import { dateOf, nameOf, titleOf, useTypeface } from './paper-page.ts';
import { reportTexts as t } from './pictures-words.ts';
import type { HandState, HandWay, WayProps } from './way.ts';
import { cautionToGo } from './without-mass.ts';

const ID = 'report';
const ROWS = 12;
/** Of the picture over time, in its own units: its letters are 8 pt on the page. */
const PICTURE = 790;
const LETTERS = 'BCDEFGH';

const rowTimes = (T: number): number[] => Array.from({ length: ROWS }, (_, i) => (T * i) / (ROWS - 1));

interface ReportSource {
  readonly page: Page;
  readonly draw: PrintPictures;
  readonly result: FlightResult;
  readonly along: ReturnType<HandState['along']>;
  readonly beside: Versions;
  /** what was measured in clips, where that goes along */
  readonly films: readonly ReportSection[];
}

function* makeSections({ page, draw, result, along, beside, films }: ReportSource): Pieces<readonly ReportSection[]> {
  const whole = wholeStateOf(page);
  const likely = sayLikelihood(whole);
  const athlete = page.doc.athlete();
  const instants = rowTimes(result.outline.duration).map((s) => ({ t: s, name: '' }));
  const rows = makeRows(result.frames, instants, along.mass);
  const plain = (list: readonly string[]) => list.map((text) => [{ text }]);
  const cautions = whole.cautions().map((one) => cautionToGo(one, along.mass));
  const height = athlete.kind === 'human' ? say('length', athlete.statureM) : '';
  const size = athlete.kind === 'human' ? [height, ...(along.mass ? [say('mass', athlete.massKg, 0)] : [])] : [];
  yield;
  const request = makeRequest(page, PICTURE, along.mass);
  // titles would be cut where a shape is held for a short time: its word is not
  const spans = request.spans.map((span) => ({ ...span, title: span.word }));
  yield;
  const picture = draw.draw(result, { ...request, spans });
  const versions: string[] = [];
  for (const [i, version] of beside.entries()) {
    const flown = yield* flyVersion(page, version);
    versions.push(t.version1(LETTERS[i] ?? '', version.name, flown ? speakSentence(flown.outline) : t.notFlown));
  }
  return [
    {
      heading: t.sections.results,
      text: plain([...(likely ? [sentence(likely)] : []), t.takeoff(wordTakeoff(page, along.mass))]),
    },
    { heading: t.sections.strip, picture },
    {
      heading: t.sections.table,
      table: {
        head: [t.time, ...rows.map(({ name, unit }) => (unit ? `${name}, ${unit}` : name))],
        rows: instants.map(({ t: s }, i) => [s.toFixed(2), ...rows.map(({ cells }) => cells[i])]),
      },
    },
    ...films,
    ...(versions.length > 0 ? [{ heading: t.sections.versions, text: plain(versions) }] : []),
    { heading: t.sections.cautions, text: plain(cautions.length > 0 ? cautions : [t.noCautions]) },
    {
      heading: t.sections.assumptions,
      text: plain([athlete.kind === 'human' ? t.body(size.join(', ')) : t.ownBody, ...t.assumptions]),
    },
    { heading: t.sections.limits, text: plain(t.limits) },
  ];
}

function useReport(hand: HandState): Later<readonly PaperPage[]> {
  const { page } = hand;
  const source = page.keepState(makeCardState);
  const [ports] = createResource(() => page.services.load.print());
  const clips = () => (hand.handed()?.file.recordings ?? []).length > 0;
  const [room] = createResource(clips, async (has) => (has ? page.services.load.clip() : undefined));
  const typeface = useTypeface(source.paper, () => [titleOf(hand), nameOf(hand) ?? ''].join(' '));
  return useLater(() => {
    const [paper, draw, face, handed] = [source.paper(), ports(), typeface(), hand.handed()?.file];
    const clip = clips() ? room() : undefined;
    if (!paper || !draw || !face || !handed || (clips() && !clip)) return undefined;
    const [result, whole] = [page.flight.result(), wholeStateOf(page)];
    const films = clip ? filmSections(handed, result, clip.engine) : [];
    const from = { page, draw, result, along: hand.along(), beside: page.doc.versions(), films };
    const [name, who] = [titleOf(hand), nameOf(hand)];
    const said = paper.resultLine(whole.verdict(), PAGE_NUMBERS);
    // what is read later is not followed: these are
    whole.likelihood();
    whole.cautions();
    unitSystem();
    page.flight.released();
    return function* () {
      const sections = yield* makeSections(from);
      yield;
      const origin = paper.originOf(result, handed);
      yield;
      return yield* paper.report({
        name,
        under: [t.version(dateOf()), who].filter(Boolean).join(', '),
        result: said,
        sections,
        standing: texts.standingCaution,
        origin,
        ...face,
      });
    };
  });
}

function View(props: WayProps) {
  // the state of the tool is the same for as long as it is open
  // eslint-disable-next-line solid/reactivity
  const { hand } = props;
  const report = useReport(hand);
  const ready = (): readonly PaperPage[] => report.made() ?? [];
  const addresses = createMemo(() => {
    const made = (report.shown() ?? []).map((page) => URL.createObjectURL(svgBlob(page)));
    onCleanup(() => {
      for (const address of made) URL.revokeObjectURL(address);
    });
    return made;
  });
  onCleanup(clearPages);
  const keep = (): void => {
    for (const [i, page] of ready().entries()) saveSvg(titleOf(hand), `report-${i + 1}`, page);
    hand.say(ID, t.saved);
  };
  const isMade = (): boolean => ready().length > 0;
  return (
    <div class="paper-way">
      <div class="paper-buttons">
        <button type="button" class="primary" disabled={!isMade()} onClick={() => void printPages(ready())}>
          {t.print}
        </button>
        <button type="button" disabled={!isMade()} onClick={keep}>
          {t.svg}
        </button>
      </div>
      <For each={addresses()}>
        {(address, i) => <img class="paper-preview" src={address} alt={t.preview(i() + 1, addresses().length)} />}
      </For>
    </div>
  );
}

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <path class="thumb-paper" d="M10.5 0.5 H38.5 V39.5 H10.5 Z M42 4 H50 V39.5 H40" />
      <path class="thumb-ink" d="M15 6 H34 M15 20 C20 10 28 10 34 20 M15 26 H34 M15 30 H34 M15 34 H28" />
    </svg>
  );
}

export const reportWay: HandWay = {
  id: ID,
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: () => [t.hint, t.hint2],
  brief: () => t.brief,
  View,
  // printed and kept from beside its pages
  run: () => undefined,
};
