/** The tag of a version: A filled, the others on a hatch with an edge of their own. */
import type { Letter } from './compare-state.ts';

export function VersionTag(props: { letter: Letter; small?: boolean }) {
  return (
    <span class={`version-tag tag-${props.letter}`} classList={{ small: props.small }}>
      {props.letter}
    </span>
  );
}
