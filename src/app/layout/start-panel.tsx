/** "Start here" from Find and the menu, once its row is folded: the skills to begin with, what can be read, the keys. */
import { For } from 'solid-js';
import { useShell } from '../page.ts';
import { texts } from '../words.ts';
import { Stories } from './start-here.tsx';

const t = texts.start;

export function StartPanel(props: { close: () => void }) {
  const shell = useShell();
  const ways = [
    [t.lessons, () => shell.read({ page: 'lessons' })],
    [t.glossary, () => shell.read({ page: 'glossary' })],
    [texts.help.title, () => shell.openPanel('help')],
  ] as const;
  return (
    <>
      <Stories onOpened={props.close} />
      <ul class="list">
        <For each={ways}>
          {([title, go]) => (
            <li>
              <button type="button" class="row-button" onClick={go}>
                <b>{title}</b>
              </button>
            </li>
          )}
        </For>
      </ul>
      <p class="standing">{texts.standingCaution}</p>
    </>
  );
}
