/** Under work. */
import type { Bench } from './bench.ts';
export function PrintSheet(props: { bench: Bench; onClose: () => void }) {
  return <p>{props.bench.file().title}</p>;
}
