/** The searches of one page: answers to what is wanted, the most forgiving of them, the most twist. Each says when it is done, also where its tool is closed. */
import { type Accessor, createEffect, createSignal } from 'solid-js';
import type { Aim, LimitsAsked } from '../../../sim/index.ts';
import type { Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { AnswerResult, Asking, AskSkill, BatchCall, ObstacleResult, SearchProgress } from '../../engine/ask.ts';
import type { Chosen } from './ask-start.ts';
import type { SearchFound, SearchKind } from './search-found.ts';
import { wordDone } from './search-words.ts';

/** What a search is asked of. */
interface Subject {
  readonly engine: Asking;
  readonly skill: AskSkill;
  readonly aim: Aim;
  readonly chosen: readonly Chosen[];
  readonly limits: LimitsAsked;
  readonly wantedKey: string;
}

export interface SearchState {
  ask(kind: SearchKind, of: Subject): void;
  stop(): void;
  readonly progress: Accessor<(SearchProgress & { readonly kind: SearchKind }) | undefined>;
  readonly failed: Accessor<string>;
  readonly found: Accessor<SearchFound | undefined>;
  /** what the last search came to, to be read out */
  readonly said: Accessor<string>;
}

/** Tries in the margin of each answer. */
const TRIES = 100;

type Extra = Pick<SearchFound, 'moves' | 'most'>;
type Done = Extra & { readonly answer: AnswerResult; readonly obstacles?: readonly ObstacleResult[] };

export function makeSearch({ shell, doc }: Page, onFound: () => void): SearchState {
  const [progress, setProgress] = createSignal<SearchProgress & { kind: SearchKind }>();
  const [failed, setFailed] = createSignal('');
  const [found, setFound] = createSignal<SearchFound>();
  const [said, setSaid] = createSignal('');
  let call: BatchCall<Done> | undefined;
  // a notice for the closed tool goes when that is open
  createEffect(() => {
    if (shell.tool() === 'ask' && said() !== '' && shell.notice()?.text === said()) shell.notify(undefined);
  });

  const start = (kind: SearchKind, { engine, aim, chosen, limits }: Subject): BatchCall<Done> => {
    const request = {
      spec: aim.spec,
      wishes: aim.wishes,
      ...(aim.ending ? { ending: aim.ending } : {}),
      unknowns: chosen.map(({ id, from, to }) => ({ input: id, span: [from, to] as const })),
      limits,
      tries: TRIES,
    };
    const report = (p: SearchProgress): void => {
      if (call === asked) setProgress({ ...p, kind });
    };
    const asked: BatchCall<Done> =
      kind === 'forgiving'
        ? then(engine.forgiving(request, report), ({ answer, ...moves }) => ({ answer, moves }))
        : kind === 'twist'
          ? then(engine.twist(request, report), ({ answer, twists, beyond }) => ({
              answer,
              obstacles: (beyond ?? answer).nearest?.obstacles ?? [],
              most: { twists, ...wantedBeyond(beyond) },
            }))
          : then(engine.solve(request, report), (answer) => ({ answer }));
    return asked;
  };

  return {
    ask: (kind, of) => {
      call?.cancel();
      setFailed('');
      setSaid('');
      setProgress({ kind, done: 0, all: 0, best: 0 });
      const id = doc.id();
      const asked = start(kind, of);
      call = asked;
      const tell = (text: string): void => {
        setSaid(text);
        if (shell.tool() !== 'ask') shell.notify({ text, action: wordDone.open(() => shell.openTool('ask')) });
      };
      asked.done.then(
        ({ answer, obstacles, ...extra }) => {
          if (call !== asked) return;
          setProgress(undefined);
          const list = answer.solutions.length > 0 ? answer.solutions : answer.nearest ? [answer.nearest] : [];
          const made: SearchFound = {
            id,
            kind,
            key: of.skill.key,
            wantedKey: of.wantedKey,
            answer,
            chosen: of.chosen,
            list,
            obstacles: obstacles ?? answer.nearest?.obstacles ?? [],
            ...extra,
          };
          setFound(made);
          if (list.length > 0) onFound();
          tell(wordDone.of(made));
        },
        (error) => {
          if (call !== asked) return;
          setProgress(undefined);
          setFailed(wordFault(error));
          tell(wordDone.failed);
        },
      );
    },
    stop: () => call?.cancel(),
    progress,
    failed,
    // another document has none
    found: () => (found()?.id === doc.id() ? found() : undefined),
    said,
  };
}

function then<A, B>({ done, cancel }: BatchCall<A>, map: (a: A) => B): BatchCall<B> {
  return { done: done.then(map), cancel };
}

function wantedBeyond(beyond: AnswerResult | undefined): { beyond?: number } {
  const wanted = beyond?.nearest?.terms.find(({ wish }) => wish.result === 'twists')?.wish.value;
  return wanted === undefined ? {} : { beyond: wanted };
}
