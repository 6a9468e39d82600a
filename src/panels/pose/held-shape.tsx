import type { Bench } from '../bench.ts';

export function HeldShape(props: { bench: Bench }) {
  return <p>{props.bench.cursor()}</p>;
}
