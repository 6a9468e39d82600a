/**
 * The typed values of take-off and athlete: how each is read from the document, written into it, and what range it may
 * have. Speeds and leans are shown unsigned with their word; the sign lives in the document (+X forward, + backward turn).
 */
import type { Athlete, FileTakeoff, HumanAthlete, Jump, SkillFile } from '../../sim/index.ts';
import { flightOf } from '../../sim/math/phases.ts';
import { changeAthlete, changeAttitude, changeTakeoff, changeVelocity } from './edits.ts';
import { withFlight } from './phases.ts';
import { fieldTexts } from './words.ts';

type Momentum = NonNullable<FileTakeoff['momentum']>;
type TurnBy = 'momentum' | 'straight' | 'rate';

/** Of a take-off one value is typed and the others follow: what only the flight of the document can answer. */
export interface JumpEdits {
  /** the upward speed of an air time; throws an Error that says which there are */
  upFor(airTime: number): number;
  /** what the document, edited, has to state for its angular momentum to stay */
  keepMomentum(edited: SkillFile): FileTakeoff;
  turnBy(by: TurnBy, value: number): Momentum;
  /** what the document states with another athlete, for what is to stay */
  carryOver(edited: SkillFile): FileTakeoff;
}

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

/** `jump`: of the flight of this file; without it only what the file states is listed. `by`: to write them, too. */
export function getFields(file: SkillFile, athlete: Athlete, jump?: Jump, by?: JumpEdits): Field[] {
  return [...getTakeoffFields(file, jump, by), ...getAthleteFields(athlete, by)];
}

const signOf = (v: number): 1 | -1 => (v < 0 ? -1 : 1);

function getTakeoffFields(file: SkillFile, jump: Jump | undefined, by: JumpEdits | undefined): Spec[] {
  const t = fieldTexts;
  /** the angular momentum stays: the landing is short or past instead */
  const keep = (edited: SkillFile): SkillFile => (by ? changeTakeoff(edited, by.keepMomentum(edited)) : edited);
  const { takeoff, end } = flightOf(file);
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
    write: (f, v) => keep({ ...f, gravityMPerS2: v }),
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
  const gravityNow = file.gravityMPerS2 ?? 9.81;
  const all: (Spec | undefined)[] = [
    jump && !isCaught(file)
      ? {
          id: 'airTime',
          group,
          label: t.airTime,
          unit: 's',
          value: jump.airTime,
          min: 0.05,
          max: 10,
          step: 0.01,
          decimals: 2,
          main: true,
          write: (f, v) =>
            keep(
              jump.isTimed
                ? withFlight(f, { end: { ...end, durationS: v } })
                : by
                  ? changeVelocity(f, { up: by.upFor(v) })
                  : f,
            ),
        }
      : undefined,
    gravityNow > 0
      ? {
          id: 'rise',
          group,
          label: t.rise,
          unit: 'm',
          value: Math.max(up, 0) ** 2 / (2 * gravityNow),
          min: 0,
          max: 20,
          step: 0.01,
          decimals: 2,
          main: true,
          write: (f, v) => keep(changeVelocity(f, { up: Math.sqrt(2 * gravityNow * v) })),
        }
      : undefined,
    {
      ...speed,
      id: 'up',
      label: up < 0 ? t.speedDown : t.speedUp,
      value: Math.abs(up),
      sides: t.sides.up,
      main: true,
      write: (f, v) => keep(changeVelocity(f, { up: signOf(up) * v })),
    },
    ...(momentum ? getTurnFields(momentum, jump, by) : []),
    {
      ...speed,
      id: 'along',
      label: along < 0 ? t.speedBackward : t.speedForward,
      value: alongWord * along,
      sides: t.sides.forward,
      min: -15,
      max: 15,
      main: false,
      write: (f, v) => changeVelocity(f, { along: alongWord * v }),
    },
    {
      ...angle,
      id: 'lean',
      label: lean < 0 ? t.leanBackward : t.leanForward,
      value: leanWord * lean,
      sides: t.sides.forward,
      main: false,
      write: (f, v) => changeAttitude(f, { somersault: -leanWord * v }),
    },
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
      main: false,
      write: (f, v) => keep(changeTakeoff(f, centre ? { massCentreHeightM: v } : { lowestPointHeightM: v })),
    },
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
  const given = velocityMPerS ? [] : ['airTime', 'rise', 'up', 'along', 'across'];
  return all.filter((field) => field !== undefined).filter(({ id }) => !given.includes(id));
}

const isCaught = (file: SkillFile): boolean => file.phases.some(({ kind }) => kind === 'catch');

/** What the file states of its momentum, where no flight says the rest. */
function statedTurn(m: Momentum): Partial<Record<TurnBy, number>> {
  if ('vectorKgM2PerS' in m) return { momentum: m.vectorKgM2PerS[2] };
  return 'ratesRevPerS' in m ? { rate: m.ratesRevPerS.somersault } : { straight: m.straightSomersaults };
}

/** Another momentum about the somersault axis, in the kind that the file has. */
function writeTurn(m: Momentum, v: number): Momentum {
  if ('vectorKgM2PerS' in m) return { vectorKgM2PerS: [m.vectorKgM2PerS[0], m.vectorKgM2PerS[1], v] };
  return 'ratesRevPerS' in m ? { ratesRevPerS: { ...m.ratesRevPerS, somersault: v } } : { straightSomersaults: v };
}

/** All of an angular momentum that is less about the somersault axis than about others, as of a jump with a turn: its direction stays. */
function getWholeTurn(m: Momentum): Spec | undefined {
  if (!('vectorKgM2PerS' in m)) return undefined;
  const [x, y, z] = m.vectorKgM2PerS;
  const size = Math.hypot(x, y, z);
  if (!(Math.hypot(x, y) > Math.abs(z))) return undefined;
  return {
    id: 'rotation',
    group: 'takeoff',
    label: fieldTexts.momentum(''),
    unit: 'kg·m²/s',
    value: size,
    min: 0.1,
    max: 300,
    step: 0.1,
    decimals: 2,
    main: true,
    write: (f, v) =>
      changeTakeoff(f, { momentum: { vectorKgM2PerS: [(x * v) / size, (y * v) / size, (z * v) / size] } }),
  };
}

/** Turning is shown unsigned with its word: + is backward for an athlete who faces +X. Typing a minus turns it round. */
function getTurnFields(m: Momentum, jump: Jump | undefined, by: JumpEdits | undefined): Spec[] {
  const t = fieldTexts;
  const turn: Partial<Record<TurnBy, number>> = jump ?? statedTurn(m);
  const whole = getWholeTurn(m);
  const make = (id: TurnBy, v: number, rest: Pick<Field, 'label' | 'unit' | 'max' | 'step' | 'decimals'>): Spec => ({
    ...rest,
    id,
    group: 'takeoff',
    sides: t.sides.forward,
    value: Math.abs(v),
    min: -rest.max,
    main: (id === 'momentum' && !whole) || !jump,
    write: (f, typed) => {
      const signed = signOf(v) * typed;
      return changeTakeoff(f, { momentum: by ? by.turnBy(id, signed) : writeTurn(m, signed) });
    },
  });
  const word = (v: number): string => (v === 0 ? '' : v > 0 ? t.ways.backward : t.ways.forward);
  const { momentum, straight, rate } = turn;
  return [
    ...(whole ? [whole] : []),
    ...(momentum === undefined
      ? []
      : [
          make('momentum', momentum, {
            label: t.momentum(word(momentum)),
            unit: 'kg·m²/s',
            max: 300,
            step: 0.5,
            decimals: 1,
          }),
        ]),
    ...(straight === undefined
      ? []
      : [make('straight', straight, { label: t.straight, unit: word(straight), max: 6, step: 0.01, decimals: 2 })]),
    ...(rate === undefined
      ? []
      : [make('rate', rate, { label: t.rate, unit: 'rev/s', max: 6, step: 0.01, decimals: 2 })]),
  ];
}

function getAthleteFields(athlete: Athlete, by: JumpEdits | undefined): Spec[] {
  if (athlete.kind !== 'human') return [];
  const t = fieldTexts;
  const group = 'athlete';
  const change = (f: SkillFile, part: Partial<HumanAthlete>): SkillFile => {
    const edited = changeAthlete(f, athlete, part);
    return by ? changeTakeoff(edited, by.carryOver(edited)) : edited;
  };
  return [
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
      write: (f, v) => change(f, { ageYears: v }),
    },
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
      write: (f, v) => change(f, { statureM: v }),
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
      write: (f, v) => change(f, { massKg: v }),
    },
  ];
}
