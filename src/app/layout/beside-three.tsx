/** The three rows of two ways of a skill: both numbers at the cursor with their letters, and how many times the one is the other, by name. */
import { createMemo, For, type JSX, Show } from 'solid-js';
import { BesideWhy } from '../../features/compare/beside-why.tsx';
import { VersionTag } from '../../features/compare/version-tag.tsx';
import { type QuantityKind, sayNumber, unitOf } from '../../ui/units.ts';
import type { Beside } from '../beside.ts';
import { type BesideRows, calcBesideRows } from '../beside-numbers.ts';
import { wordBesideMoment, wordBesideRate } from '../beside-words.ts';
import { type ChangeWords, firstTexts as t } from '../first-words.ts';
import { useFlight } from '../page.ts';
import type { Box } from '../plot/pen.ts';
import { FirstTitle } from './first-three.tsx';

/** A row lower than this has both numbers on one line, px. */
const LOW = 62;

interface TwoRow {
  readonly id: 'rate' | 'moment' | 'momentum';
  readonly quantity: QuantityKind;
  readonly decimals: number;
  readonly hue: string;
  readonly words: ChangeWords;
}

export function listTwoRows(rows: BesideRows, beside: Beside): readonly TwoRow[] {
  const hue = beside.turn === 'twist' ? 'twist' : 'som';
  return [
    { id: 'rate', quantity: 'rate', decimals: 2, hue, words: wordBesideRate(rows, beside) },
    { id: 'moment', quantity: 'moment', decimals: 2, hue, words: wordBesideMoment(rows.moment, beside) },
    { id: 'momentum', quantity: 'momentum', decimals: 1, hue: '', words: wordBesideMoment(rows.momentum, beside) },
  ];
}

export function BesideThree(props: {
  beside: Beside;
  t: number;
  boxes: ReadonlyMap<string, Box>;
  cutX: number;
  cutWidth: number;
  /** a tool has the place of the numbers */
  hidden: boolean;
}) {
  const flight = useFlight();
  const rows = createMemo(() =>
    calcBesideRows(flight.result().frames, props.beside.result.frames, props.t, props.beside.turn),
  );
  const list = createMemo(() => listTwoRows(rows(), props.beside));
  const isTwist = (): boolean => props.beside.turn === 'twist';
  const sign = (): 'twist' | 'somersault' => (isTwist() ? 'twist' : 'somersault');
  const titles = () =>
    [
      { title: isTwist() ? t.twistRate : t.somersaultRate, sign: sign() },
      { title: t.spread, sign: sign(), under: t.moment, term: 'momentOfInertia' },
      { title: t.momentum, term: 'angularMomentum' },
    ] as const;
  return (
    <For each={[0, 1, 2]}>
      {(i) => (
        <Show when={props.boxes.get(`first${i}`)}>
          {(box) => (
            <>
              <FirstTitle
                row={{ ...titles()[i], quantity: list()[i].quantity, hue: list()[i].hue, more: [] }}
                box={box()}
              />
              <Show when={!props.hidden}>
                <TwoNumbers row={list()[i]} rows={rows()} box={box()} index={i} {...props} />
              </Show>
            </>
          )}
        </Show>
      )}
    </For>
  );
}

function TwoNumbers(props: {
  row: TwoRow;
  rows: BesideRows;
  beside: Beside;
  box: Box;
  cutX: number;
  cutWidth: number;
  index: number;
}): JSX.Element {
  const say = (one: BesideRows['own']): string => sayNumber(props.row.quantity, one[props.row.id], props.row.decimals);
  const isLow = (): boolean => props.box.height < LOW;
  const isSame = (): boolean => props.row.id === 'momentum' && props.rows.momentum.kind === 'same';
  return (
    <div
      class={`first-number two ${props.row.hue} ${isLow() ? 'low' : ''} ${isSame() ? 'one' : ''}`}
      data-testid={`first-${props.index}`}
      style={{
        left: `${props.cutX}px`,
        top: `${props.box.y}px`,
        height: `${props.box.height}px`,
        '--tall': `${props.box.height}px`,
      }}
    >
      <p class="two-values">
        <span class="own">
          <Show when={!isSame()}>
            <VersionTag letter="A" />
          </Show>
          <b>{say(props.rows.own)}</b> <span class="unit">{unitOf(props.row.quantity)}</span>
        </span>
        <Show when={!isSame()}>
          <span class="other">
            <VersionTag letter={props.beside.letter} />
            <b>{say(props.rows.other)}</b>
          </span>
        </Show>
      </p>
      <div class="first-words">
        <b>{props.row.words.lead}</b>
        <Show when={props.row.id === 'rate'}>
          <span>{props.row.words.rest}</span>
        </Show>
        <Show when={props.row.id === 'moment'}>
          <BesideWhy
            beside={props.beside}
            rows={props.rows}
            style={{ left: '0', top: `${props.box.height + 4}px`, width: `${props.cutWidth}px` }}
          />
        </Show>
      </div>
    </div>
  );
}
