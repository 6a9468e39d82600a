/** What is said of a deed for screen readers. It goes with the deed: undone, or in another document, it would be of something that is not there. */
import { type Accessor, createComputed, createMemo, createSignal, on } from 'solid-js';
import type { DocumentState } from './document.ts';

type Past = Pick<DocumentState, 'id' | 'undoTitle' | 'redoTitle'>;

/** `isNews`: the same words again are said again. */
export function makeSaid(doc: Past, isNews = false): readonly [Accessor<string>, (text: string) => void] {
  const [said, setSaid] = createSignal('', isNews ? { equals: false } : {});
  const clear = (): void => {
    setSaid('');
  };
  createComputed(on(doc.id, clear, { defer: true }));
  // a drag writes the document as well: its words stay
  const at = createMemo(() => `${doc.undoTitle() ?? ''}\n${doc.redoTitle() ?? ''}`);
  createComputed(
    on(
      at,
      () => {
        if (doc.redoTitle() !== undefined && said() !== '') clear();
      },
      { defer: true },
    ),
  );
  return [
    said,
    (text) => {
      setSaid(text);
    },
  ];
}
