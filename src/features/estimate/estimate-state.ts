/** The sheet of one bench: chosen, edited, computed when hand and flight rest, kept while the tool is closed. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup, untrack } from 'solid-js';
import type { Bench } from '../../app/bench.ts';
import { getStorage } from '../../document/keep.ts';
import { keepSheet, readKeptSheet } from '../../document/keep-sheet.ts';
import type { Estimating, SheetAnswer, SheetFile, SheetRow } from '../../engine/estimate.ts';
import type { StageBody } from '../../pictures/stage-input.ts';
import { estimateTexts as e } from './words.ts';

/** Of a sheet of one's own, in the list of sheets. */
export const OWN = 'own';
/** Of the sheet kept with the skill. */
export const WITH_SKILL = 'skill';
/** Hand and flight rest when they have stood still this long, ms. */
const REST = 140;

export interface EstimateState {
  readonly engine: Accessor<Estimating | undefined>;
  readonly sheet: Accessor<SheetFile | undefined>;
  /** id of the ready sheet, or OWN */
  readonly from: Accessor<string>;
  readonly changed: Accessor<boolean>;
  choose(id: string): void;
  open(sheet: SheetFile): void;
  readonly hasSkillSheet: Accessor<boolean>;
  /** one step of the document, with undo */
  keepWithSkill(): void;
  setTitle(title: string): void;
  setLine(index: number, text: string): void;
  /** both give the index of the last new line */
  addLine(after: number): number;
  insertLines(after: number, lines: readonly string[]): number;
  removeLine(index: number): void;
  startOver(): void;
  /** of each line, as last computed; a line that is new has none */
  row(index: number): SheetRow | undefined;
  readonly rows: Accessor<readonly SheetRow[]>;
  /** the answer is of an older sheet or flight */
  readonly stale: Accessor<boolean>;
  readonly failed: Accessor<string>;
  /** the bodies of the sheet are drawn over the athlete */
  readonly drawn: Accessor<boolean>;
  setDrawn(on: boolean): void;
}

export function makeEstimateState(bench: Bench): EstimateState {
  const [engine, setEngine] = createSignal<Estimating>();
  const store = getStorage('localStorage');
  const [kept, setKept] = createSignal(readKeptSheet(store));
  const [answer, setAnswer] = createSignal<{ sheet: SheetFile; of: unknown; told: SheetAnswer }>();
  const [failed, setFailed] = createSignal('');
  const [drawn, setDrawn] = createSignal(true);
  const readySheet = (id: string | undefined): SheetFile | undefined => {
    const part = bench.file().sheet;
    if (id === WITH_SKILL) return part && engine()?.ofSkill(part);
    return engine()?.sheets.find((one) => one.id === id)?.sheet;
  };
  const own = (): SheetFile => ({ format: 'shapeflight-sheet', version: 1, title: e.ownTitle, lines: [''] });

  void bench.ports.loadEstimating().then((made) => {
    setEngine(() => made);
    const first = made.sheets.find((one) => one.id === 'straight-somersaults') ?? made.sheets[0];
    const part = bench.file().sheet;
    if (kept()) return;
    setKept(part ? { sheet: made.ofSkill(part), from: WITH_SKILL } : { sheet: first.sheet, from: first.id });
  });

  const sheet = (): SheetFile | undefined => kept()?.sheet;
  const put = (next: SheetFile, from = kept()?.from): void => {
    const made = { sheet: next, ...(from === undefined ? {} : { from }) };
    setKept(made);
    keepSheet(store, made);
  };
  const withLines = (change: (lines: readonly string[]) => string[]): void => {
    const now = sheet();
    if (now) put({ ...now, lines: change(now.lines) });
  };

  const insertLines = (after: number, more: readonly string[]): number => {
    withLines((lines) => [...lines.slice(0, after + 1), ...more, ...lines.slice(after + 1)]);
    return after + more.length;
  };

  const isOpen = createMemo(() => bench.tool() === 'estimate');
  const stale = createMemo(() => answer()?.sheet !== sheet() || answer()?.of !== bench.result());
  createEffect(() => {
    const by = engine();
    const asked = sheet();
    const result = bench.result();
    if (!by || !asked || !isOpen() || result.draft || bench.before() || !stale()) return;
    const timer = setTimeout(
      () => {
        by.compute(asked, result)
          .then((told) => {
            setFailed('');
            setAnswer({ sheet: asked, of: result, told });
          })
          .catch((error: unknown) => setFailed(error instanceof Error ? error.message : String(error)));
      },
      untrack(answer) ? REST : 0,
    );
    onCleanup(() => clearTimeout(timer));
  });

  const rows = (): readonly SheetRow[] => answer()?.told.rows ?? [];
  const bodies = createMemo<StageBody[]>(() =>
    rows().flatMap(({ result }) =>
      result.kind === 'drawing' ? [{ kind: result.body.kind, about: result.about, size: result.body.size }] : [],
    ),
  );
  createEffect(() => {
    const next = isOpen() && drawn() && bodies().length > 0 ? bodies() : undefined;
    untrack(() => {
      if (next || bench.stageExtras().plainBodies) bench.addStageExtras({ plainBodies: next });
    });
  });

  return {
    engine,
    sheet,
    from: () => {
      const from = kept()?.from ?? OWN;
      return from === WITH_SKILL && bench.file().sheet === undefined ? OWN : from;
    },
    changed: createMemo(() => {
      const ready = readySheet(kept()?.from);
      return ready !== undefined && JSON.stringify(ready) !== JSON.stringify(sheet());
    }),
    choose: (id) => {
      const ready = readySheet(id);
      const made = ready ? { sheet: ready, from: id } : { sheet: own() };
      setKept(made);
      keepSheet(store, made);
    },
    open: (given) => {
      const made = { sheet: given };
      setKept(made);
      keepSheet(store, made);
    },
    hasSkillSheet: () => bench.file().sheet !== undefined,
    keepWithSkill: () => {
      const now = sheet();
      if (!now) return;
      const { title, lesson, lines } = now;
      const part = { title, ...(lesson === undefined ? {} : { lesson }), lines: [...lines] };
      bench.edit({ ...bench.file(), sheet: part }, e.keptWithSkill);
      put(now, WITH_SKILL);
      bench.tell({ text: e.keptWithSkill });
    },
    setTitle: (title) => {
      const now = sheet();
      if (now) put({ ...now, title });
    },
    setLine: (index, text) => withLines((lines) => lines.map((line, i) => (i === index ? text : line))),
    addLine: (after) => insertLines(after, ['']),
    insertLines,
    removeLine: (index) => withLines((lines) => (lines.length > 1 ? lines.filter((_, i) => i !== index) : [''])),
    startOver: () => {
      const ready = readySheet(kept()?.from);
      if (ready) put(ready);
    },
    row: (index) => {
      const known = answer();
      // a line that moved or changed meanwhile keeps its old result only in its old place
      return known && known.sheet.lines.length === sheet()?.lines.length ? known.told.rows[index] : undefined;
    },
    rows,
    stale,
    failed,
    drawn,
    setDrawn,
  };
}
