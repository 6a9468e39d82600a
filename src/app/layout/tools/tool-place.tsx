/** The place of the open tool: its head, and its panel once that is loaded. */

import { createResource, onMount, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { toolTexts } from '../../../commands/tool-words.ts';
import { CutText } from '../../../ui/cut-text.tsx';
import { nextTask } from '../../../ui/frame.ts';
import { Icon } from '../../../ui/icon.tsx';
import { useFlight, usePage, useShell } from '../../page.ts';
import type { Tool, ToolProps } from '../../tool.ts';

const HEAD = { bench: 40, tablet: 48, phone: 48 } as const;

/** `isTall`: the tool has the height of the pictures too; left out where it cannot be given that. */
export function ToolPlace(props: ToolProps & { tool: Tool; isTall?: boolean }) {
  const flight = useFlight();
  const shell = useShell();
  const { services } = usePage();
  let root!: HTMLElement;
  const [panel, { refetch }] = createResource(
    () => props.tool,
    async (tool) => {
      const [loaded] = await Promise.all([tool.load(), tool.loadEngine?.(services.load)]);
      // what is already there would be shown in the task of the press, which has made place for it
      await nextTask();
      return loaded;
    },
  );
  const fault = (): string | undefined => (panel.error instanceof Error ? panel.error.message : undefined);
  const title = (): string => toolTexts.titles[props.tool.name];
  onMount(() => root.focus({ preventScroll: true }));
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key !== 'Escape' || e.defaultPrevented || flight.before()) return;
    e.preventDefault();
    shell.openTool(undefined);
  };
  /** A button that goes with its press (a phase laid on, a version taken away) leaves the focus to the tool. */
  const onClick = (): void => {
    requestAnimationFrame(() => {
      if (root.isConnected && document.activeElement === document.body) root.focus({ preventScroll: true });
    });
  };
  return (
    <section
      ref={root}
      class={`tool tool-${props.tool.place}`}
      classList={{ 'fills-air': props.tool.fillsAir && props.device === 'bench' }}
      tabIndex={-1}
      aria-label={title()}
      data-tool={props.tool.name}
      style={{ width: `${props.width}px`, height: `${props.height}px` }}
      onKeyDown={onKeyDown}
      onClick={onClick}
    >
      <header class="tool-head">
        <h2>{title()}</h2>
        <p class="quiet">
          <CutText text={toolTexts.hints[props.tool.name]} />
        </p>
        <Show when={props.isTall !== undefined}>
          <button type="button" class="tool-height" onClick={() => shell.setTall(!props.isTall)}>
            {props.isTall ? toolTexts.fold : toolTexts.taller}
          </button>
        </Show>
        <button
          type="button"
          class="square"
          aria-label={`${toolTexts.close} ${title()}`}
          onClick={() => shell.openTool(undefined)}
        >
          <Icon name="close" />
        </button>
      </header>
      <div class="tool-body">
        <Show
          when={panel.state === 'ready' && panel()}
          fallback={
            <Show when={fault()} fallback={<p class="quiet tool-loading">{toolTexts.loading(title())}</p>}>
              <p role="alert">
                {toolTexts.failed(title())} <span class="quiet">{fault()}</span>{' '}
                <button type="button" onClick={() => void refetch()}>
                  {toolTexts.again}
                </button>
              </p>
            </Show>
          }
        >
          <Dynamic
            component={panel.latest}
            {...props}
            height={props.height - (props.tool.fillsAir && props.device === 'bench' ? 0 : HEAD[props.device])}
          />
        </Show>
      </div>
    </section>
  );
}
