/** What is wanted, as a sentence with slots. */

import { createSignal, For, Show } from 'solid-js';
import { RAD } from '../../../sim/math/angles.ts';
import { useFlight } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { AskState } from './ask-state.ts';
import { Slot } from './slot.tsx';
import { askTexts as t } from './words.ts';

const LIMITS = ['range', 'speed', 'torque'] as const;

function Choice<T extends string>(props: {
  label: string;
  value: T;
  words: Readonly<Record<T, string>>;
  class?: string;
  choose: (value: T) => void;
}) {
  return (
    <select
      class={`slot-choice ${props.class ?? ''}`}
      aria-label={props.label}
      value={props.value}
      onChange={(e) => props.choose(e.currentTarget.value as T)}
    >
      <For each={Object.keys(props.words) as T[]}>
        {(name) => (
          <option value={name} selected={props.value === name}>
            {props.words[name]}
          </option>
        )}
      </For>
    </select>
  );
}

export function WantedLine(props: { state: AskState }) {
  const flight = useFlight();
  const set = (part: Parameters<AskState['setWanted']>[0]): void => props.state.setWanted(part);
  const usual = () => props.state.asking()?.usual;
  return (
    <Show when={props.state.wanted()} fallback={<p class="quiet">{t.loading}</p>}>
      {(w) => {
        const air = (): keyof typeof t.airs => (w().airTime ? 'time' : w().height ? 'height' : 'free');
        const setAir = (kind: keyof typeof t.airs): void => {
          const { outline } = flight.result();
          const round = (v: number): number => Math.round(v * 100) / 100;
          set({
            airTime:
              kind === 'time' ? { value: round(outline.duration), within: usual()?.airTimeWithin ?? 0.01 } : undefined,
            height:
              kind === 'height' ? { value: round(outline.height), within: usual()?.heightWithin ?? 0.02 } : undefined,
          });
        };
        return (
          <section class="ask-sentence" aria-label={t.wanted}>
            <span class="ask-clause">
              <b>{t.wanted}</b>
            </span>{' '}
            <span class="ask-clause som">
              <Slot
                label={t.somersaults}
                name="somersaults"
                unit="count"
                decimals={2}
                step={0.25}
                value={w().somersaults}
                min={0}
                max={8}
                onChange={(somersaults) => set({ somersaults, landingAngle: undefined, twistsAfter: undefined })}
              />{' '}
              {t.somersaultWord(w().somersaults === 1)}{' '}
              <Choice
                label={t.direction}
                value={w().direction}
                words={t.directions}
                choose={(direction) => set({ direction, landingAngle: undefined })}
              />
              ,
            </span>{' '}
            <span class="ask-clause twist">
              <Slot
                label={t.twists}
                name="twists"
                unit="count"
                decimals={2}
                step={0.5}
                value={w().twists}
                min={0}
                max={8}
                onChange={(twists) =>
                  set({ twists, twistsAfter: undefined, twistTo: twists > 0 ? w().twistTo || 'left' : w().twistTo })
                }
              />
              <span class="pm">±</span>
              <Slot
                label={t.twistWithin}
                name="twistWithin"
                unit="count"
                decimals={3}
                step={0.01}
                value={w().twistWithin}
                min={0.001}
                max={1}
                onChange={(twistWithin) => set({ twistWithin })}
              />{' '}
              {t.twistWord(w().twists === 1)}{' '}
              <Choice label={t.twistTo} value={w().twistTo} words={t.sides} choose={(twistTo) => set({ twistTo })} />,
            </span>{' '}
            <span class="ask-clause">
              {props.state.skill()?.spec.catch ? t.endsAtRail : t.lands}{' '}
              <Show when={props.state.canHold()}>
                <Choice
                  label={t.ending}
                  value={w().ending}
                  words={props.state.skill()?.spec.catch ? t.railEndings : t.endings}
                  choose={(ending) => set({ ending })}
                />
              </Show>
              <Show when={!props.state.canHold() || w().ending === 'any'} fallback=",">
                {' '}
                <Slot
                  label={t.short}
                  name="short"
                  unit="rad"
                  decimals={0}
                  value={w().short}
                  min={0}
                  max={90 * RAD}
                  onChange={(short) => set({ short })}
                />{' '}
                {t.shortTo}{' '}
                <Slot
                  label={t.over}
                  name="over"
                  unit="rad"
                  decimals={0}
                  value={w().over}
                  min={0}
                  max={90 * RAD}
                  onChange={(over) => set({ over })}
                />{' '}
                {t.overWord},
              </Show>
            </span>{' '}
            <span class="ask-clause tilt">
              {t.tilted}{' '}
              <Slot
                label={t.tiltWithin}
                name="tilt"
                unit="rad"
                decimals={0}
                value={w().tiltWithin}
                min={RAD}
                max={60 * RAD}
                onChange={(tiltWithin) => set({ tiltWithin })}
              />
              ,
            </span>{' '}
            <span class="ask-clause minor">
              <Show when={w().airTime}>
                {(a) => (
                  <>
                    <Slot
                      label={t.airTime}
                      unit="s"
                      decimals={2}
                      step={0.01}
                      value={a().value}
                      min={0.1}
                      max={10}
                      onChange={(value) => set({ airTime: { ...a(), value } })}
                    />
                    <span class="pm">±</span>
                    <Slot
                      label={t.airWithin}
                      unit="s"
                      decimals={2}
                      step={0.01}
                      value={a().within}
                      min={0.001}
                      max={1}
                      onChange={(within) => set({ airTime: { ...a(), within } })}
                    />{' '}
                  </>
                )}
              </Show>
              <Show when={w().height}>
                {(h) => (
                  <>
                    <Slot
                      label={t.height}
                      unit="m"
                      value={h().value}
                      min={0}
                      max={40}
                      onChange={(value) => set({ height: { ...h(), value } })}
                    />
                    <span class="pm">±</span>
                    <Slot
                      label={t.heightWithin}
                      unit="m"
                      value={h().within}
                      min={0.001}
                      max={5}
                      onChange={(within) => set({ height: { ...h(), within } })}
                    />{' '}
                  </>
                )}
              </Show>
              <Choice label={t.air} value={air()} words={t.airs} choose={setAir} />,
            </span>{' '}
            <fieldset class="ask-clause minor ask-limits">
              <legend class="spoken">{t.limitsLabel}</legend>
              <span aria-hidden="true">{t.withinJoints}</span>
              <For each={LIMITS}>
                {(name) => (
                  <label title={t.limitsMean[name]}>
                    <input
                      type="checkbox"
                      checked={props.state.limits()[name]}
                      onChange={(e) => props.state.setLimits({ [name]: e.currentTarget.checked })}
                    />
                    {t.limits[name]}
                  </label>
                )}
              </For>
            </fieldset>
            <Show when={props.state.aim().fault}>
              <p class="ask-fault" role="alert">
                {props.state.aim().fault}.
              </p>
            </Show>
            <Show when={w().twistsAfter}>
              {(list) => (
                <p class="ask-places quiet">
                  {t.codePlaces(
                    list()
                      .map((n, i) => t.after(String(i + 1), formatNumber(n, 1)))
                      .join(', '),
                  )}{' '}
                  <button type="button" class="small" onClick={() => set({ twistsAfter: undefined })}>
                    {t.dropPlaces}
                  </button>
                </p>
              )}
            </Show>
          </section>
        );
      }}
    </Show>
  );
}

/** Fills the sentence: from the flight, or from a code. */
export function WantedFill(props: { state: AskState }) {
  const [typed, setTyped] = createSignal('');
  const [fault, setFault] = createSignal('');
  const take = (): void => {
    if (typed().trim() === '') {
      setFault(t.codeEmpty);
      return;
    }
    try {
      props.state.takeCode(typed().trim());
      setFault('');
    } catch (error) {
      setFault(`${wordFault(error)}.`);
    }
  };
  return (
    <div class="ask-fill">
      <button type="button" title={t.fromNowMeans} onClick={() => props.state.fillFromNow()}>
        {t.fromNow}
      </button>
      <input
        type="text"
        maxLength={80}
        aria-label={t.code}
        placeholder={t.code}
        title={t.codeHint}
        autocomplete="off"
        spellcheck={false}
        aria-invalid={fault() !== ''}
        aria-describedby={fault() ? 'ask-code-why' : undefined}
        value={typed()}
        onInput={(e) => setTyped(e.currentTarget.value)}
        onKeyDown={(e) => {
          if (e.key !== 'Enter') return;
          e.preventDefault();
          take();
        }}
      />
      <button type="button" onClick={take}>
        {t.codeTake}
      </button>
      <Show when={fault()}>
        <p class="ask-fault" id="ask-code-why" role="alert">
          {fault()}
        </p>
      </Show>
    </div>
  );
}
