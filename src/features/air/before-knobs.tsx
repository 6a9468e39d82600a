/** Before the air: a swing or a push, with what can be turned. */
import { Match, Show, Switch } from 'solid-js';
import type { FileBefore, FileSwing, FileTakeoffContact } from '../../../sim/index.ts';
import { beforeOf } from '../../../sim/math/phases.ts';
import { useDocument, useFlight, useServices } from '../../app/page.ts';
import {
  changeApproachSpeed,
  changeContact,
  changeGiven,
  changeSwing,
  isContact,
  isSwing,
} from '../../document/contact-edits.ts';
import { withBefore } from '../../document/phases.ts';
import { Knob, Pick } from './knob.tsx';
import { MoveKeys } from './move-keys.tsx';
import { SCALES } from './scales.ts';
import { contactTexts } from './words.ts';

const t = contactTexts;
const k = t.knobs;

export function BeforeKnobs() {
  const doc = useDocument();
  const flight = useFlight();
  const services = useServices();
  const approach = (): FileBefore | undefined => beforeOf(doc.file());
  const swing = () => {
    const a = approach();
    return isSwing(a) ? a : undefined;
  };
  const push = () => {
    const a = approach();
    return isContact(a) ? a : undefined;
  };
  const put = (before: FileBefore | undefined, title: string): void => {
    // another document's flight was not launched by this one
    if (!flight.edited()) return;
    doc.edit(withBefore(doc.file(), before, services.flying.launchedTakeoff(flight.result())), title);
  };
  return (
    <section class="knobs" aria-label={t.before}>
      <h3>
        {t.before}
        <Show when={approach() && doc.leg() === 0}>
          <button type="button" class="plain small" onClick={() => put(undefined, t.removed)}>
            {t.remove}
          </button>
        </Show>
      </h3>
      <Switch fallback={<p class="quiet">{t.noneHint}</p>}>
        <Match when={swing()}>{(a) => <SwingKnobs swing={a()} />}</Match>
        <Match when={push()}>{(a) => <PushKnobs push={a()} />}</Match>
      </Switch>
    </section>
  );
}

function SwingKnobs(props: { swing: FileSwing }) {
  const doc = useDocument();
  const edit = (part: Partial<FileSwing>, what: string): void =>
    doc.edit(changeSwing(doc.file(), part), t.changed(what));
  const hand = (): string =>
    props.swing.lateHand && props.swing.lateHand.lateS > 0 ? props.swing.lateHand.hand : 'none';
  return (
    <>
      <Pick
        label={k.rail}
        value={props.swing.rail}
        names={Object.keys(k.rails)}
        words={k.rails}
        choose={(v) => edit({ rail: v as FileSwing['rail'] }, k.rail)}
      />
      <Show when={'handstandNudgeDegPerS' in props.swing.start && props.swing.start}>
        {(start) => (
          <Knob
            label={k.nudge}
            scale={SCALES.nudge}
            value={start().handstandNudgeDegPerS}
            set={(file, v) => changeSwing(file, { start: { handstandNudgeDegPerS: v } })}
          />
        )}
      </Show>
      <Show when={'atDeg' in props.swing.release && props.swing.release}>
        {(release) => {
          const turns = (): number => 360 * Math.round(release().atDeg / 360);
          return (
            <Knob
              label={k.release}
              scale={SCALES.release}
              value={release().atDeg - turns()}
              set={(file, v) => changeSwing(file, { release: { atDeg: turns() + v } })}
            />
          );
        }}
      </Show>
      <Knob
        label={k.late}
        scale={SCALES.late}
        value={Math.round((props.swing.releaseLateS ?? 0) * 1000)}
        set={(file, v) => changeSwing(file, { releaseLateS: v / 1000 })}
      />
      <Pick
        label={k.lateHand}
        value={hand()}
        names={Object.keys(k.lateHands)}
        words={k.lateHands}
        choose={(v) =>
          edit(
            { lateHand: v === 'none' ? undefined : { hand: v as 'left', lateS: props.swing.lateHand?.lateS || 0.02 } },
            k.lateHand,
          )
        }
      />
      <Show when={hand() !== 'none' && props.swing.lateHand}>
        {(late) => (
          <Knob
            label={k.lateFor}
            scale={SCALES.lateFor}
            value={Math.round(late().lateS * 10_000) / 10}
            set={(file, v) =>
              changeSwing(file, { lateHand: { hand: late().hand, lateS: Math.round(v * 10) / 10_000 } })
            }
          />
        )}
      </Show>
      <Pick
        label={k.strength}
        value={props.swing.strength === undefined ? 'driven' : 'limited'}
        names={Object.keys(k.strengths)}
        words={k.strengths}
        choose={(v) => edit({ strength: v === 'driven' ? undefined : 1 }, k.strength)}
      />
      <Show when={props.swing.strength}>
        {(strength) => (
          <Knob
            label={k.times}
            scale={SCALES.times}
            value={strength()}
            set={(file, v) => changeSwing(file, { strength: v })}
          />
        )}
      </Show>
      <details class="moves">
        <summary>{k.moves}</summary>
        <MoveKeys swing={props.swing} />
      </details>
    </>
  );
}

function PushKnobs(props: { push: FileTakeoffContact }) {
  const doc = useDocument();
  const edit = (part: Partial<FileTakeoffContact>, what: string): void =>
    doc.edit(changeContact(doc.file(), part), t.changed(what));
  return (
    <>
      <Pick
        label={k.place}
        value={props.push.place}
        names={Object.keys(k.places)}
        words={k.places}
        choose={(v) => edit({ place: v as 'floor', timeS: undefined }, k.place)}
      />
      {/* what a flight before brings is not set here */}
      <Show when={doc.leg() === 0}>
        <Knob
          label={k.alongBefore}
          scale={SCALES.alongBefore}
          value={props.push.velocityMPerS?.along ?? 0}
          set={(f, v) => changeApproachSpeed(f, { along: v })}
        />
        <Knob
          label={k.upBefore}
          scale={SCALES.upBefore}
          value={props.push.velocityMPerS?.up ?? 0}
          set={(f, v) => changeApproachSpeed(f, { up: v })}
        />
        <Knob
          label={k.spinBefore}
          scale={SCALES.spinBefore}
          value={props.push.momentumKgM2PerS?.[2] ?? 0}
          set={(f, v) =>
            changeContact(f, {
              momentumKgM2PerS: [props.push.momentumKgM2PerS?.[0] ?? 0, props.push.momentumKgM2PerS?.[1] ?? 0, v],
            })
          }
        />
      </Show>
      <Show when={props.push.timeS}>
        {(s) => <Knob label={k.time} scale={SCALES.time} value={s()} set={(f, v) => changeContact(f, { timeS: v })} />}
      </Show>
      <Show when={props.push.given}>
        {(given) => (
          <>
            <Knob
              label={k.weights}
              scale={SCALES.weights}
              value={given().meanBodyWeights}
              set={(f, v) => changeGiven(f, { meanBodyWeights: v })}
            />
            <Knob
              label={k.lean}
              scale={SCALES.lean}
              value={given().leanDeg}
              set={(f, v) => changeGiven(f, { leanDeg: v })}
            />
            <Knob
              label={k.ahead}
              scale={SCALES.ahead}
              value={given().placeM.along}
              set={(f, v) => changeGiven(f, { placeM: { ...given().placeM, along: v } })}
            />
            <Knob
              label={k.free}
              scale={SCALES.free}
              value={given().freeTurnKgM2PerS ?? 0}
              set={(f, v) => changeGiven(f, { freeTurnKgM2PerS: v })}
            />
          </>
        )}
      </Show>
    </>
  );
}
