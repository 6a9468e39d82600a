/**
 * The comparison of one bench: which versions fly beside the document, with what held equal, together at which event, and
 * which two are told apart in numbers. Kept while the tool is closed.
 */
import { type Accessor, createEffect, createMemo, createSignal, untrack } from 'solid-js';
import { type Bench, isPending } from '../../app/bench.ts';
import type { ShelfAthlete, ShelfSkill } from '../../app/ports.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { setAthlete } from '../../document/edits.ts';
import {
  addVersion,
  type KeptVersion,
  MOST_VERSIONS,
  promoteVersion,
  removeVersion,
  renameVersion,
  swapVersion,
  VERSION_LETTERS,
  type VersionLetter,
  type Versions,
} from '../../document/versions.ts';
import type { Alignment, CompareRow, Comparing, HeldEqual } from '../../engine/compare.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { StageVersion } from '../../pictures/stage-input.ts';
import { compareTexts as c } from './words.ts';

export type Letter = 'A' | VersionLetter;

/** One flight of the comparison. */
export interface Flown {
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
  readonly apart: Accessor<boolean>;
  setApart(on: boolean): void;
  /** the ghosts stay when the tool is closed */
  readonly stays: Accessor<boolean>;
  setStays(on: boolean): void;
  /** A first */
  readonly flown: Accessor<readonly Flown[]>;
  readonly base: Accessor<Flown>;
  readonly other: Accessor<Flown | undefined>;
  choosePair(base: Letter, other: Letter): void;
  readonly rows: Accessor<readonly CompareRow[]>;
  keep(): void;
  addSkill(skill: ShelfSkill): void;
  addAthlete(athlete: ShelfAthlete): void;
  addTakeoff(skill: ShelfSkill): void;
  addArms(): void;
  swap(letter: Letter): void;
  promote(letter: Letter): void;
  rename(letter: Letter, name: string): void;
  remove(letter: Letter): void;
}

type OwnFlight = { readonly result: FlightResult } | { readonly fault: string; readonly isWaiting?: boolean };

const placeOf = (letter: Letter): number => VERSION_LETTERS.indexOf(letter as VersionLetter);

export function makeCompareState(bench: Bench): CompareState {
  const [comparing, setComparing] = createSignal<Comparing>();
  const [held, setHeld] = createSignal<HeldEqual>('own');
  const [align, setAlign] = createSignal<Alignment>('takeoff');
  const [apart, setApart] = createSignal(false);
  const [stays, setStays] = createSignal(false);
  const [pair, setPair] = createSignal<{ base: Letter; other: Letter }>({ base: 'A', other: 'B' });
  void bench.ports.loadComparing().then(setComparing);

  const isOpen = (): boolean => bench.tool() === 'compare';
  const isActive = createMemo(() => isOpen() || stays());
  const flights = new WeakMap<KeptVersion['file'], OwnFlight>();
  const fly = ({ file }: KeptVersion): OwnFlight => {
    bench.released();
    const known = flights.get(file);
    if (known) return known;
    let made: OwnFlight;
    try {
      made = { result: bench.ports.fly(file) };
    } catch (error) {
      made = { fault: wordFault(error), isWaiting: isPending(error) };
    }
    // what comes before it is being computed: it is flown again when that is known
    if ('result' in made || !made.isWaiting) flights.set(file, made);
    return made;
  };
  const own = createMemo(() => (isActive() ? bench.versions().map((v) => ({ ...fly(v), name: v.name })) : []));

  const flown = createMemo<readonly Flown[]>(() => {
    const a = bench.result();
    const engine = comparing();
    const at = align();
    const how = held();
    const start = engine?.alignTime(a, at);
    const first: Flown = { letter: 'A', name: bench.file().title, result: a, shiftS: 0, noEvent: start === undefined };
    const others = own().map((one, i): Flown => {
      const letter = VERSION_LETTERS[i];
      const failed = (fault: string): Flown => ({ letter, name: one.name, fault, shiftS: 0, noEvent: false });
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

  const find = (letter: Letter): Flown | undefined => flown().find((f) => f.letter === letter && f.result);
  const base = createMemo<Flown>(() => find(pair().base) ?? flown()[0]);
  const other = createMemo<Flown | undefined>(() => {
    const chosen = find(pair().other);
    return chosen && chosen !== base() ? chosen : flown().find((f) => f !== base() && f.result);
  });
  const rows = createMemo<readonly CompareRow[]>(() => {
    const [x, y] = [base().result, other()?.result];
    return x && y ? (comparing()?.compare([x, y], align()) ?? []) : [];
  });

  createEffect(() => {
    const show = isOpen() ? !apart() : stays();
    const versions = flown().flatMap(({ letter, result, shiftS }): StageVersion[] =>
      letter !== 'A' && result ? [{ letter, result, shiftS }] : [],
    );
    const next = show && versions.length > 0 ? versions : undefined;
    untrack(() => {
      if (next || bench.stageExtras().versions) bench.addStageExtras({ versions: next });
    });
  });

  const put = (version: KeptVersion, title: string): void => {
    const list = addVersion(bench.versions(), version);
    bench.editVersions(bench.file(), list, title);
    setPair({ base: 'A', other: VERSION_LETTERS[list.length - 1] });
  };
  const lay = (name: string, file: KeptVersion['file']): void =>
    put({ name, file: structuredClone(file), isKept: false }, c.added(name));

  return {
    comparing,
    held,
    setHeld,
    align,
    setAlign,
    apart,
    setApart,
    stays,
    setStays,
    flown,
    base,
    other,
    choosePair: (one, two) => setPair({ base: one, other: two }),
    rows,
    keep: () => {
      const name = c.kept(String(bench.versions().filter((v) => v.isKept).length + 1));
      put({ name, file: bench.file(), isKept: true }, c.keptTitle(bench.file().title));
    },
    addSkill: ({ file }) => lay(file.title, file),
    addAthlete: ({ id, athlete }) => {
      const isDemo = bench.ports.athletes.some((one) => one.id === id);
      lay(athlete.name, setAthlete(bench.file(), isDemo ? { ref: id } : athlete));
    },
    addTakeoff: ({ file }) => lay(c.takeoffOf(file.title), { ...bench.file(), takeoff: file.takeoff }),
    addArms: () => {
      const engine = comparing();
      if (!engine) return;
      const { title } = bench.file();
      const made = engine.armsWideAndIn(bench.result(), {
        wide: { title: c.armsFile(title, c.armsWide), word: c.armsWide },
        in: { title: c.armsFile(title, c.armsIn), word: c.armsIn },
      });
      const list = [made.wide, made.in].reduce<Versions>(
        (all, file, i) => addVersion(all, { name: i === 0 ? c.armsWide : c.armsIn, file, isKept: false }),
        bench.versions().slice(0, MOST_VERSIONS - 2),
      );
      bench.editVersions(bench.file(), list, c.armsTitle);
      // where the arms are held, and the moments differ
      if (engine.alignTime(bench.result(), 'apex') !== undefined) setAlign('apex');
      setPair({ base: VERSION_LETTERS[list.length - 2], other: VERSION_LETTERS[list.length - 1] });
    },
    swap: (letter) => {
      const name = bench.versions()[placeOf(letter)]?.name ?? '';
      const next = swapVersion(bench.file(), bench.versions(), placeOf(letter), bench.file().title);
      bench.editVersions(next.doc, next.versions, c.swapped(name));
    },
    promote: (letter) => {
      const name = bench.versions()[placeOf(letter)]?.name ?? '';
      const next = promoteVersion(bench.file(), bench.versions(), placeOf(letter));
      bench.editVersions(next.doc, next.versions, c.promoted(name));
    },
    rename: (letter, name) =>
      bench.editVersions(bench.file(), renameVersion(bench.versions(), placeOf(letter), name), c.renamed(name)),
    remove: (letter) => {
      const name = bench.versions()[placeOf(letter)]?.name ?? '';
      bench.editVersions(bench.file(), removeVersion(bench.versions(), placeOf(letter)), c.removed(name));
    },
  };
}
