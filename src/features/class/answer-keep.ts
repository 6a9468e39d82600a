/** Answers as the browser keeps them: one record for each student's sheet, found by the digest of its worksheet. */
import type { RecordStore } from '../../document/keep-store.ts';

export interface KeptAnswers {
  readonly id: string;
  readonly savedAt: number;
  /** the worksheet as the text of its file */
  readonly text: string;
  readonly name: string;
  /** of the student; with no name a file has no place for it */
  readonly group: string;
}

/** Every call may be refused by the browser; then nothing was changed. */
export interface AnswerKeep {
  /** the last written first */
  list(digest: string): Promise<readonly KeptAnswers[]>;
  get(id: string): Promise<KeptAnswers | undefined>;
  put(kept: KeptAnswers): Promise<void>;
  remove(id: string): Promise<void>;
}

const VERSION = 1;

export const idOf = (digest: string, name: string): string => `${digest}/${name}`;

export function makeAnswerKeep(store: RecordStore): AnswerKeep {
  return {
    list: async (digest) =>
      (await store.entries())
        .flatMap(([id, value]) => (id.startsWith(`${digest}/`) ? readKept(id, value) : []))
        .sort((a, b) => b.savedAt - a.savedAt),
    get: async (id) => readKept(id, await store.get(id))[0],
    put: ({ id, ...kept }) => store.set(id, { version: VERSION, ...kept }),
    remove: (id) => store.update(id, () => undefined),
  };
}

/** What another build wrote in another form is left alone. */
function readKept(id: string, value: unknown): KeptAnswers[] {
  if (typeof value !== 'object' || value === null) return [];
  const { version, savedAt, text, name, group } = value as Record<string, unknown>;
  if (version !== VERSION || typeof text !== 'string' || typeof name !== 'string' || typeof group !== 'string')
    return [];
  return [{ id, savedAt: typeof savedAt === 'number' ? savedAt : 0, text, name, group }];
}
