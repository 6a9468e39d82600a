/** What the landing did and how it ends: the verdict first, its reason, then the numbers with what they are worth. */

import { For, Show } from 'solid-js';
import type { EndingReason, LandingReport } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { ENDING_WORDS, upper } from '../../../sim/words/verdict-words.ts';
import type { AsymmetryResult, LandingOutcome } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { ReportRows } from './report-rows.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const r = t.landingRows;
const cm = (m: number): string => say('length', m);

function wordReason(reason: EndingReason): string {
  switch (reason.kind) {
    case 'overBase':
      return t.reasons.overBase(cm(reason.margin));
    case 'beyondToes':
      return t.reasons.beyondToes(cm(reason.step));
    case 'behindHeels':
      return t.reasons.behindHeels(cm(reason.step));
    case 'part':
      return t.reasons.part(t.parts[reason.part] ?? reason.part, formatNumber(reason.t, 2));
    case 'withoutStep':
      return t.reasons.withoutStep(t.parts[reason.part] ?? reason.part, formatNumber(reason.t, 2));
    case 'hipsBelowKnees':
      return t.reasons.hipsBelowKnees(cm(reason.by));
    case 'leftSurface':
      return t.reasons.leftSurface(cm(reason.height));
    case 'timeIsUp':
      return t.reasons.timeIsUp(formatNumber(reason.t, 1));
  }
}

function wordAsymmetry({ kind, value, limit }: AsymmetryResult): string {
  const write = (v: number): string => (kind === 'across' ? say('speed', v) : `${formatNumber(v * DEG, 0)}°`);
  return t.asymmetries[kind](write(value), write(limit));
}

function sayEnding({ kind, direction }: LandingReport['ending']): string {
  const text = ENDING_WORDS[kind](direction).join('');
  return `${upper(text)}.`;
}

export function Verdict(props: { landing: LandingOutcome; isBed: boolean }) {
  const outcome = (): string => {
    const landing = props.landing;
    if (landing.kind === 'landed') return props.isBed ? t.bounces : sayEnding(landing.report.ending);
    return landing.kind === 'asymmetric' ? t.asymmetric : t.notOnFeet(t.parts[landing.part] ?? landing.part);
  };
  const reasons = (): readonly string[] => {
    const landing = props.landing;
    if (landing.kind === 'landed') return props.isBed ? [t.bouncesWhy] : landing.report.ending.reasons.map(wordReason);
    return landing.kind === 'asymmetric' ? landing.asymmetry.map(wordAsymmetry) : [];
  };
  return (
    <div class="verdict" role="status" data-testid="verdict">
      <b>{outcome()}</b> {reasons().join(' ')}
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
            {t.smoothed('44')}; {formatNumber(props.report.peak.bodyWeights, 1)}
            {props.report.bound ? ` (${t.upper[props.report.bound]})` : ''}
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
