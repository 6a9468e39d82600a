/** Something to try with one flown document, looked for by a worker, as a document that can be flown. */
import {
  type Athlete,
  parseSkill,
  type ShapeData,
  type SkillFile,
  type TryChange,
  updateSkill,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

export interface TryOffer extends Omit<TryChange, 'spec'> {
  readonly file: SkillFile;
}

export interface Trying {
  /** `done` gives nothing where there is nothing worth trying; it rejects with the reason, and after a cancel */
  look(result: FlightResult): { readonly done: Promise<TryOffer | undefined>; cancel(): void };
}

export function makeTrying(
  shelf: { readonly athletes: Readonly<Record<string, Athlete>>; readonly shapes: Readonly<Record<string, ShapeData>> },
  pool: Pool = makePagePool(),
): Trying {
  return {
    look: ({ file }) => {
      const spec = parseSkill(file, shelf);
      const { done, cancel } = pool.run('try', { spec }, { patienceMs: 0 });
      return { done: done.then((found) => found && offerOf(file, spec, found)), cancel };
    },
  };
}

function offerOf(
  file: SkillFile,
  spec: Parameters<typeof updateSkill>[1],
  { spec: after, ...found }: TryChange,
): TryOffer {
  return { ...found, file: updateSkill(file, spec, after) };
}
