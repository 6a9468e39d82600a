/** What is measured on the page and then written to it. All that is asked for in a task is measured at its end, before any of it is written: the page is laid out once, and not once for each. */
import { batch } from 'solid-js';

interface Asked {
  measure(): () => void;
}

let asked = new Set<Asked>();

function measureAll(): void {
  const now = [...asked];
  asked = new Set();
  const writes = now.map((one) => one.measure());
  batch(() => {
    for (const write of writes) write();
  });
}

/** `measure` reads the page and gives back what writes to it; asked for again in the same task, it is done once. */
export function measureSoon(one: Asked): void {
  if (asked.size === 0) queueMicrotask(measureAll);
  asked.add(one);
}
