/** What the swing and the push gave: peaks, the release and its window, one late hand, the impulse. */

import { createMemo, For, Show } from 'solid-js';
import type { LateDose } from '../../../sim/index.ts';
import { DEG, REV } from '../../../sim/math/angles.ts';
import type { SwingResult, WholeResult, WindowResult } from '../../jobs/kinds/whole-data.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { LateTable } from './late-table.tsx';
import { ReportRows } from './report-rows.tsx';
import { wordOff, wordWindow } from './window-words.ts';
import { contactTexts } from './words.ts';

const t = contactTexts;
const s = t.swingRows;

/** Past or before the bottom, whole turns left out. */
function wordAngle(angle: number): string {
  const rest = angle - REV * Math.round(angle / REV);
  const degrees = `${formatNumber(Math.abs(rest) * DEG, 0)}°`;
  return rest >= 0 ? s.peakAt(degrees) : s.peakBefore(degrees);
}

export function SwingSection(props: { swing: SwingResult; whole: WholeResult; late?: LateDose }) {
  const effort = () =>
    props.swing.peaks.effort.reduce((a, b) => (b.value > a.value ? b : a), props.swing.peaks.effort[0]);
  const jointOf = (name: string) => t.knobs.joints[name] ?? name;
  const limited = () => props.swing.limited.filter((j) => j.share > 0.005);
  return (
    <section class="report">
      <h3>{t.swing}</h3>
      <p>
        <b class="big">{formatNumber(props.swing.peaks.gripWeights.value, 1)}</b> {t.values.force}, {s.peak}
        <span class="quiet">
          {' '}
          {formatNumber(props.swing.peaks.grip.value, 0)} N, {wordAngle(props.swing.peaks.grip.angle)}
        </span>
      </p>
      <ReportRows
        rows={[
          [s.bend, say('length', props.swing.peaks.bend.value)],
          [s.rate, say('rate', Math.abs(props.swing.peaks.rate.value) / REV)],
          [s.felt, `${formatNumber(props.swing.peaks.feltHead.value, 1)} g`],
          [s.up, say('speed', props.swing.release.up)],
          [s.hAbout, say('momentum', Math.abs(props.swing.release.h))],
          [
            s.torque,
            props.swing.notCompared
              ? t.largest(jointOf(props.swing.largest.joint), say('torque', Math.abs(props.swing.largest.torque)))
              : t.effort(jointOf(effort().joint), `${formatNumber(effort().value * 100, 0)} %`),
          ],
        ]}
      />
      <p class="quiet">
        {limited().length > 0
          ? t.limited(
              formatNumber(props.swing.strength, Number.isInteger(props.swing.strength) ? 0 : 2),
              limited()
                .map((j) => jointOf(j.joint))
                .join(', '),
            )
          : props.swing.notCompared || effort().value > 1
            ? t.driven
            : t.inStrength}{' '}
        {t.error(`${formatNumber(props.swing.error.force * 100, props.swing.error.force < 1e-3 ? 4 : 0)} %`)}
      </p>
      <Show when={props.swing.notCompared}>
        {(note) => (
          <p class="not-compared">
            <b>{note().title}</b> {note().detail}
          </p>
        )}
      </Show>
      <For each={props.swing.cautions}>
        {(one) => (
          <p class="caution">
            <Icon name="caution" size={18} />
            <span>
              <b>{one.title}</b> {one.detail}
            </span>
          </p>
        )}
      </For>
      <Show when={props.whole.late}>
        {(late) => (
          <p>
            <b>{t.lateHandTitle}.</b> {t.lateHandPeak(formatNumber(late().peakWeights, 1))}
          </p>
        )}
      </Show>
      <Show when={props.whole.late && props.late}>{(dose) => <LateTable dose={dose()} />}</Show>
      <p class="quiet">
        {t.rule(
          formatNumber(props.swing.rule.turnS, 1),
          say('speed', props.swing.rule.speed),
          formatNumber(props.swing.rule.g, 1),
          formatNumber(props.swing.rule.felt, 1),
        )}
      </p>
    </section>
  );
}

const PLOT_H = 130;

export function WindowStudy(props: { window: WindowResult; width: number; set: (ms: number) => void }) {
  const tries = () => props.window.tries;
  const scale = createMemo(() => {
    const ms = tries().map((one) => one.lateMs);
    const over = tries().map((one) => one.overDeg);
    const [a, b] = [Math.min(...ms), Math.max(...ms)];
    const most = Math.max(30, Math.min(120, Math.max(...over.map(Math.abs))));
    return {
      x: (v: number): number => 8 + ((v - a) / (b - a || 1)) * (props.width - 16),
      y: (v: number): number => PLOT_H / 2 - (Math.max(-most, Math.min(most, v)) / most) * (PLOT_H / 2 - 8),
      ms: (x: number): number => a + ((x - 8) / (props.width - 16)) * (b - a),
    };
  });
  const found = (): boolean => props.window.toMs > props.window.fromMs;
  const words = () => wordWindow(props.window);
  const near = (ms: number) =>
    tries().reduce((best, one) => (Math.abs(one.lateMs - ms) < Math.abs(best.lateMs - ms) ? one : best), tries()[0]);
  const columns = () => {
    const all = found()
      ? [near(props.window.fromMs), near(0), near(props.window.toMs)]
      : [near(-20), near(0), near(20)];
    return all.filter((one, i) => all.indexOf(one) === i);
  };
  const named = (ms: number): string =>
    Math.abs(ms) < 0.5 ? t.asIs : ms < 0 ? t.early(formatNumber(-ms, 0)) : t.lateBy(formatNumber(ms, 0));
  return (
    <section class="report">
      <h3>{t.window}</h3>
      <p data-testid="window">
        <b>{words().head}</b>{' '}
        <span class="quiet">
          {words().alone} {props.window.isByBand ? t.windowBand : t.windowWish}{' '}
          {t.windowFormer(formatNumber(props.window.formerMs, 0))}
        </span>
      </p>
      <Show when={tries().length > 1}>
        {/* the same is done by the knob of the release: the picture only saves the way there */}
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: as above */}
        <svg
          class="window-plot"
          width={props.width}
          height={PLOT_H}
          role="img"
          aria-label={t.window}
          onClick={(e) => {
            const { left } = e.currentTarget.getBoundingClientRect();
            props.set(Math.round(scale().ms(e.clientX - left)));
          }}
        >
          <Show when={found()}>
            <rect
              class="window"
              x={scale().x(props.window.fromMs)}
              width={scale().x(props.window.toMs) - scale().x(props.window.fromMs)}
              y="1"
              height={PLOT_H - 2}
            />
          </Show>
          <path class="zero" d={`M0 ${scale().y(0)}H${props.width}`} />
          <path
            class="curve som"
            d={tries()
              .map((one, i) => `${i ? 'L' : 'M'}${scale().x(one.lateMs)} ${scale().y(one.overDeg)}`)
              .join('')}
          />
          <circle class="as-is" cx={scale().x(0)} cy={scale().y(near(0).overDeg)} r="5" />
          <text class="tick" x="4" y="14">
            {t.past}
          </text>
          <text class="tick" x={props.width - 4} y={PLOT_H - 6} text-anchor="end">
            {t.short}
          </text>
        </svg>
        <table class="window-table">
          <thead>
            <tr>
              <th scope="col">{t.windowRows.ms}</th>
              <For each={columns()}>{(one) => <th scope="col">{named(one.lateMs)}</th>}</For>
            </tr>
          </thead>
          <tbody>
            <For
              each={
                [
                  [t.windowRows.up, (o) => say('speed', o.upMPerS)],
                  [t.windowRows.air, (o) => `${formatNumber(o.airS, 2)} s`],
                  [t.windowRows.away, (o) => say('length', Math.abs(o.away))],
                  [t.windowRows.near, (o) => (o.nearM === undefined ? '–' : say('length', Math.max(0, o.nearM)))],
                  [t.windowRows.over, (o) => wordOff(o.overDeg)],
                ] as readonly (readonly [string, (o: WindowResult['tries'][number]) => string])[]
              }
            >
              {([name, read]) => (
                <tr>
                  <th scope="row">{name}</th>
                  <For each={columns()}>{(one) => <td>{read(one)}</td>}</For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </Show>
    </section>
  );
}
