/** Names and values under each other. */
import { For } from 'solid-js';

export function Told(props: { rows: readonly (readonly [string, string])[] }) {
  return (
    <dl class="told-rows">
      <For each={props.rows}>
        {([name, value]) => (
          <div>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        )}
      </For>
    </dl>
  );
}
