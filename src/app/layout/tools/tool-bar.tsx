/** The buttons of the tools: in the bar of a laptop, in the menu of tablet and phone. */
import { For } from 'solid-js';
import { toolTexts } from '../../../commands/tool-words.ts';
import { useShell } from '../../page.ts';
import { tools } from './tool-list.ts';

export function ToolBar(props: { onOpened?: () => void }) {
  const shell = useShell();
  return (
    <nav class="tool-bar" aria-label={toolTexts.label}>
      <For each={tools}>
        {(tool) => (
          <button
            type="button"
            class="plain"
            aria-pressed={shell.tool() === tool.name}
            title={toolTexts.hints[tool.name]}
            onClick={() => {
              shell.openTool(shell.tool() === tool.name ? undefined : tool.name);
              props.onOpened?.();
            }}
          >
            {toolTexts.titles[tool.name]}
          </button>
        )}
      </For>
    </nav>
  );
}
