/**
 * A leg of a chain as a skill file of its own: one flight with what comes before and after it, complete, with what the leg before hands over written in as it
 * is, not rounded. And the way back: an edited leg put into its chain, without what the leg before gave (docs/decisions/0023-chain.md).
 */
import { legsOf } from '../math/phases.ts';
import type { Handover } from '../skill/chain.ts';
import type { FileFlight, FileSwing } from './phase-schema.ts';
import type { SkillFile } from './skill-schema.ts';
import { writeCaught } from './write-start.ts';

type FilePhase = SkillFile['phases'][number];

/** `handed`: by the leg before; of the first leg there is none. */
export function legFile(file: SkillFile, leg: number, handed?: Handover): SkillFile {
  const places = legsOf(file);
  const place = places[leg];
  if (!place) throw new RangeError(`leg ${leg} of ${places.length}`);
  if (places.length === 1) return file;
  const { target, ...rest } = file;
  const { title: _, target: own, ...flight } = file.phases[place.flight] as FileFlight;
  const wanted = own ?? (leg === places.length - 1 ? target : undefined);
  const before = place.before === undefined ? undefined : file.phases[place.before];
  const after = place.after === undefined ? undefined : file.phases[place.after];
  return {
    ...rest,
    phases: [
      ...(before ? [leg === 0 ? before : handTo(before, handed)] : []),
      flight,
      // a contact belongs to the leg that it begins
      ...(after && after.kind !== 'contact' ? [after] : []),
    ],
    ...(wanted ? { target: wanted } : {}),
  };
}

function handTo(before: FilePhase, handed: Handover | undefined): FilePhase {
  if (before.kind === 'contact') {
    const [along, up, across] = handed?.kind === 'contact' ? handed.v_WScm_W : [0, 0, 0];
    const h = handed?.kind === 'contact' ? handed.h_Scm_W : [0, 0, 0];
    return { ...before, velocityMPerS: { along, up, across }, momentumKgM2PerS: [h[0], h[1], h[2]] };
  }
  if (before.kind !== 'catch' || !before.swing?.release) throw new RangeError(`a ${before.kind} between two flights`);
  const { swing, rail } = before;
  const start: FileSwing['start'] =
    handed?.kind === 'catch'
      ? {
          caught: writeCaught(handed.start),
        }
      : { castDeg: 0 };
  return { kind: 'swing', rail, ...swing, start, release: before.swing.release };
}

/** What belongs to the whole file (athlete, shapes, title ...) is taken from the leg. */
export function putLeg(file: SkillFile, leg: number, is: SkillFile): SkillFile {
  const places = legsOf(file);
  if (places.length === 1) return is;
  const place = places[leg];
  const [now] = legsOf(is);
  const isLast = leg === places.length - 1;
  const own = file.phases[place.flight] as FileFlight;
  const hasOwnTarget = own.target !== undefined || !isLast;
  const { target, ...rest } = is;
  const flight: FilePhase = {
    ...(is.phases[now.flight] as FileFlight),
    ...(own.title === undefined ? {} : { title: own.title }),
    ...(hasOwnTarget && target ? { target } : {}),
  };
  const before = now.before === undefined ? undefined : is.phases[now.before];
  const after = now.after === undefined ? undefined : is.phases[now.after];
  const link = place.before === undefined ? undefined : file.phases[place.before];
  const end = place.after === undefined ? undefined : file.phases[place.after];
  const of = (phase: FilePhase | undefined): FilePhase[] => (phase ? [phase] : []);
  const wanted = hasOwnTarget ? file.target : target;
  return {
    ...rest,
    phases: [
      ...file.phases.slice(0, place.before ?? place.flight),
      ...of(leg === 0 ? before : takeBack(link, before)),
      flight,
      ...of(isLast || (end?.kind === 'catch' && after?.kind === 'catch') ? after : end),
      ...file.phases.slice((place.after ?? place.flight) + 1),
    ],
    ...(wanted ? { target: wanted } : {}),
  };
}

/** What a leg says of its link to the leg before, without what was handed over. */
function takeBack(link: FilePhase | undefined, now: FilePhase | undefined): FilePhase | undefined {
  if (link?.kind === 'contact' && now?.kind === 'contact') {
    const { velocityMPerS: _, momentumKgM2PerS: __, ...contact } = now;
    return contact;
  }
  if (link?.kind === 'catch' && now?.kind === 'swing') {
    const { kind: _, rail, start: __, ...swing } = now;
    return { ...link, rail, swing };
  }
  return link;
}
