/** A worksheet as it is being written: every field there, whatever is in it. Plain data, kept on this machine. */
import type { LockOrder, Question, Worksheet } from '../../../sim/index.ts';

export interface DraftQuestion {
  readonly kind: Question['kind'];
  readonly ask: string;
  readonly help: string;
  readonly unit: string;
  readonly simulated: string;
  readonly shows: string;
}

export interface WorksheetDraft {
  readonly title: string;
  readonly order: LockOrder;
  readonly sheetTitle: string;
  readonly lines: readonly string[];
  readonly questions: readonly DraftQuestion[];
}

export const MOST_QUESTIONS = 12;

export const emptyQuestion = (kind: Question['kind'] = 'number'): DraftQuestion => ({
  kind,
  ask: '',
  help: '',
  unit: '',
  simulated: '',
  shows: '',
});

type Asks = Pick<Worksheet, 'title' | 'order' | 'sheet' | 'questions'>;

/** As a file has it. */
export const asksOf = ({ title, order, sheetTitle, lines, questions }: WorksheetDraft): Asks => ({
  title: title.trim(),
  order,
  sheet: { title: sheetTitle, lines: [...lines] },
  questions: questions.map(questionOf),
});

const questionOf = ({ kind, ask, help, unit, simulated, shows }: DraftQuestion): Question => {
  const asked = { ask: ask.trim(), ...(help.trim() ? { help: help.trim() } : {}) };
  return kind === 'number'
    ? { kind, ...asked, unit: unit.trim(), simulated: simulated.trim() }
    : { kind, ...asked, ...(shows.trim() ? { shows: shows.trim() } : {}) };
};

export const draftOf = ({ title, order, sheet, questions }: Asks): WorksheetDraft => ({
  title,
  order,
  sheetTitle: sheet.title,
  lines: sheet.lines,
  questions: questions.map((q) => ({ ...emptyQuestion(q.kind), ...q })),
});

/** What can be computed of it now: the questions that say what they are set against, and which of the draft each is. */
export function computable(draft: WorksheetDraft): { readonly asks: Asks; readonly at: readonly number[] } {
  const at = draft.questions.flatMap((q, i) => (q.kind === 'number' && q.simulated.trim() !== '' ? [i] : []));
  // the sheet is computed too where nothing is asked yet
  const questions = at.length > 0 ? at.map((i) => draft.questions[i]) : [emptyQuestion('words')];
  const named = questions.map((q) => questionOf({ ...q, ask: q.ask.trim() || '?' }));
  return { asks: { ...asksOf({ ...draft, questions: [] }), title: draft.title.trim() || '?', questions: named }, at };
}

type DraftFault = 'title' | 'questions' | { readonly question: number; readonly field: 'ask' | 'simulated' };

/** What is missing before it can be given out. */
export function listMissing({ title, questions }: WorksheetDraft): DraftFault[] {
  return [
    ...(title.trim() === '' ? (['title'] as const) : []),
    ...(questions.length === 0 ? (['questions'] as const) : []),
    ...questions.flatMap(({ kind, ask, simulated }, question): DraftFault[] => [
      ...(ask.trim() === '' ? [{ question, field: 'ask' } as const] : []),
      ...(kind === 'number' && simulated.trim() === '' ? [{ question, field: 'simulated' } as const] : []),
    ]),
  ];
}

/** With one question in another place. */
export function moveQuestion(draft: WorksheetDraft, from: number, by: 1 | -1): WorksheetDraft {
  const to = from + by;
  if (to < 0 || to >= draft.questions.length) return draft;
  const questions = [...draft.questions];
  [questions[from], questions[to]] = [questions[to], questions[from]];
  return { ...draft, questions };
}

/** A readout put into a formula in place of what is marked. */
export function putReadout(formula: string, name: string, from: number, to: number): string {
  const before = formula.slice(0, from);
  const after = formula.slice(to);
  const gap = before === '' || /[\s({/*+-]$/.test(before) ? '' : ' ';
  return `${before}${gap}{${name}}${after}`;
}

/** What was kept, read back; undefined for anything else. */
export function parseDraft(text: string | null): WorksheetDraft | undefined {
  try {
    const one = JSON.parse(text ?? 'null') as Partial<Record<keyof WorksheetDraft, unknown>> | null;
    if (!one) return undefined;
    const { title, order, sheetTitle, lines, questions } = one;
    const isText = (x: unknown): x is string => typeof x === 'string';
    if (!isText(title) || !isText(sheetTitle) || !isOrder(order)) return undefined;
    if (!Array.isArray(lines) || !lines.every(isText)) return undefined;
    if (!Array.isArray(questions) || questions.length > MOST_QUESTIONS || !questions.every(isQuestion))
      return undefined;
    return { title, order, sheetTitle, lines, questions };
  } catch {
    return undefined;
  }
}

export const ORDERS = ['free', 'one', 'together'] as const satisfies readonly LockOrder[];
const isOrder = (x: unknown): x is LockOrder => ORDERS.some((one) => one === x);
function isQuestion(x: unknown): x is DraftQuestion {
  if (typeof x !== 'object' || x === null) return false;
  const { kind, ...fields } = x as Record<string, unknown>;
  const isKind = kind === 'number' || kind === 'words';
  return isKind && ['ask', 'help', 'unit', 'simulated', 'shows'].every((name) => typeof fields[name] === 'string');
}
