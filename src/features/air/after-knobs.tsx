/** After the air: the mat and the legs, with what can be turned. */
import { Show } from 'solid-js';
import type { FileLanding } from '../../../sim/index.ts';
import { useDocument, useFlight } from '../../app/page.ts';
import { changeLanding, landingForSurface } from '../../document/contact-edits.ts';
import { getAfter, withAfter } from '../../document/phases.ts';
import { Knob, Pick } from './knob.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const k = t.knobs;
/** knees as the flight brings them, until they are set here */
const KNEE = 30;

export function AfterKnobs() {
  const doc = useDocument();
  const flight = useFlight();
  const arrival = (): FileLanding | undefined => getAfter(doc.file());
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
          <>
            <p class="quiet">{t.noneAfter}</p>
            <button
              type="button"
              onClick={() => doc.edit(withAfter(doc.file(), landingForSurface(doc.file())), t.addedLanding)}
            >
              {t.addLanding}
            </button>
          </>
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
              unit="°"
              quantity="angle"
              value={a().kneeDeg ?? kneeNow()}
              min={0}
              max={110}
              step={1}
              decimals={0}
              set={(f, v) => changeLanding(f, { kneeDeg: v })}
            />
            <Knob
              label={k.stiffness}
              unit={t.units.times}
              value={a().legStiffness ?? 1}
              min={0.2}
              max={4}
              step={0.05}
              decimals={2}
              set={(f, v) => changeLanding(f, { legStiffness: v })}
            />
            <Knob
              label={k.effort}
              unit=""
              value={a().effort ?? 1}
              min={0.2}
              max={1}
              step={0.05}
              decimals={2}
              set={(f, v) => changeLanding(f, { effort: v })}
            />
            <Knob
              label={k.eccentric}
              unit={t.units.times}
              value={a().eccentricFactor ?? 1.4}
              min={1}
              max={2}
              step={0.05}
              decimals={2}
              set={(f, v) => changeLanding(f, { eccentricFactor: v })}
            />
            <Knob
              label={k.delay}
              unit={t.units.ms}
              value={Math.round((a().reflexDelayS ?? 0.06) * 1000)}
              min={0}
              max={200}
              step={5}
              decimals={0}
              set={(f, v) => changeLanding(f, { reflexDelayS: v / 1000 })}
            />
          </>
        )}
      </Show>
    </section>
  );
}
