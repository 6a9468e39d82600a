/** At the right of the air on the calm bench: the athlete whose limbs are handles, with rate times moment beside, or how the tilt came. */
import { createMemo, Show } from 'solid-js';
import { VersionTag } from '../../features/compare/version-tag.tsx';
import { EqualArea } from '../../features/instant/equal-area.tsx';
import { TiltTrio, TRIO } from '../../features/instant/tilt-trio.tsx';
import { FigureHandle } from '../../features/pose/figure-handle.tsx';
import { useHand } from '../../features/pose/hand.ts';
import { OtherFigure } from '../../features/pose/other-figure.tsx';
import type { Beside } from '../beside.ts';
import { besideTexts } from '../beside-words.ts';
import type { CutValues } from '../cut-values.ts';
import { calcFirstRows, type FirstRows, type FirstStory } from '../first-rows.ts';
import { useFlight, useShell } from '../page.ts';

/** px of the rectangles, and of both beside each other */
const AREA = 150;
const BESIDE = 380;
/** px of the letters over two figures */
const NAMES = 28;
/** px to the middle of a figure that has the rectangles at its right */
const CENTRE = 116;

interface AirCutProps {
  story: FirstStory;
  cut: CutValues;
  width: number;
  height: number;
}

export function AirCut(props: AirCutProps) {
  const shell = useShell();
  return (
    <Show when={shell.beside.shown()} fallback={<OneFigure {...props} />}>
      {(beside) => <TwoFigures beside={beside()} {...props} />}
    </Show>
  );
}

/** Both ways beside each other, the skill's own with its handles. */
function TwoFigures(props: { beside: Beside } & AirCutProps) {
  const shell = useShell();
  const half = (): number => Math.floor(props.width / 2);
  const height = (): number => props.height - NAMES;
  const name = (letter: Parameters<typeof VersionTag>[0]['letter'], way: string, x: number) => (
    <p class="figure-name" style={{ left: `${x}px`, height: `${NAMES}px` }}>
      <VersionTag letter={letter} /> {way}
    </p>
  );
  return (
    <>
      {name('A', props.beside.own, 0)}
      {name(props.beside.letter, props.beside.other, half())}
      <div class="two-figures" style={{ top: `${NAMES}px` }}>
        <FigureHandle width={half()} height={height()} centre={half() / 2} onLarger={() => shell.openTool('pose')} />
        <OtherFigure
          version={props.beside}
          width={half()}
          height={height()}
          label={besideTexts.named(props.beside.letter, props.beside.other)}
        />
      </div>
    </>
  );
}

function OneFigure(props: AirCutProps) {
  const flight = useFlight();
  const shell = useShell();
  const hand = useHand();
  const rows = createMemo(() => calcFirstRows(flight.result().frames, props.cut.place, props.story));
  const isWide = (): boolean => props.width > BESIDE;
  const isTrio = (): boolean => isWide() && props.story.kind === 'twisting';
  const area = (): Extract<FirstRows, { kind: 'oneAxis' }> | undefined => {
    const now = rows();
    return isWide() && now.kind === 'oneAxis' && now.hasArea ? now : undefined;
  };
  const centre = (): number => (isTrio() ? TRIO.cursor * props.width : area() ? CENTRE : props.width / 2);
  return (
    <>
      <FigureHandle
        width={props.width}
        height={props.height}
        centre={centre()}
        {...(isTrio() ? { taken: 0.6 * props.width } : {})}
        {...(props.story.kind === 'twisting' ? { tiltDeg: props.cut.tilt } : { ghostS: 0 })}
        onLarger={() => shell.openTool('pose')}
      />
      <Show when={isTrio()}>
        <TiltTrio width={props.width} height={props.height} hidden={hand.shown() !== undefined} />
      </Show>
      <Show when={hand.shown() ? undefined : area()}>
        {(one) => (
          <div class="area-place" style={{ left: `${props.width - AREA}px` }}>
            <EqualArea rows={one()} width={AREA} height={props.height - 12} />
          </div>
        )}
      </Show>
    </>
  );
}
