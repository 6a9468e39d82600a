// Where what is expected of each check comes from, as tests/oracles/reference.ts and the tests themselves have it. The tags are said on the page (TAGS).
import { COMPARED } from '../../sim/index.ts';
import { type CheckRow, readKept } from './record.ts';

export const TAGS = {
  C: 'closed form or balance by hand, for rigid bodies and limbs computed a second time by an independent integration, so that no paper has to be trusted',
  V2: 'read in a copy or press text',
  W: 'computed by another engine, MuJoCo (`@mujoco/mujoco`), or by equations and an integrator written for the test alone',
  M: 'a range from memory: it can fail, but what it holds is no source',
  P: 'common practice, no source',
} as const;

interface Source {
  readonly tag: keyof typeof TAGS;
  readonly source: string;
}
const twice = (more = ''): Source => ({ tag: 'C', source: `computed twice for this project${more && `; ${more}`}` });
const WITNESS: Source = { tag: 'W', source: 'MuJoCo (Todorov, Erez & Tassa 2012, IROS)' };
const BY_HAND: Source = { tag: 'C', source: 'balance of momentum and energy, by hand' };
const PRACTICE: Source = { tag: 'P', source: 'common practice, no source' };
const OF_MAN = 'moments of a measured man: Tozeren 2000, Human Body Dynamics, appendix (V2)';

export const SOURCES: Readonly<Record<string, Source>> = {
  'R1, R2': twice(),
  R3: twice(OF_MAN),
  R4: twice(OF_MAN),
  R5: twice(OF_MAN),
  R6: twice(OF_MAN),
  R7: twice(OF_MAN),
  R8: twice('form of Landau & Lifshitz, Mechanics, sec. 37'),
  R9: twice("Montgomery's phase (Cabrera; Dullin & Tong, arXiv:1510.08046)"),
  R10: twice(),
  L1: twice(),
  L2: twice(),
  L3: twice(),
  L4: twice(),
  L5: { tag: 'C', source: 'computed for this project; Tong & Dullin, arXiv:1111.1246, give about 19' },
  L6: twice('Kane & Scher 1969, Int J Solids Struct 5:663, eq. 5'),
  W1: WITNESS,
  W2: {
    tag: 'W',
    source: 'accelerations by MuJoCo, integrated by Runge-Kutta (Hairer, Norsett & Wanner 1993, sec. II.1)',
  },
  W3: WITNESS,
  W4: WITNESS,
  W5: WITNESS,
  W6: WITNESS,
  B1: { tag: 'C', source: 'closed form; Hiley & Yeadon 2001, Phys Educ 36:14' },
  B2: { tag: 'C', source: 'closed form; moments of Santschi 1963, in body.md' },
  B3: { tag: 'C', source: 'elliptic functions, Abramowitz & Stegun 16 and 17' },
  B9: { tag: 'M', source: 'pull of giants, body weights' },
  C1: { tag: 'C', source: 'balance of momentum, by hand' },
  C2: { tag: 'C', source: 'of all motions with that joint rate the one of least change, solved apart from the engine' },
  I1: BY_HAND,
  I2: BY_HAND,
  I3: BY_HAND,
  M1: { tag: 'V2', source: 'Pain, Mills & Yeadon 2005: deflection as printed, force by us from their inertia' },
  F8: { tag: 'C', source: 'closed form of a mass on an undamped spring' },
  F9: { tag: 'C', source: 'work and energy over the stopping distance' },
  O1: { tag: 'W', source: 'links in free coordinates with multipliers, written for the test alone' },
  E1: PRACTICE,
  E2: PRACTICE,
};

/** By the test that writes it. */
export const PARTS = {
  'checks-rigid': ['A rigid body in flight', 'tests/checks/rigid.test.ts'],
  'checks-limbs': ['Moving limbs', 'tests/checks/limbs.test.ts'],
  states: ['Ready skills, state by state, by another engine', 'tests/witness/states.test.ts'],
  trajectory: ['A whole flight by another engine', 'tests/witness/trajectory.test.ts'],
  pendulum: ['Rigid bodies on a bar', 'tests/contact/pendulum.test.ts'],
  'giant-witness': ['A giant by another engine', 'tests/contact/giant-witness.test.ts'],
  'limits-witness': ['A giant at the limits of its joints, by another engine', 'tests/contact/limits-witness.test.ts'],
  swing: ['A bar and a giant against what is remembered', 'tests/contact/swing.test.ts'],
  catch: ['A catch over no time', 'tests/contact/catch.test.ts'],
  'catch-witness': ['A catch and the swing after it, by another engine', 'tests/contact/catch-witness.test.ts'],
  impulse: ['A push off the floor', 'tests/contact/impulse.test.ts'],
  mat: ['A mat', 'tests/contact/mat.test.ts'],
  landing: ['A landing', 'tests/contact/landing.test.ts'],
  'landing-oracle': ['A landing by equations of its own', 'tests/contact/landing-oracle.test.ts'],
  'ready-sheets': ['Sheets of Estimate', 'tests/estimate/ready-sheets.test.ts'],
} as const;
export const idOf = ({ title }: CheckRow): string => title.slice(0, title.indexOf(':'));

export function makeValidationPage(): string {
  const parts = Object.entries(PARTS).map(([part, [name, file]]) => {
    const { date, rows } = readKept(part);
    const lines = rows.map((row) => {
      const { tag, source } = SOURCES[idOf(row)];
      return `| ${row.title} | ${row.what} | ${row.expected} | ${row.got} | ${row.tolerance === undefined ? 'the range' : Number(row.tolerance.toPrecision(2))} | ${source} | ${tag} |`;
    });
    return `## ${name}\n\nRun that wrote it: ${date}. Tests: \`${file}\`.\n\n| check | what | expected | got | tolerance | source | tag |\n| --- | --- | --- | --- | --- | --- | --- |\n${lines.join('\n')}`;
  });
  return `# Validation

What the engine gets where a source says what is right. The tests write this page (\`npm run validation\`), and each later run of them fails where a number is another one to its last digit here. Of a test with many values the first three are shown; all are held.

Tags: ${Object.entries(TAGS)
    .map(([tag, words]) => `**${tag}**: ${words}`)
    .join('; ')}.

## Never compared with a measured athlete

${COMPARED} What here is right is the mechanics of given bodies and given joint angles; that an athlete is such a body and moves so is not shown ([limits.md](limits.md#compared-with-what)). Not compared, each:

- a filmed flight: neither somersault, twist and tilt, nor the joint angles put in;
- a swing with a measured bar force, or a release that was filmed;
- a push or a landing on a force plate: the legs were fitted to published drops of others, and at the height that was held out the peak comes out under their band ([landing.md](landing.md));
- a catch, by any force or film;
- the inertia of any athlete here, and of women and children of any kind ([body.md](body.md));
- an athlete's own strength, reflex or spread of tries ([strength.md](strength.md), [margin.md](margin.md)).

${parts.join('\n\n')}

## Held elsewhere

Not on this page, each with its numbers where it is named: bodies against published moments ([body.md](body.md)); orders and tolerances ([numerics.md](numerics.md)); legs against published drops, bands and batches of landings ([landing.md](landing.md)).

A model, not coaching advice: new skills only with a qualified coach, progressions, spotting and matting; local and federation
rules come first.
`;
}
