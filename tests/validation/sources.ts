// Where what is expected of each check comes from, as tests/oracles/reference.ts has it. V2: read in a copy or press text. C: computed twice for this project, by closed form and by an
// independent integration.
import { COMPARED } from '../../sim/index.ts';
import { type CheckRow, readKept } from './record.ts';

interface Source {
  readonly tag: 'V2' | 'C';
  readonly source: string;
}
const twice = (more = ''): Source => ({ tag: 'C', source: `computed twice for this project${more && `; ${more}`}` });
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
};

export const PARTS = { 'checks-rigid': 'A rigid body in flight', 'checks-limbs': 'Moving limbs' } as const;
export const idOf = ({ title }: CheckRow): string => title.slice(0, title.indexOf(':'));

export function makeValidationPage(): string {
  const parts = Object.entries(PARTS).map(([part, name]) => {
    const { date, rows } = readKept(part);
    const lines = rows.map((row) => {
      const { tag, source } = SOURCES[idOf(row)];
      return `| ${row.title} | ${row.what} | ${row.expected} | ${row.got} | ${row.tolerance} | ${source} | ${tag} |`;
    });
    return `## ${name}\n\nRun that wrote it: ${date}. Tests: \`tests/checks/${part.replace('checks-', '')}.test.ts\`.\n\n| check | what | expected | got | tolerance | source | tag |\n| --- | --- | --- | --- | --- | --- | --- |\n${lines.join('\n')}`;
  });
  return `# Validation

What the engine gets where a source says what is right. The tests write this page (\`npm run validation\`), and each later run of them fails where a number is another one to its last digit here. Of a test with many values the first three are shown; all are held.

Tags: **C**: computed twice for this project, by closed form and by an independent integration, so that no paper has to be trusted; **V2**: read in a copy or press text.

**Never compared with a measured athlete.** ${COMPARED} What here is right is the mechanics of given bodies and given joint angles; that an athlete is such a body and moves so is not shown ([limits.md](limits.md#compared-with-what)).

${parts.join('\n\n')}

## Held elsewhere

Not on this page yet, each with its numbers where it is named: the same skills by an independent engine ([witness.md](witness.md)); bodies against published moments ([body.md](body.md)); orders and tolerances ([numerics.md](numerics.md)); bars, push, catch and landing
against closed forms and published ranges ([swing.md](swing.md), [takeoff.md](takeoff.md), [catch.md](catch.md), [landing.md](landing.md)).

A model, not coaching advice: new skills only with a qualified coach, progressions, spotting and matting; local and federation
rules come first.
`;
}
