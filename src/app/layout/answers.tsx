/** Answers what commands ask of the shelf, the exports, the units and the voice; takes in athletes that were opened. */
import { createEffect, on, onMount, untrack } from 'solid-js';
import type { Asked } from '../../commands/actions.ts';
import { setUnits } from '../../ui/units.ts';
import type { Bench } from '../bench.ts';
import { sayFlight } from '../say/say-flight.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { useCode } from './code-line.tsx';

export function Answers(props: { bench: Bench }) {
  const bench = untrack(() => props.bench);
  const shelf = useShelf(bench);
  const code = useCode(bench);
  const answer: Readonly<Record<Asked, () => void>> = {
    'save-shelf': () => void shelf.save(),
    'save-copy': () => void shelf.saveCopy(),
    // loaded when it is asked for: the page starts light
    csv: () => void import('../../features/print/print-export.ts').then((m) => m.saveCsv(bench)),
    svg: () => void import('../../features/print/print-export.ts').then((m) => m.savePicture(bench, 'svg')),
    png: () => void import('../../features/print/print-export.ts').then((m) => m.savePicture(bench, 'png')),
    say: () => {
      // the same words again are spoken again
      bench.tell(undefined);
      queueMicrotask(() => bench.tell({ text: sayFlight(bench) }));
    },
    code: () => code.open(),
    metric: () => setUnits({ measure: 'metric' }),
    imperial: () => setUnits({ measure: 'imperial' }),
    revolutions: () => setUnits({ turning: 'revolutions' }),
    degrees: () => setUnits({ turning: 'degrees' }),
  };
  onMount(() => bench.setAnswer((what) => answer[what]()));
  createEffect(
    on(
      () => bench.athleteRead(),
      (athlete) => {
        if (!athlete) return;
        void shelf.saveAthlete(athlete).then((entry) => {
          bench.tell({
            text: entry ? shelfTexts.athleteRead(athlete.name) : shelfTexts.athleteOnly(athlete.name),
            action: { title: shelfTexts.giveToSkill, run: () => shelf.give(athlete) },
          });
        });
      },
    ),
  );
  return null;
}
