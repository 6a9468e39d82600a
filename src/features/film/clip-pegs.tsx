/** Marks on the ruler: pegs that hang from the floor among the teeth, each with its error behind it and its words below. */
import { createMemo, createSignal, For, onCleanup, Show } from 'solid-js';
import type { ClipMark } from '../../../sim/index.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import { isSameMark, sayMark, shortMark, spokenMark } from './clip-marks.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** keys have rested this long, ms */
const REST = 500;
const STEP = 0.01;
const BIG = 0.1;
/** px of a letter of the words below, and between two of them */
const LETTER = 6.4;
const APART = 10;
/** ± over which a hundredth is enough */
const ROUGH = 0.015;

interface Peg {
  readonly mark: ClipMark;
  /** s from take-off; of one at fault, its frame's */
  readonly s: number;
  /** s; NaN: at fault */
  readonly error: number;
}

/** In the order of time. */
function pegsOf(desk: ClipDesk): Peg[] {
  const timed = desk.times()?.marks ?? [];
  return desk
    .measuring()
    .marks.map((mark): Peg => {
      const found = timed.find((one) => isSameMark(one.mark, mark))?.at;
      return { mark, s: found?.value ?? desk.timeOf(mark.frame), error: found?.plusMinus ?? Number.NaN };
    })
    .sort((a, b) => a.s - b.s);
}

const sayPegTime = ({ s, error, mark }: Peg): string => {
  if (mark.kind === 'takeoff' && Math.abs(s) < 1e-9) return '0.000';
  return error > ROUGH ? `${formatNumber(s, 2)} ± ${formatNumber(error, 2)}` : formatNumber(s, 3);
};

/** Which of two lines below the teeth each text is on; undefined: there is no room, and its peg is named by itself. */
function layTexts(pegs: readonly Peg[], axis: TimeAxis, isShort: boolean): (number | undefined)[] {
  const ends = isShort ? [-1e9] : [-1e9, -1e9];
  return pegs.map((peg) => {
    const letters = isShort ? shortMark(peg.mark).length : sayMark(peg.mark).length + sayPegTime(peg).length + 1;
    const half = (letters * LETTER) / 2;
    const x = xOf(axis, peg.s);
    const line = ends.findIndex((end) => x - half > end + APART);
    if (line < 0) return undefined;
    ends[line] = x + half;
    return line;
  });
}

const nameOf = ({ mark }: Peg): string => `${mark.kind} ${mark.quarters ?? ''}`;

export function ClipPegs(props: { desk: ClipDesk; axis: TimeAxis; isTouch: boolean }) {
  const pegs = createMemo(() => pegsOf(props.desk));
  const lines = createMemo(() => layTexts(pegs(), props.axis, props.isTouch));
  // a peg stays the same element while it is moved: it has the focus
  const names = createMemo(() => pegs().map(nameOf), [], { equals: (a, b) => a.join() === b.join() });
  const place = (name: string): number => pegs().findIndex((peg) => nameOf(peg) === name);
  return (
    <div class="clip-pegs" classList={{ short: props.isTouch }}>
      <For each={names()}>
        {(name) => (
          <Show when={pegs()[place(name)]}>
            {(peg) => <OnePeg {...props} peg={peg()} line={lines()[place(name)]} />}
          </Show>
        )}
      </For>
    </div>
  );
}

function OnePeg(props: { desk: ClipDesk; axis: TimeAxis; isTouch: boolean; peg: Peg; line: number | undefined }) {
  /** the frame under the hand, until it is let go */
  const [moved, setMoved] = createSignal<number>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  const mark = (): ClipMark => props.peg.mark;
  const s = (): number => {
    const to = moved();
    return to === undefined ? props.peg.s : props.peg.s + props.desk.timeOf(to) - props.desk.timeOf(mark().frame);
  };
  const x = (): number => xOf(props.axis, s());
  const put = (frame: number): void => {
    setMoved(frame);
    props.desk.setFrame(frame);
  };
  const done = (): void => {
    clearTimeout(timer);
    timer = undefined;
    const to = moved();
    if (to !== undefined && to !== mark().frame) props.desk.moveMark(mark(), to);
    setMoved(undefined);
  };
  const drag = (e: PointerEvent): void => {
    e.stopPropagation();
    const { frame } = mark();
    const from = props.desk.timeOf(frame);
    props.desk.setFrame(frame);
    startDrag(e, {
      move: (dx) => put(props.desk.time.frameAt(from + dx / props.axis.pxPerS)),
      end: done,
      cancel: () => setMoved(undefined),
    });
  };
  const onKey = (e: KeyboardEvent): void => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const from = moved() ?? mark().frame;
    const frames = { ',': -1, '.': 1 }[e.key];
    const way = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (e.key === 'Delete' || e.key === 'Backspace') props.desk.takeOff(mark());
    else if (frames || way) {
      const by = (way ?? 0) * (e.shiftKey ? BIG : STEP);
      const next = frames ? from + frames : props.desk.time.frameAt(props.desk.timeOf(from) + by);
      put(next === from ? from + (way ?? 0) : next);
      clearTimeout(timer);
      timer = setTimeout(done, REST);
    } else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const error = (): number => (Number.isNaN(props.peg.error) ? 0 : props.peg.error);
  const isAtFault = (): boolean => Number.isNaN(props.peg.error);
  const last = (): number => (props.desk.frames()?.t.length ?? 1) - 1;
  return (
    <>
      <span
        class="clip-error"
        aria-hidden="true"
        style={{ left: `${x() - error() * props.axis.pxPerS}px`, width: `${2 * error() * props.axis.pxPerS}px` }}
      />
      <div
        class="clip-peg"
        classList={{ open: isAtFault(), held: moved() !== undefined }}
        data-own-keys
        data-kind={mark().kind}
        role="slider"
        tabIndex={0}
        aria-label={spokenMark(mark())}
        aria-valuemin={Number(props.desk.timeOf(0).toFixed(3))}
        aria-valuemax={Number(props.desk.timeOf(last()).toFixed(3))}
        aria-valuenow={Number(s().toFixed(3))}
        aria-valuetext={t.pegAt(
          spokenMark(mark()),
          formatNumber(s(), 3),
          isAtFault() ? t.atFault : `± ${formatNumber(error(), 3)}`,
        )}
        title={t.pegTitle(sayMark(mark()), sayPegTime(props.peg))}
        style={{ transform: `translateX(${x()}px)` }}
        onPointerDown={drag}
        onKeyDown={onKey}
        onFocusOut={() => {
          if (timer) done();
        }}
        onFocusIn={() => props.desk.setFrame(moved() ?? mark().frame)}
      />
      <Show when={props.line !== undefined}>
        <span
          class="clip-peg-text"
          aria-hidden="true"
          style={{ transform: `translateX(${x()}px) translateX(-50%)`, top: `${34 + 16 * (props.line ?? 0)}px` }}
        >
          <Show when={props.isTouch} fallback={sayMark(mark())}>
            {shortMark(mark())}
          </Show>
          <Show when={!props.isTouch}>
            {' '}
            <b>{moved() === undefined ? sayPegTime(props.peg) : formatNumber(s(), 3)}</b>
          </Show>
        </span>
      </Show>
    </>
  );
}
