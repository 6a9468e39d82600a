/**
 * The words in braces, read against a skill:
 *   [greatest | mean] readout [in shape] [at event | at 0.45 s | at 30 %] [if assumption]
 * Events: take-off, apex, touchdown; bottom and release of the swing. Times of the flight run from take-off, of the swing
 * to the release (-0.3 s is before it), of the landing from touchdown. Without "at": take-off, bottom, touchdown.
 */

import { isSimulated, SIMULATED, type SimulatedAssumption } from './assumption.ts';
import { columnAt } from './column-at.ts';
import { LONGEST_LINE, MOST_LINES } from './limits.ts';
import { READOUTS, type Readout } from './readouts.ts';
import { quote } from './sheet-fault.ts';
import type { Links, LinkValue } from './sheet-result.ts';
import type { SkillResult } from './skill-result.ts';

/** Every readout that a sheet names, and for lines set against one also what it is under each assumption. */
export function readLinks(lines: readonly string[], result: SkillResult | undefined): Links {
  const found: Record<string, LinkValue> = Object.create(null);
  const put = (text: string): void => {
    found[text] ??= readLink(text, result);
  };
  put('mass');
  put('gravity');
  for (const line of lines.slice(0, MOST_LINES)) {
    if (line.length > LONGEST_LINE) continue;
    const typed = line.split('#')[0];
    for (const [, inner] of typed.matchAll(/\{([^{}]*)\}/g)) {
      const text = inner.trim().replace(/\s+/g, ' ');
      put(text);
      if (/\bvs\b/.test(typed) && !text.includes(' if ')) for (const a of SIMULATED) put(`${text} if ${a}`);
    }
  }
  return found;
}

interface Asked {
  readonly readout: Readout;
  readonly over?: 'greatest' | 'mean';
  readonly shape?: string;
  readonly at?: string;
  readonly assuming?: SimulatedAssumption;
}

/** The value that a link of a sheet, as "flight.duration", leads to; or why there is none. Throws nothing. */
export function readLink(text: string, result: SkillResult | undefined): LinkValue {
  const asked = parseLink(text);
  if (typeof asked === 'string') return { missing: asked };
  if (!result) return { missing: 'no skill is open to read it from' };
  const value = readAsked(asked, result);
  if (typeof value === 'string') return { missing: value };
  const { dimension, unit } = asked.readout;
  return { value, dimension, unit };
}

/** What is asked for, or what is wrong with it. */
function parseLink(text: string): Asked | string {
  const form = /^(?:(greatest|mean) )?(.+?)(?: in (.+?))?(?: at (.+?))?(?: if (.+))?$/.exec(text);
  if (!form) return 'a readout is missing between the braces';
  const [, over, name, shape, at, assuming] = form;
  // a readout's own name may begin with the word
  const full = over === undefined ? name : `${over} ${name}`;
  const whole = READOUTS.find((r) => r.name === full);
  const readout = whole ?? READOUTS.find((r) => r.name === name);
  if (!readout) return `there is no readout ${quote(full)}; there are: ${READOUTS.map((r) => r.name).join(', ')}`;
  if (assuming !== undefined && !isSimulated(assuming))
    return `the simulation cannot assume ${quote(assuming)}; it can: ${SIMULATED.join(', ')}`;
  const mean = whole ? undefined : (over as Asked['over']);
  if (readout.kind === 'whole' && (mean ?? shape ?? at) !== undefined)
    return `${quote(readout.name)} is one value for the whole skill`;
  if (shape !== undefined && !readout.inShape) return `${quote(readout.name)} is not known of a held shape`;
  if (mean !== undefined && at !== undefined) return `either ${quote(mean)} or "at" can be asked for`;
  return {
    readout,
    ...(mean ? { over: mean } : {}),
    ...(shape === undefined ? {} : { shape }),
    ...(at === undefined ? {} : { at }),
    ...(assuming === undefined ? {} : { assuming }),
  };
}

const PARTS = { flight: 'the flight', swing: 'a swing at the bar', landing: 'a landing on the mat' } as const;

function readAsked(asked: Asked, result: SkillResult): number | string {
  const { readout, shape, assuming } = asked;
  if (assuming === 'mean') return readMean(asked, result);
  if (shape !== undefined) {
    const moments = result.shapes && Object.hasOwn(result.shapes, shape) ? result.shapes[shape] : undefined;
    if (!moments || !readout.inShape)
      return `no shape ${quote(shape)} is known; there are: ${Object.keys(result.shapes ?? {}).join(', ') || 'none'}`;
    return readout.inShape(moments);
  }
  if (readout.phase !== 'flight' && !result[readout.phase])
    return `this skill was simulated without ${PARTS[readout.phase]}`;
  let read = readout.read;
  let from = result;
  if (assuming !== undefined) {
    const own = readout.assuming?.[assuming];
    const held = assuming === 'rigid shape' ? result.rigid : assuming === 'straight rod' ? result.straight : undefined;
    if (own) read = own;
    else if (held && readout.phase === 'flight') from = { ...result, ...held };
    else return `the simulation cannot assume it of ${quote(readout.name)}`;
  }
  const value = readOver(asked, read, from);
  if (typeof value === 'string') return value;
  return value === undefined || !Number.isFinite(value) ? `${quote(readout.name)} is not defined there` : value;
}

/** What a mean would be: of the same phase, in place of a peak or of one instant. */
function readMean({ readout, shape }: Asked, result: SkillResult): number | string {
  if (readout.kind === 'whole' || shape !== undefined)
    return `the simulation cannot assume it of ${quote(readout.name)}`;
  return readAsked({ readout, over: 'mean' }, result);
}

function readOver({ readout, over, at }: Asked, read: Readout['read'], from: SkillResult): number | string | undefined {
  if (readout.kind === 'whole') return read(from, 0);
  if (over === undefined) {
    const t = timeOf(at, readout, from);
    return typeof t === 'string' ? t : read(from, t);
  }
  const times = timesOf(readout, from);
  const values = [...times].map((t) => read(from, t));
  if (over === 'greatest') {
    const known = values.filter((v) => v !== undefined);
    return known.length === 0 ? undefined : known.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  }
  let sum = 0;
  for (let i = 1; i < times.length; i++) {
    const [a, b] = [values[i - 1], values[i]];
    if (a === undefined || b === undefined) return undefined;
    sum += ((a + b) / 2) * (times[i] - times[i - 1]);
  }
  return sum / (times[times.length - 1] - times[0]);
}

/** Rows to go over: all of the phase; of a landing up to the stop. */
function timesOf(readout: Readout, from: SkillResult): Float64Array {
  if (readout.phase === 'swing') return from.swing?.times ?? new Float64Array();
  if (readout.phase === 'flight') return from.frames.t;
  const { landing } = from;
  const stop = landing?.stoppingTime ?? Number.POSITIVE_INFINITY;
  return (landing?.times ?? new Float64Array()).filter((t) => t <= stop);
}

function timeOf(at: string | undefined, readout: Readout, from: SkillResult): number | string {
  const typed = at === undefined ? undefined : /^(-?\d+(?:\.\d+)?) ?(s|ms|%)$/.exec(at);
  const times = timesOf(readout, from);
  if (typed) {
    const value = Number(typed[1]);
    const [first, last] = [times[0], times[times.length - 1]];
    const t = typed[2] === '%' ? first + ((last - first) * value) / 100 : typed[2] === 'ms' ? value / 1000 : value;
    if (columnAt(times, times, t) === undefined)
      return `${quote(at ?? '')} is outside the ${readout.phase}: ${first.toFixed(3)} to ${last.toFixed(3)} s`;
    return t;
  }
  const events: Readonly<Record<string, number | undefined>> =
    readout.phase === 'swing'
      ? { bottom: from.swing?.bottom, release: from.swing?.release }
      : readout.phase === 'landing'
        ? { touchdown: 0 }
        : {
            'take-off': 0,
            takeoff: 0,
            apex: from.flight.apex <= from.flight.duration ? from.flight.apex : undefined,
            touchdown: from.flight.duration,
          };
  const event = at ?? Object.keys(events)[0];
  if (!Object.hasOwn(events, event))
    return `${quote(event)} is no instant of the ${readout.phase}; there are: ${Object.keys(events).join(', ')}, or a time as 0.45 s`;
  return events[event] ?? `this ${readout.phase} has no ${event}`;
}
