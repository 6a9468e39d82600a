/** Answers what commands ask of the shelf, the exports, the units and the voice; takes in athletes that were opened. */
import { createEffect, on, onMount } from 'solid-js';
import type { Asked } from '../../commands/actions.ts';
import { setUnits } from '../../ui/units.ts';
import { useDocument, usePage, useShell } from '../page.ts';
import { sayFlight } from '../say/say-flight.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { useCode } from './code-line.tsx';

export function Answers() {
  const page = usePage();
  const shell = useShell();
  const doc = useDocument();
  const shelf = useShelf();
  const code = useCode();
  const answer: Readonly<Record<Asked, () => void>> = {
    'save-shelf': () => void shelf.save(),
    'save-copy': () => void shelf.saveCopy(),
    // loaded when it is asked for: the page starts light
    csv: () => void import('../../features/print/print-export.ts').then((m) => m.saveCsv(page)),
    svg: () => void import('../../features/print/print-export.ts').then((m) => m.savePicture(page, 'svg')),
    png: () => void import('../../features/print/print-export.ts').then((m) => m.savePicture(page, 'png')),
    say: () => {
      // the same words again are spoken again
      shell.notify(undefined);
      queueMicrotask(() => shell.notify({ text: sayFlight(page) }));
    },
    code: () => code.open(),
    metric: () => setUnits({ measure: 'metric' }),
    imperial: () => setUnits({ measure: 'imperial' }),
    revolutions: () => setUnits({ turning: 'revolutions' }),
    degrees: () => setUnits({ turning: 'degrees' }),
  };
  onMount(() => shell.setAnswer((what) => answer[what]()));
  createEffect(
    on(
      () => doc.athleteRead(),
      (athlete) => {
        if (!athlete) return;
        void shelf.saveAthlete(athlete).then((entry) => {
          shell.notify({
            text: entry ? shelfTexts.athleteRead(athlete.name) : shelfTexts.athleteOnly(athlete.name),
            action: { title: shelfTexts.giveToSkill, run: () => shelf.give(athlete) },
          });
        });
      },
    ),
  );
  return null;
}
