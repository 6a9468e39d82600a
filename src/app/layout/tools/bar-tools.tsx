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
  // what has no room wraps into a line that is not seen; it must not be reached there either
  createEffect(() => {
    if (size().width === 0) return;
    for (const button of nav.querySelectorAll<HTMLElement>('button'))
      button.classList.toggle('absent', button.offsetTop > nav.offsetTop + nav.clientHeight / 2);
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
