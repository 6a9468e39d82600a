import type { Bench } from '../bench.ts';
import type { TimeAxis } from '../plot/axis.ts';

export function Catalogue(props: { bench: Bench; axis: TimeAxis; device: string }) {
  return <p>{props.bench.cursor()}</p>;
}
