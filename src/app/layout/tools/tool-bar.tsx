/** The buttons of the tools: in the bar of a laptop, in the menu of tablet and phone. */
import { For } from 'solid-js';
import { toolTexts } from '../../../commands/tool-words.ts';
import type { Bench } from '../../bench.ts';
import { tools } from './tool-list.ts';

export function ToolBar(props: { bench: Bench; onOpened?: () => void }) {
  return (
    <nav class="tool-bar" aria-label={toolTexts.label}>
      <For each={tools}>
        {(tool) => (
          <button
            type="button"
            class="plain"
            aria-pressed={props.bench.tool() === tool.name}
            title={toolTexts.hints[tool.name]}
            onClick={() => {
              props.bench.openTool(props.bench.tool() === tool.name ? undefined : tool.name);
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
