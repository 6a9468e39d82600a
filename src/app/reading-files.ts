/** Files that are opened or dropped: read, checked, and opened as soon as their skill has been flown; one that cannot be changes nothing. */
import type { Athlete, GivenFile, SkillFile } from '../../sim/index.ts';
import type { FileFault } from './file-door.ts';
import { createOpening, type OpeningState } from './opening.ts';
import { wordFault, wordFileName } from './say/fault-words.ts';
import type { Flying } from './services.ts';

type Join = (file: SkillFile) => SkillFile;

interface ReadingHost {
  readonly flying: Pick<Flying, 'readJson' | 'readFile' | 'readLong' | 'readAthlete' | 'legs' | 'flown' | 'cancel'>;
  /** throws for a document that cannot be flown; 'beside': it is being flown beside the page */
  check(file: SkillFile): 'beside' | undefined;
  giveWorksheet(file: GivenFile): void;
  giveAthlete(athlete: Athlete): void;
  setFault(fault: FileFault | undefined): void;
  open(file: SkillFile, original: string | undefined): void;
}

interface Reading {
  readonly opening: OpeningState;
  /** `join`: with what came along */
  readText(name: string, text: string, join?: Join): void;
  /** when the flight beside the page has come; one that was passed over is asked for again */
  whenFlown(name: string, doc: SkillFile, then: () => void): void;
  fail(name: string, error: unknown): void;
}

export function createReading({ flying, check, giveWorksheet, giveAthlete, setFault, open }: ReadingHost): Reading {
  const opening = createOpening();
  const fail = (name: string, error: unknown): void => setFault({ name, reason: `${wordFault(error)}.` });
  const attempt = (name: string, run: () => void): void => {
    try {
      run();
    } catch (error) {
      fail(name, error);
    }
  };
  const whenFlown = (name: string, doc: SkillFile, then: () => void): void => {
    const first = flying.legs.fileOf(doc, 0);
    const come = (): void => {
      if (check(doc) === 'beside') whenFlown(name, doc, then);
      else then();
    };
    opening.wait(
      wordFileName(name),
      { done: flying.flown(first), cancel: () => flying.cancel(first) },
      () => attempt(name, come),
      (error) => fail(name, error),
    );
  };
  const take = (name: string, doc: SkillFile, original: string | undefined): void => {
    const show = (): void => {
      setFault(undefined);
      open(doc, original);
    };
    if (check(doc) === 'beside') whenFlown(name, doc, show);
    else {
      opening.cancel();
      show();
    }
  };
  const readHere = (name: string, text: string, join: Join): void => {
    const json = flying.readJson(text);
    if (isAthlete(json)) {
      const athlete = flying.readAthlete(json);
      setFault(undefined);
      giveAthlete(athlete);
    } else if (isWorksheet(json)) {
      setFault(undefined);
      giveWorksheet({ name, text });
    } else take(name, join(flying.readFile(json)), isVersion1(json) ? text : undefined);
  };
  const readText = (name: string, text: string, join: Join = (file) => file): void => {
    const long = flying.readLong(text);
    if (!long) {
      attempt(name, () => readHere(name, text, join));
      return;
    }
    opening.wait(
      wordFileName(name),
      long,
      (read) =>
        attempt(name, () => {
          if (read.kind === 'skill') take(name, join(read.file), read.isVersion1 ? text : undefined);
          else readHere(name, text, join);
        }),
      (error) => fail(name, error),
    );
  };
  return {
    opening,
    readText,
    whenFlown,
    fail,
  };
}

const isVersion1 = (json: unknown): boolean =>
  typeof json === 'object' && json !== null && (json as { version?: unknown }).version === 1;

const isWorksheet = (json: unknown): boolean =>
  (json as { format?: unknown } | null)?.format === 'shapeflight-worksheet';

/** An athlete's file says so, or it is the athlete alone. */
function isAthlete(json: unknown): boolean {
  if (typeof json !== 'object' || json === null) return false;
  const { format, kind } = json as Record<string, unknown>;
  return format === undefined ? kind === 'human' || kind === 'tree' : format === 'shapeflight-athlete';
}
