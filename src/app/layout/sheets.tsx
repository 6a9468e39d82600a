/** The panels one tap away: skills, all values, joints, keys, menu; and the reader, which lies beside the bench. */

import { createResource, type JSX, Match, Show, Switch } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { commandTexts } from '../../commands/words.ts';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { takeoffTexts } from '../../features/takeoff/words.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { FailedLine } from '../failed-line.tsx';
import { makeLate, useFirstSign } from '../late.tsx';
import { loadPart } from '../load-part.ts';
import { usePage, useServices, useShell } from '../page.ts';
import { printTexts } from '../sheet-words.ts';
import { texts } from '../words.ts';
import { CommandList, loadEntries } from './command-list.tsx';
import { loadLargeStage } from './stage/late-large.ts';

/** Loaded when it is asked for: the page starts light. */
const loadPrintSheet = loadPart(
  () => import('../../features/print/print-sheet.tsx'),
  (m) => m.PrintSheet,
);
const loadContents = loadPart(
  () => import('./panel-contents.tsx'),
  (m) => m.PanelContent,
);
const LateContent = makeLate(loadContents);
const LateReader = makeLate(
  loadPart(
    () => import('../../features/read/reader.tsx'),
    (m) => m.Reader,
  ),
);

const TITLES = {
  skills: texts.picker.title,
  values: takeoffTexts.both,
  athlete: takeoffTexts.athlete,
  shapes: texts.shapes.listTitle,
  joints: laneTexts.choose,
  help: texts.help.title,
  menu: texts.bar.menu,
  about: texts.head.about,
  start: texts.start.title,
} as const;

export function Sheets(props: { lanes: LaneList }) {
  const shell = useShell();
  const close = (): void => shell.openPanel(undefined);
  useFirstSign(loadContents);
  useFirstSign(loadEntries);
  useFirstSign(loadLargeStage);
  useFirstSign(useServices().load.large);
  const panel = (name: keyof typeof TITLES): JSX.Element => (
    <Match when={shell.panel() === name}>
      <Sheet title={TITLES[name]} onClose={close}>
        <LateContent name={name} lanes={props.lanes} close={close} />
      </Sheet>
    </Match>
  );
  return (
    <>
      <Show when={shell.reading()}>{(place) => <LateReader place={place()} />}</Show>
      <Switch>
        {(Object.keys(TITLES) as (keyof typeof TITLES)[]).map(panel)}
        <Match when={shell.panel() === 'commands'}>
          <Sheet title={commandTexts.findTitle} onClose={close}>
            <CommandList close={close} />
          </Sheet>
        </Match>
        <Match when={shell.panel() === 'print'}>
          <PrintPlace onClose={close} />
        </Match>
      </Switch>
    </>
  );
}

function PrintPlace(props: { onClose: () => void }) {
  const { services } = usePage();
  const [sheet, { refetch }] = createResource(async () => {
    const [loaded] = await Promise.all([loadPrintSheet(), services.load.print()]);
    return loaded;
  });
  return (
    <Show
      when={sheet.state === 'ready' && sheet()}
      fallback={
        <Show when={sheet.error}>
          <Sheet title={printTexts.title} onClose={props.onClose}>
            <FailedLine again={() => void refetch()}>
              {texts.printFailed} <span class="quiet">{String(sheet.error?.message)}</span>
            </FailedLine>
          </Sheet>
        </Show>
      }
    >
      <Dynamic component={sheet.latest} {...props} />
    </Show>
  );
}
