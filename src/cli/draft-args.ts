/** The arguments of "draft". */
import { parseArgs } from 'node:util';
import type { DraftPlace } from '../../sim/index.ts';
import { CommandError } from './command-error.ts';
import { attempt, one } from './margin-args.ts';

export interface DraftCommand {
  readonly kind: 'draft';
  /** a code, a dive number or a name */
  readonly asked: string;
  readonly athlete?: string;
  readonly place?: DraftPlace;
  /** what is refused for strength alone is written, marked */
  readonly beyondStrength?: true;
  readonly out: string;
}

const PLACES: readonly DraftPlace[] = ['floor', 'trampoline', 'board', 'platform'];

export function parseDraft(argv: readonly string[]): DraftCommand {
  const { values, positionals } = attempt('draft', () =>
    parseArgs({
      args: [...argv],
      allowPositionals: true,
      strict: true,
      options: { athlete: one, place: one, out: one, 'beyond-strength': { type: 'boolean' } },
    }),
  );
  const asked = positionals.join(' ').trim();
  if (asked === '') throw new CommandError('draft: CODE_OR_NAME is missing, as "8 02 /", 5253B or "rudi"');
  const { athlete, out } = values;
  const place = PLACES.find((known) => known === values.place);
  if (values.place !== undefined && !place)
    throw new CommandError(`--place: "${values.place}" is not possible; allowed: ${PLACES.join(', ')}`);
  if (out === undefined) throw new CommandError('draft: --out FILE.json is missing');
  return {
    kind: 'draft',
    asked,
    ...(athlete === undefined ? {} : { athlete }),
    ...(place ? { place } : {}),
    ...(values['beyond-strength'] ? { beyondStrength: true } : {}),
    out,
  };
}
