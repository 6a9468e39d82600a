/** The worksheet that is written: its past, what it comes to for the open skill, and what leaves of the athlete. */
import { type Accessor, createEffect, createMemo, createResource, createSignal, on, onCleanup } from 'solid-js';
import type { Along, Handed, KeyValue, Worksheet } from '../../../sim/index.ts';
import { putAside } from '../../app/put-aside.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { NOTHING_ALONG } from '../../app/travel-ticks.tsx';
import { type Undoing, undoingOf } from '../../app/undoing.ts';
import * as past from '../../document/history.ts';
import { getStorage } from '../../document/keep.ts';
import type { WorksheetNumbers } from '../../engine/class.ts';
import type { ClassRoomState } from './class-state.ts';
import {
  asksOf,
  computable,
  type DraftQuestion,
  emptyQuestion,
  listMissing,
  parseDraft,
  type WorksheetDraft,
} from './draft.ts';
import { type DraftKeep, KEY, makeDraftKeep } from './draft-keep.ts';
import { writeTexts as t } from './write-words.ts';

/** ms after the last letter */
const PAUSE = 250;

export interface WriteState extends Undoing {
  readonly draft: Accessor<WorksheetDraft>;
  /** false: the browser refuses to keep it */
  readonly isKept: Accessor<boolean>;
  /** a step */
  edit(next: WorksheetDraft, title: string): void;
  /** letters of one field are one step */
  type(next: WorksheetDraft, title: string): void;
  setQuestion(index: number, part: Partial<DraftQuestion>): void;
  settle(): void;
  startOver(): void;
  /** another load of the page finds it */
  readonly along: Accessor<Along>;
  tick(what: keyof Along): void;
  readonly handed: Accessor<Handed | undefined>;
  /** of a question of numbers; undefined while it is computed, or nothing is written */
  valueOf(index: number): KeyValue | undefined;
  /** lines of the sheet, from 1 */
  givenAway(index: number): readonly number[];
  readonly sheet: Accessor<WorksheetNumbers['sheet']>;
  readonly isStale: Accessor<boolean>;
  readonly failed: Accessor<string | undefined>;
  readonly missing: Accessor<ReturnType<typeof listMissing>>;
  /** whole and checked; undefined where `cannot` says why not */
  readonly worksheet: Accessor<Worksheet | undefined>;
  readonly cannot: Accessor<string | undefined>;
}

const makeKeep = (): DraftKeep =>
  makeDraftKeep({ local: getStorage('localStorage'), tab: getStorage('sessionStorage') });

const firstDraft = (skill: string): WorksheetDraft => ({
  title: skill,
  order: 'one',
  sheetTitle: t.givenTitle,
  lines: t.given,
  questions: [emptyQuestion()],
});

interface Numbers {
  readonly at: readonly number[];
  readonly asked: WorksheetDraft;
  readonly numbers: WorksheetNumbers;
}

export function makeWriteState({ page, classing }: ClassRoomState): WriteState {
  const { doc, services } = page;
  const keep = page.keepState(makeKeep);
  const first = (): WorksheetDraft => firstDraft(doc.chain().title);
  const kept = keep.read();
  // of another build, or damaged: it is not written over
  if (kept !== null && !parseDraft(kept)) putAside(page.shell, 'worksheet', KEY, kept);
  const [history, setHistory] = createSignal(past.makeHistory(parseDraft(kept) ?? first()));
  const [along, setAlong] = createSignal(NOTHING_ALONG);
  const [known, setKnown] = createSignal<Numbers>();
  const [failed, setFailed] = createSignal<string>();
  const [handing] = createResource(() => services.load.handing());
  const [isKept, setKept] = createSignal(true);
  const draft = createMemo(() => history().doc);
  let typing = '';
  const set = (next: past.History<WorksheetDraft>): void => {
    setHistory(next);
    setKept(keep.write(JSON.stringify(next.doc)));
  };
  const settle = (): void => {
    if (typing === '') return;
    set(past.settle(history(), typing));
    typing = '';
  };
  const edit = (next: WorksheetDraft, title: string): void => {
    settle();
    set(past.edit(history(), next, title));
  };
  const type = (next: WorksheetDraft, title: string): void => {
    if (typing !== title) settle();
    typing = title;
    set(past.setDraft(history(), next));
  };

  const compute = (): void => {
    const asked = draft();
    const part = computable(asked);
    const fail = (error: unknown): void => {
      setFailed(wordFault(error));
    };
    try {
      const worksheet = classing.make(part.asks, doc.chain(), doc.athlete(), along());
      classing.compute(worksheet, 'all').then((numbers) => {
        if (draft() !== asked) return;
        setFailed(undefined);
        setKnown({ at: part.at, asked, numbers });
      }, fail);
    } catch (error) {
      fail(error);
    }
  };
  createEffect(
    on([draft, along], () => {
      const timer = setTimeout(compute, known() ? PAUSE : 0);
      onCleanup(() => clearTimeout(timer));
    }),
  );

  const made = createMemo((): { worksheet?: Worksheet; cannot?: string } => {
    if (listMissing(draft()).length > 0) return {};
    try {
      return { worksheet: classing.make(asksOf(draft()), doc.chain(), doc.athlete(), along()) };
    } catch (error) {
      return { cannot: wordFault(error) };
    }
  });
  const at = (index: number): number => {
    const now = known();
    // while letters are typed the value before is shown, of the same question alone
    return now && now.asked.questions.length === draft().questions.length ? now.at.indexOf(index) : -1;
  };
  return {
    draft,
    isKept,
    edit,
    type,
    settle,
    setQuestion: (index, part) =>
      type(
        { ...draft(), questions: draft().questions.map((q, i) => (i === index ? { ...q, ...part } : q)) },
        t.steps.question(index + 1),
      ),
    startOver: () => edit(first(), t.startOver),
    along,
    tick: (what) => setAlong({ ...along(), [what]: !along()[what] }),
    handed: createMemo(() => {
      try {
        return handing()?.keepBack(doc.chain(), doc.athlete(), along());
      } catch {
        return undefined;
      }
    }),
    valueOf: (index) => (at(index) < 0 ? undefined : known()?.numbers.simulated[at(index)]),
    givenAway: (index) => (at(index) < 0 ? [] : (known()?.numbers.givenAway?.[at(index)] ?? [])).map((i) => i + 1),
    sheet: () => known()?.numbers.sheet ?? [],
    isStale: () => known()?.asked !== draft() && failed() === undefined,
    failed,
    missing: createMemo(() => listMissing(draft())),
    worksheet: () => made().worksheet,
    cannot: () => made().cannot,
    ...undoingOf({ history, set, settle, typing: () => typing }),
  };
}
