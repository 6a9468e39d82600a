/** All rows on the page's own ruler, above the thumb bar; any of them can be kept in sight among the first ones. */
import { createMemo, For, type JSX, Show } from 'solid-js';
import { Bounds } from '../../features/instant/bounds.tsx';
import { CutRates, Explanation, Value } from '../../features/instant/cut.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { Icon } from '../../ui/icon.tsx';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { say } from '../../ui/units.ts';
import { sheetTexts } from '../../ui/words.ts';
import type { CutValues } from '../cut-values.ts';
import { useCursor, useShell } from '../page.ts';
import { PlotCanvas, type PlotPiece } from '../plot/plot-canvas.tsx';
import type { ShellState } from '../shell.ts';
import { texts } from '../words.ts';
import { findDrawer, type PlotName } from './touch-plots.ts';
import { touchTexts as t } from './touch-words.ts';

const HEAD = 52;
const CURVE = 78;
const c = texts.cut;

interface SheetRow {
  readonly kind: PlotName;
  readonly title: string;
  head(cut: CutValues): JSX.Element;
}

const ROWS: readonly SheetRow[] = [
  { kind: 'rates', title: texts.plots.rate, head: (cut) => <CutRates cut={cut} /> },
  {
    kind: 'tilt',
    title: texts.plots.tilt,
    head: (cut) => (
      <Value value={Math.abs(cut.tilt)} decimals={1} unit="°" word={c.tiltWord(cut.tilt)} hue="tilt" term="tilt" />
    ),
  },
  {
    kind: 'moments',
    title: texts.plots.moments,
    head: (cut) => (
      <>
        <Value value={cut.long} decimals={2} quantity="moment" unit="" hue="twist" word={c.longAxis} term="longAxis" />
        <Value
          value={cut.lateral}
          decimals={2}
          quantity="moment"
          unit=""
          hue="som"
          word={c.lateralAxis}
          term="momentOfInertia"
        />
      </>
    ),
  },
  {
    kind: 'momentum',
    title: texts.plots.momentum,
    head: (cut) => (
      <Value value={cut.momentum} decimals={1} quantity="momentum" unit="" word={c.constant} term="angularMomentum" />
    ),
  },
  {
    kind: 'energy',
    title: texts.plots.energy,
    head: (cut) => (
      <Value value={cut.energy} decimals={0} quantity="energy" unit="" word={c.muscle(say('energy', cut.work))} />
    ),
  },
];

const WAYS = [
  ['joints', laneTexts.title],
  ['shapes', texts.shapes.list],
  ['about', texts.head.about],
] as const;

/** px under the shapes that poses have their marks in */
export const UNDER_SHAPES = 15;
export const MORE_ROWS = ROWS.length;

/** A tool and an open joint have the same place. */
export const isRowsOpen = (shell: ShellState, lanes: LaneList): boolean =>
  shell.rows.open().size > 0 && shell.tool() === undefined && lanes.open() === undefined;

export function RowsSheet(props: {
  axis: TimeAxis;
  lanes: LaneList;
  cut: CutValues;
  explanation: string;
  height: number;
  kept: PlotName | undefined;
  keep: (kind: PlotName | undefined) => void;
}) {
  const shell = useShell();
  return (
    <Show when={isRowsOpen(shell, props.lanes)}>
      <section
        class="rows-sheet"
        aria-label={t.rows}
        style={{ width: `${props.axis.width}px`, height: `${props.height}px` }}
        onKeyDown={(e) => {
          // what is opened from here closes by itself
          if (e.key !== 'Escape' || e.defaultPrevented || document.querySelector('dialog[open]')) return;
          e.preventDefault();
          shell.rows.calm();
        }}
      >
        <header>
          <h2>{t.rows}</h2>
          <For each={WAYS}>
            {([panel, word]) => (
              <button type="button" class="plain" aria-haspopup="dialog" onClick={() => shell.openPanel(panel)}>
                {word}
              </button>
            )}
          </For>
          <button
            type="button"
            class="plain square"
            aria-label={`${sheetTexts.close} ${t.rows}`}
            onClick={() => shell.rows.calm()}
          >
            <Icon name="close" />
          </button>
        </header>
        <div class="rows-said">
          <Explanation words={props.explanation} />
          <Bounds />
        </div>
        <Curves {...props} />
      </section>
    </Show>
  );
}

function Curves(props: {
  axis: TimeAxis;
  cut: CutValues;
  kept: PlotName | undefined;
  keep: (kind: PlotName | undefined) => void;
}) {
  const cursor = useCursor();
  const top = (i: number): number => i * (HEAD + CURVE);
  const pieces = createMemo<PlotPiece[]>(() =>
    ROWS.map((row, i) => ({ box: { y: top(i) + HEAD + 4, height: CURVE - 16 }, draw: findDrawer(row.kind) })),
  );
  const height = top(ROWS.length);
  return (
    <div
      class="rows-curves"
      style={{ height: `${height}px` }}
      onPointerDown={(e) => {
        if (!(e.target as Element).closest('button')) startScrub(e, cursor, (x) => tOf(props.axis, x));
      }}
    >
      <PlotCanvas axis={props.axis} height={height} shadeFrom={0} pieces={pieces()} lineWidth={2.4} />
      <For each={ROWS}>
        {(row, i) => (
          <div class="rows-head" style={{ top: `${top(i())}px`, height: `${HEAD}px` }}>
            <h3>{row.title}</h3>
            {row.head(props.cut)}
            <button
              type="button"
              class="keep-row"
              aria-label={t.keepThis(row.title)}
              aria-pressed={props.kept === row.kind}
              onClick={() => props.keep(props.kept === row.kind ? undefined : row.kind)}
            >
              {t.keep}
            </button>
          </div>
        )}
      </For>
    </div>
  );
}
