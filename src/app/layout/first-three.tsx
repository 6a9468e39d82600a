/** The three rows of the idea: title at the left, the number at the cursor in large, and what it is against take-off. */
import { createMemo, For, type JSX, Show } from 'solid-js';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, unitOf } from '../../ui/units.ts';
import type { FirstRows } from '../first-rows.ts';
import { type ChangeWords, firstTexts, wordLimbs, wordMoment, wordRate, wordTilt } from '../first-words.ts';
import type { Box } from '../plot/pen.ts';
import { Term } from '../terms/term.tsx';
import type { TermName } from '../terms/term-name.ts';

const t = firstTexts;

interface RowTitle {
  readonly title: string;
  readonly term?: TermName;
  readonly sign?: 'twist' | 'somersault' | 'tilt';
  /** under the title, a word that explains itself */
  readonly under?: string;
  readonly quantity?: QuantityKind;
  readonly hue: string;
  readonly more: readonly string[];
}

interface LargeRow extends RowTitle {
  readonly value: number;
  readonly decimals: number;
  readonly words: ChangeWords;
}

function listRows(rows: FirstRows): readonly LargeRow[] {
  const isTwist = rows.kind === 'twisting' || rows.axis === 'long';
  const hue = isTwist ? 'twist' : 'som';
  const sign = isTwist ? 'twist' : 'somersault';
  const rate: LargeRow = {
    title: isTwist ? t.twistRate : t.somersaultRate,
    sign,
    quantity: 'rate',
    value: rows.rate.now,
    decimals: 2,
    hue,
    words: wordRate(rows.rate.change, rows.rate),
    more: [],
  };
  const momentum: LargeRow = {
    title: t.momentum,
    term: 'angularMomentum',
    quantity: 'momentum',
    value: rows.momentum.now,
    decimals: 1,
    hue: '',
    words: wordMoment(rows.momentum.change),
    more: wordLimbs(rows),
  };
  const second: LargeRow =
    rows.kind === 'twisting'
      ? {
          title: t.tilt,
          term: 'tilt',
          sign: 'tilt',
          value: rows.tilt.now,
          decimals: 1,
          hue: 'tilt',
          words: wordTilt(rows.tilt.change, rows.tilt),
          more: [],
        }
      : {
          title: t.spread,
          sign,
          under: t.moment,
          term: 'momentOfInertia',
          quantity: 'moment',
          value: rows.moment.now,
          decimals: 2,
          hue,
          words: wordMoment(rows.moment.change),
          more: [],
        };
  return [rate, second, momentum];
}

export function FirstThree(props: {
  rows: FirstRows;
  boxes: ReadonlyMap<string, Box>;
  cutX: number;
  /** a tool has the place of the numbers */
  hidden: boolean;
}) {
  const rows = createMemo(() => listRows(props.rows));
  return (
    <For each={[0, 1, 2]}>
      {(i) => (
        <Show when={props.boxes.get(`first${i}`)}>
          {(box) => (
            <>
              <FirstTitle row={rows()[i]} box={box()} />
              <Show when={!props.hidden}>
                <FirstNumber row={rows()[i]} box={box()} x={props.cutX} index={i} />
              </Show>
            </>
          )}
        </Show>
      )}
    </For>
  );
}

export function FirstTitle(props: { row: RowTitle; box: Box }): JSX.Element {
  return (
    <div class="row-title first-title" style={{ top: `${props.box.y - 3}px`, height: `${props.box.height}px` }}>
      <h2>
        <span>
          <Show when={props.row.under ? undefined : props.row.term} fallback={props.row.title}>
            {(name) => <Term name={name()}>{props.row.title}</Term>}
          </Show>{' '}
          <Show when={props.row.sign}>{(name) => <Icon name={name()} size={16} class={props.row.hue} />}</Show>
        </span>
      </h2>
      <Show when={props.row.under ? props.row.term : undefined}>
        {(name) => (
          <p class="quiet">
            <Term name={name()}>{props.row.under}</Term>
          </p>
        )}
      </Show>
      <Show when={props.row.quantity}>{(quantity) => <p class="quiet unit-line">{unitOf(quantity())}</p>}</Show>
      <Show when={props.row.more.length > 0 && props.box.height > 40}>
        <p class="quiet of-limbs">{t.limbsRow}</p>
      </Show>
    </div>
  );
}

const sayValue = ({ quantity, value, decimals }: LargeRow): string =>
  quantity ? sayNumber(quantity, value, decimals) : `${formatNumber(value, decimals)}°`;

function FirstNumber(props: { row: LargeRow; box: Box; x: number; index: number }): JSX.Element {
  const text = (): string => sayValue(props.row);
  return (
    <div
      class={`first-number ${props.row.hue} ${props.box.height < 40 ? 'low' : ''}`}
      data-testid={`first-${props.index}`}
      style={{
        left: `${props.x}px`,
        top: `${props.box.y}px`,
        height: `${props.box.height}px`,
        '--tall': `${props.box.height}px`,
      }}
    >
      <p>
        <b>{text()}</b> <Show when={props.row.quantity}>{(q) => <span class="unit">{unitOf(q())}</span>}</Show>
      </p>
      <p class="first-words">
        <b>{props.row.words.lead}</b>{' '}
        <Show when={props.index === 0}>
          <span>{props.row.words.rest}</span>
        </Show>
        <For each={props.row.more}>{(line) => <span class="more">{line}</span>}</For>
      </p>
    </div>
  );
}
