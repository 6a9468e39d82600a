// The thread of `npm run fuzz`: makes and runs one damaged input after the other, and says each before it begins.
import { parentPort, workerData } from 'node:worker_threads';
import { makeInput } from './corpus/kind.ts';
import { KINDS } from './corpus/kinds.ts';
import { LawBroken } from './corpus/law.ts';

interface Order {
  readonly seed: number;
  readonly kind?: string;
  readonly from: number;
  /** this one alone */
  readonly only?: number;
}

const { seed, kind: name, from, only } = workerData as Order;
const kinds = KINDS.filter((one) => name === undefined || one.name === name);
const say = (message: object): void => parentPort?.postMessage(message);

/** So that the word of a case that does not end is out before it begins. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

async function runOne(number: number): Promise<void> {
  const kind = kinds[number % kinds.length];
  const input = makeInput(kind, seed, number);
  say({ kind: 'begin', name: kind.name, number, input });
  await turn();
  try {
    say({ kind: 'end', name: kind.name, number, outcome: await kind.run(input) });
  } catch (error) {
    const why = error instanceof LawBroken ? error.message : String(error instanceof Error ? error.stack : error);
    say({ kind: 'end', name: kind.name, number, input, why });
  }
}

if (kinds.length === 0) say({ kind: 'none', names: KINDS.map((one) => one.name) });
else if (only !== undefined) {
  await runOne(only);
  say({ kind: 'done' });
} else for (let number = from; ; number++) await runOne(number);
