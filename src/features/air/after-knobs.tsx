/** After the air: the mat and the legs, with what can be turned. */
import { Show } from 'solid-js';
import type { FileArrival } from '../../../sim/index.ts';
import type { Bench } from '../../app/bench.ts';
import { arrivalForSurface, changeArrival, setArrival } from '../../document/contact-edits.ts';
import { Knob, Pick } from './knob.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const k = t.knobs;
/** knees as the flight brings them, until they are set here */
const KNEE = 30;

export function AfterKnobs(props: { bench: Bench }) {
  const arrival = (): FileArrival | undefined => props.bench.file().arrival;
  const kneeNow = (): number => {
    const { frames, flight } = props.bench.result();
    const i = flight.body.angles.findIndex((a) => a.name === 'kneeFlexionL');
    const row = frames.n - 1;
    return i < 0 ? KNEE : Math.round((frames.angles[flight.body.angles.length * row + i] * 180) / Math.PI);
  };
  return (
    <section class="knobs" aria-label={t.after}>
      <h3>
        {t.after}
        <Show when={arrival()}>
          <button
            type="button"
            class="plain small"
            onClick={() => props.bench.edit(setArrival(props.bench.file(), undefined), t.removed)}
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
              onClick={() =>
                props.bench.edit(setArrival(props.bench.file(), arrivalForSurface(props.bench.file())), t.addedLanding)
              }
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
                v !== 'own' &&
                props.bench.edit(changeArrival(props.bench.file(), { mat: v as 'competitionMat' }), t.changed(k.mat))
              }
            />
            <Knob
              bench={props.bench}
              label={k.knee}
              unit="°"
              quantity="angle"
              value={a().kneeDeg ?? kneeNow()}
              min={0}
              max={110}
              step={1}
              decimals={0}
              set={(f, v) => changeArrival(f, { kneeDeg: v })}
            />
            <Knob
              bench={props.bench}
              label={k.stiffness}
              unit={t.units.times}
              value={a().legStiffness ?? 1}
              min={0.2}
              max={4}
              step={0.05}
              decimals={2}
              set={(f, v) => changeArrival(f, { legStiffness: v })}
            />
            <Knob
              bench={props.bench}
              label={k.effort}
              unit=""
              value={a().effort ?? 1}
              min={0.2}
              max={1}
              step={0.05}
              decimals={2}
              set={(f, v) => changeArrival(f, { effort: v })}
            />
            <Knob
              bench={props.bench}
              label={k.eccentric}
              unit={t.units.times}
              value={a().eccentricFactor ?? 1.4}
              min={1}
              max={2}
              step={0.05}
              decimals={2}
              set={(f, v) => changeArrival(f, { eccentricFactor: v })}
            />
            <Knob
              bench={props.bench}
              label={k.delay}
              unit={t.units.ms}
              value={Math.round((a().reflexDelayS ?? 0.06) * 1000)}
              min={0}
              max={200}
              step={5}
              decimals={0}
              set={(f, v) => changeArrival(f, { reflexDelayS: v / 1000 })}
            />
          </>
        )}
      </Show>
    </section>
  );
}
