/** Where what is asked for by its name or code is typed: it opens by key, menu and list of commands. */
import { createEffect, on, Show } from 'solid-js';
import { makeLate, useFirstSign } from '../late.tsx';
import { loadPart } from '../load-part.ts';
import { useFlight } from '../page.ts';
import { wordNames, wordNoName } from '../say/code-words.ts';
import { useCode } from './code-state.ts';

const loadForm = loadPart(
  () => import('./code-form.tsx'),
  (m) => m.CodeForm,
);
const CodeForm = makeLate(loadForm);

function OpenForm(props: { close: () => void }) {
  const flight = useFlight();
  const code = useCode();
  const own = () => flight.result().names;
  return (
    <Show when={code.isOpen() || code.busy()}>
      <CodeForm
        code={code}
        said={[wordNames(own()), wordNoName(own())].filter(Boolean).join('. ')}
        close={props.close}
      />
    </Show>
  );
}

export function CodePlace() {
  const code = useCode();
  useFirstSign(loadForm);
  let from: Element | null = null;
  createEffect(
    on(code.isOpen, (open) => {
      if (open) from = document.activeElement;
      else if (document.activeElement === document.body && from instanceof HTMLElement) from.focus();
    }),
  );
  return (
    <div class="code-place">
      <OpenForm close={() => code.close()} />
    </div>
  );
}
