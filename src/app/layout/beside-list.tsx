/** The numbers of two ways for fingers: A large, the other under it, and how many times the one is the other. */
import { createMemo, For, Show } from 'solid-js';
import { VersionTag } from '../../features/compare/version-tag.tsx';
import { sayNumber, unitOf } from '../../ui/units.ts';
import type { Beside } from '../beside.ts';
import { calcBesideRows } from '../beside-numbers.ts';
import { firstTexts as t } from '../first-words.ts';
import { useCursor, useFlight } from '../page.ts';
import { listTwoRows } from './beside-three.tsx';
import { touchTexts } from './touch-words.ts';

export const listTitles = ({ turn }: Beside): readonly string[] => [
  turn === 'twist' ? t.twistRate : t.somersaultRate,
  touchTexts.spread,
  t.momentum,
];

export function BesideList(props: { beside: Beside }) {
  const flight = useFlight();
  const cursor = useCursor();
  const rows = createMemo(() =>
    calcBesideRows(flight.result().frames, props.beside.result.frames, cursor.at(), props.beside.turn),
  );
  const list = createMemo(() => listTwoRows(rows(), props.beside));
  const titles = createMemo(() => listTitles(props.beside));
  const isSame = (i: number): boolean => i === 2 && rows().momentum.kind === 'same';
  return (
    <For each={[0, 1, 2]}>
      {(i) => {
        const row = () => list()[i];
        const say = (v: number): string => sayNumber(row().quantity, v, row().decimals);
        return (
          <div class={`number-line two ${row().hue || 'ink'}`} data-number={row().id}>
            <p class="number-value">
              <span class="spoken">{titles()[i]}: </span>
              <Show when={!isSame(i)}>
                <VersionTag letter="A" small />
              </Show>
              <b>{say(rows().own[row().id])}</b>
              <span class="unit">{unitOf(row().quantity)}</span>
              <Show when={!isSame(i)}>
                <span class="number-other">
                  <VersionTag letter={props.beside.letter} small />
                  <b>{say(rows().other[row().id])}</b>
                </span>
              </Show>
            </p>
            <p class="number-words">
              <b>{row().words.lead}</b> <span class="number-rest plain">{row().words.rest}</span>
            </p>
          </div>
        );
      }}
    </For>
  );
}
