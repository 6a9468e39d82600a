/**
 * The typed values of take-off and athlete: how each is read from the document, written into it, and what range it may
 * have. Speeds and leans are shown unsigned with their word; the sign lives in the document (+X forward, + backward turn).
 */
import type { Athlete, FileTakeoff, SkillFile } from '../../sim/index.ts';
import { flightOf } from '../../sim/math/phases.ts';
import { changeAthlete, changeAttitude, changeTakeoff, changeVelocity } from './edits.ts';
import { fieldTexts } from './words.ts';

export interface Field {
  readonly id: string;
  readonly group: 'takeoff' | 'athlete';
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly decimals: number;
  /** shown on the bench at once, or only in the sheet of all values */
  readonly main: boolean;
  /** a value of two directions: the words of + and -; the label tells which one it is now */
  readonly sides?: readonly [string, string];
  write(file: SkillFile, value: number): SkillFile;
}

type Spec = Omit<Field, 'write'> & { write: Field['write'] };

export function getFields(file: SkillFile, athlete: Athlete): Field[] {
  return [...getTakeoffFields(file), ...getAthleteFields(athlete)];
}

function getTakeoffFields(file: SkillFile): Spec[] {
  const t = fieldTexts;
  const { takeoff } = flightOf(file);
  const gravity: Spec = {
    id: 'gravity',
    group: 'takeoff',
    label: t.gravity,
    unit: 'm/s²',
    value: file.gravityMPerS2 ?? 9.81,
    min: 0,
    max: 30,
    step: 0.01,
    decimals: 2,
    main: false,
    write: (f, v) => ({ ...f, gravityMPerS2: v }),
  };
  // a swing gives all of the take-off
  if (!takeoff) return [gravity];
  const { velocityMPerS, momentum } = takeoff;
  const { along, up, across = 0 } = velocityMPerS ?? { along: 0, up: 0 };
  const attitude = takeoff.attitudeDeg ?? {};
  const lean = -(attitude.somersault ?? 0);
  const group = 'takeoff';
  const speed = { group, unit: 'm/s', min: -20, max: 20, step: 0.05, decimals: 2 } as const;
  const angle = { group, unit: '°', min: -360, max: 360, step: 1, decimals: 0 } as const;
  const centre = takeoff.massCentreHeightM !== undefined;
  const alongWord = along < 0 ? -1 : 1;
  const leanWord = lean < 0 ? -1 : 1;
  const { tilt = 0, twist = 0 } = attitude;
  const signOf = (v: number): 1 | -1 => (v < 0 ? -1 : 1);
  const all: (Spec | undefined)[] = [
    {
      id: 'height',
      group,
      label: centre ? t.centreOfMass : t.lowestPoint,
      unit: 'm',
      value: (centre ? takeoff.massCentreHeightM : takeoff.lowestPointHeightM) ?? 0,
      min: centre ? 0.1 : -0.5,
      max: 30,
      step: 0.01,
      decimals: 2,
      main: true,
      write: (f, v) => changeTakeoff(f, centre ? { massCentreHeightM: v } : { lowestPointHeightM: v }),
    },
    {
      ...speed,
      id: 'up',
      label: up < 0 ? t.speedDown : t.speedUp,
      value: Math.abs(up),
      sides: t.sides.up,
      main: true,
      write: (f, v) => changeVelocity(f, { up: signOf(up) * v }),
    },
    {
      ...speed,
      id: 'along',
      label: along < 0 ? t.speedBackward : t.speedForward,
      value: alongWord * along,
      sides: t.sides.forward,
      min: -15,
      max: 15,
      main: true,
      write: (f, v) => changeVelocity(f, { along: alongWord * v }),
    },
    {
      ...angle,
      id: 'lean',
      label: lean < 0 ? t.leanBackward : t.leanForward,
      value: leanWord * lean,
      sides: t.sides.forward,
      main: true,
      write: (f, v) => changeAttitude(f, { somersault: -leanWord * v }),
    },
    momentum && getMomentumField(momentum),
    {
      ...angle,
      id: 'tilt',
      label: tilt < 0 ? t.tiltLeft : t.tiltRight,
      value: Math.abs(tilt),
      sides: t.sides.right,
      min: -75,
      max: 75,
      main: false,
      write: (f, v) => changeAttitude(f, { tilt: signOf(tilt) * v }),
    },
    {
      ...angle,
      id: 'twist',
      label: twist < 0 ? t.twistRight : t.twistLeft,
      value: Math.abs(twist),
      sides: t.sides.right,
      main: false,
      write: (f, v) => changeAttitude(f, { twist: signOf(twist) * v }),
    },
    {
      ...speed,
      id: 'across',
      label: across < 0 ? t.speedLeft : t.speedRight,
      value: Math.abs(across),
      sides: t.sides.right,
      min: -15,
      max: 15,
      main: false,
      write: (f, v) => changeVelocity(f, { across: signOf(across) * v }),
    },
    gravity,
  ];
  // a known contact gives the velocity
  const given = velocityMPerS ? [] : ['up', 'along', 'across'];
  return all.filter((field) => field !== undefined).filter(({ id }) => !given.includes(id));
}

/** Turning is shown unsigned with its word: + is backward for an athlete who faces +X. Typing a minus turns it round. */
function getMomentumField(m: NonNullable<FileTakeoff['momentum']>): Spec {
  const t = fieldTexts;
  const common = { id: 'momentum', group: 'takeoff', main: true, sides: t.sides.forward } as const;
  const word = (v: number): string => (v === 0 ? '' : v > 0 ? t.ways.backward : t.ways.forward);
  const sign = (v: number): number => (v < 0 ? -1 : 1);
  if ('vectorKgM2PerS' in m) {
    const [x, y, z] = m.vectorKgM2PerS;
    return {
      ...common,
      label: t.momentum(word(z)),
      unit: 'kg·m²/s',
      value: Math.abs(z),
      min: -300,
      max: 300,
      step: 0.5,
      decimals: 1,
      write: (f, v) => changeTakeoff(f, { momentum: { vectorKgM2PerS: [x, y, sign(z) * v] } }),
    };
  }
  if ('ratesRevPerS' in m) {
    const rates = m.ratesRevPerS;
    return {
      ...common,
      label: t.rate(word(rates.somersault)),
      unit: 'rev/s',
      value: Math.abs(rates.somersault),
      min: -6,
      max: 6,
      step: 0.01,
      decimals: 2,
      write: (f, v) =>
        changeTakeoff(f, { momentum: { ratesRevPerS: { ...rates, somersault: sign(rates.somersault) * v } } }),
    };
  }
  const turns = m.straightSomersaults;
  return {
    ...common,
    label: t.straight,
    unit: word(turns),
    value: Math.abs(turns),
    min: -6,
    max: 6,
    step: 0.01,
    decimals: 2,
    write: (f, v) => changeTakeoff(f, { momentum: { straightSomersaults: sign(turns) * v } }),
  };
}

function getAthleteFields(athlete: Athlete): Spec[] {
  if (athlete.kind !== 'human') return [];
  const t = fieldTexts;
  const group = 'athlete';
  return [
    {
      id: 'stature',
      group,
      label: t.stature,
      unit: 'm',
      value: athlete.statureM,
      min: 0.9,
      max: 2.3,
      step: 0.01,
      decimals: 2,
      main: true,
      write: (f, v) => changeAthlete(f, athlete, { statureM: v }),
    },
    {
      id: 'mass',
      group,
      label: t.mass,
      unit: 'kg',
      value: athlete.massKg,
      min: 15,
      max: 200,
      step: 0.5,
      decimals: 1,
      main: true,
      write: (f, v) => changeAthlete(f, athlete, { massKg: v }),
    },
    {
      id: 'age',
      group,
      label: athlete.ageYears === undefined ? t.noAge : t.age,
      unit: t.years,
      // from 18 years on a body is an adult's, as one without an age is
      value: athlete.ageYears ?? 18,
      min: 3,
      max: 100,
      step: 1,
      decimals: 0,
      main: false,
      write: (f, v) => changeAthlete(f, athlete, { ageYears: v }),
    },
  ];
}
