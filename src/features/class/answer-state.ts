/** One student's answers: written, locked, kept as they are written. Values of the flight are asked for only where an answer is locked. */
import { type Accessor, batch, createSignal } from 'solid-js';
import type { AnswerRead, LockBar, Worksheet } from '../../../sim/index.ts';
import type { Classing, WorksheetNumbers } from '../../engine/class.ts';
import type { MeasureSystem } from '../../ui/units.ts';
import { type AnswerKeep, besideOf, type Stamp } from './answer-keep.ts';
import { answerTexts as t } from './answer-words.ts';
import { timeStamp } from './time-stamp.ts';

/** One question before a lock: an answer has no unit, or is zero. */
interface LockQuestion {
  readonly index: number | 'all';
  readonly messages: readonly string[];
}

type AnswerFault = Extract<AnswerRead, { kind: 'fault' }>;

export interface AnswerWork {
  /** the name of its record; another one once another page has written to it */
  readonly id: Accessor<string>;
  readonly worksheet: Accessor<Worksheet>;
  readonly name: Accessor<string>;
  readonly group: Accessor<string>;
  setName(name: string): void;
  setGroup(group: string): void;
  write(index: number, part: { readonly working?: string; readonly text?: string }): void;
  /** asks once where the unit is missing or the answer is zero; where it cannot be locked, says why */
  lock(index: number): void;
  /** all that are still open, where the worksheet has them together */
  lockAll(): void;
  readonly question: Accessor<LockQuestion | undefined>;
  confirm(): void;
  decline(): void;
  /** why an answer is not locked; gone with its next letter */
  said(index: number): string | undefined;
  /** corrections that were found for it */
  fixes(index: number): AnswerFault['fixes'];
  /** an answer is read before it is locked */
  readonly locking: Accessor<number | 'all' | undefined>;
  /** of the worksheet as it was computed last */
  readonly numbers: Accessor<WorksheetNumbers | undefined>;
  readonly fault: Accessor<string | undefined>;
  readonly lockedCount: Accessor<number>;
  readonly isComplete: Accessor<boolean>;
  isLocked(index: number): boolean;
  /** its simulated value may be seen */
  isOpen(index: number): boolean;
  /** the first that is not locked */
  readonly next: Accessor<number | undefined>;
  /** the browser keeps what is written; undefined: nothing was written yet */
  readonly isKept: Accessor<boolean | undefined>;
  /** with name and class, as it is handed in */
  handedIn(): Worksheet;
  /** out of the browser's records; what is written after it is kept again */
  forget(): Promise<boolean>;
  compute(): void;
}

interface AnswerPorts {
  readonly classing: Pick<Classing, 'rules' | 'compute' | 'write'>;
  readonly keep: AnswerKeep;
  readonly newName: () => string;
  /** from here on it is kept beside what another page writes */
  readonly sayBeside: () => void;
  readonly now: () => Date;
  readonly measure: () => MeasureSystem;
  readonly wordError: (error: unknown) => string;
}

interface GivenAnswers {
  readonly id: string;
  readonly worksheet: Worksheet;
  readonly name?: string;
  readonly group?: string;
  readonly isKept?: true;
  /** of the record that it was read from */
  readonly seen?: Stamp;
}

/** Letters come faster than a worksheet is computed, ms. */
const REST = 250;

export function makeAnswerWork(ports: AnswerPorts, given: GivenAnswers): AnswerWork {
  const { rules } = ports.classing;
  const { questions, order } = given.worksheet;
  const [worksheet, setWorksheet] = createSignal(given.worksheet);
  const [name, putName] = createSignal(given.name ?? given.worksheet.student?.name ?? '');
  const [group, putGroup] = createSignal(given.group ?? given.worksheet.student?.class ?? '');
  const [numbers, setNumbers] = createSignal<WorksheetNumbers>();
  const [fault, setFault] = createSignal<string>();
  const [faults, setFaults] = createSignal<ReadonlyMap<number, AnswerFault | string>>(new Map());
  const [question, setQuestion] = createSignal<LockQuestion & { readonly texts: readonly (string | undefined)[] }>();
  const [locking, setLocking] = createSignal<number | 'all'>();
  const [isKept, setKept] = createSignal<boolean | undefined>(given.isKept);
  let timer: ReturnType<typeof setTimeout> | undefined;

  const handedIn = (): Worksheet => rules.nameStudent(worksheet(), { name: name().trim(), class: group().trim() });
  const [id, setId] = createSignal(given.id);
  const by = ports.newName();
  const keep = makeWriter(async () => {
    const kept = { savedAt: ports.now().getTime(), name: name(), group: group(), by };
    const put = async (): Promise<boolean> =>
      ports.keep.put({ ...kept, id: id(), text: ports.classing.write(worksheet()) }, given.seen);
    try {
      if (!(await put())) {
        setId(besideOf(given.id, ports.newName()));
        await put();
        ports.sayBeside();
      }
      setKept(true);
    } catch {
      setKept(false);
    }
  });

  const compute = (): void => {
    clearTimeout(timer);
    const of = worksheet();
    const open = questions.flatMap((_, i) => (rules.isOpen(of, i) ? [i] : []));
    ports.classing.compute(of, open, ports.measure()).then(
      (result) => {
        // a newer one is on its way
        if (worksheet() !== of) return;
        batch(() => {
          setNumbers(result);
          setFault(undefined);
          settle(result.answers);
        });
      },
      (error: unknown) => {
        batch(() => {
          setFault(ports.wordError(error));
          setLocking(undefined);
        });
      },
    );
  };
  const change = (next: Worksheet, isNow: boolean): void => {
    setWorksheet(next);
    keep();
    clearTimeout(timer);
    if (isNow) compute();
    else timer = setTimeout(compute, REST);
  };
  const sayAt = (entries: readonly (readonly [number, AnswerFault | string])[]): void => {
    setFaults(new Map(entries));
  };
  const stamp = (): string => timeStamp(ports.now());

  const lockOne = (index: number, text?: string): void => {
    batch(() => {
      setQuestion(undefined);
      sayAt([]);
      change(rules.lockAnswer(worksheet(), index, stamp(), text), true);
    });
  };
  const lockTogether = (texts: readonly (string | undefined)[]): void => {
    batch(() => {
      setQuestion(undefined);
      sayAt([]);
      change(rules.lockTogether(worksheet(), stamp(), texts), true);
    });
  };

  /** what was asked to be locked has been read */
  const settle = (read: WorksheetNumbers['answers']): void => {
    const which = locking();
    if (which === undefined) return;
    setLocking(undefined);
    const indexes =
      which === 'all' ? questions.flatMap((_, i) => (rules.isLocked(worksheet(), i) ? [] : [i])) : [which];
    const bad = indexes.flatMap((i): (readonly [number, AnswerFault | string])[] => {
      const one = read[i];
      if (one?.kind === 'fault') return [[i, one]];
      return one?.kind === 'empty' ? [[i, t.bars.empty]] : [];
    });
    if (bad.length > 0) {
      sayAt(bad);
      return;
    }
    const texts = read.map((one) => (one && 'answer' in one ? one.answer.text : undefined));
    const messages = indexes.flatMap((i) => {
      const one = read[i];
      return one?.kind === 'question' ? [one.message] : [];
    });
    if (messages.length > 0) setQuestion({ index: which, messages, texts });
    else if (which === 'all') lockTogether(texts);
    else lockOne(which, texts[which]);
  };
  const read = (which: number | 'all'): void => {
    setLocking(which);
    compute();
  };
  const wordBar = (bar: LockBar): string => (bar === 'before' ? t.bars.before((next() ?? 0) + 1) : t.bars[bar]);
  const next = (): number | undefined => {
    const found = worksheet().answers.findIndex(({ lockedAt }) => lockedAt === undefined);
    return found < 0 ? undefined : found;
  };

  return {
    id,
    worksheet,
    name,
    group,
    setName: (text) => {
      putName(text);
      keep();
    },
    setGroup: (text) => {
      putGroup(text);
      keep();
    },
    write: (index, part) => {
      if (rules.isLocked(worksheet(), index)) return;
      const { working, text } = { ...worksheet().answers[index], ...part };
      batch(() => {
        setQuestion(undefined);
        setLocking(undefined);
        sayAt([...faults()].filter(([i]) => i !== index));
        change(rules.writeAnswer(worksheet(), index, { working, text }), false);
      });
    },
    lock: (index) => {
      const bar = rules.lockBar(worksheet(), index);
      if (bar === 'locked') return;
      if (bar) sayAt([[index, wordBar(bar)]]);
      else if (questions[index].kind === 'words') lockOne(index);
      else read(index);
    },
    lockAll: () => {
      const missing = worksheet().answers.flatMap(({ text = '' }, i) =>
        text.trim() === '' ? [[i, t.bars.empty] as const] : [],
      );
      if (order !== 'together' || rules.isComplete(worksheet())) return;
      if (missing.length > 0) sayAt(missing);
      else read('all');
    },
    question,
    confirm: () => {
      const asked = question();
      if (asked?.index === 'all') lockTogether(asked.texts);
      else if (asked) lockOne(asked.index, asked.texts[asked.index]);
    },
    decline: () => setQuestion(undefined),
    said: (index) => {
      const found = faults().get(index);
      return typeof found === 'object' ? found.message : found;
    },
    fixes: (index) => {
      const found = faults().get(index);
      return typeof found === 'object' ? found.fixes : undefined;
    },
    locking,
    numbers,
    fault,
    lockedCount: () => worksheet().answers.filter(({ lockedAt }) => lockedAt !== undefined).length,
    isComplete: () => rules.isComplete(worksheet()),
    isLocked: (index) => rules.isLocked(worksheet(), index),
    isOpen: (index) => rules.isOpen(worksheet(), index),
    next,
    isKept,
    handedIn,
    forget: async () => {
      try {
        await ports.keep.remove(id());
        setKept(undefined);
        return true;
      } catch {
        return false;
      }
    },
    compute,
  };
}

/** Writes what there is now; what changes while it writes is written after it, once. */
function makeWriter(write: () => Promise<void>): () => void {
  let isWriting = false;
  let isAgain = false;
  const run = (): void => {
    if (isWriting) {
      isAgain = true;
      return;
    }
    isWriting = true;
    void write().finally(() => {
      isWriting = false;
      if (isAgain) {
        isAgain = false;
        run();
      }
    });
  };
  return run;
}
