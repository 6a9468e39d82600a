/** Skills close to one that does not fly: the same with one half twist less, then with two. */
import type { DraftSpec } from '../skill/draft-spec.ts';
import { formatDiveNumber, parseDiveNumber } from './dive-number.ts';
import { draftOfDive, draftOfTrampoline } from './draft-of-code.ts';
import { parseTrampolineCode } from './trampoline-code.ts';

/** Skills that ask less than a draft, one and two steps, for when it is refused. */
export function nearSkills(draft: DraftSpec): readonly DraftSpec[] {
  return [1, 2].flatMap((less) => (draft.surface === 'water' ? lessOfDive(draft, less) : lessOnGround(draft, less)));
}

function lessOnGround({ code, direction, place }: DraftSpec, less: number): DraftSpec[] {
  const { quarters, halfTwists, shape } = parseTrampolineCode(code);
  const most = Math.max(...halfTwists);
  if (most < less) return [];
  const i = halfTwists.lastIndexOf(most);
  const fewer = halfTwists.map((n, k) => (k === i ? n - less : n));
  return [
    draftOfTrampoline({ quarters, halfTwists: fewer, shape }, direction, place === 'floor' ? 'floor' : 'trampoline'),
  ];
}

/** A dive without twist has another number: it is nearest to no twisting one. */
function lessOfDive({ code, place }: DraftSpec, less: number): DraftSpec[] {
  const dive = parseDiveNumber(code);
  if (dive.halfTwists <= less) return [];
  const fewer = { ...dive, halfTwists: dive.halfTwists - less };
  return [draftOfDive(parseDiveNumber(formatDiveNumber(fewer)), place)];
}
