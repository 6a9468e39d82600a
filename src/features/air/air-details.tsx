/** All numbers of swing, push and landing, folded, under what is looked at first. */
import { For, Show } from 'solid-js';
import { wordStop } from '../../../sim/words/chain-words.ts';
import { useDocument } from '../../app/page.ts';
import type { WholeState } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { airTexts as t } from './air-texts.ts';
import { LandingSection, Verdict } from './landing-report.tsx';
import { PushSection } from './push-report.tsx';
import { SwingSection } from './swing-report.tsx';

export function AirVerdict(props: { whole: WholeResult }) {
  const last = () => props.whole.legs[props.whole.legs.length - 1];
  return (
    <>
      <Show when={last().landing}>{(landing) => <Verdict verdict={last().verdict} landing={landing()} />}</Show>
      <Show when={props.whole.stop}>
        {(stop) => (
          <p class="verdict">
            {wordStop(
              stop(),
              props.whole.legs.map((leg) => leg.title),
            )}
          </p>
        )}
      </Show>
    </>
  );
}

export function AirDetails(props: { state: WholeState; whole: WholeResult; isTouch: boolean }) {
  const doc = useDocument();
  const isOpen = (k: number): boolean => props.whole.legs.length === 1 || k === doc.leg();
  const last = () => props.whole.legs[props.whole.legs.length - 1];
  const landed = () => {
    const { landing } = last();
    return landing?.kind === 'landed' ? landing.report : undefined;
  };
  return (
    <>
      <For each={props.whole.legs}>
        {(leg, k) => (
          <>
            <Show when={leg.swing}>
              {(swing) => (
                <details class="fold" open={isOpen(k())}>
                  <summary>{t.details.swing}</summary>
                  <SwingSection swing={swing()} whole={leg} late={k() === doc.leg() ? props.state.late() : undefined} />
                </details>
              )}
            </Show>
            <Show when={leg.contact}>
              {(contact) => (
                <details class="fold" open={isOpen(k())}>
                  <summary>{t.details.contact(t.where[contact().on])}</summary>
                  <PushSection contact={contact()} />
                </details>
              )}
            </Show>
          </>
        )}
      </For>
      <Show when={landed()}>
        {(report) => (
          <details class="fold" open>
            <summary>{t.details.landing}</summary>
            <LandingSection report={report()} weight={props.whole.bodyWeight} />
          </details>
        )}
      </Show>
      {/* on the bench it is under the tool */}
      <Show when={props.isTouch}>
        <p class="standing">{texts.standingCaution}</p>
      </Show>
    </>
  );
}
