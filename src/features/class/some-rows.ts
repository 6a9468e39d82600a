/** Rows that come onto the page a few in a frame: three hundred at once hold it up. */
import { createEffect, createSignal, onCleanup } from 'solid-js';

const AT_ONCE = 10;

export function useSome<T>(props: { readonly rows: readonly T[] }): () => readonly T[] {
  const [count, setCount] = createSignal(AT_ONCE);
  createEffect(() => {
    const now = count();
    if (now >= props.rows.length) return;
    const frame = requestAnimationFrame(() => setCount(now + AT_ONCE));
    onCleanup(() => cancelAnimationFrame(frame));
  });
  return () => (count() >= props.rows.length ? props.rows : props.rows.slice(0, count()));
}
