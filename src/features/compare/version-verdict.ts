/** The verdict on a version, with its landing once that is known. Called within a component. */
import { type Accessor, createEffect, createSignal, onCleanup } from 'solid-js';
import type { SkillVerdict } from '../../../sim/index.ts';
import type { CompareState, FlownVersion } from './compare-state.ts';

export function useVerdict(
  one: () => FlownVersion | undefined,
  state: () => CompareState,
): Accessor<SkillVerdict | undefined> {
  const [verdict, setVerdict] = createSignal<SkillVerdict>();
  createEffect(() => {
    const version = one();
    const result = version?.result;
    const engine = state().comparing();
    setVerdict(result?.outline.verdict);
    if (!version || !result || !engine) return;
    let isShown = true;
    onCleanup(() => {
      isShown = false;
    });
    const isOwn = version.letter === 'A' || state().held() === 'own';
    engine.judge(result, isOwn, (now) => {
      if (isShown) setVerdict(now);
    });
  });
  return verdict;
}
