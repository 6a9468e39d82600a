/** A handle at hands, elbows, knees and feet of a human. */
import type { Body, Vec3 } from '../../sim/index.ts';
import type { Handle } from '../../src/scene/upright-scene.ts';

export function posingHandles(body: Body, held?: string): Handle[] {
  const handles: Handle[] = [];
  const add = (id: string, segment: string, p: Vec3): void => {
    const k = body.segments.findIndex((one) => one.name === segment);
    if (k >= 0) handles.push({ id, segment: k, p, held: id === held });
  };
  for (const side of ['L', 'R']) {
    add(`hand${side}`, `hand${side}`, [0, -0.04, 0]);
    add(`elbow${side}`, `forearm${side}`, [0, 0, 0]);
    add(`knee${side}`, `shank${side}`, [0, 0, 0]);
    add(`foot${side}`, `foot${side}`, [0, 0, 0]);
  }
  return handles;
}
