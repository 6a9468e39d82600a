/** What the swing and the push gave: peaks, the release and its window, one late hand, the impulse. */

import { For, Show } from 'solid-js';
import type { LateDose } from '../../../sim/index.ts';
import { DEG, REV } from '../../../sim/math/angles.ts';
import type { LegResult, SwingResult } from '../../jobs/kinds/leg-data.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { LateTable } from './late-table.tsx';
import { ReportRows } from './report-rows.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const s = t.swingRows;

/** Past or before the bottom, whole turns left out. */
function wordAngle(angle: number): string {
  const rest = angle - REV * Math.round(angle / REV);
  const degrees = `${formatNumber(Math.abs(rest) * DEG, 0)}°`;
  return rest >= 0 ? s.peakAt(degrees) : s.peakBefore(degrees);
}

export function SwingSection(props: { swing: SwingResult; whole: LegResult; late?: LateDose }) {
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
