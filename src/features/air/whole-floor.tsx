/** The floor of a whole skill: its ruler, its cursor, and beneath it what touches. */

import { createMemo, For, Show } from 'solid-js';
import { TimeBob } from '../../app/time-bob.tsx';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type WholeAxis, wholeT, wholeTicks, wholeX } from './whole-axis.ts';
import { contactTexts } from './words.ts';

const t = contactTexts;
const STRIP = 22;

export function WholeFloor(props: { state: WholeState; whole: WholeResult; axis: WholeAxis; height: number }) {
  const ticks = createMemo(() => wholeTicks(props.axis));
  const at = (): number => wholeX(props.axis, props.state.cursor());
  const press = (e: PointerEvent): void => {
    const { left } = (e.currentTarget as HTMLElement).getBoundingClientRect();
    const put = (m: PointerEvent): void =>
      props.state.setCursor(Math.round(wholeT(props.axis, m.clientX - left) * 1000) / 1000);
    const from = props.state.cursor();
    startDrag(e, { start: put, move: (_x, _y, m) => put(m), end: () => {}, cancel: () => props.state.setCursor(from) });
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const whole = props.whole;
    const step = e.shiftKey ? 0.1 : 0.01;
    const goes: Record<string, number | undefined> = {
      ArrowLeft: props.state.cursor() - step,
      ArrowRight: props.state.cursor() + step,
      Home: whole.from,
      End: whole.to,
      PageDown: [0, whole.touchdown, whole.to].find((s) => s > props.state.cursor() + 1e-6),
      PageUp: [whole.touchdown, 0, whole.from].find((s) => s < props.state.cursor() - 1e-6),
    };
    const next = goes[e.key];
    if (next === undefined) return;
    e.preventDefault();
    e.stopPropagation();
    props.state.setCursor(Math.round(Math.min(Math.max(next, whole.from), whole.to) * 1000) / 1000);
  };
  const strip = (from: number, to: number, name: string, kind: string) => {
    const x0 = (): number => wholeX(props.axis, Math.max(from, props.axis.from));
    const x1 = (): number => wholeX(props.axis, Math.min(to, props.axis.to));
    return (
      <Show when={x1() - x0() > 1}>
        <span class={`touching ${kind}`} style={{ left: `${x0()}px`, width: `${x1() - x0()}px` }}>
          {x1() - x0() > 7 * name.length ? name : ''}
        </span>
      </Show>
    );
  };
  return (
    <>
      <div class="whole-floor" style={{ height: `${props.height}px` }} onPointerDown={press}>
        <svg width={props.axis.width} height={props.height} aria-hidden="true">
          <For each={ticks()}>
            {(s) => (
              <>
                <path d={`M${Math.round(wholeX(props.axis, s)) + 0.5} 0v9`} stroke="var(--floor-tick)" />
                <Show when={Math.abs(wholeX(props.axis, s) - at()) > 48}>
                  <text class="tick-label" x={wholeX(props.axis, s)} y={props.height / 2 + 9} text-anchor="middle">
                    {formatNumber(s, 1)}
                  </text>
                </Show>
              </>
            )}
          </For>
        </svg>
        <TimeBob
          label={t.play}
          least={props.whole.from}
          most={props.whole.to}
          now={props.state.cursor()}
          words={`${formatNumber(props.state.cursor(), 2)} s`}
          x={at()}
          onKeyDown={onKeyDown}
        >
          <output>{formatNumber(props.state.cursor(), 2)} s</output>
        </TimeBob>
      </div>
      <div class="touching-strip" style={{ height: `${STRIP}px` }} aria-hidden="true">
        {strip(props.whole.from, 0, props.whole.swing ? t.phases.swing : t.phases.contact, 'grip')}
        {strip(0, props.whole.touchdown, t.phases.flight, 'free')}
        {strip(props.whole.touchdown, props.whole.to, t.phases.landing, 'mat')}
      </div>
    </>
  );
}
