/** Answers what commands ask of the shelf, the exports, the units and the voice; takes in athletes that were opened. */
import { createEffect, on, onMount } from 'solid-js';
import type { DeferredCommand } from '../../commands/actions.ts';
import { toolTexts } from '../../commands/tool-words.ts';
import { inWords } from '../../ui/names.ts';
import { setUnits } from '../../ui/units.ts';
import { isOneFile, saveOneFile, showLicences } from '../carried.ts';
import { loadPart } from '../load-part.ts';
import { watchLinks } from '../opened-link.ts';
import { useDocument, usePage, useServices, useShell } from '../page.ts';
import { sayFlight } from '../say/say-flight.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { texts } from '../words.ts';
import { useCode } from './code-state.ts';

const loadExport = loadPart(
  () => import('../../features/print/print-export.ts'),
  (m) => m,
);

const loadTry = loadPart(
  () => import('../../features/try/try-state.ts'),
  (m) => m.tryNow,
);

const loadTaker = loadPart(
  () => import('../../features/estimate/take-line.ts'),
  (m) => m.takeLine,
);

export function Answers() {
  const page = usePage();
  const services = useServices();
  const shell = useShell();
  const doc = useDocument();
  const shelf = useShelf();
  const code = useCode();
  const exportBy = async (save: (m: Awaited<ReturnType<typeof loadExport>>) => Promise<void>): Promise<void> => {
    try {
      await save(await loadExport());
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      shell.notify({
        text: `${texts.exportFailed} ${reason}`,
        action: { title: toolTexts.again, run: () => void exportBy(save) },
      });
    }
  };
  const answer: Readonly<Record<DeferredCommand, () => void>> = {
    'save-shelf': () => void shelf.save(),
    'save-copy': () => void shelf.saveCopy(),
    // loaded when it is asked for: the page starts light
    csv: () => void exportBy((m) => m.saveCsv(page)),
    svg: () => void exportBy((m) => m.savePicture(page, 'svg')),
    png: () => void exportBy((m) => m.savePicture(page, 'png')),
    'one-file': async () => {
      if (isOneFile()) shell.notify({ text: texts.isOneFile });
      else if (!(await saveOneFile())) shell.notify({ text: texts.noOneFile });
    },
    licences: showLicences,
    say: () => {
      // the same words again are spoken again
      shell.notify(undefined);
      queueMicrotask(() => shell.notify({ text: sayFlight(page) }));
    },
    code: () => code.open(),
    try: () => void loadTry().then((tryNow) => tryNow(page)),
    metric: () => setUnits({ measure: 'metric' }),
    imperial: () => setUnits({ measure: 'imperial' }),
    revolutions: () => setUnits({ turning: 'revolutions' }),
    degrees: () => setUnits({ turning: 'degrees' }),
  };
  onMount(() => {
    shell.sheetDoor.serve(async (line) => (await loadTaker())(page, line));
    shell.setAnswer((what) => answer[what]());
    watchLinks(page, shelf);
    const { asked } = services.presets;
    if (!asked || page.isFresh || JSON.stringify(asked) === JSON.stringify(doc.chain())) return;
    const before = doc.file().title || texts.untitled;
    doc.open(asked, texts.files.opened(asked.title));
    shell.notify({
      text: texts.files.overKept(inWords(before), inWords(doc.athlete().name)),
      action: { title: texts.bar.undo, run: () => doc.undo() },
    });
  });
  createEffect(() => {
    const take = services.newVersion();
    if (take) shell.notify({ text: texts.newVersion, action: { title: texts.takeVersion, run: take } });
  });
  createEffect(
    on(
      () => doc.athleteRead(),
      (athlete) => {
        if (!athlete) return;
        void shelf.saveAthlete(athlete).then((entry) => {
          shell.notify({
            text: entry ? shelfTexts.athleteRead(inWords(athlete.name)) : shelfTexts.athleteOnly(inWords(athlete.name)),
            action: { title: shelfTexts.giveToSkill, run: () => shelf.give(athlete) },
          });
        });
      },
    ),
  );
  return null;
}
