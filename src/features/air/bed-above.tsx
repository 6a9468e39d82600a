/** The bed from above, to scale: where the feet come down, in order. */
import { createMemo, For, Show } from 'solid-js';
import { wordSensitivity } from '../../../sim/words/chain-words.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { say } from '../../ui/units.ts';
import { cardTexts as t } from './card-texts.ts';

/** Bed and box of the norm, m (from memory). */
const BED = { length: 4.28, width: 2.14 } as const;
/** m: marks nearer than this are one */
const TOGETHER = 0.2;
const BOX = { length: 2.15, width: 1.08 } as const;

export function BedAbove(props: { state: WholeState; whole: WholeResult; width: number }) {
  const scale = (): number => Math.min(52, props.width / (BED.length + 0.1));
  /** mass centre over the feet as each flight begins, and as the last ends: m from the first */
  const places = createMemo(() => {
    const { t: times, p_WScm_W: p } = props.whole.poses;
    const at = (s: number): { x: number; z: number } => {
      let i = 0;
      while (i < times.length - 1 && times[i] < s - 1e-6) i++;
      return { x: p[3 * i], z: p[3 * i + 2] };
    };
    const list = [
      ...props.whole.legs.map((leg) => at(leg.takeoff)),
      at(props.whole.legs[props.whole.legs.length - 1].touchdown),
    ];
    const [first] = list;
    return list.map(({ x, z }) => ({ x: x - first.x, z: z - first.z }));
  });
  const way = (): 1 | -1 => (props.whole.legs.reduce((sum, leg) => sum + leg.flight.travel, 0) < 0 ? -1 : 1);
  const middle = (): readonly [number, number] => [(BED.length / 2) * scale(), (BED.width / 2) * scale()];
  const px = ({ x, z }: { x: number; z: number }): readonly [number, number] => [
    middle()[0] + way() * x * scale(),
    middle()[1] + way() * z * scale(),
  ];
  /** by the flight that comes down there; those that lie on each other share a mark, and where it starts has none */
  const marks = createMemo(() => {
    const list: { place: { x: number; z: number }; label: string; isStart: boolean }[] = [];
    places().forEach((place, i) => {
      const near = list.find(
        (one) => Math.hypot(one.place.x - place.x, one.place.z - place.z) < TOGETHER && i > 0 && !one.isStart,
      );
      if (near) near.label += ` ${i}`;
      else list.push({ place, label: i === 0 ? '' : String(i), isStart: i === 0 });
    });
    return list;
  });
  const last = () => places()[places().length - 1];
  return (
    <figure class="bed-above">
      <figcaption>
        <b>{t.above}</b> {t.aboveHint}
      </figcaption>
      <svg
        width={BED.length * scale() + 2}
        height={BED.width * scale() + 2}
        role="img"
        aria-label={`${t.above}: ${say('length', Math.hypot(last().x, last().z))}`}
      >
        <rect class="bed" x="1" y="1" width={BED.length * scale()} height={BED.width * scale()} />
        <rect
          class="box"
          x={middle()[0] - (BOX.length / 2) * scale()}
          y={middle()[1] - (BOX.width / 2) * scale()}
          width={BOX.length * scale()}
          height={BOX.width * scale()}
        />
        <path class="box" d={`M${middle()[0] - 14} ${middle()[1]}h28M${middle()[0]} ${middle()[1] - 14}v28`} />
        <For each={marks()}>
          {({ place, label, isStart }) => (
            <>
              <rect
                classList={{ start: isStart }}
                class="mark"
                x={px(place)[0] - (4 + 4.5 * label.length)}
                y={px(place)[1] - 8}
                width={8 + 9 * label.length}
                height="16"
                rx="8"
              />
              <text classList={{ start: isStart }} x={px(place)[0]} y={px(place)[1] + 4} text-anchor="middle">
                {label}
              </text>
            </>
          )}
        </For>
        <text class="far" x={px(places()[0])[0]} y={px(places()[0])[1] + 24} text-anchor="middle">
          {t.starts}
        </text>
        <text class="far" x={px(last())[0] + 12} y={px(last())[1] - 12}>
          {say('length', Math.hypot(last().x, last().z))}
        </text>
      </svg>
      <Show when={props.state.sensitivity()}>
        {(found) => (
          <div class="one-more" data-testid="one-more">
            <b>{t.one}</b>
            <For each={wordSensitivity(found())}>{(line) => <p>{line}</p>}</For>
          </div>
        )}
      </Show>
    </figure>
  );
}
