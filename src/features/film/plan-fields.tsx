/** The camera as it is typed. */
import { For, Show } from 'solid-js';
import type { FilmCamera, FilmingPlan } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { NumberField } from '../../ui/number-field.tsx';
import type { PlanState } from './plan-state.ts';
import { planTexts as t } from './plan-words.ts';

const f = t.fields;

export function PlanFields(props: {
  state: PlanState;
  camera: FilmCamera;
  plan: FilmingPlan | undefined;
  withSize?: boolean;
}) {
  const range = (name: keyof FilmCamera): readonly [number, number] => {
    const ranges = props.state.parts()?.engine.ranges;
    return ranges ? ranges[name] : [0, 0];
  };
  const frame = (): number => 1 / props.camera.framesHz;
  const put = (part: Partial<FilmCamera>): void => props.state.put(part);
  /** half way up the room, until it is typed */
  const aim = (): number => {
    const typed = props.camera.aim;
    if (typed !== undefined) return typed;
    const stand = props.plan?.stand;
    return stand ? stand.middle[1] - stand.floorY : 0;
  };
  return (
    <section class="plan-fields" aria-label={t.camera}>
      <NumberField
        label={f.away}
        hint={t.hints.away}
        unit="m"
        quantity="length"
        value={props.camera.away}
        min={range('away')[0]}
        max={range('away')[1]}
        step={0.1}
        decimals={2}
        onChange={(away) => put({ away })}
        onDraft={(away) => put({ away })}
      />
      <NumberField
        label={f.up}
        hint={t.hints.up}
        unit="m"
        quantity="length"
        value={props.camera.up}
        min={range('up')[0]}
        max={range('up')[1]}
        step={0.1}
        decimals={2}
        onChange={(up) => put({ up })}
        onDraft={(up) => put({ up })}
      />
      <NumberField
        label={f.aim}
        hint={t.hints.aim}
        unit="m"
        quantity="length"
        value={aim()}
        min={range('aim')[0]}
        max={range('aim')[1]}
        step={0.1}
        decimals={2}
        onChange={(value) => put({ aim: value })}
        onDraft={(value) => put({ aim: value })}
      />
      <NumberField
        label={f.offSquare}
        hint={t.hints.offSquare}
        unit="°"
        quantity="angle"
        value={props.camera.offSquare * DEG}
        min={-90}
        max={90}
        step={1}
        decimals={0}
        onChange={(deg) => put({ offSquare: deg / DEG })}
        onDraft={(deg) => put({ offSquare: deg / DEG })}
      />
      <NumberField
        label={f.view}
        hint={t.hints.view}
        unit="°"
        quantity="angle"
        value={props.camera.view * DEG}
        min={5}
        max={150}
        step={1}
        decimals={0}
        onChange={(deg) => put({ view: deg / DEG })}
        onDraft={(deg) => put({ view: deg / DEG })}
      />
      <NumberField
        label={f.frames}
        hint={t.hints.frames}
        unit={t.aSecond}
        value={props.camera.framesHz}
        min={range('framesHz')[0]}
        max={range('framesHz')[1]}
        step={10}
        decimals={0}
        onChange={(framesHz) => put({ framesHz })}
      />
      <NumberField
        label={f.shutter}
        hint={t.hints.shutter}
        unit="s"
        value={Math.round(1 / props.camera.shutter)}
        min={Math.ceil(Math.max(1 / range('shutter')[1], props.camera.framesHz))}
        max={Math.round(1 / range('shutter')[0])}
        step={100}
        decimals={0}
        onChange={(part) => put({ shutter: 1 / part })}
      />
      <NumberField
        label={f.lines}
        hint={t.hints.lines}
        unit="ms"
        value={1000 * props.camera.lines}
        min={0}
        max={Math.min(1000 * range('lines')[1], 1000 * frame())}
        step={1}
        decimals={1}
        onChange={(ms) => put({ lines: ms / 1000 })}
      />
      <Show when={props.withSize}>
        <PictureSize state={props.state} camera={props.camera} />
      </Show>
      <Show when={props.state.refused()}>
        {(why) => (
          <p class="why" role="alert">
            {why()}
          </p>
        )}
      </Show>
    </section>
  );
}

const SIZES: readonly (readonly [number, number])[] = [
  [1280, 720],
  [1920, 1080],
  [2704, 1520],
  [3840, 2160],
  [1080, 1920],
];

export function PictureSize(props: { state: PlanState; camera: FilmCamera }) {
  const own = (): string => `${props.camera.width}x${props.camera.height}`;
  const sizes = (): readonly (readonly [number, number])[] =>
    SIZES.some((size) => size.join('x') === own()) ? SIZES : [...SIZES, [props.camera.width, props.camera.height]];
  return (
    <label class="plan-size">
      {f.picture}{' '}
      <select
        value={own()}
        onChange={(e) => {
          const [width, height] = e.currentTarget.value.split('x').map(Number);
          props.state.put({ width, height });
        }}
      >
        <For each={sizes()}>
          {([width, height]) => (
            <option value={`${width}x${height}`} selected={`${width}x${height}` === own()}>
              {width} × {height}
            </option>
          )}
        </For>
      </select>
    </label>
  );
}
