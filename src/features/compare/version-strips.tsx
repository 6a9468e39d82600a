/** Side by side: each other version in a strip of its own, under A's and on the same ruler; beside it, held upright. */

import { createEffect, createMemo, For, Show } from 'solid-js';
import { useMountedStage } from '../../app/mounted-stage.ts';
import { useCursor } from '../../app/page.ts';
import { speakSentence, wordLanding } from '../../app/say/sentence-words.ts';
import { FREE, fitStage } from '../../app/stage-fit.ts';
import { texts } from '../../app/words.ts';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { unitSystem } from '../../ui/units.ts';
import type { CompareState, FlownVersion } from './compare-state.ts';
import { VersionTag } from './version-tag.tsx';
import { compareTexts as c } from './words.ts';

const LEAST = 118;

/** px of the height labels, at the left edge */
const LABELS = 46;

export function VersionStrips(props: {
  state: CompareState;
  axis: TimeAxis;
  height: number;
  timeLeft: number;
  /** room right of the time column for the figure held upright */
  side: number;
}) {
  const others = createMemo(() =>
    props.state
      .flown()
      .filter((f) => f.letter !== 'A' && f.result)
      .map((f) => f.letter),
  );
  const tall = (): number => Math.max(LEAST, Math.floor(props.height / Math.max(others().length, 1)) - 6);
  return (
    <div class="version-strips" style={{ 'min-height': `${props.height}px` }}>
      <For each={others()}>
        {(letter) => (
          <Show when={props.state.flown().find((f) => f.letter === letter)}>
            {(one) => <Strip {...props} one={one()} height={tall()} />}
          </Show>
        )}
      </For>
    </div>
  );
}

function Strip(props: { one: FlownVersion; axis: TimeAxis; height: number; timeLeft: number; side: number }) {
  const cursor = useCursor();
  let canvas!: HTMLCanvasElement;
  const { handle, failed } = useMountedStage(
    () => canvas,
    () => [width(), props.height],
  );
  const width = (): number => props.axis.width + props.side;
  const views = createMemo<ViewPlace[]>(() => {
    const result = props.one.result;
    if (!result) return [];
    const height = props.height;
    const fit = fitStage(result, { width: FREE, height: height - 6 }, 130);
    const stature = result.flight.body.stature ?? 1.6;
    const common = { y: 0, height, floorY: height, pxPerS: props.axis.pxPerS };
    return [
      {
        ...common,
        kind: 'unrolled',
        x: 0,
        width: props.axis.width,
        x0: props.axis.x0 - props.one.shiftS * props.axis.pxPerS,
        labelX: Math.min(props.axis.x0, LABELS) - 7,
        pxPerM: fit.unrolledPxPerM,
        ghosts: 10,
      },
      ...(props.side > 60
        ? [
            {
              ...common,
              kind: 'upright' as const,
              x: props.axis.width,
              width: props.side,
              x0: props.side / 2,
              pxPerM: Math.min((height - 16) / (stature * 1.35), (props.side - 8) / (stature * 1.08)),
              ghosts: 0,
            },
          ]
        : []),
    ];
  });
  createEffect(() => {
    const { result, shiftS } = props.one;
    if (!result) return;
    const own = cursor.at() + shiftS;
    handle()?.draw({
      result,
      cursorS: Math.min(Math.max(own, 0), result.flight.duration),
      width: width(),
      height: props.height,
      views: views(),
      units: unitSystem(),
      landing: wordLanding(result.outline),
      extras: {},
    });
  });
  return (
    <figure class="strip" style={{ height: `${props.height}px` }}>
      <figcaption style={{ width: props.timeLeft > 100 ? `${props.timeLeft}px` : undefined }}>
        <VersionTag letter={props.one.letter} /> {props.one.name}
      </figcaption>
      <canvas
        ref={canvas}
        data-strip={handle() ? props.one.letter : undefined}
        role="img"
        aria-label={`${c.strip(props.one.letter, props.one.name)}. ${props.one.result ? speakSentence(props.one.result.outline) : ''}`}
        style={{ width: `${width()}px`, height: `${props.height}px` }}
      />
      <Show when={failed()}>
        <p role="alert">{texts.stage.noRenderer}</p>
      </Show>
    </figure>
  );
}
