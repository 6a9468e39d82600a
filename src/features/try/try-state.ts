/** Something to try with the skill shown: looked for beside the page while it rests, done at a press, and one press back. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { SkillFile, SkillVerdict } from '../../../sim/index.ts';
import { causeOfFix, wordCause } from '../../../sim/words/cause-words.ts';
import { keptState, type Page } from '../../app/page.ts';
import { PAGE_NUMBERS, wordEnding } from '../../app/say/sentence-words.ts';
import { wholeStateOf } from '../../app/whole-state.ts';
import type { TryOffer } from '../../engine/try.ts';
import { whenIdle } from '../../ui/frame.ts';
import { tryTexts as t } from './words.ts';

export interface SaidTry {
  /** "hold the wrap 0.10 s longer", and when it is done "held ..." */
  readonly cue: string;
  readonly said: string;
  readonly of: TryOffer['of'];
  /** "1.00" and "1.07" */
  readonly before: string;
  readonly after: string;
  /** "twists" */
  readonly unit: string;
  /** of how it ends then, what is not so now */
  readonly ending: string;
}

interface TryState {
  /** what can be tried with the skill shown */
  readonly offer: Accessor<SaidTry | undefined>;
  /** what was tried, while nothing else was done since */
  readonly done: Accessor<SaidTry | undefined>;
  doIt(): void;
  putBack(): void;
}

/** ms that a skill rests before something is looked for */
const REST = 900;
/** Offers that are remembered: undo shows what was shown before. */
const REMEMBERED = 12;

function makeTryState(page: Page): TryState {
  const { services, doc, flight, cursor, shell } = page;
  const [found, setFound] = createSignal<{ readonly of: SkillFile; readonly offer: TryOffer | undefined }>();
  const [tried, setTried] = createSignal<{ readonly file: SkillFile; readonly offer: TryOffer }>();
  const known = new Map<string, TryOffer | undefined>();

  createEffect(() => {
    const result = flight.result();
    const { fault, isWaiting } = flight.outcome();
    const file = doc.file();
    if (result.draft || fault || isWaiting || result.file !== file || cursor.play.playing()) return;
    const key = JSON.stringify(file);
    if (known.has(key)) {
      setFound({ of: file, offer: known.get(key) });
      return;
    }
    let isGone = false;
    let cancel = (): void => {};
    const settle = (offer: TryOffer | undefined): void => {
      if (isGone) return;
      known.set(key, offer);
      const [oldest] = known.keys();
      if (known.size > REMEMBERED) known.delete(oldest);
      setFound({ of: file, offer });
    };
    const timer = setTimeout(() => {
      cancel = whenIdle(() => {
        services.load
          .trying()
          .then((engine) => {
            if (isGone) return undefined;
            const call = engine.look(result);
            cancel = call.cancel;
            return call.done.then(settle);
          })
          // without an offer the page is as good as with one
          .catch(() => undefined);
      });
    }, REST);
    onCleanup(() => {
      isGone = true;
      clearTimeout(timer);
      cancel();
    });
  });

  const wordOf = (id: string): string => doc.file().shapes?.[id]?.word ?? services.presets.shapes[id]?.word ?? id;
  const say = ({ step, of, before, after }: TryOffer): SaidTry => {
    const word = (mood: 'cue' | 'said'): string => {
      const text = wordCause(causeOfFix(step, [0, 0], wordOf, undefined), mood, PAGE_NUMBERS);
      return `${text[0].toLowerCase()}${text.slice(1)}`;
    };
    const count = ({ flown }: SkillVerdict): string => PAGE_NUMBERS.turns(flown[of] ?? Number.NaN);
    const clauses = wordEnding(before).split(', ');
    const others = wordEnding(after)
      .split(', ')
      .filter((clause) => !clauses.includes(clause));
    return {
      cue: word('cue'),
      said: word('said'),
      of,
      before: count(before),
      after: count(after),
      unit: PAGE_NUMBERS.inDegrees ? '' : t[of],
      ending: others.join(', '),
    };
  };
  const offered = createMemo(() => (found()?.of === doc.file() ? found()?.offer : undefined));
  const isDone = createMemo(() => tried()?.file === doc.file());
  return {
    offer: createMemo(() => {
      const now = offered();
      // what lands it comes first
      if (!now || isDone() || shell.answer.said()?.from === 'fix') return undefined;
      return services.flying.needsFix(flight.result(), wholeStateOf(page).verdict()) ? undefined : say(now);
    }),
    done: createMemo(() => {
      const now = tried();
      return now && isDone() ? say(now.offer) : undefined;
    }),
    doIt: () => {
      const offer = offered();
      if (!offer) return;
      setTried({ file: offer.file, offer });
      doc.edit(offer.file, t.command(say(offer).cue));
    },
    putBack: () => {
      if (isDone()) doc.undo();
    },
  };
}

export const useTry = keptState(makeTryState);
/** For a command: does it, or says that there is nothing. */
export function tryNow(page: Page): void {
  const state = page.keepState(makeTryState);
  if (state.offer()) state.doIt();
  else page.shell.notify({ text: state.done() ? t.isDone : t.nothing });
}
