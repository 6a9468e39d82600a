/** Files that are opened or dropped: read, checked, and opened as soon as their skill has been flown; one that cannot be changes nothing. */
import type { Athlete, GivenFile, SkillFile } from '../../sim/index.ts';
import type { ReadLong } from '../jobs/kinds/read-data.ts';
import type { FileFault, OpeningEnd } from './file-door.ts';
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
  /** `join`: with what came along; `end`: what became of it, said here where that is left out */
  readText(name: string, text: string, join?: Join, end?: (end: OpeningEnd) => void): void;
  /** when the flight beside the page has come; one that was passed over is asked for again */
  whenFlown(name: string, doc: SkillFile, then: () => void): void;
  fail(name: string, error: unknown): void;
}

export function createReading({ flying, check, giveWorksheet, giveAthlete, setFault, open }: ReadingHost): Reading {
  const opening = createOpening();
  const faultOf = (name: string, error: unknown): FileFault => ({ name, reason: `${wordFault(error)}.` });
  const say = (end: OpeningEnd): void => {
    if (typeof end === 'object') setFault(end);
  };
  const attempt = (name: string, run: () => void, end: (end: OpeningEnd) => void): void => {
    try {
      run();
    } catch (error) {
      end(faultOf(name, error));
    }
  };
  const wait = <T>(
    name: string,
    coming: Parameters<typeof opening.wait<T>>[1],
    then: (value: T) => void,
    end: (end: OpeningEnd) => void,
  ): void =>
    opening.wait(wordFileName(name), coming, {
      come: (value) => attempt(name, () => then(value), end),
      fail: (error) => end(faultOf(name, error)),
      cancelled: () => end('cancelled'),
    });
  const whenFlown = (name: string, doc: SkillFile, then: () => void, end = say): void => {
    const first = flying.legs.fileOf(doc, 0);
    const come = (): void => {
      if (check(doc) === 'beside') whenFlown(name, doc, then, end);
      else then();
    };
    wait(name, { done: flying.flown(first), cancel: () => flying.cancel(first) }, come, end);
  };
  const take = (name: string, doc: SkillFile, original: string | undefined, end: (end: OpeningEnd) => void): void => {
    const show = (): void => {
      setFault(undefined);
      open(doc, original);
      end('taken');
    };
    if (check(doc) === 'beside') whenFlown(name, doc, show, end);
    else {
      opening.cancel();
      show();
    }
  };
  const readHere = (name: string, text: string, join: Join, end: (end: OpeningEnd) => void): void => {
    const json = flying.readJson(text);
    if (isAthlete(json)) {
      const athlete = flying.readAthlete(json);
      setFault(undefined);
      giveAthlete(athlete);
      end('taken');
    } else if (isWorksheet(json)) {
      setFault(undefined);
      giveWorksheet({ name, text });
      end('taken');
    } else take(name, join(flying.readFile(json)), isVersion1(json) ? text : undefined, end);
  };
  const readText: Reading['readText'] = (name, text, join = (file) => file, end = say) => {
    const long = flying.readLong(text);
    if (!long) {
      attempt(name, () => readHere(name, text, join, end), end);
      return;
    }
    const come = (read: ReadLong): void => {
      if (read.kind === 'skill') take(name, join(read.file), read.isVersion1 ? text : undefined, end);
      else readHere(name, text, join, end);
    };
    wait(name, long, come, end);
  };
  return {
    opening,
    readText,
    whenFlown: (name, doc, then) => whenFlown(name, doc, then),
    fail: (name, error) => setFault(faultOf(name, error)),
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
