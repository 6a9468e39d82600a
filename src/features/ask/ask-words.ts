/** Inputs, results and units of a search in the words and numbers of the page. */

import type { InputUnit, ResultUnit, SkillSpec } from '../../../sim/index.ts';
import { DEG, RAD, REV } from '../../../sim/math/angles.ts';
import { wordJoint, wordPart } from '../../app/say/body-words.ts';
import type { BlockSpan } from '../../document/spans.ts';
import type { AskInput } from '../../engine/ask.ts';
import { formatNumber, parseNumber } from '../../ui/numbers.ts';
import { parseQuantity, type QuantityKind, sayNumber, unitBeside } from '../../ui/units.ts';
import { nameStart } from './start-names.ts';
import { askTexts as t } from './words.ts';

export type AskUnit = InputUnit | ResultUnit;

interface ShownUnit {
  readonly quantity?: QuantityKind;
  /** where it is no quantity of the page */
  readonly unit?: string;
  /** page's own = factor x SI */
  readonly factor: number;
  readonly decimals: number;
  /** of an arrow key, SI */
  readonly step: number;
}

const SHOWN: Readonly<Record<AskUnit, ShownUnit>> = {
  kgM2PerS: { quantity: 'momentum', factor: 1, decimals: 1, step: 0.5 },
  rad: { quantity: 'angle', factor: DEG, decimals: 1, step: RAD },
  radPerS: { quantity: 'rate', factor: 1 / REV, decimals: 2, step: 0.1 * REV },
  m: { quantity: 'length', factor: 1, decimals: 2, step: 0.02 },
  s: { quantity: 'time', factor: 1, decimals: 3, step: 0.005 },
  mPerS: { quantity: 'speed', factor: 1, decimals: 2, step: 0.05 },
  kg: { quantity: 'mass', factor: 1, decimals: 1, step: 0.5 },
  rev: { quantity: 'turns', factor: 1, decimals: 2, step: 0.01 },
  count: { factor: 1, decimals: 3, step: 0.01 },
  share: { factor: 1, decimals: 2, step: 0.01 },
  // a giant begins with a few degrees a second
  swingRadPerS: { quantity: 'jointRate', factor: DEG, decimals: 1, step: RAD },
  bodyWeights: { unit: t.bodyWeights, factor: 1, decimals: 2, step: 0.05 },
};

/** A share of tries. */
export const percent = (share: number): string => formatNumber(100 * share, 0);

export const stepOf = (unit: AskUnit): number => SHOWN[unit].step;
export const decimalsIn = (unit: AskUnit): number => SHOWN[unit].decimals;

/** A late hand is said to 0.1 ms: a millisecond of it is most of a quarter twist. */
export const decimalsOfInput = (id: string, unit: AskUnit): number =>
  id === 'swing.lateHand' ? 4 : SHOWN[unit].decimals;

export function numberIn(unit: AskUnit, value: number, decimals = SHOWN[unit].decimals): string {
  const { quantity, factor } = SHOWN[unit];
  const text = quantity ? sayNumber(quantity, value * factor, decimals) : formatNumber(value * factor, decimals);
  return text;
}

export const unitIn = (unit: AskUnit): string => {
  const { quantity, unit: own = '' } = SHOWN[unit];
  return quantity ? unitBeside(quantity) : own;
};

export function sayIn(unit: AskUnit, value: number, decimals?: number): string {
  const number = numberIn(unit, value, decimals);
  const word = unitIn(unit);
  return word.startsWith('°') ? number + word : `${number}${word ? ` ${word}` : ''}`;
}

/** SI; NaN when it is no such value. */
export function parseIn(unit: AskUnit, typed: string): number {
  const { quantity, factor } = SHOWN[unit];
  return (quantity ? parseQuantity(quantity, typed) : parseNumber(typed)) / factor;
}

/** "+0.4 kg·m²/s", "0.03 s later" */
export function sayChange(input: AskInput, by: number): string {
  const { id, unit } = input;
  const size = sayIn(unit, Math.abs(by), decimalsOfInput(id, unit));
  if (input.eventS !== undefined || isInstant(input)) return by > 0 ? t.later(size) : t.earlier(size);
  if (unit === 's') return by > 0 ? t.longer(size) : t.shorter(size);
  return `${by > 0 ? '+' : '\u2212'}${size}`;
}

/** A time of the swing, counted from its start. */
const isInstant = ({ id, unit }: AskInput): boolean => unit === 's' && /^swing\.(releaseTime|key:\d+\.at)$/.test(id);

/** Too little to be shown in its decimals. */
export const isNothing = ({ id, unit }: AskInput, by: number): boolean =>
  Math.abs(by) * SHOWN[unit].factor < 0.5 * 10 ** -decimalsOfInput(id, unit);

export function nameInput(id: string, spans: readonly BlockSpan[], spec: SkillSpec): string {
  const given = t.takeoffs[id] ?? t.bodies[id] ?? nameStart(id, spec);
  if (given) return given;
  const [, block, what, , angle] = /^block:(\d+)\.(\w+)(:(\w+))?$/.exec(id) ?? [];
  if (block) {
    const span = spans.find((s) => s.index === Number(block) - 1);
    const title = span?.word ?? spec.blocks[Number(block) - 1]?.shape ?? block;
    // the same shape twice: distinguished by its place
    const twice = spans.filter((s) => s.word === title).length > 1 ? ` (${block})` : '';
    const shape = title + twice;
    if (what === 'moveStart') return t.begins(shape);
    if (what === 'moveTime') return t.takes(shape);
    if (what === 'start') return t.reached(shape);
    if (what === 'end') return t.heldUntil(shape);
    return t.angleIn(wordJoint(angle ?? ''), shape);
  }
  const [, key, field] = /^key:(\d+)\.(time|angle)$/.exec(id) ?? [];
  if (key) {
    const joint = wordJoint(spec.keys[Number(key) - 1]?.angle ?? '');
    return field === 'time' ? t.keyTime(joint, key) : t.keyAngle(joint, key);
  }
  const [, part, value] = /^segment:(\w+)\.([\w.]+)$/.exec(id) ?? [];
  if (part && t.segment[value]) return t.segment[value](wordPart(part === 'lowerTrunk' ? 'pelvis' : part));
  return id;
}

export type InputGroup = keyof typeof t.groups;
export function groupOf({ id, unit, level }: AskInput): InputGroup {
  if (id.startsWith('swing.')) return 'swing';
  if (id.startsWith('contact.')) return 'contact';
  if (level === 'takeoff') return 'takeoff';
  if (level === 'body') return id.startsWith('segment:') ? 'segments' : 'body';
  return unit === 's' ? 'times' : 'angles';
}
