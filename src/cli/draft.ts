/** The command "draft": a skill from its code or name, that flies to exactly that; or why there is none, and the nearest. */
import { shapes } from '../../presets/index.ts';
import {
  draftSkill,
  fileOfDraft,
  formatSkill,
  nearSkills,
  readAsked,
  readAthlete,
  readFlownCode,
  shapeInRadians,
  wordRefusal,
  wordVerdict,
} from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import { CommandError, NothingFlownError } from './command-error.ts';
import type { DraftCommand } from './draft-args.ts';
import { readAthleteRef } from './read-input.ts';
import { checkApart, writeFiles } from './write-files.ts';

const USUAL_ATHLETE = 'ilse-marrow';

export function runDraft({ asked: text, athlete: given = USUAL_ATHLETE, place, out }: DraftCommand): string {
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
  if (draft.kind === 'refused') throw new NothingFlownError(wordRefusal(text, draft));
  writeFiles([{ ...wanted, pieces: [formatSkill(fileOfDraft(draft, ref))] }]);
  const { technique, verdict } = draft.found.judged;
  return [
    `${spec.title} (${spec.code}, ${spec.place}) for ${athlete.kind === 'human' ? athlete.name : given}`,
    wordVerdict(verdict),
    `${technique.airTime.toFixed(2)} s in the air; angular momentum ${(technique.momentumPerMH2 ?? 0).toFixed(2)} m h^2 per s; ${draft.flights} flights tried`,
    `written to ${out}: a start for editing, not a technique to copy`,
    CLOSING,
    '',
  ].join('\n');
}
