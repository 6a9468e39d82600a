/** How the angle that is shown is smoothed: four ways, with what each took out. */
import { createSignal, createUniqueId, For, Show } from 'solid-js';
import type { RecordingStudy, Smoothing } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { isNoiseRepeating } from '../../../sim/words/recording-words.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber, parseNumber } from '../../ui/numbers.ts';
import { smoothingOf, withSmoothing, withSmoothingOfAll } from './recording-options.ts';
import type { RecordingState } from './recording-state.ts';
import { degOf } from './recording-verdict.tsx';
import { recordingTexts as t } from './recording-words.ts';

const WAYS = ['gcv', 'noise', 'cutoff', 'none'] as const;
type Way = (typeof WAYS)[number];
/** what is offered first: deg of noise, Hz; of what marker systems usually have. Our judgement */
const FIRST = { noise: 1, cutoff: 12 } as const;

export function RecordingSmoothing(props: { state: RecordingState; study: RecordingStudy }) {
  const group = createUniqueId();
  const name = (): string => props.study.angleNames[props.state.angle()] ?? '';
  const report = () => props.study.smoothing[props.state.angle()];
  const by = (): Smoothing => smoothingOf(props.state.options(), name());
  const [deg, setDeg] = createSignal<number>(FIRST.noise);
  const [hz, setHz] = createSignal<number>(FIRST.cutoff);
  const made = (way: Way): Smoothing =>
    way === 'noise'
      ? { kind: 'noise', rms: deg() / DEG }
      : way === 'cutoff'
        ? { kind: 'cutoff', hz: hz() }
        : { kind: way };
  const put = (way: Way): void => props.state.change(withSmoothing(props.state.options(), name(), made(way)));
  const typed = (text: string, set: (v: number) => void, way: Way): void => {
    const v = parseNumber(text);
    if (!(v > 0)) return;
    set(v);
    put(way);
  };
  const said = (): string => {
    const one = report();
    return one
      ? t.leftOver(degOf(one.residual), Number.isFinite(one.cutoffHz) ? formatNumber(one.cutoffHz, 1) : undefined)
      : '';
  };
  return (
    <section class="rec-smoothing">
      <fieldset>
        <legend>{t.smoothing}</legend>
        <For each={WAYS}>
          {(way) => (
            <div class="rec-way" classList={{ chosen: by().kind === way }}>
              <label>
                <input type="radio" name={group} checked={by().kind === way} onChange={() => put(way)} />
                <span>{t.smoothings[way]}</span>
              </label>
              <Show when={by().kind === way && (way === 'noise' || way === 'cutoff')}>
                <input
                  type="text"
                  inputmode="decimal"
                  maxLength={40}
                  class="rec-typed"
                  aria-label={way === 'noise' ? t.noiseField : t.cutoffField}
                  value={formatNumber(way === 'noise' ? deg() : hz(), way === 'noise' ? 1 : 0)}
                  onChange={(e) => typed(e.currentTarget.value, way === 'noise' ? setDeg : setHz, way)}
                />
                <span>{way === 'noise' ? '°' : 'Hz'}</span>
              </Show>
              <Show when={by().kind === way}>
                <span class="rec-said">{said()}</span>
              </Show>
            </div>
          )}
        </For>
      </fieldset>
      <button
        type="button"
        class="link"
        onClick={() => props.state.change(withSmoothingOfAll(props.state.options(), by()))}
      >
        {t.forAll}
      </button>
      <Show when={report()?.isCorrelated && by().kind === 'gcv' && isNoiseRepeating(props.study)}>
        <p class="rec-caution" role="status">
          <Icon name="caution" size={20} />
          <span>
            <b class="spoken">{t.caution}: </b>
            {t.correlated}
          </span>
        </p>
      </Show>
    </section>
  );
}
