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
  /** the page that wrote it last; left out by older builds */
  readonly by?: string;
}

/** Of one writing. */
export type Stamp = Pick<KeptAnswers, 'by' | 'savedAt' | 'text'>;

/** Every call may be refused by the browser; then nothing was changed. */
export interface AnswerKeep {
  /** the last written first */
  list(digest: string): Promise<readonly KeptAnswers[]>;
  get(id: string): Promise<KeptAnswers | undefined>;
  /** False, and nothing is written: another page has written to it since it was read here (`seen`). */
  put(kept: KeptAnswers, seen: Stamp | undefined): Promise<boolean>;
  remove(id: string): Promise<void>;
}

const VERSION = 1;

export const idOf = (digest: string, name: string): string => `${digest}/${name}`;

/** Another record of the same worksheet. */
export const besideOf = (id: string, name: string): string => idOf(id.slice(0, id.indexOf('/')), name);

export function makeAnswerKeep(store: RecordStore): AnswerKeep {
  return {
    list: async (digest) =>
      (await store.entries())
        .flatMap(([id, value]) => (id.startsWith(`${digest}/`) ? readKept(id, value) : []))
        .sort((a, b) => b.savedAt - a.savedAt),
    get: async (id) => readKept(id, await store.get(id))[0],
    put: async ({ id, ...kept }, seen) => {
      let isOurs = true;
      await store.update(id, (there) => {
        const [last] = readKept(id, there);
        isOurs = there === undefined || (last !== undefined && (last.by === kept.by || isSame(last, seen)));
        return isOurs ? { version: VERSION, ...kept } : there;
      });
      return isOurs;
    },
    remove: (id) => store.update(id, () => undefined),
  };
}

const isSame = (one: Stamp, other: Stamp | undefined): boolean =>
  one.by === other?.by && one.savedAt === other?.savedAt && one.text === other?.text;

/** What another build wrote in another form is left alone. */
function readKept(id: string, value: unknown): KeptAnswers[] {
  if (typeof value !== 'object' || value === null) return [];
  const { version, savedAt, text, name, group, by } = value as Record<string, unknown>;
  if (version !== VERSION || typeof text !== 'string' || typeof name !== 'string' || typeof group !== 'string')
    return [];
  const last = typeof by === 'string' ? { by } : {};
  return [{ id, savedAt: typeof savedAt === 'number' ? savedAt : 0, text, name, group, ...last }];
}
