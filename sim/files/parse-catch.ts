/** What a skill file says of the catch that ends a flight, in SI units and radians; and the way back. */
import type { CatchAsk, CaughtSwing } from '../skill/catch-ask.ts';
import { CATCH_DEFAULTS } from './catch-defaults.ts';
import { parseSwing } from './parse-start.ts';
import type { FileCatch, FileSwing } from './phase-schema.ts';
import { tidy } from './tidy.ts';
import { writeSwing } from './write-start.ts';

export function parseCatch(c: FileCatch, path: string): CatchAsk {
  const swing = c.swing && parseCaughtSwing(c, c.swing, path);
  return {
    rail: c.rail,
    along: c.alongM ?? 0,
    hands: c.hands ?? 'both',
    gap: c.gapM ?? CATCH_DEFAULTS.gapM,
    closing: c.closingMPerS ?? CATCH_DEFAULTS.closingMPerS,
    armsStiffness: (c.armsKNPerM ?? CATCH_DEFAULTS.armsKNPerM) * 1000,
    ...(swing ? { swing } : {}),
  };
}

/** As a swing of its own, but for how it starts. */
function parseCaughtSwing({ rail }: FileCatch, swing: NonNullable<FileCatch['swing']>, path: string): CaughtSwing {
  const whole: FileSwing = { release: { atS: swing.durationS }, ...swing, kind: 'swing', rail, start: { castDeg: 0 } };
  const { rail: _, start: __, release, ...rest } = parseSwing(whole, `${path}.swing`);
  return { ...rest, ...(swing.release ? { release } : {}) };
}

export function writeCatch({ rail, along, hands, gap, closing, armsStiffness, swing }: CatchAsk): FileCatch {
  const { gapM, closingMPerS, armsKNPerM } = CATCH_DEFAULTS;
  return {
    kind: 'catch',
    rail,
    ...(along === 0 ? {} : { alongM: tidy(along) }),
    ...(hands === 'both' ? {} : { hands }),
    ...(gap === gapM ? {} : { gapM: tidy(gap) }),
    ...(closing === closingMPerS ? {} : { closingMPerS: tidy(closing) }),
    ...(armsStiffness === armsKNPerM * 1000 ? {} : { armsKNPerM: tidy(armsStiffness / 1000) }),
    ...(swing ? { swing: writeCaughtSwing(rail, swing) } : {}),
  };
}

function writeCaughtSwing(rail: CatchAsk['rail'], { release, ...swing }: CaughtSwing): NonNullable<FileCatch['swing']> {
  const whole = {
    rail,
    start: { kind: 'cast', angle: 0 },
    release: release ?? { at: 'time', s: 1 },
    ...swing,
  } as const;
  const { kind: _, rail: __, start: ___, release: written, ...rest } = writeSwing(whole);
  return { ...rest, ...(release ? { release: written } : {}) };
}
