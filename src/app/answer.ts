/** One plain sentence under the headline that answers what was just asked or done. One at a time; another document has none. */
import { type Accessor, createComputed, createSignal, on } from 'solid-js';

interface SaidAnswer {
  /** the answer itself, bold */
  readonly lead: string;
  /** what it holds under, or what stays */
  readonly rest: string;
  readonly from: 'comparison' | 'change' | 'fix';
  /** where edges of shapes would go on the ruler, from and to, s */
  readonly marks?: readonly (readonly [number, number])[];
  readonly act?: readonly { readonly label: string; run(): void }[];
}

/** What is said of a skill while nothing was asked or done. */
type OpeningAnswer = Pick<SaidAnswer, 'lead' | 'rest'>;

export interface AnswerState {
  readonly said: Accessor<SaidAnswer | undefined>;
  /** in the place of what was said, while there is nothing; null: this skill has none, undefined: not known yet */
  readonly opening: Accessor<OpeningAnswer | null | undefined>;
  setOpening(answer: OpeningAnswer | null | undefined): void;
  /** nothing is said, and it is not known yet whether something will be: its room is kept */
  readonly isAwaited: Accessor<boolean>;
  /** takes the place of whatever was said before */
  say(answer: SaidAnswer): void;
  /** with `from`: only what came from there */
  clear(from?: SaidAnswer['from']): void;
}

/** `id` is the number of the document. */
export function createAnswer(id: Accessor<number>): AnswerState {
  const [said, setSaid] = createSignal<SaidAnswer>();
  const [opening, setOpening] = createSignal<OpeningAnswer | null>();
  const forget = (): void => {
    setSaid(undefined);
    setOpening(undefined);
  };
  createComputed(on(id, forget, { defer: true }));
  return {
    said,
    opening,
    setOpening,
    isAwaited: () => said() === undefined && opening() === undefined,
    say: setSaid,
    clear: (from) => {
      if (from === undefined || said()?.from === from) setSaid(undefined);
    },
  };
}
