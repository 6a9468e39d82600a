/** A clip on tablet and phone: the plate under the comb, numbers beside or below it, marks by words over the keys of the thumb. */
import { createEffect, createMemo, on, Show } from 'solid-js';
import type { ToolProps } from '../../app/tool.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { ClipPartProps } from './clip-bench.tsx';
import { ClipBeside, ClipCaution } from './clip-beside.tsx';
import { ClipComb, ClipFilling, ClipKeptPegs } from './clip-comb.tsx';
import { ClipFacts } from './clip-facts.tsx';
import { ClipFoot } from './clip-foot.tsx';
import { ClipGiven } from './clip-given.tsx';
import { ClipHang, readShare } from './clip-hang.tsx';
import { ClipMarkHere, ClipPrivate, ClipStretch } from './clip-left.tsx';
import { ClipMade } from './clip-made.tsx';
import { isPlacing } from './clip-placing.ts';
import { placeOf, plateBox } from './clip-plan.ts';
import { useClipPosing } from './clip-pose-state.ts';
import { ClipSet } from './clip-set.tsx';
import { ClipLarge, ClipThumb } from './clip-touch.tsx';
import { clipTexts as t } from './clip-words.ts';
import { FilmAir, FilmFloor } from './film-frame.tsx';

/** px at the right of a tablet for numbers */
const COLUMN = 388;
export const touchColumn = ({ device, width }: Pick<ToolProps, 'device' | 'width'>): number =>
  device === 'tablet' && width >= 900 ? COLUMN : 0;
const EDGE = 16;
/** px: the head of the tool lies over the right edge here, and has no row of its own (clip.css) */
const HEAD = 48;

export function ClipStacked(props: ClipPartProps) {
  const posing = useClipPosing();
  const column = (): number => touchColumn(props);
  const place = () => placeOf(false, height());
  const shape = (): number => {
    const facts = props.desk.clip()?.facts;
    return facts ? facts.width / facts.height : 16 / 9;
  };
  const height = (): number => props.height + HEAD;
  const roomWidth = (): number => props.width - column() - 2 * EDGE;
  const comb = (): number => (props.hasTime || props.desk.kept() ? place().comb : 14);
  const box = createMemo(() => {
    const most = column() > 0 ? height() - comb() - 6 : Math.max(220, 0.62 * height());
    const lineX = props.hasTime ? xOf(props.clipAxis, props.desk.time.at()) : EDGE + roomWidth() / 2;
    return plateBox(
      { x: EDGE, y: comb(), width: roomWidth(), height: most },
      shape() * (props.desk.isApart() ? 2 : 1),
      lineX,
    );
  });
  /** what is placed by hand is under the plate then: both are seen */
  const isSetting = (): boolean => isPlacing(props.desk.hand());
  createEffect(
    on(isSetting, (now) => {
      if (now) document.querySelector('.tool-body, .clip-scroll')?.scrollTo(0, 0);
    }),
  );
  const device = (): 'tablet' | 'phone' => (props.device === 'phone' ? 'phone' : 'tablet');
  return (
    <>
      <Show when={props.desk.times() && column() > 0}>
        <FilmAir>
          <div class="clip-right-air" style={{ right: `${EDGE}px`, width: `${COLUMN - 24}px` }}>
            <ClipLarge desk={props.desk} />
          </div>
        </FilmAir>
      </Show>
      <Show when={props.hasTime}>
        <FilmFloor>
          <ClipThumb desk={props.desk} device={device()} />
        </FilmFloor>
        <ClipComb desk={props.desk} axis={props.clipAxis} left={0} height={comb()} isTouch />
      </Show>
      <ClipKeptPegs desk={props.desk} axis={props.axis} left={0} />
      <ClipFilling axis={props.axis} left={0} share={readShare(props.desk)} />
      <ClipHang desk={props.desk} box={box()} canDrop={false} />
      <Show when={props.desk.clip()}>
        <div
          class={column() > 0 ? 'clip-side' : 'clip-below'}
          style={
            column() > 0
              ? { width: `${COLUMN - 24}px`, right: `${EDGE}px`, height: `${height()}px` }
              : { 'padding-top': `${box().y + box().height + 12}px` }
          }
        >
          <Show when={column() > 0}>
            <p class="clip-stays">{t.staysHere}</p>
          </Show>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is scrolled by keys only when it has the focus */}
          <section class="clip-scroll" aria-label={t.rightSide} tabIndex={0}>
            <Show when={isSetting()}>
              <ClipSet desk={props.desk} />
            </Show>
            <Show when={column() === 0}>
              <ClipLarge desk={props.desk} />
            </Show>
            <ClipFoot desk={props.desk} />
            <ClipGiven desk={props.desk} />
            <ClipStretch desk={props.desk} />
            <Show when={props.desk.frames() && !isSetting()}>
              <ClipSet desk={props.desk} />
            </Show>
            <Show when={props.desk.times()}>
              <ClipMarkHere desk={props.desk} />
            </Show>
            <Show when={props.desk.times()?.airTime}>
              <ClipBeside desk={props.desk} />
            </Show>
            <Show when={props.desk.sight() && !props.desk.isStill()}>
              <ClipMade posing={posing} />
            </Show>
            <ClipCaution desk={props.desk} />
            <ClipFacts desk={props.desk} />
            <ClipPrivate desk={props.desk} />
          </section>
        </div>
      </Show>
    </>
  );
}
