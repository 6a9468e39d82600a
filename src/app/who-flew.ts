/** Who flew before, where opening a skill brought its own athlete: said where the athlete's name is, until another skill is opened. */
import { type Accessor, createComputed, createSignal } from 'solid-js';
import type { DocumentState } from './document.ts';
import { keptState } from './page.ts';

/** The name; undefined where the same athlete flies on. */
export function createWhoFlew(doc: Pick<DocumentState, 'id' | 'athlete'>): Accessor<string | undefined> {
  const [was, setWas] = createSignal<string>();
  createComputed<{ readonly id: number; readonly name: string }>((last) => {
    const now = { id: doc.id(), name: doc.athlete().name };
    if (last && last.id !== now.id) setWas(last.name === now.name ? undefined : last.name);
    // another was chosen since
    else if (last && last.name !== now.name) setWas(undefined);
    return now;
  });
  return was;
}

export const useWhoFlew = keptState(({ doc }) => createWhoFlew(doc));
