/** Which rows of the strength table a human's named angles have, towards + and towards -. */
import { type ActionStrength, makeActionStrength } from './action-strength.ts';
import type { Sex } from './deleva.ts';
import type { StrengthRow } from './strength-sets.ts';

/** Share of the still torque that stretched muscle holds: legs in whole bodies 1.0, arms up to 1.2; the trunk as one library has it. */
const PLATEAU = { leg: 1, arm: 1.2, trunk: 1.1 } as const;

const ROWS: Readonly<Record<string, readonly [StrengthRow, StrengthRow, keyof typeof PLATEAU]>> = {
  neckFlexion: ['neckBend', 'neckBend', 'trunk'],
  neckSideBend: ['neckBend', 'neckBend', 'trunk'],
  neckTurn: ['neckTurn', 'neckTurn', 'trunk'],
  thoracicFlexion: ['trunkFlexion', 'trunkExtension', 'trunk'],
  thoracicSideBend: ['trunkSideBend', 'trunkSideBend', 'trunk'],
  thoracicTurn: ['trunkTurn', 'trunkTurn', 'trunk'],
  lumbarFlexion: ['trunkFlexion', 'trunkExtension', 'trunk'],
  lumbarSideBend: ['trunkSideBend', 'trunkSideBend', 'trunk'],
  lumbarTurn: ['trunkTurn', 'trunkTurn', 'trunk'],
  shoulderPlane: ['shoulderForward', 'shoulderBack', 'arm'],
  shoulderElevation: ['shoulderFlexion', 'shoulderExtension', 'arm'],
  shoulderTurn: ['shoulderInward', 'shoulderOutward', 'arm'],
  elbowFlexion: ['elbowFlexion', 'elbowExtension', 'arm'],
  forearmPronation: ['forearmTurn', 'forearmTurn', 'arm'],
  wristFlexion: ['wristFlexion', 'wristExtension', 'arm'],
  hipFlexion: ['hipFlexion', 'hipExtension', 'leg'],
  hipAbduction: ['hipAbduction', 'hipAbduction', 'leg'],
  hipTurn: ['hipTurn', 'hipTurn', 'leg'],
  kneeFlexion: ['kneeFlexion', 'kneeExtension', 'leg'],
  anklePlantarFlexion: ['plantarFlexion', 'dorsiflexion', 'leg'],
};

export interface StrengthSize {
  readonly sex: Sex;
  readonly mass: number;
  readonly stature: number;
}

/** `name`: of the angle, without its side. The table counts an ankle's angle upwards, the body downwards. */
export function makeAngleStrength(name: string, size: StrengthSize): readonly [ActionStrength, ActionStrength] {
  const [plus, minus, part] = ROWS[name];
  const sign = name === 'anklePlantarFlexion' ? -1 : 1;
  const make = (row: StrengthRow, towards: 1 | -1): ActionStrength =>
    makeActionStrength(row, towards, sign, PLATEAU[part], size);
  return [make(plus, 1), make(minus, -1)];
}
