/** Rows that are not open: one line each with title, small curve and value at the cursor. The whole line opens the row. */
import { For, type JSX, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import type { Lane } from '../../document/lanes.ts';
import type { FlightResult } from '../../engine/result.ts';
import { formatNumber, soften } from '../../ui/numbers.ts';
import { say, sayNumber, unitOf } from '../../ui/units.ts';
import type { CutValues } from '../cut-values.ts';
import { useFlight, useShell } from '../page.ts';
import type { Box } from '../plot/pen.ts';
import { calcPlace, readAt } from '../plot/readout.ts';
import { getMomentumParts } from '../plot/stacks.ts';
import { wordJoint } from '../say/body-words.ts';
import { texts } from '../words.ts';
import type { GroundPlan, UnderRow } from './ground-plan.ts';
import { groundTexts } from './ground-words.ts';

const t = groundTexts;
/** px left of the values where a tool that has their place begins */
const BEFORE_TOOL = 20;

interface FoldedProps {
  readonly plan: GroundPlan;
  readonly lanes: readonly Lane[];
  readonly cut: CutValues;
  readonly cutX: number;
  /** a tool has the place of the values */
  readonly hidden: boolean;
  list(): void;
}

export function FoldedRows(props: FoldedProps) {
  const shell = useShell();
  return (
    <Show
      when={!props.plan.isOneLine}
      fallback={
        <Line
          box={props.plan.boxes.get('folded:more')}
          cutX={props.cutX}
          hidden={props.hidden}
          title={t.more(props.plan.folded.length)}
          press={() => props.list()}
        />
      }
    >
      <For each={props.plan.folded}>
        {(row) => (
          <Line
            box={props.plan.boxes.get(`folded:${row}`)}
            cutX={props.cutX}
            hidden={props.hidden}
            title={t.folded[row]}
            press={() => shell.rows.toggle(row)}
          >
            <Show when={!props.hidden}>
              <FoldedValue row={row} cut={props.cut} lanes={props.lanes} />
            </Show>
          </Line>
        )}
      </For>
    </Show>
  );
}

function Line(props: {
  box: Box | undefined;
  cutX: number;
  hidden: boolean;
  title: string;
  press: () => void;
  children?: JSX.Element;
}) {
  return (
    <Show when={props.box}>
      {(box) => (
        <button
          type="button"
          class="folded-row"
          aria-expanded="false"
          style={{
            top: `${box().y}px`,
            height: `${box().height}px`,
            ...(props.hidden ? { right: 'auto', width: `${props.cutX - BEFORE_TOOL}px` } : {}),
          }}
          onClick={() => props.press()}
        >
          <span class="folded-title">{props.title}</span>
          <span class="folded-plus" aria-hidden="true">
            +
          </span>
          <span class="folded-value" style={{ left: `${props.cutX}px` }}>
            {props.children}
          </span>
        </button>
      )}
    </Show>
  );
}

function FoldedValue(props: { row: UnderRow; cut: CutValues; lanes: readonly Lane[] }): JSX.Element {
  const flight = useFlight();
  const joint = (lane: Lane): string => {
    const { frames, skill } = flight.result();
    return formatNumber(readAt(frames.angles, props.cut.place, skill.body.angles.length, lane.column) * DEG, 0);
  };
  const parts = () =>
    getMomentumParts(flight.result().frames).map(({ name, curve }) => {
      const { i, share } = props.cut.place;
      return { name, value: curve(i) * (1 - share) + curve(i + 1) * share };
    });
  const momentum = (): JSX.Element => (
    <For each={parts()}>
      {(part, i) => (
        <>
          {i() > 0 ? ', ' : ''}
          <b>{sayNumber('momentum', part.value)}</b> {part.name}
        </>
      )}
    </For>
  );
  const isUpright = (): boolean => Math.abs(props.cut.tilt) < 0.05;
  const shell = useShell();
  /** of the way beside at its own frames; undefined: there is none */
  const otherAt = (column: (frames: FlightResult['frames']) => Float64Array): number | undefined => {
    const frames = shell.beside.shown()?.result.frames;
    return frames && readAt(column(frames), calcPlace(frames, props.cut.t));
  };
  const two = (own: string, other: string, hue: string): JSX.Element => (
    <>
      A <b class={hue}>{own}</b>
      <span class="second-value">
        {shell.beside.shown()?.letter} <b class={hue}>{other}</b>
      </span>
    </>
  );
  const degrees = (v: number): string => `${formatNumber(Math.abs(v), 1)}°`;
  const value: Record<UnderRow, () => JSX.Element> = {
    joints: () => (
      <For each={props.lanes.slice(0, 2)}>
        {(lane, i) => (
          <>
            {i() > 0 ? ', ' : ''}
            <b>{joint(lane)}°</b> {soften(wordJoint(lane.id))}
          </>
        )}
      </For>
    ),
    tilt: () => (
      <Show
        when={shell.beside.shown()}
        fallback={<b class={isUpright() ? 'nothing' : 'tilt'}>{degrees(props.cut.tilt)}</b>}
      >
        {two(degrees(props.cut.tilt), degrees((otherAt(({ tilt }) => tilt) ?? 0) * DEG), 'tilt')}
      </Show>
    ),
    moments: () => (
      <>
        <b class="twist">{sayNumber('moment', props.cut.long, 2)}</b>{' '}
        <b class="som">{sayNumber('moment', props.cut.lateral, 2)}</b>{' '}
        <b class="tilt">{sayNumber('moment', props.cut.front, 2)}</b> <span class="unit">{unitOf('moment')}</span>
      </>
    ),
    momentum,
    energy: () => (
      <Show when={shell.beside.shown()} fallback={texts.cut.muscle(say('energy', props.cut.work))}>
        {two(sayNumber('energy', props.cut.work), sayNumber('energy', otherAt(({ jointWork }) => jointWork) ?? 0), '')}{' '}
        {texts.cut.muscle(unitOf('energy'))}
      </Show>
    ),
  };
  return <>{value[props.row]()}</>;
}
