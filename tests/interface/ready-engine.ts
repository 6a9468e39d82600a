/** The page's engine with the releases of all presets known. */
import { athletes, shapes, skills } from '../../presets/index.ts';
import { type Engine, makeEngine } from '../../src/engine/engine.ts';

export async function readyEngine(): Promise<Engine> {
  const engine = makeEngine({ athletes, shapes });
  await Promise.all(Object.values(skills).map((file) => engine.ready(file)));
  return engine;
}
