/** Tabs inside a tool. Arrow keys go round; the panel is `${id}-panel`. */
import { For, type JSX } from 'solid-js';

/** Arrow keys go round the tabs; the id of each is `${id}-${name}`. */
export function stepTab<T extends string>(
  e: KeyboardEvent,
  id: string,
  names: readonly T[],
  chosen: T,
  choose: (name: T) => void,
): void {
  const way = e.key === 'ArrowRight' ? 1 : e.key === 'ArrowLeft' ? -1 : 0;
  if (way === 0) return;
  e.preventDefault();
  e.stopPropagation();
  const next = names[(names.indexOf(chosen) + way + names.length) % names.length];
  choose(next);
  document.getElementById(`${id}-${next}`)?.focus();
}

export function ToolTabs<T extends string>(props: {
  id: string;
  label: string;
  names: readonly T[];
  titles: Readonly<Record<T, string>>;
  chosen: T;
  choose: (name: T) => void;
}): JSX.Element {
  const onKey = (e: KeyboardEvent): void => stepTab(e, props.id, props.names, props.chosen, props.choose);
  return (
    <div class="tool-tabs" role="tablist" aria-label={props.label} onKeyDown={onKey}>
      <For each={props.names}>
        {(name) => (
          <button
            type="button"
            role="tab"
            id={`${props.id}-${name}`}
            aria-controls={`${props.id}-panel`}
            aria-selected={props.chosen === name}
            tabIndex={props.chosen === name ? 0 : -1}
            onClick={() => props.choose(name)}
          >
            {props.titles[name]}
          </button>
        )}
      </For>
    </div>
  );
}

/** What the chosen tab shows. It scrolls, so the keyboard has to reach it. */
export function TabPanel(props: {
  id: string;
  chosen: string;
  class: string;
  heightPx?: number;
  children: JSX.Element;
}) {
  return (
    <div
      class={props.class}
      role="tabpanel"
      id={`${props.id}-panel`}
      aria-labelledby={`${props.id}-${props.chosen}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is scrolled by keys only when it has the focus
      tabIndex={0}
      style={{ height: props.heightPx === undefined ? undefined : `${props.heightPx}px` }}
    >
      {props.children}
    </div>
  );
}
