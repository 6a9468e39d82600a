/** The sheet: chosen, edited, computed when hand and flight rest, kept while the tool is closed. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup, untrack } from 'solid-js';
import { keptState, type Page } from '../../app/page.ts';
import { getStorage } from '../../document/keep.ts';
import type { ShownSheet } from '../../document/own-sheets.ts';
import type { Estimating, SheetAnswer, SheetFile, SheetRow } from '../../engine/estimate.ts';
import type { StageBody } from '../../pictures/stage-input.ts';
import { units } from '../../ui/units.ts';
import { makeSheetDesk, type SheetDeskState } from './sheet-desk.ts';
import { estimateTexts as e } from './words.ts';

/** The ready sheets that the tool opens with. */
const FIRST = { somersault: 'straight-somersaults', jump: 'arms-in-arms-wide' } as const;
/** rad: less is a jump, of which a count of somersaults says nothing */
const LEAST_SOMERSAULT = 0.4 * Math.PI;
/** Hand and flight rest when they have stood still this long, ms. */
const REST = 140;

export interface EstimateState {
  readonly engine: Accessor<Estimating | undefined>;
  readonly sheet: Accessor<SheetFile | undefined>;
  /** which sheets there are, which is open, and their undo */
  readonly desk: SheetDeskState;
  readonly hasSkillSheet: Accessor<boolean>;
  /** one step of the document, with undo */
  keepWithSkill(): void;
  setTitle(title: string): void;
  setLine(index: number, text: string): void;
  /** both give the index of the last new line */
  addLine(after: number): number;
  insertLines(after: number, lines: readonly string[]): number;
  removeLine(index: number): void;
  /** one line up or down; gives where it is then */
  moveLine(index: number, by: -1 | 1): number;
  /** as the sheet was that it began as a copy of */
  startOver(): void;
  /** with a way back */
  remove(): void;
  /** of each line, as last computed; a line that is new has none */
  row(index: number): SheetRow | undefined;
  readonly rows: Accessor<readonly SheetRow[]>;
  /** lines from the first on that hold values and nothing else: they have the columns over the formulas */
  readonly knownLines: Accessor<number>;
  /** the answer is of an older sheet or flight */
  readonly stale: Accessor<boolean>;
  readonly failed: Accessor<string>;
  /** computes once more */
  again(): void;
  /** the bodies of the sheet are drawn over the athlete */
  readonly drawn: Accessor<boolean>;
  setDrawn(on: boolean): void;
}

/** A value that was put in: a number with a unit, or a readout; known by its letters, before anything is computed. */
const PUT_IN = /^[^=#]+=\s*(?:\{[^{}]*\}|[\d.,'"\s]*\d[^=#{}()*+^]*?(?:\+-.*?)?)(?:\s+(?:to|vs|if)\s.*)?(?:#.*)?$/;
/** What is set against the flight needs the room of a row. */
const isKnown = (line: string): boolean =>
  PUT_IN.test(line.replace('±', '+-').replace(/\^\d/g, '')) && !/\svs\s/.test(line.split('#')[0]);
function countKnown(lines: readonly string[]): number {
  const first = lines.findIndex((line) => !isKnown(line));
  const count = first < 0 ? lines.length : first;
  return count < 2 ? 0 : count;
}

function makeEstimateState(page: Page): EstimateState {
  const { doc, services, shell, flight } = page;
  const [engine, setEngine] = createSignal<Estimating>();
  const [answer, setAnswer] = createSignal<{ sheet: SheetFile; of: unknown; measure: string; answer: SheetAnswer }>();
  const [failed, setFailed] = createSignal('');
  const [drawn, setDrawn] = createSignal(true);
  const desk = makeSheetDesk({
    stores: { local: getStorage('localStorage'), tab: getStorage('sessionStorage') },
    ready: () => engine()?.sheets ?? [],
    first: () =>
      Math.abs(flight.result().frames.somersault.at(-1) ?? 0) < LEAST_SOMERSAULT ? FIRST.jump : FIRST.somersault,
    ofSkill: () => {
      const part = doc.file().worksheets?.[0];
      return part && engine()?.ofSkill(part);
    },
  });
  void services.load.estimating().then((made) => {
    setEngine(() => made);
    desk.begin();
  });

  const shown = createMemo<ShownSheet | undefined>(() => (engine() ? desk.shown() : undefined), undefined, {
    equals: (a, b) => a?.id === b?.id && a?.sheet === b?.sheet,
  });
  const sheet = (): SheetFile | undefined => shown()?.sheet;
  const withLines = (change: (lines: readonly string[]) => string[], title: string): void => {
    const now = sheet();
    if (now) desk.edit({ ...now, lines: change(now.lines) }, title);
  };
  const insertLines = (after: number, more: readonly string[]): number => {
    const last = after + more.length;
    const title = more.length === 1 ? e.addedLine(last + 1) : e.addedLines(after + 2, last + 1);
    withLines((lines) => [...lines.slice(0, after + 1), ...more, ...lines.slice(after + 1)], title);
    return last;
  };

  const [tries, setTries] = createSignal(0);
  const isOpen = createMemo(() => shell.tool() === 'estimate');
  const stale = createMemo(
    () => answer()?.sheet !== sheet() || answer()?.of !== flight.result() || answer()?.measure !== units().measure,
  );
  createEffect(() => {
    const by = engine();
    const asked = sheet();
    const result = flight.result();
    const { measure } = units();
    tries();
    if (!by || !asked || !isOpen() || result.draft || flight.before() || !stale()) return;
    const timer = setTimeout(
      () => {
        by.compute(asked, result, { measure })
          .then((answer) => {
            setFailed('');
            setAnswer({ sheet: asked, of: result, measure, answer });
          })
          .catch((error: unknown) => setFailed(error instanceof Error ? error.message : String(error)));
      },
      untrack(answer) ? REST : 0,
    );
    onCleanup(() => clearTimeout(timer));
  });

  const rows = (): readonly SheetRow[] => answer()?.answer.rows ?? [];
  const bodies = createMemo<StageBody[]>(() =>
    rows().flatMap(({ result }) =>
      result.kind === 'drawing' ? [{ kind: result.body.kind, about: result.about, size: result.body.size }] : [],
    ),
  );
  const isDrawn = createMemo(() => isOpen() && drawn() && bodies().length > 0);
  createEffect(() => {
    if (isDrawn()) shell.stage.provide(() => ({ plainBodies: bodies() }));
  });

  return {
    engine,
    sheet,
    desk,
    hasSkillSheet: () => doc.file().worksheets?.[0] !== undefined,
    keepWithSkill: () => {
      const now = sheet();
      if (!now) return;
      const { title, lesson, lines } = now;
      const part = { title, ...(lesson === undefined ? {} : { lesson }), lines: [...lines] };
      const [, ...others] = doc.file().worksheets ?? [];
      doc.edit({ ...doc.file(), worksheets: [part, ...others] }, e.keptWithSkill);
      desk.showWithSkill();
      // it is a step of the skill: undo takes it back there
      shell.takeUndo(undefined);
      shell.notify({ text: e.keptWithSkill });
    },
    setTitle: (title) => {
      const now = sheet();
      if (now) desk.type({ ...now, title }, e.renamed);
    },
    setLine: (index, text) => {
      const now = sheet();
      if (!now || now.lines[index] === text) return;
      desk.type({ ...now, lines: now.lines.map((line, i) => (i === index ? text : line)) }, e.editedLine(index + 1));
    },
    addLine: (after) => insertLines(after, ['']),
    insertLines,
    removeLine: (index) =>
      withLines((lines) => (lines.length > 1 ? lines.filter((_, i) => i !== index) : ['']), e.removedLine(index + 1)),
    moveLine: (index, by) => {
      const to = index + by;
      if (to < 0 || to >= (sheet()?.lines.length ?? 0)) return index;
      withLines(
        (lines) => {
          const next = [...lines];
          [next[index], next[to]] = [next[to], next[index]];
          return next;
        },
        e.movedLine(index + 1),
      );
      return to;
    },
    startOver: () => {
      const [now, original] = [sheet(), desk.original()];
      if (now && original) desk.edit({ ...original, title: now.title }, e.startOver);
    },
    remove: () => {
      const title = sheet()?.title ?? '';
      const bringBack = desk.remove();
      if (bringBack) shell.notify({ text: e.isRemoved(title), action: { title: e.undo, run: bringBack } });
    },
    row: (index) => {
      const known = answer();
      // a line that moved or changed meanwhile keeps its old result only in its old place
      return known && known.sheet.lines.length === sheet()?.lines.length ? known.answer.rows[index] : undefined;
    },
    rows,
    knownLines: createMemo(() => countKnown(sheet()?.lines ?? [])),
    stale,
    failed,
    again: () => setTries(tries() + 1),
    drawn,
    setDrawn,
  };
}

export const useEstimateState = keptState(makeEstimateState);
export const estimateStateOf = (page: Page): EstimateState => page.keepState(makeEstimateState);
