/** After the air: the mat and the legs, with what can be turned. */
import { For, Show } from 'solid-js';
import type { FileLanding } from '../../../sim/index.ts';
import { afterOf } from '../../../sim/math/phases.ts';
import { useDocument, useFlight } from '../../app/page.ts';
import { catchOf, changeLanding } from '../../document/contact-edits.ts';
import { withAfter } from '../../document/phases.ts';
import { CatchKnobs } from './catch-knobs.tsx';
import { Knob, Pick } from './knob.tsx';
import { SCALES } from './scales.ts';
import { contactTexts } from './words.ts';

const t = contactTexts;
const k = t.knobs;
/** knees as the flight brings them, until they are set here */
const KNEE = 30;
/** factors of the landing, their words, and what they are where the file says nothing */
const FACTORS = [
  ['legStiffness', 'stiffness', 1],
  ['effort', 'effort', 1],
  ['eccentricFactor', 'eccentric', 1],
] as const;

export function AfterKnobs() {
  const doc = useDocument();
  const flight = useFlight();
  const arrival = (): FileLanding | undefined => afterOf(doc.file());
  const kneeNow = (): number => {
    const { frames, skill } = flight.result();
    const { angles } = skill.body;
    const i = angles.findIndex((a) => a.name === 'kneeFlexionL');
    const row = frames.n - 1;
    return i < 0 ? KNEE : Math.round((frames.angles[angles.length * row + i] * 180) / Math.PI);
  };
  return (
    <section class="knobs" aria-label={t.after}>
      <h3>
        {t.after}
        <Show when={arrival()}>
          <button
            type="button"
            class="plain small"
            onClick={() => doc.edit(withAfter(doc.file(), undefined), t.removed)}
          >
            {t.remove}
          </button>
        </Show>
      </h3>
      <Show
        when={arrival()}
        fallback={
          <Show when={catchOf(doc.file())} fallback={<p class="quiet">{t.noneAfter}</p>}>
            {(asked) => <CatchKnobs asked={asked()} />}
          </Show>
        }
      >
        {(a) => (
          <>
            <Pick
              label={k.mat}
              value={typeof a().mat === 'string' ? (a().mat as string) : 'own'}
              names={Object.keys(k.mats).filter((name) => name !== 'own' || typeof a().mat !== 'string')}
              words={k.mats}
              choose={(v) =>
                v !== 'own' && doc.edit(changeLanding(doc.file(), { mat: v as 'competitionMat' }), t.changed(k.mat))
              }
            />
            <Knob
              label={k.knee}
              scale={SCALES.knee}
              value={a().kneeDeg ?? kneeNow()}
              set={(f, v) => changeLanding(f, { kneeDeg: v })}
            />
            <For each={FACTORS}>
              {([field, label, usual]) => (
                <Knob
                  label={k[label]}
                  scale={SCALES[label]}
                  value={a()[field] ?? usual}
                  set={(f, v) => changeLanding(f, { [field]: v })}
                />
              )}
            </For>
            <Knob
              label={k.delay}
              scale={SCALES.delay}
              value={Math.round((a().reflexDelayS ?? 0.06) * 1000)}
              set={(f, v) => changeLanding(f, { reflexDelayS: v / 1000 })}
            />
          </>
        )}
      </Show>
    </section>
  );
}
