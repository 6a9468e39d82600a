/** Names and values under each other. */
import { For } from 'solid-js';

export function ReportRows(props: { rows: readonly (readonly [string, string])[] }) {
  return (
    <dl class="report-rows">
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
