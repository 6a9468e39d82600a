/** The menu: all that is not in the bar, in groups. What is on the shelf and what is a file are two things, and say so. */
import { For, type JSX, Show } from 'solid-js';
import { commandTexts, titleTexts } from '../../commands/words.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { takeoffTexts } from '../../features/takeoff/words.ts';
import { useTry } from '../../features/try/try-state.ts';
import { tryTexts } from '../../features/try/words.ts';
import { Choice } from '../../ui/choice.tsx';
import type { Theme } from '../../ui/theme.ts';
import { UnitChoice } from '../../ui/units-choice.tsx';
import { useActions } from '../actions.ts';
import { AddressField } from '../address-field.tsx';
import { FileButtons } from '../file-buttons.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { useDocument, useShell } from '../page.ts';
import type { ReadPlace } from '../reading.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import type { PanelName } from '../shell.ts';
import { texts } from '../words.ts';
import { UndoRedo } from './bar.tsx';
import { ToolBar } from './tools/tool-bar.tsx';

const t = texts.menu;
const themes: readonly Theme[] = ['system', 'light', 'dark'];

type Way = readonly [title: string, press: () => void];

const Ways = (props: { ways: readonly Way[] }) => (
  <ul class="list">
    <For each={props.ways}>
      {([title, press]) => (
        <li>
          <button type="button" class="row-button" onClick={() => press()}>
            <b>{title}</b>
          </button>
        </li>
      )}
    </For>
  </ul>
);

const Group = (props: { title: string; children: JSX.Element }) => (
  <section class="menu-group">
    <h3>{props.title}</h3>
    {props.children}
  </section>
);

export function Menu() {
  const shell = useShell();
  const doc = useDocument();
  const actions = useActions();
  const way = (title: string, panel: PanelName): Way => [title, () => shell.openPanel(panel)];
  const who = (): string => {
    const { name, club } = doc.athlete();
    return club ? `${name}, ${club}` : name;
  };
  const close = (): void => shell.openPanel(undefined);
  const read = (place: ReadPlace): void => {
    close();
    shell.read(place);
  };
  const tried = useTry();
  const tryIt = (): void => {
    close();
    tried.doIt();
  };
  return (
    <>
      <NoticeLine inSheet />
      <p class="sheet-actions">
        <UndoRedo words />
      </p>
      <ToolBar onOpened={close} />
      <Ways
        ways={[
          way(commandTexts.findTitle, 'commands'),
          ...(tried.offer() ? ([[tryTexts.command(tried.offer()?.cue ?? ''), tryIt]] satisfies Way[]) : []),
        ]}
      />
      <Group title={t.skill}>
        <ShelfState />
        <Ways
          ways={[
            way(texts.picker.title, 'skills'),
            way(takeoffTexts.both, 'values'),
            way(shell.hall() ? takeoffTexts.athlete : t.who(who()), 'athlete'),
            way(texts.shapes.listTitle, 'shapes'),
            way(laneTexts.title, 'joints'),
            way(texts.head.about, 'about'),
          ]}
        />
      </Group>
      <Group title={t.file}>
        <p class="sheet-actions">
          <FileButtons />
        </p>
        <Ways ways={[way(commandTexts.print, 'print')]} />
        <AddressField />
      </Group>
      <Group title={t.show}>
        <Ways
          ways={[
            [
              shell.rows.isAll() ? texts.start.fewer : texts.start.rows,
              () => {
                close();
                shell.rows.toggleAll();
              },
            ],
            [
              shell.hall() ? t.leaveHall : t.hall,
              () => {
                close();
                shell.setHall(!shell.hall());
              },
            ],
            [commandTexts.say, () => shell.ask('say')],
            [
              actions.isMarked() ? titleTexts.unmark : titleTexts.mark,
              () => {
                close();
                actions.toggleMark();
              },
            ],
          ]}
        />
      </Group>
      <Group title={t.learn}>
        <Ways
          ways={[
            way(texts.start.title, 'start'),
            [texts.start.lessons, () => read({ page: 'lessons' })],
            [texts.start.glossary, () => read({ page: 'glossary' })],
            way(texts.help.title, 'help'),
          ]}
        />
      </Group>
      <Group title={t.look}>
        <Choice
          legend={texts.bar.colours}
          names={themes}
          words={texts.themes}
          chosen={shell.theme()}
          choose={shell.setTheme}
        />
        <UnitChoice />
      </Group>
      <p class="standing">{texts.comparedWhat}</p>
      <p class="standing">{texts.standingCaution}</p>
    </>
  );
}

/** How the skill compares with the shelf; a press saves it. */
function ShelfState() {
  const shelf = useShelf();
  return (
    <Show when={!shelf.refused()}>
      <p class="sheet-actions">
        <span class="quiet">{shelfTexts.state[shelf.state()]}</span>
        <Show when={shelf.state() !== 'saved'}>
          <button type="button" onClick={() => void shelf.save()}>
            {shelf.state() === 'unsaved' ? shelfTexts.save : shelfTexts.saveAgain}
          </button>
        </Show>
      </p>
    </Show>
  );
}
