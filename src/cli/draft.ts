/** The command "draft": a skill from its code or name, that flies to exactly that; or why there is none, and the nearest. */
import { shapes } from '../../presets/index.ts';
import {
  draftSkill,
  fileBeyondStrength,
  fileOfDraft,
  formatSkill,
  nearSkills,
  readAsked,
  readAthlete,
  readFlownCode,
  shapeInRadians,
  wordBeyond,
  wordRefusal,
  wordVerdict,
} from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import { CommandError, NothingFlownError } from './command-error.ts';
import type { DraftCommand } from './draft-args.ts';
import { readAthleteRef } from './read-input.ts';
import { checkApart, writeFiles } from './write-files.ts';

const USUAL_ATHLETE = 'ilse-marrow';
const START = 'a start for editing, not a technique to copy';
const BEYOND = 'With --beyond-strength it is written, marked as such.';

export function runDraft({
  asked: text,
  athlete: given = USUAL_ATHLETE,
  place,
  beyondStrength,
  out,
}: DraftCommand): string {
  const { athlete, ref, inputs } = readAthleteRef(given);
  const wanted = { option: '--out', file: out };
  checkApart([wanted], inputs);
  const asked = readAsked(text, place);
  if (asked.kind === 'offers') {
    const list = asked.offers.map((offer) => `"${offer.text}" (${offer.title})`).join(', ');
    throw new CommandError(`"${text}": ${asked.reason ?? 'more than one skill is meant'}; there are: ${list}`);
  }
  const { spec } = asked;
  const draft = draftSkill(spec, {
    athlete: readAthlete(athlete),
    shapes: Object.fromEntries(Object.entries(shapes).map(([id, shape]) => [id, shapeInRadians(shape)])),
    readCode: readFlownCode,
    nearby: nearSkills,
  });
  const whose = `${spec.title} (${spec.code}, ${spec.place}) for ${athlete.kind === 'human' ? athlete.name : given}`;
  if (draft.kind === 'refused') {
    const { beyond } = draft;
    if (!beyond || !beyondStrength)
      throw new NothingFlownError(`${wordRefusal(text, draft)}${beyond ? ` ${BEYOND}` : ''}`);
    writeFiles([{ ...wanted, pieces: [formatSkill(fileBeyondStrength(beyond, ref))] }]);
    return [whose, wordBeyond(beyond.asks), `written to ${out}: ${START}`, CLOSING, ''].join('\n');
  }
  writeFiles([{ ...wanted, pieces: [formatSkill(fileOfDraft(draft, ref))] }]);
  const { technique, verdict } = draft.found.judged;
  return [
    whose,
    wordVerdict(verdict),
    `${technique.airTime.toFixed(2)} s in the air; angular momentum ${(technique.momentumPerMH2 ?? 0).toFixed(2)} m h^2 per s; ${draft.flights} flights tried`,
    `written to ${out}: ${START}`,
    CLOSING,
    '',
  ].join('\n');
}
