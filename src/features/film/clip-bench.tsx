/** A clip on a laptop: facts and what the times give beside the air; comb and plate under the floor, what is set and compared beside them. */
import { createMemo, For, Show } from 'solid-js';
import type { ToolProps } from '../../app/tool.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import { ClipBeside, ClipCaution } from './clip-beside.tsx';
import { ClipComb, ClipFilling, ClipKeptPegs } from './clip-comb.tsx';
import { ClipFacts } from './clip-facts.tsx';
import { ClipFoot } from './clip-foot.tsx';
import { ClipGiven } from './clip-given.tsx';
import { ClipHang, readShare } from './clip-hang.tsx';
import { ClipLeft } from './clip-left.tsx';
import { ClipMade } from './clip-made.tsx';
import { placeOf, plateBox } from './clip-plan.ts';
import { useClipPosing } from './clip-pose-state.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';
import { FilmAir } from './film-frame.tsx';

const GUTTER = 24;
const EDGE = 20;
/** px beside the plate that the left column has */
const LEFT_OVER = 18;

export interface ClipPartProps extends ToolProps {
  desk: ClipDesk;
  clipAxis: TimeAxis;
  /** frames are on the ruler */
  hasTime: boolean;
}

export function ClipBench(props: ClipPartProps) {
  const posing = useClipPosing();
  const place = () => placeOf(true, props.height);
  const shape = (): number => {
    const facts = props.desk.clip()?.facts;
    return facts ? facts.width / facts.height : 16 / 9;
  };
  const room = createMemo(() => ({
    x: props.timeLeft + 24,
    y: place().comb,
    width: props.axis.width - 64,
    height: props.height - place().comb - place().foot,
  }));
  const box = createMemo(() =>
    plateBox(
      room(),
      shape() * (props.desk.isApart() ? 2 : 1),
      props.hasTime ? props.timeLeft + xOf(props.clipAxis, props.desk.time.at()) : room().x + room().width / 2,
    ),
  );
  const right = () => {
    const x = props.timeLeft + props.axis.width + GUTTER;
    return { left: `${x}px`, width: `${props.width - x - EDGE}px` };
  };
  const air = (): number => props.pictures ?? 0;
  return (
    <>
      <Show when={props.desk.times()}>
        <FilmAir>
          <div class="clip-right-air" style={{ ...right(), height: `${air()}px` }}>
            <ClipGiven desk={props.desk} height={air()} />
          </div>
        </FilmAir>
      </Show>
      <Show when={props.desk.clip()}>
        <FilmAir>
          <div class="clip-left-air" style={{ width: `${props.timeLeft - 10}px`, height: `${air()}px` }}>
            <ClipFacts desk={props.desk} height={air()} />
          </div>
        </FilmAir>
      </Show>
      <Show when={props.hasTime}>
        <ClipComb desk={props.desk} axis={props.clipAxis} left={props.timeLeft} height={place().comb} isTouch={false} />
      </Show>
      <ClipKeptPegs desk={props.desk} axis={props.axis} left={props.timeLeft} />
      <ClipFilling axis={props.axis} left={props.timeLeft} share={readShare(props.desk)} />
      <ClipHang desk={props.desk} box={box()} canDrop />
      <Show when={props.desk.clip()}>
        <div class="clip-left" style={{ width: `${props.timeLeft + LEFT_OVER}px` }}>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is scrolled by keys only when it has the focus */}
          <section class="clip-scroll" aria-label={t.leftSide} tabIndex={0}>
            <ClipLeft desk={props.desk} />
          </section>
          <p class="clip-keys quiet">
            <For each={t.keys}>{(key) => <span>{key}</span>}</For>
          </p>
        </div>
        <div
          class="clip-foot-place"
          style={{
            left: `${box().x}px`,
            width: `${Math.max(box().width, 420)}px`,
            top: `${box().y + box().height + 10}px`,
          }}
        >
          <ClipFoot desk={props.desk} />
        </div>
        <div class="clip-right" style={right()}>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: as above */}
          <section class="clip-scroll" aria-label={t.rightSide} tabIndex={0}>
            <Show when={props.desk.times()?.airTime}>
              <ClipBeside desk={props.desk} />
            </Show>
            <Show when={props.desk.sight() && !props.desk.isStill()}>
              <ClipMade posing={posing} />
            </Show>
          </section>
          <ClipCaution desk={props.desk} />
        </div>
      </Show>
    </>
  );
}
