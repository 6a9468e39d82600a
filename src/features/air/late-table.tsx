/** What a late hand gives for the time that it holds on: twists and tilt at the end, arms as filed and equal. */
import { For, Show } from 'solid-js';
import type { LateDose } from '../../../sim/index.ts';
import { DEG, REV } from '../../../sim/math/angles.ts';
import { wordGrain } from '../../../sim/words/late-words.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { contactTexts } from './words.ts';

const t = contactTexts.lateTable;

type Dose = LateDose['rows'][number]['filed'];

const ms = (s: number): string => formatNumber(s * 1000, 1);
const deg = (rad: number): string => `${formatNumber(Math.abs(rad) * DEG, 0)}°`;

/** "0.51 right, 2°"; next to none has no side. */
function sayDose(d: Dose): string {
  if (!Number.isFinite(d.twist)) return t.unknown;
  const turns = Math.abs(d.twist) / REV;
  const side = turns < 0.005 ? '' : ` ${d.twist > 0 ? t.left : t.right}`;
  return `${say('turns', turns, 2)}${side}, ${deg(d.tilt)}`;
}

export function LateTable(props: { dose: LateDose }) {
  const hasEqual = (): boolean => props.dose.rows[0].equal !== undefined;
  return (
    <figure class="late-dose">
      <table class="window-table">
        <caption>{t.title}</caption>
        <thead>
          <tr>
            <th scope="col">{t.held}</th>
            <th scope="col">{`${t.filed}: ${t.twists}, ${t.tilt}`}</th>
            <Show when={hasEqual()}>
              <th scope="col">{t.equal}</th>
            </Show>
          </tr>
        </thead>
        <tbody>
          <For each={props.dose.rows}>
            {(row) => (
              <tr aria-current={row.held === props.dose.held ? 'true' : undefined}>
                <th scope="row">{ms(row.held)}</th>
                <td>{sayDose(row.filed)}</td>
                <Show when={row.equal}>{(equal) => <td>{sayDose(equal())}</td>}</Show>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <figcaption>{wordGrain(props.dose, PAGE_NUMBERS)}</figcaption>
    </figure>
  );
}
