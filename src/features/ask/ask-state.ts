/**
 * What is asked of one bench: the sentence, what may change, the answers and the one picked. Kept while the tool is closed.
 * An answer has the key of the document it was found for; with another document it is stale, and can be neither kept nor used.
 */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup, untrack } from 'solid-js';
import type { Aim, LimitsAsked, SkillSpec, Solution } from '../../../sim/index.ts';
import { isPending } from '../../app/flight.ts';
import { LEGS } from '../../app/leg-view.ts';
import type { Page } from '../../app/page.ts';
import { putVersion } from '../../app/put-version.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { wordPushedOff } from '../../app/takeoff-values.ts';
import { MOST_VERSIONS, VERSION_LETTERS } from '../../document/versions.ts';
import type { AskInput, Asking, AskSkill, Wanted } from '../../engine/ask.ts';
import type { FlightResult } from '../../engine/result.ts';
import { nextTask } from '../../ui/frame.ts';
import { clausesOfAnswer } from './answer-words.ts';
import { type Chosen, chooseFirst, wantedOf } from './ask-start.ts';
import { nameInput } from './ask-words.ts';
import type { SearchKind } from './search-found.ts';
import { makeSearch, type SearchState } from './search-state.ts';
import { type AtEnd, listAtEnds } from './span-ends.ts';
import { askTexts as t } from './words.ts';

/** What margin and map are of: A, or the answer that is picked. */
interface Subject {
  readonly name: string;
  readonly key: string;
  readonly spec: SkillSpec;
}

export interface AskState {
  readonly asking: Accessor<Asking | undefined>;
  readonly skill: Accessor<AskSkill | undefined>;
  readonly wanted: Accessor<Wanted | undefined>;
  setWanted(part: Partial<Wanted>): void;
  fillFromNow(): void;
  /** throws with what is allowed */
  takeCode(code: string): void;
  readonly limits: Accessor<LimitsAsked>;
  setLimits(part: Partial<LimitsAsked>): void;
  /** a landing on the feet is wanted, on a surface that the landing model knows */
  readonly canHold: Accessor<boolean>;
  readonly aim: Accessor<{ readonly aim?: Aim; readonly fault: string }>;
  readonly chosen: Accessor<readonly Chosen[]>;
  add(id: string): void;
  remove(id: string): void;
  setSpan(id: string, from: number, to: number): void;
  readonly inputOf: (id: string) => AskInput | undefined;
  ask(kind?: SearchKind): void;
  readonly search: Pick<SearchState, 'stop' | 'progress' | 'failed' | 'said'>;
  readonly found: SearchState['found'];
  /** of a skill before its last change */
  readonly stale: Accessor<boolean>;
  readonly wantedChanged: Accessor<boolean>;
  /** -1: A as it is */
  readonly picked: Accessor<number>;
  pick(index: number): void;
  readonly pickedSolution: Accessor<Solution | undefined>;
  /** ends of what may change at which the picked answer lies */
  readonly atEnds: Accessor<readonly AtEnd[]>;
  /** gives what may change room there, or drops a joint limit, and asks again */
  widen(end: AtEnd): void;
  dropLimit(limit: keyof LimitsAsked): void;
  readonly drawn: Accessor<{ readonly result?: FlightResult; readonly fault?: string } | undefined>;
  readonly subject: Accessor<Subject | undefined>;
  /** what an answer does, clause by clause */
  clausesOf(solution: Solution): string[];
  keep(): void;
  readonly keepLetter: Accessor<string>;
  use(): void;
  isOpen(): boolean;
}

export function makeAskState(page: Page): AskState {
  const { services, shell, doc, flight } = page;
  const [asking, setAsking] = createSignal<Asking>();
  const [failed, setFailed] = createSignal('');
  const isOpen = createMemo(() => shell.tool() === 'ask');
  const begin = async (): Promise<void> => {
    const engine = await services.load.asking();
    const result = flight.result();
    // a task of its own: what may change is listed by a flight of the skill as it is written
    if (isOpen() && !result.draft) engine.open(result, flight.id() % LEGS > 0);
    await nextTask();
    setAsking(engine);
  };
  begin().catch((error) => setFailed(wordFault(error)));

  const opened = createMemo<{ id: number; skill: AskSkill } | undefined>((last) => {
    const engine = asking();
    const [result, id] = [flight.result(), flight.id()];
    // closed, or while a hand drags, the last one stays, but never that of another document
    if (!engine || !isOpen() || result.draft) return last?.id === id ? last : undefined;
    return { id, skill: engine.open(result, id % LEGS > 0) };
  });
  const skill = (): AskSkill | undefined => opened()?.skill;

  // the sentence belongs to a document: another one opens with its own
  const [edited, setEdited] = createSignal<{ id: number; wanted: Wanted }>();
  const own = createMemo(() => {
    const engine = asking();
    const open = skill();
    return engine && open ? wantedOf(engine, open, untrack(flight.result)) : undefined;
  });
  const wanted = createMemo(() => {
    const e = edited();
    return e && e.id === doc.id() ? e.wanted : own();
  });
  const [limits, setLimits] = createSignal<LimitsAsked>({ range: true, speed: true, torque: false });
  const aim = createMemo<{ aim?: Aim; fault: string }>(() => {
    const [engine, open, w] = [asking(), skill(), wanted()];
    if (!engine || !open || !w) return { fault: '' };
    try {
      return { aim: engine.aim(open, w), fault: '' };
    } catch (error) {
      return { fault: wordFault(error) };
    }
  });
  const canHold = createMemo(() => {
    const [engine, open, w] = [asking(), skill(), wanted()];
    if (!engine || !open || !w) return false;
    try {
      return engine.canHold(open, w);
    } catch {
      return false;
    }
  });
  const wantedKey = createMemo(() => JSON.stringify([wanted(), limits()]));

  const [changed, setChanged] = createSignal<{ id: number; chosen: readonly Chosen[] }>();
  const first = createMemo<{ id: number; chosen: readonly Chosen[] } | undefined>((last) => {
    const [engine, open] = [asking(), skill()];
    if (!engine || !open) return undefined;
    if (last?.id === flight.id()) return last;
    return { id: flight.id(), chosen: chooseFirst(engine, open, untrack(flight.result).outline) };
  });
  const inputs = createMemo(() => new Map((skill()?.inputs ?? []).map((i) => [i.id, i])));
  const chosen = createMemo<readonly Chosen[]>(() => {
    const c = changed();
    const list = c && c.id === doc.id() ? c.chosen : (first()?.chosen ?? []);
    return list.filter(({ id }) => inputs().has(id));
  });
  const setChosen = (list: readonly Chosen[]): void => {
    setChanged({ id: doc.id(), chosen: list });
  };

  const [picked, setPicked] = createSignal(-1);
  const search = makeSearch(page, () => setPicked(0));
  const { found } = search;
  const stale = createMemo(() => found()?.key !== skill()?.key);
  const pickedSolution = createMemo(() => (stale() ? undefined : found()?.list[picked()]));

  const ask = (kind: SearchKind = 'meet'): void => {
    const [engine, open, { aim: target }] = [asking(), skill(), aim()];
    if (!engine || !open || !target || chosen().length === 0) return;
    search.ask(kind, {
      engine,
      skill: open,
      aim: target,
      chosen: chosen(),
      limits: limits(),
      wantedKey: wantedKey(),
    });
  };
  const atEnds = createMemo<readonly AtEnd[]>(() => {
    const [f, solution] = [found(), pickedSolution()];
    return f && solution ? listAtEnds(f.chosen, solution.values, (id) => inputs().get(id)?.range) : [];
  });
  const setSpan = (id: string, from: number, to: number): void =>
    setChosen(chosen().map((c) => (c.id === id ? { id, from, to } : c)));

  const [drawn, setDrawn] = createSignal<{ result?: FlightResult; fault?: string }>();
  createEffect(() => {
    const [engine, open, solution] = [asking(), skill(), pickedSolution()];
    if (!engine || !open || !solution || !isOpen()) {
      setDrawn(undefined);
      return;
    }
    flight.released();
    // a task of its own: the list answers the press first
    const timer = setTimeout(() => {
      try {
        setDrawn({ result: services.flying.fly(engine.fileOf(open, solution.spec)) });
      } catch (error) {
        // with another swing: flown when its release is known
        setDrawn(isPending(error) ? undefined : { fault: wordFault(error) });
      }
    });
    onCleanup(() => clearTimeout(timer));
  });
  // flown in one task, drawn in the next
  const [shown, setShown] = createSignal<FlightResult>();
  createEffect(() => {
    const result = drawn()?.result;
    const timer = result ? setTimeout(() => setShown(result)) : undefined;
    if (!result) setShown(undefined);
    onCleanup(() => clearTimeout(timer));
  });
  const isShown = createMemo(() => shown() !== undefined);
  createEffect(() => {
    if (!isShown()) return;
    shell.stage.provide(() => {
      const result = shown();
      return result ? { versions: [{ letter: 'B', result, shiftS: 0 }] } : {};
    });
  });

  const hasAnswers = (): boolean => (found()?.answer.solutions.length ?? 0) > 0;
  const nameOf = (index: number): string => (hasAnswers() ? t.answer(String(index + 1)) : t.nearest);
  const subject = createMemo<Subject | undefined>(() => {
    const open = skill();
    if (!open) return undefined;
    const solution = pickedSolution();
    if (solution)
      return {
        name: hasAnswers() ? t.ofAnswer(String(picked() + 1)) : t.ofNearest,
        key: `${open.key}${JSON.stringify(solution.values)}`,
        spec: solution.spec,
      };
    return { name: t.ofNow, key: open.key, spec: aim().aim?.spec ?? open.spec };
  });

  return {
    asking,
    skill,
    wanted,
    setWanted: (part) => {
      const w = wanted();
      if (w) setEdited({ id: doc.id(), wanted: { ...w, ...part } });
    },
    fillFromNow: () => {
      const [engine, open] = [asking(), skill()];
      if (engine && open)
        setEdited({
          id: doc.id(),
          wanted: wantedOf(engine, { ...open, spec: withoutTarget(open.spec) }, flight.result()),
        });
    },
    takeCode: (code) => {
      const [engine, w] = [asking(), wanted()];
      if (!engine || !w) return;
      const fields = engine.readCode(code, w.direction || undefined);
      const { airTime: _, height: __, ...rest } = w;
      setEdited({
        id: doc.id(),
        wanted: {
          ...rest,
          somersaults: fields.somersaults,
          twists: fields.twists,
          direction: fields.direction ?? '',
          twistTo: fields.twists > 0 ? w.twistTo || 'left' : '',
          landingAngle: fields.landingAngle,
          twistsAfter: fields.twistsAfter,
        },
      });
    },
    limits,
    setLimits: (part) => setLimits({ ...limits(), ...part }),
    canHold,
    aim,
    chosen,
    add: (id) => {
      const [engine, open] = [asking(), skill()];
      if (!engine || !open || chosen().some((c) => c.id === id)) return;
      const [from, to] = engine.spanOf(open, id);
      setChosen([...chosen(), { id, from, to }]);
    },
    remove: (id) => setChosen(chosen().filter((c) => c.id !== id)),
    setSpan,
    inputOf: (id) => inputs().get(id),
    ask,
    search: { ...search, failed: () => search.failed() || failed() },
    found,
    atEnds,
    widen: ({ id, side, wider }) => {
      const one = chosen().find((c) => c.id === id);
      if (!one || wider === undefined) return;
      setSpan(id, side === 'from' ? wider : one.from, side === 'to' ? wider : one.to);
      ask(found()?.kind);
    },
    dropLimit: (limit) => {
      setLimits({ ...limits(), [limit]: false });
      ask(found()?.kind);
    },
    stale,
    wantedChanged: () => found()?.wantedKey !== wantedKey(),
    picked,
    pick: setPicked,
    pickedSolution,
    drawn,
    subject,
    clausesOf: (solution) => {
      const [engine, open, f] = [asking(), skill(), found()];
      if (!engine || !open || !f) return [];
      const changes = f.chosen.flatMap(({ id }, i) => {
        const input = inputs().get(id);
        return input ? [{ input, value: solution.values[i], name: nameInput(id, flight.spans(), open.spec) }] : [];
      });
      return clausesOfAnswer(changes, {
        spec: open.spec,
        words: flight.spans().map((s) => s.word),
        pushedOff: wordPushedOff(flight.result()),
        momentum: [engine.costOf(open).momentum, solution.cost.momentum],
      });
    },
    keep: () => {
      const [engine, open, solution] = [asking(), skill(), pickedSolution()];
      if (!engine || !open || !solution) return;
      const name = nameOf(picked());
      putVersion(page, { name, file: engine.fileOf(open, solution.spec), isKept: false }, t.kept2(name));
    },
    keepLetter: () => VERSION_LETTERS[Math.min(doc.versions().length, MOST_VERSIONS - 1)],
    use: () => {
      const [engine, open, solution] = [asking(), skill(), pickedSolution()];
      if (engine && open && solution) doc.edit(engine.fileOf(open, solution.spec), t.used(nameOf(picked())));
    },
    isOpen,
  };
}

function withoutTarget({ target: _, ...spec }: SkillSpec): SkillSpec {
  return spec;
}
