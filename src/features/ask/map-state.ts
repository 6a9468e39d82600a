/**
 * The map of any two inputs against any result: filled row by row by the workers, all else as in its subject. Going to another
 * place of it leaves it valid, since it holds for every value of its two inputs.
 */

import { type Accessor, createEffect, createMemo, createSignal, onCleanup, untrack } from 'solid-js';
import type { FromTo } from '../../../sim/index.ts';
import type { AskedWork } from '../../app/asked-work.ts';
import type { Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Progress, WindowBound } from '../../engine/ask.ts';
import { mapFirst, momentumFirst } from './ask-start.ts';
import type { AskState } from './ask-state.ts';
import type { StudyState, WindowKind } from './study-state.ts';
import { askTexts as t } from './words.ts';

export interface MapAxis extends FromTo {
  readonly input: string;
}

export interface MapResult {
  readonly key: string;
  /** of the document */
  readonly id: number;
  readonly of: string;
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly count: number;
  readonly window: readonly WindowBound[];
  readonly kind: WindowKind;
  readonly rows: number;
  /** by id of the result, (rows x columns), NaN where it is not known */
  readonly values: ReadonlyMap<string, Float64Array>;
  /** places so far that could not be flown */
  readonly notFlown: number;
  /** distance from the middle of the window in half widths */
  readonly distance: Float64Array;
}

export interface MapState extends AskedWork<Progress> {
  readonly x: Accessor<MapAxis | undefined>;
  readonly y: Accessor<MapAxis | undefined>;
  setAxis(which: 'x' | 'y', axis: Partial<MapAxis>): void;
  readonly of: Accessor<string>;
  setOf(result: string): void;
  readonly count: Accessor<number>;
  setCount(n: number): void;
  readonly report: Accessor<MapResult | undefined>;
  /** of the document, as it is */
  readonly now: Accessor<readonly [number, number] | undefined>;
  /** of the answers, in their order */
  readonly answers: Accessor<readonly (readonly [number, number])[]>;
  go(x: number, y: number, names: readonly [string, string]): void;
  stop(): void;
  setShown(on: boolean): void;
}

const REST = 500;
/** ms between two pictures of a map that fills */
const DRAWN = 120;
export const COARSE = 33;
export const FINE = 65;
/** A map reaches this many usual errors to each side. */
const REACH = 5;

/** What a map is opened with beside a time, after the momentum that the skill turns with: what an athlete gives most on. */
const FIRST: readonly string[] = ['swing.late', 'contact.force'];

export function makeMapState(page: Page, ask: AskState, study: StudyState): MapState {
  const { flight, cursor, doc } = page;
  const [changed, setChanged] = createSignal<{ id: number; x: MapAxis; y: MapAxis }>();
  const [picked, setPicked] = createSignal<{ id: number; of: string }>();
  /** chosen for this document, or what the skill turns about */
  const of = createMemo(() => {
    const p = picked();
    if (p?.id === flight.id()) return p.of;
    const [engine, open, { aim }] = [ask.asking(), ask.skill(), ask.aim()];
    const window = engine && open && aim ? engine.usualWindow(open, aim).map((b) => b.result) : [];
    return mapFirst(flight.result().outline, window);
  });
  const [count, setCount] = createSignal(COARSE);
  const [report, setReport] = createSignal<MapResult>();
  const [progress, setProgress] = createSignal<Progress>();
  const [failed, setFailed] = createSignal('');
  const [shown, setShown] = createSignal(false);
  const [stopped, setStopped] = createSignal('');

  const own = (): MapResult | undefined => (report()?.id === flight.id() ? report() : undefined);

  const about = (id: string): MapAxis | undefined => {
    const [engine, open, input] = [ask.asking(), ask.skill(), ask.inputOf(id)];
    if (!engine || !open || !input) return undefined;
    const by = REACH * engine.spreadOf(open, id);
    const [low, high] = input.range;
    return { input: id, from: Math.max(low, input.value - by), to: Math.min(high, input.value + by) };
  };
  const first = createMemo<{ id: number; x: MapAxis; y: MapAxis } | undefined>((last) => {
    const open = ask.skill();
    if (!open) return undefined;
    if (last?.id === flight.id()) return last;
    const ids = open.inputs.map((i) => i.id);
    const time = ids.filter((id) => id.endsWith('.moveStart')).at(-1) ?? ids.find((id) => id.endsWith('.time'));
    const take = [momentumFirst(flight.result().outline), ...FIRST].find((id) => ids.includes(id));
    const [a, b] = [...new Set([time, take, ids.find((id) => id.endsWith('.moveTime')), ...ids])].filter(
      (id) => id !== undefined,
    );
    const [x, y] = [about(a), about(b)];
    return x && y ? { id: flight.id(), x, y } : undefined;
  });
  const axes = createMemo(() => {
    const c = changed();
    const open = ask.skill();
    if (!open) return undefined;
    const list = c && c.id === flight.id() ? c : first();
    return list && ask.inputOf(list.x.input) && ask.inputOf(list.y.input) ? list : first();
  });

  const wanted = createMemo(() => {
    const [engine, open, subject, a] = [ask.asking(), ask.skill(), ask.subject(), axes()];
    const [w, { aim }] = [ask.wanted(), ask.aim()];
    if (!engine || !open || !subject || !a || !w || !aim || a.x.input === a.y.input) return undefined;
    const kind = study.kind();
    const window = kind === 'usual' ? engine.usualWindow(open, aim) : engine.wantedWindow(aim);
    // the same for every place of the map
    const rest = engine.fileOf(open, engine.put(subject.spec, [a.x.input, a.y.input], [a.x.from, a.y.from]));
    const key = JSON.stringify([rest, a.x, a.y, window, study.balanced(), count()]);
    return { subject, window, kind, a, key };
  });
  const key = createMemo(() => wanted()?.key ?? '');
  let cancel: (() => void) | undefined;

  createEffect(() => {
    const now = key();
    const engine = ask.asking();
    if (!engine || !now || !shown() || !ask.isOpen() || flight.before() || cursor.play.playing()) return;
    const last = untrack(report);
    if (last?.key === now && last.rows === last.count) return;
    if (stopped() === now) return;
    const timer = setTimeout(() => untrack(run), REST);
    onCleanup(() => {
      clearTimeout(timer);
      cancel?.();
    });
  });

  function run(): void {
    const [engine, w] = [ask.asking(), wanted()];
    if (!engine || !w) return;
    setFailed('');
    const n = count();
    const values = new Map(engine.results.map(({ id }) => [id, new Float64Array(n * n).fill(Number.NaN)]));
    const distance = new Float64Array(n * n).fill(Number.NaN);
    const { x, y } = w.a;
    const id = flight.id();
    let live = true;
    let rows = 0;
    let notFlown = 0;
    let frame = 0;
    const show = (): void => {
      if (frame) return;
      frame = window.setTimeout(() => {
        frame = 0;
        if (live || rows === n)
          setReport({
            key: w.key,
            id,
            of: w.subject.name,
            x,
            y,
            count: n,
            window: w.window,
            kind: w.kind,
            rows,
            notFlown,
            values,
            distance,
          });
      }, DRAWN);
    };
    try {
      const call = engine.map(
        { spec: w.subject.spec, x, y, count: n, window: w.window, balanced: study.balanced() },
        {
          progress: (p) => {
            if (live) setProgress(p);
          },
          row: (row) => {
            if (!live) return;
            rows++;
            notFlown += Object.keys(row.faults).length;
            engine.results.forEach(({ id }, k) => {
              values.get(id)?.set(row.values.subarray(k * n, (k + 1) * n), row.row * n);
            });
            distance.set(row.distance, row.row * n);
            show();
          },
        },
      );
      cancel = () => {
        live = false;
        call.cancel();
        setProgress(undefined);
      };
      call.done.then(
        () => {
          if (!live) return;
          live = false;
          cancel = undefined;
          setProgress(undefined);
        },
        (error) => {
          if (!live) return;
          live = false;
          setProgress(undefined);
          setFailed(wordFault(error));
        },
      );
    } catch (error) {
      setFailed(wordFault(error));
    }
  }

  const placeOf = (spec: NonNullable<ReturnType<typeof wanted>>['subject']['spec']): readonly [number, number] => {
    const [engine, a] = [ask.asking(), axes()];
    if (!engine || !a) return [Number.NaN, Number.NaN];
    return [engine.valueAt(spec, a.x.input), engine.valueAt(spec, a.y.input)];
  };

  return {
    x: () => axes()?.x,
    y: () => axes()?.y,
    setAxis: (which, part) => {
      const a = axes();
      if (!a) return;
      const next = part.input && part.input !== a[which].input ? about(part.input) : { ...a[which], ...part };
      if (next) setChanged({ id: flight.id(), x: a.x, y: a.y, [which]: next });
    },
    of,
    setOf: (result) => setPicked({ id: flight.id(), of: result }),
    count,
    setCount,
    report: own,
    stale: () => own() !== undefined && own()?.key !== key(),
    progress,
    failed,
    now: createMemo(() => {
      const open = ask.skill();
      return open && axes() ? placeOf(open.spec) : undefined;
    }),
    answers: createMemo(() =>
      ask.stale() || !axes() ? [] : (ask.found()?.list ?? []).map(({ spec }) => placeOf(spec)),
    ),
    go: (x, y, names) => {
      const [engine, open, a] = [ask.asking(), ask.skill(), axes()];
      if (!engine || !open || !a) return;
      const from = ask.pickedSolution()?.spec ?? open.spec;
      try {
        doc.edit(engine.fileOf(open, engine.put(from, [a.x.input, a.y.input], [x, y])), t.went(...names));
      } catch (error) {
        setFailed(wordFault(error));
      }
    },
    stop: () => {
      cancel?.();
      cancel = undefined;
      setStopped(key());
    },
    again: () => {
      setStopped('');
      untrack(run);
    },
    setShown,
  };
}
