/**
 * The first question of a skill: the same with one thing done another way, beside it at one press. What flies beside is no version until it is kept, and the
 * document stays as it is.
 */
import { type Accessor, batch, createEffect, createMemo, createSignal, on, onCleanup } from 'solid-js';
import type { ChangeKind, OneChange, SkillVerdict } from '../../../sim/index.ts';
import { wordChangeAnswer, wordWay } from '../../../sim/words/change-answer-words.ts';
import { upper } from '../../../sim/words/verdict-words.ts';
import { keptState, type Page } from '../../app/page.ts';
import { putVersion } from '../../app/put-version.ts';
import { MOST_VERSIONS, VERSION_LETTERS, type VersionLetter } from '../../document/versions.ts';
import type { Comparing } from '../../engine/compare.ts';
import type { FlightResult } from '../../engine/result.ts';
import { inNextTask, whenIdle } from '../../ui/frame.ts';
import { firstTexts as t } from './first-words.ts';

interface OtherWay {
  readonly change: OneChange;
  /** the skill's own flight that it was made of */
  readonly own: FlightResult;
  readonly result: FlightResult;
}

interface FirstQuestion {
  /** what can be asked of the skill shown; none before the comparison is loaded */
  readonly offers: Accessor<readonly OneChange[]>;
  /** what is asked */
  readonly asked: Accessor<OneChange | undefined>;
  readonly other: Accessor<OtherWay | undefined>;
  /** the letter that it would have as a version */
  readonly letter: Accessor<VersionLetter>;
  readonly canKeep: Accessor<boolean>;
  readonly verdict: Accessor<SkillVerdict | undefined>;
  /** loads what it takes */
  load(): void;
  ask(kind: ChangeKind): void;
  putAway(): void;
  keep(): void;
}

function makeFirstQuestion(page: Page): FirstQuestion {
  const { services, shell, doc, flight, cursor } = page;
  const [engine, setEngine] = createSignal<Comparing>();
  const [wanted, setWanted] = createSignal<{ kind: ChangeKind; id: number }>();
  const [other, setOther] = createSignal<OtherWay>();
  const [verdict, setVerdict] = createSignal<SkillVerdict>();
  // a hand that drags sees its own flight; the other way follows when it rests
  const own = createMemo<FlightResult>((last) => {
    const now = flight.result();
    return now.draft && last ? last : now;
  });
  const offers = createMemo<readonly OneChange[]>(() => engine()?.offers(own()) ?? []);
  const asked = createMemo(() => {
    const ask = wanted();
    if (ask?.id !== doc.id()) return undefined;
    return offers().find((one) => one.kind === ask.kind) ?? offers()[0];
  });

  createEffect(
    on(asked, (change) => {
      const comparing = engine();
      if (!change || !comparing) {
        setOther(undefined);
        shell.answer.clear('comparison');
        return;
      }
      let isWanted = true;
      onCleanup(() => {
        isWanted = false;
      });
      const made = own();
      // a press has shown the choice by then, and no task holds the page for a flight and its pictures
      inNextTask(() => {
        if (!isWanted) return;
        const result = flyOther(comparing, change, made);
        inNextTask(() => {
          if (isWanted) show(comparing, change, made, result);
        });
      });
    }),
  );
  /** Undefined where it comes down before it is over, or not at all. */
  const flyOther = (comparing: Comparing, change: OneChange, made: FlightResult): FlightResult | undefined => {
    try {
      return comparing.flyChange(made, change, t.fileOf(made.file.title, wordWay(change.other)));
    } catch (error) {
      if (!services.flying.jumping.isOfFlight(error)) throw error;
      return undefined;
    }
  };
  const show = (comparing: Comparing, change: OneChange, made: FlightResult, result?: FlightResult): void => {
    batch(() => {
      setVerdict(result?.outline.verdict);
      setOther(result && { change, own: made, result });
    });
    if (!result) {
      shell.answer.say({ lead: t.doesNotFly(upper(wordWay(change.other))), rest: '', from: 'comparison' });
      return;
    }
    shell.answer.say({ ...wordAnswer(comparing, change, made, result), from: 'comparison' });
    comparing.judge(result, true, (now) => {
      if (other()?.result === result) setVerdict(now);
    });
  };

  const [hasFailed, setFailed] = createSignal(false);
  /** it cannot be loaded, or what was opened cannot be flown: what is awaited hides what can be pressed beside it */
  const isInVain = createMemo(() => hasFailed() || (flight.outcome().fault !== undefined && flight.id() !== doc.id()));
  // the first question is answered as the skill is opened, before anybody asks: when the page has nothing else to do
  createEffect(
    on([offers, isInVain, doc.id], ([all, inVain]) => {
      const comparing = engine();
      const [change] = all;
      const made = own();
      if (!inVain && (!comparing || flight.id() !== doc.id())) {
        shell.answer.setOpening(undefined);
        return;
      }
      if (inVain || !comparing || !change) {
        shell.answer.setOpening(null);
        return;
      }
      let away = whenIdle(() => {
        const result = flyOther(comparing, change, made);
        away = whenIdle(() => shell.answer.setOpening(result ? wordAnswer(comparing, change, made, result) : null));
      });
      onCleanup(() => away());
    }),
  );

  const letter = (): VersionLetter => VERSION_LETTERS[Math.min(doc.versions().length, MOST_VERSIONS - 1)];
  // Compare shows versions, which have the same letters
  const isShown = createMemo(() => other() !== undefined && shell.tool() !== 'compare');
  createEffect(() => {
    if (!isShown()) return;
    shell.stage.provide(() => {
      const now = other();
      return now ? { versions: [{ letter: letter(), result: now.result, shiftS: 0 }] } : {};
    });
  });
  createEffect(() => {
    const now = isShown() ? other() : undefined;
    const comparing = engine();
    if (!now || !comparing) return;
    const { change, result } = now;
    const answer = comparing.answerChange(change, now.own, result);
    shell.beside.provide({
      letter: letter(),
      result,
      turn: change.turn,
      own: wordWay(change.own),
      other: wordWay(change.other),
      held: change.held,
      ratio: answer.kind === 'notDefined' ? undefined : answer.ratio,
      verdict,
    });
  });

  // where both ways are still alike, or alike again, there is nothing to see: the cursor goes to where they are held, and comes back
  let looked: { from: number; at: number } | undefined;
  const look = (change: OneChange | undefined): void => {
    if (!change || cursor.play.playing()) return;
    const { begins, held } = change;
    const isLeft = looked === undefined || cursor.at() !== looked.at;
    if (isLeft && cursor.at() > begins && cursor.at() <= held.to) return;
    const from = isLeft ? cursor.at() : (looked?.from ?? 0);
    cursor.set((held.from + held.to) / 2);
    looked = { from, at: cursor.at() };
  };
  let isLoading = false;
  return {
    offers,
    asked,
    other,
    letter,
    canKeep: () => doc.versions().length < MOST_VERSIONS,
    verdict,
    load: () => {
      if (isLoading) return;
      isLoading = true;
      setFailed(false);
      services.load.comparing().then(setEngine, () => {
        isLoading = false;
        setFailed(true);
      });
    },
    ask: (kind) => {
      setWanted({ kind, id: doc.id() });
      look(offers().find((one) => one.kind === kind));
    },
    putAway: () => {
      setWanted(undefined);
      if (looked && cursor.at() === looked.at) cursor.set(looked.from);
      looked = undefined;
    },
    keep: () => {
      const now = other();
      if (!now) return;
      const name = upper(wordWay(now.change.other));
      const version = { name, file: structuredClone(now.result.file), isKept: false };
      putVersion(page, version, t.keepTitle(name), (kept) => {
        setWanted(undefined);
        shell.notify({ text: t.kept(kept, name), action: { title: t.compare, run: () => shell.openTool('compare') } });
      });
    },
  };
}

function wordAnswer(
  comparing: Comparing,
  change: OneChange,
  made: FlightResult,
  other: FlightResult,
): ReturnType<typeof wordChangeAnswer> {
  const { apparatus, flight } = made;
  const left = apparatus.leaves === undefined ? undefined : apparatus.pieces[apparatus.leaves].kind;
  const hasMomentum = Math.hypot(...flight.h_Scm_W) > LEAST_MOMENTUM;
  return wordChangeAnswer(change, comparing.answerChange(change, made, other), { left, hasMomentum });
}

/** kg m^2/s */
const LEAST_MOMENTUM = 1e-6;

export const useFirstQuestion = keptState(makeFirstQuestion);
