/** Rows that are open: their titles at the left, and what the plumb line meets in them at the right. */
import { For, type JSX, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import type { Place } from '../../../sim/math/sorted.ts';
import type { FlightResult } from '../../engine/result.ts';
import { Bounds } from '../../features/instant/bounds.tsx';
import { CutHead, CutRates, Explanation, MomentBars, SoFar, Value } from '../../features/instant/cut.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, unitOf } from '../../ui/units.ts';
import { Composition } from '../composition.tsx';
import type { CutValues } from '../cut-values.ts';
import { useFlight, useShell } from '../page.ts';
import type { Box } from '../plot/pen.ts';
import { readAt } from '../plot/readout.ts';
import type { RowName } from '../rows.ts';
import { Term } from '../terms/term.tsx';
import type { TermName } from '../terms/term-name.ts';
import { texts } from '../words.ts';
import { type GroundPlan, LANE } from './ground-plan.ts';
import { groundTexts } from './ground-words.ts';
import { OtherValue, useOtherCut } from './other-value.tsx';

const p = texts.plots;

interface Title {
  readonly id: Exclude<RowName, 'joints' | 'views'>;
  readonly title: string;
  readonly term?: TermName;
  readonly unit: () => string;
  readonly hint?: () => string;
}

const TITLES: readonly Title[] = [
  { id: 'rates', title: p.rate, unit: () => unitOf('rate') },
  { id: 'tilt', title: p.tilt, term: 'tilt', unit: () => '' },
  {
    id: 'moments',
    title: p.moments,
    term: 'momentOfInertia',
    unit: () => unitOf('moment'),
    hint: () => p.momentsHint,
  },
  {
    id: 'momentum',
    title: p.momentum,
    term: 'angularMomentum',
    unit: () => '',
    hint: () => p.momentumHint(unitOf('momentum')),
  },
  { id: 'energy', title: p.energy, unit: () => unitOf('energy'), hint: () => p.energyHint },
];

export function OpenTitles(props: { plan: GroundPlan }) {
  return (
    <For each={TITLES}>
      {(row) => (
        <Show when={props.plan.boxes.get(row.id)}>
          {(b) => (
            <div class="row-title" style={{ top: `${b().y - 5}px`, height: `${b().height + 8}px` }}>
              <h2>
                <Show when={row.term} fallback={row.title}>
                  {(name) => <Term name={name()}>{row.title}</Term>}
                </Show>
                <span class="unit">{row.unit()}</span>
                <Show when={!props.plan.isBench}>
                  <FoldButton row={row.id} title={row.title} />
                </Show>
              </h2>
              <Show when={row.hint}>{(hint) => <p class="quiet">{hint()()}</p>}</Show>
              <Show when={row.id === 'rates'}>
                <p class="twist">
                  <Icon name="twist" size={16} /> {p.Twist}
                </p>
                <p class="som">
                  <Icon name="somersault" size={16} /> {p.Somersault}
                </p>
              </Show>
              <Show when={row.id === 'tilt'}>
                <p class="quiet">
                  <Icon name="tilt" size={16} class="tilt" /> {p.fromPlane}
                </p>
              </Show>
            </div>
          )}
        </Show>
      )}
    </For>
  );
}

export function FoldButton(props: { row: RowName; title: string }): JSX.Element {
  const shell = useShell();
  return (
    <button
      type="button"
      class="fold-row"
      aria-label={groundTexts.fold(props.title)}
      aria-expanded="true"
      onClick={() => shell.rows.toggle(props.row)}
    >
      −
    </button>
  );
}

/** px of the number beside what it is made of */
const BESIDE = 134;

/** The values beside open rows. */
export function OpenCut(props: {
  plan: GroundPlan;
  lanes: LaneList;
  cut: CutValues;
  explanation: string;
  width: number;
}) {
  const flight = useFlight();
  const laneValue = ({ frames, skill }: FlightResult, place: Place, column: number): string =>
    `${formatNumber(readAt(frames.angles, place, skill.body.angles.length, column) * DEG, 0)}°`;
  const other = useOtherCut(() => props.cut.t);
  /** while another way is beside, its number has the room of what is said of one's own */
  const alone = (words: string): string => (other() ? '' : words);
  const cut = () => props.cut;
  return (
    <>
      <Show when={props.plan.isBench && props.plan.boxes.get('shapes')}>
        {(b) => (
          <div class="cut-cell" style={{ top: `${b().y}px`, height: `${b().height}px` }}>
            <CutHead cut={props.cut} />
            <Bounds />
          </div>
        )}
      </Show>
      <For each={props.lanes.shown()}>
        {(lane) => (
          <Show when={props.plan.boxes.get(lane.id)}>
            {(b) => (
              <p class="cut-cell lane-value" style={{ top: `${b().y}px`, height: `${LANE}px` }}>
                <span class="own-value">{laneValue(flight.result(), props.cut.place, lane.column)}</span>
                <OtherValue of={other()} say={({ result, place }) => laneValue(result, place, lane.column)} />
              </p>
            )}
          </Show>
        )}
      </For>
      <CutRow
        box={props.plan.boxes.get('rates')}
        value={
          <CutRates
            cut={cut()}
            otherTwist={<OtherValue of={other()} hue="twist" say={(of) => sayNumber('rate', of.twistRate, 2)} />}
            otherSomersault={
              <OtherValue of={other()} hue="som" say={(of) => sayNumber('rate', of.somersaultRate, 2)} />
            }
          />
        }
        made={
          <>
            <SoFar cut={cut()} />
            <Explanation words={props.explanation} />
          </>
        }
      />
      <CutRow
        box={props.plan.boxes.get('tilt')}
        value={
          <Value
            value={Math.abs(cut().tilt)}
            decimals={1}
            unit="°"
            word={alone(texts.cut.tiltWord(cut().tilt))}
            hue="tilt"
            other={<OtherValue of={other()} hue="tilt" say={(of) => sayTilt(of.tilt, cut().tilt)} />}
          />
        }
      />
      <CutRow
        box={props.plan.boxes.get('moments')}
        value={
          <Value
            value={cut().long}
            decimals={2}
            quantity="moment"
            unit=""
            hue="twist"
            term="longAxis"
            word={
              other()
                ? texts.plots.longAxis
                : texts.cut.times(formatNumber(cut().lateral / cut().long, cut().lateral / cut().long < 4 ? 1 : 0))
            }
            other={<OtherValue of={other()} hue="twist" say={(of) => sayNumber('moment', of.long, 2)} />}
          />
        }
        made={<MomentBars cut={cut()} />}
      />
      <CutRow
        box={props.plan.boxes.get('momentum')}
        value={
          <Value
            value={cut().momentum}
            decimals={1}
            quantity="momentum"
            unit=""
            word={alone(texts.cut.constant)}
            other={<OtherValue of={other()} say={(of) => sayNumber('momentum', of.momentum, 1)} />}
          />
        }
        made={<Composition cut={cut()} kind="momentum" width={props.width - BESIDE} />}
      />
      <CutRow
        box={props.plan.boxes.get('energy')}
        value={
          <Value
            value={cut().energy}
            decimals={0}
            quantity="energy"
            unit=""
            word={alone(texts.cut.muscle(say('energy', cut().work)))}
            other={<OtherValue of={other()} say={(of) => sayNumber('energy', of.energy, 0)} />}
          />
        }
        made={<Composition cut={cut()} kind="energy" width={props.width - BESIDE} />}
      />
    </>
  );
}

/** The side is that of one's own, or is said. */
function sayTilt(tilt: number, own: number): string {
  const number = `${formatNumber(Math.abs(tilt), 1)}°`;
  return tilt * own < 0 && Math.abs(tilt) > LEAST_TILT ? `${number} ${texts.cut.otherSide}` : number;
}
/** deg; less is no side */
const LEAST_TILT = 0.05;

function CutRow(props: { box: Box | undefined; value: JSX.Element; made?: JSX.Element }) {
  return (
    <Show when={props.box}>
      {(b) => (
        <div class="cut-row" style={{ top: `${b().y - 6}px`, height: `${b().height + 12}px` }}>
          <div class="cut-number">{props.value}</div>
          <div class="cut-made">{props.made}</div>
        </div>
      )}
    </Show>
  );
}
