/** What the landing did and how it ends: the verdict first, its reason, then the numbers with what they are worth. */

import { For, Show } from 'solid-js';
import type { LandingReport, SkillVerdict } from '../../../sim/index.ts';
import { wordNotComputed } from '../../../sim/words/basis-words.ts';
import { BED_WORDS, BOUND_WORDS, wordReason } from '../../../sim/words/landing-words.ts';
import { sentence } from '../../../sim/words/verdict-words.ts';
import { PAGE_NUMBERS, wordEnding } from '../../app/say/sentence-words.ts';
import type { LandingOutcome } from '../../jobs/kinds/leg-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { ReportRows } from './report-rows.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const r = t.landingRows;

/** In the words of the head, which reads the same verdict. */
export function Verdict(props: { verdict: SkillVerdict; landing: LandingOutcome }) {
  const said = (): readonly [how: string, why: string] => {
    const landing = props.landing;
    const how = sentence(wordEnding(props.verdict));
    if (landing.kind === 'asymmetric')
      return [how, sentence(wordNotComputed({ kind: 'asymmetric', of: landing.asymmetry }, PAGE_NUMBERS))];
    if (landing.kind === 'notOnFeet') return [how, t.notOnFeet];
    if (props.verdict.ending.kind === 'bounces') return [sentence(BED_WORDS[0]), sentence(BED_WORDS[1])];
    const { ending } = landing.report;
    return [how, ending.reasons.map((one) => sentence(wordReason(one, PAGE_NUMBERS))).join(' ')];
  };
  return (
    <div class="verdict" role="status" data-testid="verdict">
      <b>{said()[0]}</b> {said()[1]}
    </div>
  );
}

export function LandingSection(props: { report: LandingReport; weight: number }) {
  const energy = () => props.report.energy;
  const joints = () => props.report.joints.filter((j) => Math.abs(j.absorbed) > 1 || Math.abs(j.torque) > 5);
  return (
    <section class="report">
      <h3>{t.after}</h3>
      <div class="mean-peak">
        <p>
          <b class="big">{formatNumber(props.report.filteredPeak.bodyWeights, 1)}</b> {t.values.force}, {t.peak}
          <span class="quiet">
            {' '}
            {t.smoothed('44', formatNumber(props.report.peak.bodyWeights, 1))}
            {props.report.bound ? ` (${BOUND_WORDS[props.report.bound]})` : ''}
          </span>
        </p>
        <Show when={props.report.brakeTime}>
          {(s) => (
            <p>
              <b>{formatNumber(props.report.meanBodyWeights, 1)}</b> {t.mean} {t.stopping(formatNumber(s(), 2))}
            </p>
          )}
        </Show>
      </div>
      <ReportRows
        rows={[
          [r.speed, say('speed', props.report.speed)],
          ...(props.report.brakeTime === undefined
            ? []
            : ([
                [r.meanG, `${formatNumber(props.report.meanG, 1)} g`],
                [r.meanForce, `${formatNumber(props.report.meanBodyWeights, 1)} ${t.values.force}`],
              ] as const)),
          [r.horizontal, `${formatNumber(Math.abs(props.report.horizontalPeak.bodyWeights), 1)} ${t.values.force}`],
          [r.rise, `${formatNumber(props.report.riseTime * 1000, 0)} ms`],
          [r.sink, say('length', props.report.sinkage)],
          [r.arrived, say('energy', energy().arrived)],
          [r.mat, say('energy', energy().matLost)],
          [r.matHolds, say('energy', energy().matHeld)],
          [r.soles, say('energy', energy().solesLost + energy().solesHeld)],
          [r.left, say('energy', energy().left)],
          [r.error, say('energy', energy().missed)],
        ]}
      />
      <p class="quiet">
        <For each={joints()}>
          {(j, i) => (
            <>
              {i() > 0 ? '; ' : `${r.legs}: `}
              {t.jointTakes(
                t.knobs.joints[j.joint] ?? j.joint,
                say('energy', j.absorbed),
                say('torque', Math.abs(j.torque)),
              )}
              {j.limitedShare > 0.02 ? ` (${t.atStrength})` : ''}
            </>
          )}
        </For>
      </p>
    </section>
  );
}
