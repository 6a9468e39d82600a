/** The buttons of all tools, as the menu has them. */
import { For } from 'solid-js';
import type { ToolName } from '../../../commands/actions.ts';
import { toolTexts } from '../../../commands/tool-words.ts';
import { useShell } from '../../page.ts';
import { tools } from './tool-list.ts';

export function ToolBar(props: { onOpened: () => void }) {
  const shell = useShell();
  return (
    <nav class="tool-bar" aria-label={toolTexts.label}>
      <For each={tools}>
        {(tool) => (
          <ToolButton
            name={tool.name}
            isOn={shell.tool() === tool.name}
            press={() => {
              shell.openTool(tool.name);
              props.onOpened();
            }}
          />
        )}
      </For>
    </nav>
  );
}

export const ToolButton = (props: { name: ToolName; isOn: boolean; press: () => void }) => (
  <button
    type="button"
    class="plain"
    aria-pressed={props.isOn}
    title={toolTexts.hints[props.name]}
    onClick={() => props.press()}
  >
    {toolTexts.titles[props.name]}
  </button>
);
