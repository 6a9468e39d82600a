// docs/drafts.md from what is kept of each draft.
import { DEG, REV } from '../../sim/math/angles.ts';
import { directionOf, flyCoarse } from '../../sim/skill/draft-flight.ts';
import { formOf } from '../../sim/skill/draft-form.ts';
import { type Found, flyRecipe } from '../../sim/skill/draft-search.ts';
import { prepareDraft } from '../../sim/skill/draft-skill.ts';
import { readTrack, timeAt, valueAt } from '../../sim/skill/draft-track.ts';
import { inputFor, KEPT, type Kept, keptOf, LEAST, LISTED, type Listed, specOfListed } from './listed.ts';

/** The kept recipe flown in full. */
export function refly(one: Listed, recipe = keptOf(one)?.recipe): Found | undefined {
  if (!recipe) return undefined;
  const { base, tools } = prepareDraft(specOfListed(one), inputFor(one.athlete), () => {});
  return flyRecipe(base, tools, recipe);
}

const KINDS = { trampoline: 'Trampoline codes', dive: 'Dive numbers', name: 'Names' } as const;

export function writePage(flown: ReadonlyMap<Listed, Found | undefined>, kept: readonly Kept[] = KEPT): string {
  const count = (kind: Listed['kind']): string => {
    const all = LISTED.filter((one) => one.kind === kind);
    return `${all.filter((one) => flown.get(one)).length} of ${all.length} (at least ${LEAST[kind]} are wanted)`;
  };
  const lines = [
    '# Drafts',
    '',
    'Written by `npm run drafts`; read with [decision 0028](decisions/0028-a-draft-is-the-skill-or-none.md). The list was fixed before the engine. A draft flies to exactly its code, for a named athlete, within a stated range of air time, by the one verdict, within joint ranges,',
    'speeds and strengths, and as the trade does it. A model, not coaching advice: new skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.',
    '',
    `Flown: trampoline codes ${count('trampoline')}; dive numbers ${count('dive')}; names ${count('name')}. Each was searched from nothing by the engine as it is, as the command \`draft\` does.`,
    '',
    notes(flown),
  ];
  for (const kind of ['trampoline', 'dive', 'name'] as const) {
    lines.push(
      '',
      `## ${KINDS[kind]}`,
      '',
      '| asked for | athlete | air time, s | flown: somersaults, twists | tilt at the end, deg | push from level, deg | momentum, m h² per s | note |',
      '| --- | --- | --- | --- | --- | --- | --- | --- |',
      ...LISTED.filter((one) => one.kind === kind).map((one) => rowOf(one, flown.get(one), keptOf(one, kept))),
    );
  }
  return `${lines.join('\n')}\n`;
}

function rowOf(one: Listed, found: Found | undefined, kept: Kept | undefined): string {
  const { text, meaning, direction, place, athlete, airTimeS } = one;
  const asked = [`\`${text}\``, meaning ? `(\`${meaning}\`)` : '', direction ?? '', place].filter(Boolean).join(' ');
  const range = `${airTimeS[0].toFixed(2)} to ${airTimeS[1].toFixed(2)}`;
  if (!found) {
    const { limit, nearest } = kept?.refused ?? {};
    const why = limit ? `refused: ${LIMITS[limit] ?? limit}` : 'not found: the search did not converge';
    const instead = nearest ? `flies: \`${nearest}\`` : '';
    return `| ${asked} | ${athlete} | ${range} | ${why} | | | | ${instead} |`;
  }
  const { reached, technique } = found.judged;
  const push = (found.recipe.values.push ?? 0) * DEG;
  const cells = [
    asked,
    athlete,
    `${reached.duration.toFixed(2)} (${range})`,
    `${reached.somersaults.toFixed(2)}, ${reached.twists.toFixed(2)}`,
    Math.abs(reached.tilt * DEG).toFixed(0),
    Math.abs(push).toFixed(1),
    (technique.momentumPerMH2 ?? 0).toFixed(2),
    noteOf(one, found),
  ];
  return `| ${cells.join(' | ')} |`;
}

const LIMITS: Readonly<Record<string, string>> = {
  strength: 'strength',
  technique: 'technique',
  push: 'the push',
  airTime: 'air time',
  momentum: 'rotation',
};

const isUnjudged = ({ judged }: Found): boolean => judged.verdict.ending.kind === 'notComputed';

/** What the counts rest on. */
function notes(flown: ReadonlyMap<Listed, Found | undefined>): string {
  const found = LISTED.flatMap((one) => {
    const flight = flown.get(one);
    return flight ? [{ one, flight }] : [];
  });
  const free = (kind: Listed['kind']): number =>
    found.filter(({ one, flight }) => one.kind === kind && flight.judged.carried === 0).length;
  const carried = found.filter(({ flight }) => flight.judged.carried > 0).length;
  return [
    `What this rests on: ${carried} drafts ask more than is known of muscles of knees, hips or trunk in a held bend, which counts as carried by the hands on the legs ("hands" in the notes; without that ${free('trampoline')}, ${free('dive')} and ${free('name')} fly).`,
    `Of ${found.filter(({ flight }) => isUnjudged(flight)).length} the landing is not computed, since they turn too fast to be judged: they end upright. Of skills of several somersaults the time of the wrap is not judged, and what ends lying on the bed is judged by its count alone.`,
    'What is refused for strength alone can be asked for as a marked draft, with its caution; here it counts as refused.',
    'A floor draft aims at a landing that is held where one is judged, else at upright.',
  ].join(' ');
}

function noteOf(one: Listed, found: Found): string {
  const half = halfInAt(one, found);
  return [
    found.judged.carried > 0 ? 'hands' : '',
    isUnjudged(found) ? 'landing not computed' : '',
    half === undefined ? '' : `half in by ${half.toFixed(2)} somersaults`,
  ]
    .filter(Boolean)
    .join('; ');
}

/** Somersaults done when the half twist of a half-in is: gymnasts have it done by a quarter to a half. */
function halfInAt(one: Listed, found: Found): number | undefined {
  const draft = specOfListed(one);
  const { kind, early } = formOf(draft);
  if (early !== 1 || (kind !== 'both' && kind !== 'early')) return undefined;
  const track = readTrack(flyCoarse(found.spec), directionOf(draft));
  const t = timeAt(track, track.twist, 0.9 * Math.PI);
  return t === undefined ? undefined : valueAt(track, track.somersault, t) / REV;
}
