/** A text that is too long to be read in the page: what it is, and whether it is sound. */
import { buildChain, checkSkillFile, legsOf, parseChain, parseJson, type ShapeData } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { ReadLong } from './read-data.ts';

interface ReadRequest {
  readonly text: string;
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

export const readJob: JobKind<ReadRequest, undefined, never, ReadLong> = {
  open: (request) => () => read(request),
};

// biome-ignore lint/correctness/useYield: a text is read in one piece
async function* read({ text, shapes }: ReadRequest): AsyncGenerator<never, ReadLong, boolean> {
  const json = parseJson(text);
  const { format, version } = (json ?? {}) as { format?: unknown; version?: unknown };
  if (format !== 'shapeflight-skill') return { kind: 'other' };
  const file = checkSkillFile(json);
  // an athlete by reference is one of the page's own, and is looked up there
  if (legsOf(file).length > 1 && !('ref' in file.athlete)) buildChain(parseChain(file, { athletes: {}, shapes }));
  return { kind: 'skill', file, isVersion1: version === 1 };
}
