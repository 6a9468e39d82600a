/** The tools in the bar of a laptop: those that have room, in their order. All of them are in the menu. */
import { createEffect, For } from 'solid-js';
import { toolTexts } from '../../../commands/tool-words.ts';
import { useSize } from '../../../ui/size.ts';
import { useShell } from '../../page.ts';
import { ToolButton } from './tool-bar.tsx';
import { tools } from './tool-list.ts';

/** Posing has the figure itself for a handle: its button is in the menu. */
const shown = tools.filter(({ name }) => name !== 'pose');

export function BarTools() {
  const shell = useShell();
  let nav!: HTMLElement;
  const size = useSize(() => nav);
  // the longest name goes first; what has no room then wraps into a line that is not seen; it must not be reached there either
  createEffect(() => {
    if (size().width === 0) return;
    const buttons = [...nav.querySelectorAll<HTMLElement>('button')];
    const wraps = (button: HTMLElement): boolean => button.offsetTop > nav.offsetTop + nav.clientHeight / 2;
    const longest = buttons[shown.findIndex(({ name }) => name === 'contact')];
    longest.hidden = false;
    longest.hidden = buttons.some(wraps);
    for (const button of buttons) button.classList.toggle('absent', wraps(button));
  });
  return (
    <nav class="bar-tools" ref={nav} aria-label={toolTexts.label}>
      <For each={shown}>
        {(tool) => (
          <ToolButton name={tool.name} press={() => shell.openTool(tool.name)} isOn={shell.tool() === tool.name} />
        )}
      </For>
    </nav>
  );
}
