/** Every joint angle at the cursor, typed: left and right beside each other. A value sets a key there, or the held shape. */

import { createMemo, For, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { withoutSide } from '../../../sim/math/side.ts';
import { useCursor, useFlight, useServices } from '../../app/page.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { texts } from '../../app/words.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { useHand } from './hand.ts';
import { poseTexts } from './words.ts';

interface Row {
  readonly stem: string;
  /** index into Body.angles; one for the trunk, left and right for a limb */
  readonly columns: readonly number[];
}

/** Sides within this, deg, are alike. */
const ALIKE = 20;
/** Beyond the end of a range by this much, deg, a value may be typed: it is a caution, not an error. */
const BEYOND = 30;

export function AngleList() {
  const flight = useFlight();
  const services = useServices();
  const cursor = useCursor();
  const hand = useHand();
  const body = createMemo(() => flight.result().flight.body);
  const rows = createMemo<Row[]>(() => {
    const { angles } = body();
    return angles.flatMap(({ name, mirror }, a): Row[] => {
      if (mirror === a) return [{ stem: name, columns: [a] }];
      return mirror < a ? [] : [{ stem: withoutSide(name), columns: /L$/.test(name) ? [a, mirror] : [mirror, a] }];
    });
  });
  const now = createMemo(() => services.posing.anglesAt(flight.result(), cursor.at()));
  /** both sides have this angle: what is typed for one is meant for both */
  const isAlike = ({ columns: [l, r] }: Row): boolean =>
    Math.abs(now()[r] * body().angles[l].mirrorSign - now()[l]) * DEG < ALIKE;
  const type = (row: Row, column: number, deg: number): void => {
    const both = row.columns.length === 2 && (hand.chosenSides() ?? (isAlike(row) ? 'both' : 'one')) === 'both';
    const name = both ? row.stem : body().angles[column].name;
    hand.put({ [name]: deg }, poseTexts.typed(wordJoint(name)));
  };
  const range = (column: number): [number, number] => {
    const [low, high] = body().angles[column].range;
    return [Math.round(low * DEG), Math.round(high * DEG)];
  };
  return (
    <div class="angle-list">
      <p class="quiet">
        {poseTexts.anglesAt(formatNumber(cursor.at(), 2))}{' '}
        {hand.heldSpan() && hand.scope() === 'shape'
          ? poseTexts.setsShape(hand.heldSpan()?.title ?? '')
          : poseTexts.setsKey}
      </p>
      <div class="angle-heads" aria-hidden="true">
        <span />
        <span>{texts.stage.left}</span>
        <span>{texts.stage.right}</span>
      </div>
      <For each={rows()}>
        {(row) => (
          <div class="angle-row">
            <span class="angle-name">{wordJoint(row.stem)}</span>
            <For each={row.columns}>
              {(column) => (
                <div class="angle-cell" classList={{ wide: row.columns.length === 1 }}>
                  <NumberField
                    compact
                    label={wordJoint(body().angles[column].name)}
                    unit="°"
                    value={(now()[column] ?? 0) * DEG}
                    min={range(column)[0] - (isBeyond(now()[column], body().angles[column].range) ? BEYOND : 0)}
                    max={range(column)[1] + (isBeyond(now()[column], body().angles[column].range) ? BEYOND : 0)}
                    step={1}
                    decimals={0}
                    onChange={(deg) => type(row, column, deg)}
                  />
                </div>
              )}
            </For>
            <Show when={row.columns.some((c) => isBeyond(now()[c], body().angles[c].range))}>
              <p class="angle-beyond">
                {poseTexts.beyond(...(range(row.columns[0]).map((v) => formatNumber(v, 0)) as [string, string]))}
              </p>
            </Show>
          </div>
        )}
      </For>
    </div>
  );
}

const isBeyond = (value: number | undefined, [low, high]: readonly [number, number]): boolean =>
  value !== undefined && (value < low - 1e-3 || value > high + 1e-3);
