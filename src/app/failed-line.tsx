/** What went wrong, and a way to try it again. */
import type { JSX } from 'solid-js';
import { toolTexts } from '../commands/tool-words.ts';

export function FailedLine(props: { children: JSX.Element; class?: string; again: () => void }) {
  return (
    <p class={props.class} role="alert">
      {props.children}{' '}
      <button type="button" onClick={() => props.again()}>
        {toolTexts.again}
      </button>
    </p>
  );
}
