/** The band of a whole skill: play and steps, its ruler with the cursor, and the strip of what touches. */
import { createMemo, For, Show } from 'solid-js';
import { TimeBob } from '../../app/time-bob.tsx';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { PlayKey } from '../../ui/play-key.tsx';
import type { AirFrame } from './air-frame.ts';
import { airTexts as t } from './air-texts.ts';
import { pressCursor } from './press-cursor.ts';
import { SideMetres } from './side-metres.tsx';
import type { SideRange } from './side-picture.tsx';
import { TouchStrip } from './touch-strip.tsx';
import { type WholeAxis, wholeTicks, wholeX } from './whole-axis.ts';

const SPEEDS = [0.25, 0.5, 1];

export function WholeFloor(props: {
  state: WholeState;
  whole: WholeResult;
  axis: WholeAxis;
  frame: AirFrame;
  range: SideRange;
}) {
  const ticks = createMemo(() => wholeTicks(props.axis));
  const at = (): number => wholeX(props.axis, props.state.cursor());
  const isBench = (): boolean => props.frame.device === 'bench';
  const grip = (): number => (isBench() ? 44 : 64);
  const press = (e: PointerEvent): void => pressCursor(e, props.state, props.axis);
  return (
    <section class="whole-band" aria-label={t.ruler}>
      <div class="whole-floor" style={{ height: `${props.frame.band}px` }}>
        <Show when={isBench()}>
          <FloorKeys state={props.state} width={props.frame.timeX} />
        </Show>
        <div class="whole-ruler" style={{ width: `${props.axis.width}px` }} onPointerDown={press}>
          <svg width={props.axis.width} height={props.frame.band} aria-hidden="true">
            <For each={ticks()}>
              {(s) => (
                <>
                  <path d={`M${Math.round(wholeX(props.axis, s)) + 0.5} 0v9`} stroke="var(--floor-tick)" />
                  <Show when={Math.abs(wholeX(props.axis, s) - at()) > grip()}>
                    <text
                      class="tick-label"
                      x={wholeX(props.axis, s)}
                      y={props.frame.band / 2 + 9}
                      text-anchor="middle"
                    >
                      {formatNumber(s, 1)}
                    </text>
                  </Show>
                </>
              )}
            </For>
          </svg>
          <TimeBob
            label={t.time}
            least={props.whole.from}
            most={props.whole.to}
            now={props.state.cursor()}
            words={`${formatNumber(props.state.cursor(), 2)} s`}
            x={at()}
          >
            <output>{formatNumber(props.state.cursor(), 2)} s</output>
          </TimeBob>
        </div>
        <Show when={props.frame.sideWidth > 0}>
          <SideMetres frame={props.frame} range={props.range} />
        </Show>
      </div>
      <TouchStrip {...props} />
    </section>
  );
}

function FloorKeys(props: { state: WholeState; width: number }) {
  const play = () => props.state.play;
  const step = (by: number): void => props.state.setCursor(Math.round((props.state.cursor() + by) * 100) / 100);
  return (
    <div class="whole-keys" style={{ width: `${props.width}px` }}>
      <WholePlay state={props.state} />
      <button type="button" class="on-floor square" aria-label={t.back} onClick={() => step(-0.01)}>
        <Icon name="back" />
      </button>
      <button type="button" class="on-floor square" aria-label={t.on} onClick={() => step(0.01)}>
        <Icon name="on" />
      </button>
      <WholeSpeed state={props.state} />
      <span class="spoken">{play().playing() ? t.pause : ''}</span>
    </div>
  );
}

export function WholePlay(props: { state: WholeState; size?: number }) {
  const play = () => props.state.play;
  return <PlayKey playing={play().playing()} words={t} size={props.size} onPress={() => play().toggle()} />;
}

export function WholeSpeed(props: { state: WholeState }) {
  const play = () => props.state.play;
  const next = (): void => play().setRate(SPEEDS[(SPEEDS.indexOf(play().rate()) + 1) % SPEEDS.length]);
  return (
    <button type="button" class="on-floor speed" title={t.speed} onClick={next}>
      {t.speeds[String(play().rate())]}
    </button>
  );
}
