/** A place of the bench that the open tool fills; it goes with the tool. */
import { type JSX, onCleanup, onMount } from 'solid-js';
import { useShell } from '../../page.ts';
import type { ToolPlaceName } from '../../tool-places.ts';

export function FilledPlace(props: { name: ToolPlaceName; style?: JSX.CSSProperties }) {
  const { places } = useShell();
  let root!: HTMLDivElement;
  onMount(() => places.put(props.name, root));
  onCleanup(() => places.put(props.name, undefined));
  return <div class={`filled-place filled-${props.name}`} ref={root} style={props.style} />;
}
