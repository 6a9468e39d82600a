/** The release studied: slider, both charts on its axis, the sentence of what holds both, and the numbers of three times. */
import { createMemo, For, Show } from 'solid-js';
import type { WholeState } from '../../app/whole-state.ts';
import type { WindowResult } from '../../jobs/kinds/leg-data.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { AngleChart, NearChart } from './release-charts.tsx';
import { ReleaseSlider, useOffset } from './release-slider.tsx';
import { makeStudyScale } from './study-scale.ts';
import { studyTexts as t } from './study-texts.ts';
import { studyWindow, tryNear } from './window-study.ts';
import { wordBoth, wordMs, wordOff } from './window-words.ts';

export function ReleaseStudy(props: { state: WholeState; window: WindowResult; width: number; touch: boolean }) {
  const study = createMemo(() => studyWindow(props.window, props.state.asked()));
  const scale = createMemo(() => makeStudyScale(props.window, props.width));
  const offset = useOffset(() => props.window);
  const isMeasured = (): boolean => props.window.tries.some((one) => one.nearM !== undefined);
  const words = () => wordBoth(study(), isMeasured());
  const chart = () => ({ window: props.window, study: study(), scale: scale(), offset: offset() });
  return (
    <section class="study" aria-label={t.title}>
      <ReleaseSlider window={props.window} study={study()} scale={scale()} touch={props.touch} />
      <Show when={!props.touch}>
        <AngleChart {...chart()} />
        <Show when={isMeasured()}>
          <NearChart {...chart()} asked={props.state.asked()} />
        </Show>
      </Show>
      <p class="study-both" data-testid="window">
        <b>{words().head}</b> {words().span}
      </p>
      <Show when={isMeasured()}>
        <div class="study-asked">
          <NumberField
            label={t.askedLabel}
            unit="m"
            quantity="length"
            value={props.state.asked()}
            min={0}
            max={1}
            step={0.01}
            decimals={2}
            onChange={props.state.setAsked}
          />
        </div>
      </Show>
      <p class="quiet">{t.others}</p>
      <details class="fold">
        <summary>{t.table}</summary>
        <WindowTable window={props.window} held={study().held !== undefined} />
        <p class="quiet">
          {props.window.isByBand ? t.band : t.wish} {t.former(formatNumber(props.window.formerMs, 0))}
        </p>
      </details>
    </section>
  );
}

function WindowTable(props: { window: WindowResult; held: boolean }) {
  const near = (ms: number) => tryNear(props.window.tries, ms);
  const columns = () => {
    const all = props.held
      ? [near(props.window.fromMs), near(0), near(props.window.toMs)]
      : [near(-20), near(0), near(20)];
    return all.filter((one, i) => all.indexOf(one) === i);
  };
  const rows: readonly (readonly [string, (one: WindowResult['tries'][number]) => string])[] = [
    [t.rows.up, (one) => say('speed', one.upMPerS)],
    [t.rows.air, (one) => `${formatNumber(one.airS, 2)} s`],
    [t.rows.away, (one) => say('length', Math.abs(one.away))],
    [t.rows.near, (one) => (one.nearM === undefined ? '–' : say('length', Math.max(0, one.nearM)))],
    [t.rows.over, (one) => wordOff(one.overDeg)],
  ];
  return (
    <table class="window-table">
      <thead>
        <tr>
          <th scope="col">{t.rows.ms}</th>
          <For each={columns()}>{(one) => <th scope="col">{wordMs(one.lateMs)}</th>}</For>
        </tr>
      </thead>
      <tbody>
        <For each={rows}>
          {([name, read]) => (
            <tr>
              <th scope="row">{name}</th>
              <For each={columns()}>{(one) => <td>{read(one)}</td>}</For>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}
