// The page of the library, made of its sources: what the door exports, by room, with signature and docstring.
import path from 'node:path';
import ts from 'typescript';
import * as values from '../../sim/index.ts';

export interface ApiEntry {
  readonly name: string;
  readonly room: string;
  readonly signature: string;
  readonly says: string;
  readonly isFunction: boolean;
}

const ROOT = path.resolve(import.meta.dirname, '../..');

/** Every value that sim/index.ts exports, in the order of its rooms and names. */
export function readApi(): ApiEntry[] {
  const door = path.join(ROOT, 'sim/index.ts');
  const { config } = ts.readConfigFile(path.join(ROOT, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, ROOT);
  const program = ts.createProgram([door], { ...options, types: [] });
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(door);
  const symbol = source && checker.getSymbolAtLocation(source);
  if (!symbol) throw new Error('the door has no exports');
  const entries = checker.getExportsOfModule(symbol).flatMap((exported): ApiEntry[] => {
    const found = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const declaration = found.valueDeclaration;
    if (!declaration || !Object.hasOwn(values, exported.name)) return [];
    const file = path.relative(ROOT, declaration.getSourceFile().fileName).replaceAll('\\', '/');
    const type = checker.getTypeOfSymbolAtLocation(found, declaration);
    const isClass = ts.isClassDeclaration(declaration);
    const [call] = isClass ? [] : type.getCallSignatures();
    const flags = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope;
    const shown = call
      ? `${exported.name}${checker.signatureToString(call, declaration, flags)}`
      : isClass
        ? `class ${exported.name}`
        : `${exported.name}: ${checker.typeToString(type, declaration, ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope)}`;
    return [
      {
        name: exported.name,
        room: file
          .split('/')
          .slice(0, 2)
          .join('/')
          .replace(/\/index\.ts$/, ''),
        signature: shown.replace(/import\("[^"]*"\)\./g, '').replace(/\s+/g, ' '),
        says: ts.displayPartsToString(found.getDocumentationComment(checker)).replace(/\s+/g, ' ').trim(),
        isFunction: call !== undefined,
      },
    ];
  });
  return entries.sort((a, b) => a.room.localeCompare(b.room) || a.name.localeCompare(b.name));
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('<', '&lt;');

export function makeApiPage(entries: readonly ApiEntry[]): string {
  const rooms = [...new Set(entries.map(({ room }) => room))];
  const parts = rooms.map((room) => {
    const rows = entries
      .filter((entry) => entry.room === room)
      .map(({ name, signature, says }) => `**\`${name}\`** \`${signature}\`\n${says ? `: ${cell(says)}` : ''}`.trim());
    return `## ${room}\n\n${rows.join('\n\n')}`;
  });
  return `# The library

Every value of the package's door, \`sim/index.ts\`, made of its sources by \`npm run api\`: name, signature, what its source says of it. SI units and radians inside; frames and letters: [conventions.md](conventions.md). What a name begins with tells its cost:
get (stored), calc, make (allocates), xInto (writes into what it is handed), parse (checks; throws a \`FieldError\` that names field, value and what is allowed), format and word (texts). \`loadContact\` and \`loadEstimate\` bring the rooms that come late. Types are in the package. How to begin: [fly.mjs](examples/fly.mjs).

${parts.join('\n\n')}

A model, not coaching advice: new skills only with a qualified coach, progressions, spotting and matting; local and federation
rules come first.
`;
}
