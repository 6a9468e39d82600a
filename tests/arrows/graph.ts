// The import graph of sim/ and src/, read from the syntax trees: which file imports what, and whether only types.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

export interface Edge {
  from: string;
  /** a file of the project ('sim/math/vec3.ts') or a bare name ('pixi.js', 'node:fs') */
  to: string;
  isType: boolean;
  line: number;
}

export interface SourceFile {
  path: string;
  lines: number;
  edges: Edge[];
  /** what may stand nowhere: default exports and `any` */
  faults: { line: number; what: string }[];
  /** identifiers that reach outside a pure function: Math.random, Date, document ... */
  impure: { line: number; what: string }[];
}

const impureNames = new Set(
  'Date performance document window localStorage indexedDB fetch XMLHttpRequest console process setTimeout setInterval requestAnimationFrame crypto'.split(
    ' ',
  ),
);

/** Every .ts and .tsx file under the given folders of `root`, as paths with forward slashes. */
export function findSources(root: string, folders: string[]): string[] {
  return folders.flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .map((name) => `${folder}/${name.split(path.sep).join('/')}`)
      .filter((name) => /\.tsx?$/.test(name))
      .sort(),
  );
}

export function readSource(root: string, file: string): SourceFile {
  return parseSource(file, readFileSync(path.join(root, file), 'utf8'));
}

export function parseSource(file: string, text: string): SourceFile {
  const kind = file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, kind);
  const source: SourceFile = { path: file, lines: countLines(text), edges: [], faults: [], impure: [] };
  const lineOf = (node: ts.Node) => tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;

  function visit(node: ts.Node): void {
    const target = getImport(node);
    if (target) {
      source.edges.push({
        from: file,
        to: resolveImport(file, target.name),
        isType: target.isType,
        line: lineOf(node),
      });
    }
    const fault = getFault(node);
    if (fault) source.faults.push({ line: lineOf(node), what: fault });
    const impure = getImpure(node);
    if (impure) source.impure.push({ line: lineOf(node), what: impure });
    ts.forEachChild(node, visit);
  }

  visit(tree);
  return source;
}

function countLines(text: string): number {
  return text.split('\n').length - (text.endsWith('\n') ? 1 : 0);
}

function resolveImport(file: string, name: string): string {
  const bare = name.replace(/\?.*$/, '');
  return bare.startsWith('.') ? path.posix.join(path.posix.dirname(file), bare) : bare;
}

function getImport(node: ts.Node): { name: string; isType: boolean } | null {
  if (ts.isImportDeclaration(node)) return named(node.moduleSpecifier, isTypeImport(node.importClause));
  if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
    const clause = node.exportClause;
    const areTypes = clause && ts.isNamedExports(clause) && isAllTypes(clause.elements);
    return named(node.moduleSpecifier, node.isTypeOnly || areTypes === true);
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) return named(node.argument.literal, true);
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
    return named(node.arguments[0], false);
  }
  // a worker's file: new URL('./batch-worker.ts', import.meta.url)
  if (ts.isNewExpression(node) && node.expression.getText() === 'URL' && node.arguments?.length === 2) {
    return node.arguments[1].getText() === 'import.meta.url' ? named(node.arguments[0], false) : null;
  }
  return null;
}

function named(node: ts.Node | undefined, isType: boolean): { name: string; isType: boolean } | null {
  return node && ts.isStringLiteralLike(node) ? { name: node.text, isType } : null;
}

function isTypeImport(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const bindings = clause.namedBindings;
  return !clause.name && !!bindings && ts.isNamedImports(bindings) && isAllTypes(bindings.elements);
}

function isAllTypes(elements: ts.NodeArray<ts.ImportSpecifier | ts.ExportSpecifier>): boolean {
  return elements.length > 0 && elements.every((element) => element.isTypeOnly);
}

function getFault(node: ts.Node): string | null {
  if (node.kind === ts.SyntaxKind.AnyKeyword) return '`any`: say what it is, or `unknown`';
  const isDefault =
    (ts.isExportAssignment(node) && !node.isExportEquals) ||
    node.kind === ts.SyntaxKind.DefaultKeyword ||
    (ts.isExportSpecifier(node) && node.name.text === 'default');
  // `default:` of a switch is a DefaultClause and holds no DefaultKeyword node
  return isDefault ? 'a default export: a thing has one name everywhere' : null;
}

function getImpure(node: ts.Node): string | null {
  if (ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random') return 'Math.random';
  if (!ts.isIdentifier(node) || !impureNames.has(node.text)) return null;
  const { parent } = node;
  // a field or a declared name of ours that happens to be called so is no reach outside
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return null;
  if (ts.isTypeReferenceNode(parent) || ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) return null;
  const isUsed = ts.isPropertyAccessExpression(parent) || ts.isCallExpression(parent) || ts.isNewExpression(parent);
  return isUsed ? node.text : null;
}
