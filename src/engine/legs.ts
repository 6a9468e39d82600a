/**
 * The legs of a document that is a chain: each a skill file of its own, with what the flight before hands over. A leg whose file, and all before it, are unchanged is the
 * same object again.
 */
import {
  type Flight,
  type Handover,
  handToContact,
  legFile,
  legsOf,
  MOST_BOUNCES,
  putLeg,
  type SkillFile,
} from '../../sim/index.ts';

export interface ChainLegs {
  count(file: SkillFile): number;
  /** throws what the flight before it throws: that it is pending, while that is computed */
  fileOf(file: SkillFile, leg: number): SkillFile;
  /** with what `like`, the same leg of another state of the chain, was handed */
  fileLike(file: SkillFile, leg: number, like: SkillFile): SkillFile;
  /** the chain with the leg changed */
  put(file: SkillFile, leg: number, is: SkillFile): SkillFile;
}

/** Chains kept by what comes before a leg. */
const MOST = 12;

interface Known {
  readonly file: SkillFile;
  readonly leg: number;
  readonly handed: Handover;
}

export function makeLegs(fly: (file: SkillFile) => Flight): ChainLegs {
  const files = new WeakMap<SkillFile, SkillFile[]>();
  const known: Known[] = [];
  const handedTo = (file: SkillFile, leg: number): Handover => {
    const found = known.find((one) => one.leg === leg && isSameUntil(one.file, file, leg));
    if (found) return found.handed;
    const handed = handOn(file, leg, fly(fileOf(file, leg - 1)));
    known.unshift({ file, leg, handed });
    known.length = Math.min(known.length, MOST);
    return handed;
  };
  const fileOf = (file: SkillFile, leg: number): SkillFile => {
    const made = files.get(file) ?? [];
    files.set(file, made);
    made[leg] ??= leg === 0 ? legFile(file, 0) : legFile(file, leg, handedTo(file, leg));
    return made[leg];
  };
  return {
    count: (file) => legsOf(file).length,
    fileOf,
    fileLike: (file, leg, like) => files.get(file)?.[leg] ?? legFile(file, leg, handedIn(like)),
    put: putLeg,
  };
}

/** Not flown in its chain, or by a worker alone. */
class LegNotReachedError extends Error {
  override readonly name = 'LegNotReachedError';
}

/** What the leg before leaves; throws where the chain ends there, and after a catch, which needs the room of the rail. */
function handOn(file: SkillFile, leg: number, flight: Flight): Handover {
  const link = file.phases[legsOf(file)[leg].before ?? 0];
  if (link.kind !== 'contact') throw new LegNotReachedError(`flight ${leg + 1} begins with a catch`);
  const beds = file.phases.slice(0, legsOf(file)[leg].flight).filter(isOntoBed).length;
  const by = link.limb ?? (link.place === 'vaultTable' ? 'hands' : 'feet');
  if (beds >= MOST_BOUNCES || (flight.touchdown && flight.touchdown.part !== by))
    throw new LegNotReachedError(`flight ${leg + 1} is not flown in its chain`);
  return handToContact(flight);
}

const isOntoBed = (phase: SkillFile['phases'][number]): boolean =>
  phase.kind === 'flight' && phase.end.surface?.kind === 'trampoline';

/** What a leg says it was handed. */
function handedIn(leg: SkillFile): Handover | undefined {
  const [before] = leg.phases;
  if (before.kind !== 'contact' || !before.velocityMPerS) return undefined;
  const { along, up, across = 0 } = before.velocityMPerS;
  return { kind: 'contact', v_WScm_W: [along, up, across], h_Scm_W: before.momentumKgM2PerS ?? [0, 0, 0] };
}

/** Nothing of what the leg begins with is another: what comes before it, who flies, shapes and gravity. */
function isSameUntil(a: SkillFile, b: SkillFile, leg: number): boolean {
  if (a === b) return true;
  const end = legsOf(b)[leg].before ?? 0;
  return (
    a.athlete === b.athlete &&
    a.shapes === b.shapes &&
    a.gravityMPerS2 === b.gravityMPerS2 &&
    b.phases.slice(0, end).every((phase, i) => a.phases[i] === phase)
  );
}
