/** Answers what commands ask of the shelf, the exports, the units and the voice; takes in athletes that were opened. */
import { createEffect, on, onMount } from 'solid-js';
import type { Asked } from '../commands/actions.ts';
import { shelfTexts } from '../texts/shelf.ts';
import type { Bench } from './bench.ts';
import { useCode } from './code-line.tsx';
import { sayFlight } from './say-flight.ts';
import { useShelf } from './shelf.ts';
import { setUnits } from './units.ts';

export function Answers(props: { bench: Bench }) {
  const shelf = useShelf(props.bench);
  const code = useCode(props.bench);
  const answer: Readonly<Record<Asked, () => void>> = {
    'save-shelf': () => void shelf.save(),
    'save-copy': () => void shelf.saveCopy(),
    // loaded when it is asked for: the page starts light
    csv: () => void import('./print-export.ts').then((m) => m.saveCsv(props.bench)),
    svg: () => void import('./print-export.ts').then((m) => m.savePicture(props.bench, 'svg')),
    png: () => void import('./print-export.ts').then((m) => m.savePicture(props.bench, 'png')),
    say: () => {
      // the same words again are spoken again
      props.bench.tell(undefined);
      queueMicrotask(() => props.bench.tell({ text: sayFlight(props.bench) }));
    },
    code: () => code.open(),
    metric: () => setUnits({ measure: 'metric' }),
    imperial: () => setUnits({ measure: 'imperial' }),
    revolutions: () => setUnits({ turning: 'revolutions' }),
    degrees: () => setUnits({ turning: 'degrees' }),
  };
  onMount(() => props.bench.setAnswer((what) => answer[what]()));
  createEffect(
    on(
      () => props.bench.athleteRead(),
      (athlete) => {
        if (!athlete) return;
        void shelf.saveAthlete(athlete).then((entry) => {
          props.bench.tell({
            text: entry ? shelfTexts.athleteRead(athlete.name) : shelfTexts.athleteOnly(athlete.name),
            action: { title: shelfTexts.giveToSkill, run: () => shelf.give(athlete) },
          });
        });
      },
    ),
  );
  return null;
}
