/**
 * Difficulty of a trampoline code, counted in tenths so that it adds up exactly.
 * Source: FIG Code of Points, Trampoline Gymnastics 2025-28, part I, 17.1.
 */
import type { CodeDirection, TrampolineCode } from './trampoline-code.ts';

interface DifficultyPart {
  readonly what: string;
  readonly tenths: number;
}

/** Value of n complete somersaults, tenths. */
const COMPLETE = [0, 5, 10, 16, 22];
const NAMES = ['', 'single', 'double', 'triple', 'quadruple'];
const BACKWARD = [0, 0, 1, 2, 3];
/** A multiple somersault: half twists beyond `from` are worth `each` more, tenths. */
const MANY_TWISTS = [undefined, undefined, { from: 4, each: 1 }, { from: 2, each: 2 }, { from: 0, each: 2 }];

/** What the difficulty is made of; parts worth nothing are left out. */
export function listDifficulty(code: TrampolineCode, direction: CodeDirection | ''): DifficultyPart[] {
  const { quarters, shape } = code;
  const whole = Math.floor(quarters / 4);
  const left = quarters - 4 * whole;
  const twists = code.halfTwists.reduce((a, b) => a + b, 0);
  const extended = shape !== 'tuck';
  const many = MANY_TWISTS[whole];
  const parts: DifficultyPart[] = [
    { what: `${NAMES[whole]} somersault`, tenths: COMPLETE[whole] },
    { what: left > 1 ? `${left} quarter somersaults` : `${left} quarter somersault`, tenths: left },
    { what: twists > 1 ? `${twists} half twists` : `${twists} half twist`, tenths: twists },
    // the straight jump has no shape to show
    { what: 'jump in a shape', tenths: quarters === 0 && twists === 0 && shape !== 'straight' ? 1 : 0 },
    { what: `${shape}, single without twist`, tenths: whole === 1 && twists === 0 && extended ? 1 : 0 },
    { what: `${shape}, each somersault of a multiple`, tenths: whole >= 2 && extended ? whole : 0 },
    { what: `backward ${NAMES[whole]}`, tenths: direction === 'backward' ? BACKWARD[whole] : 0 },
    { what: `half twists beyond ${many?.from ?? 0}`, tenths: many ? Math.max(0, twists - many.from) * many.each : 0 },
  ];
  return parts.filter((p) => p.tenths > 0);
}

/** Difficulty of a trampoline skill in points, 0.1 for each quarter somersault and half twist with what the code adds. */
export const calcDifficulty = (code: TrampolineCode, direction: CodeDirection | ''): number =>
  listDifficulty(code, direction).reduce((sum, p) => sum + p.tenths, 0) / 10;

/** "4 4 /" with its difficulty always in tenths: 0.9. */
export const formatDifficulty = (difficulty: number): string => difficulty.toFixed(1);
