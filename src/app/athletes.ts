/** Who flies: given to the open skill, with what is to stay of its take-off; and, where that is asked, to every ready skill that is opened. */
import { type Accessor, createSignal } from 'solid-js';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import { changeAthlete, changeTakeoff, setAthlete } from '../document/edits.ts';
import type { KeptTurn } from '../engine/jump.ts';
import type { FlightResult } from '../engine/result.ts';
import { readStored, writeStored } from '../ui/stored.ts';
import type { DocumentState } from './document.ts';
import { type FlightState, isPending } from './flight.ts';
import type { Flying } from './services.ts';

export interface Athletes {
  /** what stays of the rotation when somebody else flies; the air time stays anyway */
  readonly kept: Accessor<KeptTurn>;
  setKept(kept: KeptTurn): void;
  /** the open skill with another athlete, and with what is to stay */
  flownBy(athlete: SkillFile['athlete']): SkillFile;
  /** as one step of the document */
  give(athlete: SkillFile['athlete'], title: string): void;
  /** what changes no flight */
  rename(name: string, title: string): void;
  /** the athlete of the open skill flies every ready skill that is opened */
  readonly isEverywhere: Accessor<boolean>;
  setEverywhere(is: boolean): void;
  /** the athlete of the open skill has changed */
  changed(): void;
  /** a ready skill as it is opened */
  dress(file: SkillFile): SkillFile;
}

const KEPT = 'shapeflight.keptTurn';
const EVERYWHERE = 'shapeflight.athlete';

interface AthletesHost {
  readonly doc: Pick<DocumentState, 'file' | 'athlete' | 'edit'>;
  readonly flight: Pick<FlightState, 'result'>;
  readonly flying: Pick<Flying, 'fly' | 'legs' | 'readAthlete' | 'findAthlete' | 'jumping'>;
}

export function createAthletes({ doc, flight, flying }: AthletesHost): Athletes {
  const [kept, setKept] = createSignal<KeptTurn>(readStored(KEPT) === 'momentum' ? 'momentum' : 'straight');
  const [everywhere, setEverywhere] = createSignal<Athlete | undefined>(readAthlete());

  /** A text of another build is left alone. */
  function readAthlete(): Athlete | undefined {
    const text = readStored(EVERYWHERE);
    if (!text) return undefined;
    try {
      return flying.readAthlete(JSON.parse(text));
    } catch {
      return undefined;
    }
  }
  const keep = (athlete: Athlete | undefined): void => {
    setEverywhere(athlete);
    writeStored(EVERYWHERE, athlete ? JSON.stringify(athlete) : '');
  };
  const flownBy = (file: SkillFile, athlete: SkillFile['athlete'], from: FlightResult | undefined): SkillFile => {
    const edited = setAthlete(file, athlete);
    return from?.file === file ? changeTakeoff(edited, flying.jumping.carryOver(from, edited, kept())) : edited;
  };
  const changed = (): void => {
    if (everywhere()) keep(doc.athlete());
  };
  return {
    kept,
    setKept: (now) => {
      setKept(now);
      writeStored(KEPT, now);
    },
    flownBy: (athlete) => flownBy(doc.file(), athlete, flight.result()),
    give: (athlete, title) => {
      doc.edit(flownBy(doc.file(), athlete, flight.result()), title);
      changed();
    },
    rename: (name, title) => {
      doc.edit(changeAthlete(doc.file(), doc.athlete(), { name }), title);
      changed();
    },
    isEverywhere: () => everywhere() !== undefined,
    setEverywhere: (is) => keep(is ? doc.athlete() : undefined),
    changed,
    dress: (file) => {
      const athlete = everywhere();
      if (!athlete || flying.findAthlete(file).kind !== 'human') return file;
      try {
        return flownBy(file, athlete, flying.legs.count(file) === 1 ? flying.fly(file) : undefined);
      } catch (error) {
        // a swing gives its take-off, and is not known yet, or nothing flies: nothing is to be kept
        if (!flying.jumping.isOfFlight(error) && !isPending(error)) throw error;
        return setAthlete(file, athlete);
      }
    },
  };
}
