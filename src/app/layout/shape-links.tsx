/** Beside the shapes while joints are open: catalogue, other joints, and the way back. */
import { type JSX, Show } from 'solid-js';
import { laneTexts } from '../../features/joints/words.ts';
import { useShell } from '../page.ts';
import { texts } from '../words.ts';
import { groundTexts } from './ground-words.ts';
import { FoldButton } from './open-rows.tsx';

export function ShapeLinks(props: { isBench: boolean }): JSX.Element {
  const shell = useShell();
  return (
    <div class="shape-links">
      <button type="button" class="plain small" onClick={() => shell.openPanel('shapes')}>
        {texts.shapes.list}
      </button>
      <button type="button" class="plain small" onClick={() => shell.openPanel('joints')}>
        {laneTexts.others}
      </button>
      <Show when={!props.isBench}>
        <FoldButton row="joints" title={groundTexts.folded.joints} />
      </Show>
    </div>
  );
}
