/** What is typed as a code or a name, what it can mean here, and the draft that is made from it. */
import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { AskedSkill, DraftSpec } from '../../../sim/index.ts';
import type { DraftRun } from '../../engine/draft.ts';
import type { SkillReading } from '../../engine/read-skill.ts';
import type { MarkedDraft } from '../../jobs/kinds/draft-data.ts';
import { keptState, type Page } from '../page.ts';
import { codeTexts } from '../say/code-texts.ts';
import { wordBeyondDraft, wordNoDraft } from '../say/code-words.ts';
import { wordFault } from '../say/fault-words.ts';

const t = codeTexts;
export type Way = DraftSpec['direction'];

export interface CodeState {
  readonly isOpen: Accessor<boolean>;
  readonly typed: Accessor<string>;
  /** what is typed can mean; undefined while it means nothing */
  readonly asked: Accessor<AskedSkill | undefined>;
  /** the title of what is being drafted, and how many flights were tried */
  readonly busy: Accessor<string | undefined>;
  readonly flights: Accessor<number>;
  readonly fault: Accessor<string>;
  /** what flies close to what was refused */
  readonly nearest: Accessor<DraftSpec | undefined>;
  /** what was refused for strength alone can be opened as a marked draft */
  /** what a draft beyond known strength would ask, where there is one; else empty */
  readonly beyondAsks: Accessor<string>;
  openBeyond(): void;
  open(): void;
  close(): void;
  type(text: string): void;
  /** the same code the other way round */
  setWay(way: Way): void;
  /** what a text can mean, here */
  read(text: string): AskedSkill | undefined;
  /** what is typed: drafts the one skill, or shows what it can mean */
  ask(text?: string): void;
  draft(spec: DraftSpec): void;
  stop(): void;
}

function makeCode(page: Page): CodeState {
  const { services, shell, doc, flight } = page;
  const [isOpen, setOpen] = createSignal(false);
  const [typed, setTyped] = createSignal('');
  const [way, setWay] = createSignal<Way>();
  const [busy, setBusy] = createSignal<string>();
  const [flights, setFlights] = createSignal(0);
  const [fault, setFault] = createSignal('');
  const [nearest, setNearest] = createSignal<DraftSpec>();
  const [beyond, setBeyond] = createSignal<{ title: string; draft: MarkedDraft }>();
  let run: DraftRun | undefined;
  const [reading, setReading] = createSignal<SkillReading>();
  const needReading = async (): Promise<SkillReading> => {
    const known = reading() ?? (await services.load.reading());
    setReading(known);
    return known;
  };
  const prepare = (): void => void needReading().catch(() => undefined);
  const readHere = ({ readAsked }: SkillReading, text: string): AskedSkill =>
    readAsked(text, flight.result().names.place);
  const read = (text: string): AskedSkill | undefined => {
    const known = reading();
    // it is read again when it can be
    if (!known) prepare();
    try {
      return known && readHere(known, text);
    } catch {
      return undefined;
    }
  };
  const turned = (asked: AskedSkill | undefined): AskedSkill | undefined => {
    const wanted = way();
    const known = reading();
    if (asked?.kind !== 'one' || wanted === undefined || !known) return asked;
    const { code, place, surface } = asked.spec;
    return { kind: 'one', spec: { ...known.readCode(code, wanted), place, surface } };
  };
  const asked = createMemo(() => (typed() === '' ? undefined : turned(read(typed()))));
  const stop = (): void => {
    const title = busy();
    run?.stop();
    run = undefined;
    setBusy(undefined);
    setOpen(false);
    if (title) shell.notify({ text: t.cancelled(title) });
  };
  const draft = (spec: DraftSpec): void => {
    run?.stop();
    setFault('');
    setNearest(undefined);
    setBeyond(undefined);
    setFlights(0);
    setBusy(spec.title);
    const athlete = doc.athlete();
    const own = services.drafting.draft(
      { spec, athlete, ref: doc.file().athlete, shapes: services.presets.shapes },
      setFlights,
    );
    run = own;
    own.done.then(
      (drafted) => {
        if (run !== own) return;
        setBusy(undefined);
        if (drafted.kind === 'refused') {
          setFault(wordNoDraft(spec.title, drafted));
          setNearest(drafted.nearest);
          setBeyond(drafted.beyond && { title: spec.title, draft: drafted.beyond });
          setOpen(true);
          return;
        }
        setOpen(false);
        doc.open(drafted.file, t.step(spec.title));
        shell.notify({ text: t.done(spec.title) });
      },
      (error: unknown) => {
        if (run !== own) return;
        setBusy(undefined);
        setFault(`${t.failed} ${wordFault(error)}`);
        setOpen(true);
      },
    );
  };
  const answer = async (text: string): Promise<void> => {
    try {
      const found = turned(readHere(await needReading(), text));
      if (found?.kind === 'one') draft(found.spec);
      else setOpen(true);
    } catch (error) {
      setFault(wordFault(error));
      setOpen(true);
    }
  };
  const ask = (text = typed()): void => {
    if (text.trim() === '') {
      setFault(t.empty);
      return;
    }
    if (text !== typed()) {
      setTyped(text);
      setWay(undefined);
    }
    setFault('');
    void answer(text);
  };
  return {
    isOpen,
    typed,
    asked,
    busy,
    flights,
    fault,
    nearest,
    beyondAsks: () => {
      const found = beyond();
      return found ? wordBeyondDraft(found.draft.asks) : '';
    },
    openBeyond: () => {
      const found = beyond();
      if (!found) return;
      setOpen(false);
      setFault('');
      setBeyond(undefined);
      doc.open(found.draft.file, t.step(found.title));
      shell.notify({ text: `${t.done(found.title)} ${wordBeyondDraft(found.draft.asks)}` });
    },
    open: () => {
      prepare();
      setOpen(true);
    },
    close: () => {
      setOpen(false);
      setFault('');
    },
    type: (text) => {
      setTyped(text);
      setWay(undefined);
      setFault('');
      setNearest(undefined);
      setBeyond(undefined);
    },
    setWay: (chosen) => {
      setWay(chosen);
    },
    read,
    ask,
    draft,
    stop,
  };
}

export const useCode = keptState(makeCode);
