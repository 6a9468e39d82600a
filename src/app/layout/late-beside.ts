/** The rows of two ways of a skill, loaded when they are asked for first. */
import { type Accessor, createEffect, createMemo, createSignal } from 'solid-js';
import type { Beside } from '../beside.ts';
import { loadPart } from '../load-part.ts';
import { useShell } from '../page.ts';

type BesideParts = typeof import('./beside-ground.ts');
const load = loadPart(
  () => import('./beside-ground.ts'),
  (parts) => parts,
);

/** The other way and what it is shown with. Undefined while there is nothing beside, and where it could not be loaded: the rows are those of the skill alone then. */
export function useBesideParts(): Accessor<({ readonly beside: Beside } & BesideParts) | undefined> {
  const shell = useShell();
  const [parts, setParts] = createSignal<BesideParts>();
  createEffect(() => {
    if (shell.beside.shown() && !parts())
      load().then(
        (loaded) => setParts(loaded),
        () => undefined,
      );
  });
  return createMemo(() => {
    const [beside, loaded] = [shell.beside.shown(), parts()];
    return beside && loaded ? { beside, ...loaded } : undefined;
  });
}
