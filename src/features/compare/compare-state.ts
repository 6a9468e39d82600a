/**
 * The comparison of one bench: which versions fly beside the document, with what held equal, together at which event, and
 * which two are compared in numbers. Kept while the tool is closed.
 */
import { type Accessor, createEffect, createMemo, createSignal } from 'solid-js';
import { isAwaited } from '../../app/flight.ts';
import { keptState, type Page } from '../../app/page.ts';
import { putVersion } from '../../app/put-version.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { PresetAthlete, PresetSkill } from '../../app/services.ts';
import { withStartOf } from '../../document/phases.ts';
import {
  type KeptVersion,
  promoteVersion,
  removeVersion,
  renameVersion,
  swapVersion,
  VERSION_LETTERS,
  type VersionLetter,
} from '../../document/versions.ts';
import type { Alignment, CompareRow, Comparing, HeldEqual } from '../../engine/compare.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { StageVersion } from '../../pictures/stage-input.ts';
import { compareTexts as c } from './words.ts';

export type Letter = 'A' | VersionLetter;

export type CompareLayout = 'together' | 'apart' | 'numbers';

/** One flight of the comparison. */
export interface FlownVersion {
  readonly letter: Letter;
  readonly name: string;
  /** with what is held equal made so */
  readonly result?: FlightResult;
  readonly fault?: string;
  /** its own time minus A's, s */
  readonly shiftS: number;
  /** it has no such event as the flights are laid together at */
  readonly noEvent: boolean;
}

export interface CompareState {
  readonly comparing: Accessor<Comparing | undefined>;
  readonly held: Accessor<HeldEqual>;
  setHeld(how: HeldEqual): void;
  readonly align: Accessor<Alignment>;
  setAlign(at: Alignment): void;
  readonly layout: Accessor<CompareLayout>;
  setLayout(layout: CompareLayout): void;
  /** the ghosts stay when the tool is closed */
  readonly stays: Accessor<boolean>;
  setStays(on: boolean): void;
  /** A first */
  readonly flown: Accessor<readonly FlownVersion[]>;
  readonly base: Accessor<FlownVersion>;
  readonly other: Accessor<FlownVersion | undefined>;
  choosePair(base: Letter, other: Letter): void;
  /** of the two that are compared */
  readonly rows: Accessor<readonly CompareRow[]>;
  /** of all that fly, A first */
  readonly allRows: Accessor<readonly CompareRow[]>;
  keep(): void;
  addSkill(skill: PresetSkill): void;
  addAthlete(athlete: PresetAthlete): void;
  addTakeoff(skill: PresetSkill): void;
  swap(letter: Letter): void;
  promote(letter: Letter): void;
  rename(letter: Letter, name: string): void;
  remove(letter: Letter): void;
}

type OwnFlight = { readonly result: FlightResult } | { readonly fault: string; readonly isAwaited?: boolean };

const placeOf = (letter: Letter): number => VERSION_LETTERS.indexOf(letter as VersionLetter);

function makeCompareState(page: Page): CompareState {
  const { services, shell, doc, flight } = page;
  const [comparing, setComparing] = createSignal<Comparing>();
  const [held, setHeld] = createSignal<HeldEqual>('own');
  const [align, setAlign] = createSignal<Alignment>('takeoff');
  const [layout, setLayout] = createSignal<CompareLayout>('together');
  const [stays, setStays] = createSignal(false);
  const [pair, setPair] = createSignal<{ base: Letter; other: Letter }>({ base: 'A', other: 'B' });
  void services.load.comparing().then(setComparing);

  const isOpen = (): boolean => shell.tool() === 'compare';
  const isActive = createMemo(() => isOpen() || stays());
  const flights = new WeakMap<KeptVersion['file'], OwnFlight>();
  const fly = ({ file }: KeptVersion): OwnFlight => {
    flight.released();
    const known = flights.get(file);
    if (known) return known;
    let made: OwnFlight;
    try {
      made = { result: services.flying.fly(file) };
    } catch (error) {
      made = { fault: wordFault(error), isAwaited: isAwaited(error) };
    }
    // what comes before it is being computed or was lost: it is flown again when that is known, or asked for again
    if ('result' in made || !made.isAwaited) flights.set(file, made);
    return made;
  };
  const own = createMemo(() => (isActive() ? doc.versions().map((v) => ({ ...fly(v), name: v.name })) : []));

  const flown = createMemo<readonly FlownVersion[]>(() => {
    const a = flight.result();
    const engine = comparing();
    const at = align();
    const how = held();
    const start = engine?.alignTime(a, at);
    const first: FlownVersion = {
      letter: 'A',
      name: doc.file().title,
      result: a,
      shiftS: 0,
      noEvent: start === undefined,
    };
    const others = own().map((one, i): FlownVersion => {
      const letter = VERSION_LETTERS[i];
      const failed = (fault: string): FlownVersion => ({ letter, name: one.name, fault, shiftS: 0, noEvent: false });
      if ('fault' in one) return failed(one.fault);
      try {
        const result = engine ? engine.hold(a, one.result, how) : one.result;
        const there = engine?.alignTime(result, at);
        const both = start !== undefined && there !== undefined;
        return { letter, name: one.name, result, shiftS: both ? there - start : 0, noEvent: !!engine && !both };
      } catch (error) {
        return failed(wordFault(error));
      }
    });
    return [first, ...others];
  });

  const find = (letter: Letter): FlownVersion | undefined => flown().find((f) => f.letter === letter && f.result);
  const base = createMemo<FlownVersion>(() => find(pair().base) ?? flown()[0]);
  const other = createMemo<FlownVersion | undefined>(() => {
    const chosen = find(pair().other);
    return chosen && chosen !== base() ? chosen : flown().find((f) => f !== base() && f.result);
  });
  const rows = createMemo<readonly CompareRow[]>(() => {
    const [x, y] = [base().result, other()?.result];
    return x && y ? (comparing()?.compare([x, y], align()) ?? []) : [];
  });

  const allRows = createMemo<readonly CompareRow[]>(() => {
    const all = flown().flatMap(({ result }) => (result ? [result] : []));
    return all.length > 0 ? (comparing()?.compare(all, align()) ?? []) : [];
  });

  const versions = createMemo(() =>
    flown().flatMap(({ letter, result, shiftS }): StageVersion[] =>
      letter !== 'A' && result ? [{ letter, result, shiftS }] : [],
    ),
  );
  const isShown = createMemo(() => (isOpen() ? layout() !== 'apart' : stays()) && versions().length > 0);
  createEffect(() => {
    if (isShown()) shell.stage.provide(() => ({ versions: versions() }));
  });

  const put = (version: KeptVersion, title: string): void => {
    putVersion(page, version, title, (letter) => setPair({ base: 'A', other: letter }));
  };
  const lay = (name: string, file: KeptVersion['file']): void =>
    put({ name, file: structuredClone(file), isKept: false }, c.added(name));

  return {
    comparing,
    held,
    setHeld,
    align,
    setAlign,
    layout,
    setLayout,
    stays,
    setStays,
    flown,
    base,
    other,
    choosePair: (one, two) => setPair({ base: one, other: two }),
    rows,
    allRows,
    keep: () => {
      const name = c.kept(String(doc.versions().filter((v) => v.isKept).length + 1));
      put({ name, file: doc.file(), isKept: true }, c.keptTitle(doc.file().title));
    },
    addSkill: ({ file }) => lay(file.title, file),
    addAthlete: ({ id, athlete }) => {
      const isDemo = services.presets.athletes.some((one) => one.id === id);
      lay(athlete.name, page.athletes.flownBy(isDemo ? { ref: id } : athlete));
    },
    addTakeoff: ({ file }) => lay(c.takeoffOf(file.title), withStartOf(doc.file(), file)),
    swap: (letter) => {
      const name = doc.versions()[placeOf(letter)]?.name ?? '';
      const next = swapVersion(doc.file(), doc.versions(), placeOf(letter), doc.file().title);
      doc.editVersions(next.doc, next.versions, c.swapped(name));
    },
    promote: (letter) => {
      const name = doc.versions()[placeOf(letter)]?.name ?? '';
      const next = promoteVersion(doc.file(), doc.versions(), placeOf(letter));
      doc.editVersions(next.doc, next.versions, c.promoted(name));
    },
    rename: (letter, name) =>
      doc.editVersions(doc.file(), renameVersion(doc.versions(), placeOf(letter), name), c.renamed(name)),
    remove: (letter) => {
      const name = doc.versions()[placeOf(letter)]?.name ?? '';
      doc.editVersions(doc.file(), removeVersion(doc.versions(), placeOf(letter)), c.removed(name));
    },
  };
}

export const useCompareState = keptState(makeCompareState);
