/** The whole skill along time: poses on the ruler, to the scale of the side view. */
import { createMemo, Show, untrack } from 'solid-js';
import { useFlight } from '../../app/page.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import type { WholePictureInput } from '../../pictures/whole-input.ts';
import { SideSign } from '../../ui/icon.tsx';
import { unitSystem } from '../../ui/units.ts';
import type { AirFrame } from './air-frame.ts';
import { airTexts as t } from './air-texts.ts';
import { pressCursor } from './press-cursor.ts';
import type { WholeAxis } from './whole-axis.ts';

export function TimePicture(props: {
  state: WholeState;
  whole: WholeResult;
  axis: WholeAxis;
  frame: AirFrame;
  isLong: boolean;
  showsAll: boolean;
  setAll: (all: boolean) => void;
}) {
  const flight = useFlight();
  const view = createMemo<WholePictureInput>(() => {
    const a = props.axis;
    return {
      width: props.axis.width,
      height: props.frame.picture,
      pxPerM: props.frame.pxPerM,
      floorY: props.frame.picture,
      from: a.from,
      units: unitSystem(),
      x: (s) => a.left + (s - a.from) * a.pxPerS,
    };
  });
  const still = createMemo(() => props.state.pictures()?.still(props.whole, untrack(flight.result), view()) ?? '');
  const now = createMemo(
    () => props.state.pictures()?.now(props.whole, untrack(flight.result), view(), props.state.cursor()) ?? '',
  );
  const press = (e: PointerEvent): void => pressCursor(e, props.state, props.axis);
  return (
    <div class="whole-picture" style={{ height: `${props.frame.picture}px`, width: `${props.axis.width}px` }}>
      <svg width={props.axis.width} height={props.frame.picture} role="img" aria-label={t.along} onPointerDown={press}>
        {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
        <g innerHTML={still()} />
        {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
        <g innerHTML={now()} />
      </svg>
      <p class="stage-name">
        {t.along}
        <span class="side-keys">
          <SideSign side="left" /> {t.left} <SideSign side="right" /> {t.right}
        </span>
      </p>
      <Show when={props.isLong}>
        <span class="whole-span">
          <button type="button" class="small" aria-pressed={!props.showsAll} onClick={() => props.setAll(false)}>
            {t.lastTurn}
          </button>
          <button type="button" class="small" aria-pressed={props.showsAll} onClick={() => props.setAll(true)}>
            {t.all}
          </button>
        </span>
      </Show>
    </div>
  );
}
